"""Small ratios for pick-ups and seams."""

import pytest

from gaugewright.grading.ratio import Part, Ratio, best_ratio, parts, picked_up, sewing_ratio


@pytest.mark.parametrize(
    ("exact", "expected"),
    [(0.75, (3, 4)), (0.74, (3, 4)), (0.71, (5, 7)), (1.02, (1, 1)), (1.04, (1, 1)), (1.5, (3, 2)), (2.0, (2, 1))],
)
def test_best_ratio(exact: float, expected: tuple[int, int]) -> None:
    found = best_ratio(exact)
    assert (found.first, found.second) == expected


def test_a_narrower_share_takes_larger_numbers() -> None:
    assert best_ratio(0.657) == Ratio(2, 3)
    assert best_ratio(0.657, largest=40, within=0.001) == Ratio(23, 35)


def test_ratios_beyond_the_largest_number() -> None:
    assert best_ratio(11.6) == Ratio(12, 1)
    assert best_ratio(1 / 9.4) == Ratio(1, 9)


@pytest.mark.parametrize("bad", [0.0, -1.0, float("inf"), float("nan")])
def test_no_ratio_for_nonsense(bad: float) -> None:
    with pytest.raises(ValueError, match="no ratio"):
        best_ratio(bad)


def test_picked_up() -> None:
    assert picked_up(43, Ratio(3, 4)) == 32
    assert picked_up(0, Ratio(3, 4)) == 0


def test_parts_of_a_seam_add_up() -> None:
    assert parts(200, 137, largest=4) == (Part(3, 2, 52), Part(4, 3, 11))


def test_parts_of_very_unequal_edges() -> None:
    assert parts(23, 3) == (Part(8, 1, 2), Part(7, 1, 1))
    assert parts(1, 9) == (Part(1, 9, 1),)


def test_sewing_ratio_of_nearly_equal_edges_is_one_to_one() -> None:
    assert sewing_ratio(50, 49) == Ratio(1, 1)
    assert sewing_ratio(48, 72) == Ratio(2, 3)


def test_an_empty_edge_cannot_be_sewn() -> None:
    for call in (sewing_ratio, parts):
        with pytest.raises(ValueError, match="cannot be sewn"):
            call(0, 5)
