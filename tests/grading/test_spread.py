"""Spreads round a round, along a row, shifted, and ramps over rounds."""

import pytest

from gaugewright.grading.spread import Group, Spread, SpreadImpossible, expand, ramp, spread


def test_a_disc_shifts_every_second_round() -> None:
    plain, moved = spread(24, 6, "increase"), spread(24, 6, "increase", shifted=True)
    assert plain.groups == (Group(3, 6),)
    assert (moved.groups, moved.trailing) == ((Group(1, 1), Group(3, 5)), 2)
    assert not set(plain.positions()) & set(moved.positions())


def test_shifted_changes_stand_between_those_of_the_last_round() -> None:
    plain, moved = spread(36, 6, "increase"), spread(36, 6, "increase", shifted=True)
    for here, before in zip(moved.positions(), plain.positions(), strict=True):
        assert 2 <= before - here <= 4


def test_a_gap_too_small_to_halve_puts_the_change_first() -> None:
    moved = spread(12, 6, "increase", shifted=True)
    assert moved == Spread("increase", 0, (Group(1, 6),), 0, change_first=True)
    assert moved.positions() == (1, 3, 5, 7, 9, 11)


def test_doubling_and_halving_are_the_ends_of_the_range() -> None:
    assert spread(7, 7, "increase").groups == (Group(0, 7),)
    assert spread(7, 3, "decrease").made == 4
    with pytest.raises(SpreadImpossible, match="7 sts cannot become 15 in one round, only 4 to 14") as caught:
        spread(7, 8, "increase")
    assert (caught.value.least, caught.value.most) == (4, 14)
    with pytest.raises(SpreadImpossible):
        spread(7, 4, "decrease")


def test_no_changes_is_a_plain_round() -> None:
    assert expand(spread(7, 0, "decrease")) == (7,)


@pytest.mark.parametrize("bad", [(-1, 0), (4, -1)])
def test_nonsense_is_refused(bad: tuple[int, int]) -> None:
    with pytest.raises(ValueError, match="no spread"):
        spread(*bad, "increase")


def test_a_row_looks_the_same_from_both_edges() -> None:
    for stitches in range(10, 60):
        gaps = expand(spread(stitches, 4, "increase", along="row"))
        assert abs(gaps[0] - gaps[-1]) <= 1
        assert max(gaps) - min(gaps) <= 1


def test_half_gaps_at_the_edges_make_one_whole_gap() -> None:
    gaps = expand(spread(50, 4, "decrease", along="row with half gaps"))
    inner = gaps[1:-1]
    assert abs(gaps[0] - gaps[-1]) <= 1
    assert max((*inner, gaps[0] + gaps[-1])) - min((*inner, gaps[0] + gaps[-1])) <= 1


def test_one_change_in_a_row_is_in_the_middle() -> None:
    for along in ("row", "row with half gaps"):
        assert expand(spread(11, 1, "increase", along=along)) == (5, 5)


def test_odd_stitches_by_turns_stay_near_their_place() -> None:
    mixed = spread(60, 14, "increase", remainder="by turns")
    for i, position in enumerate(mixed.positions(), 1):
        assert 0 <= position - 60 * i / 14 < 1
    blocks = spread(60, 14, "increase")
    assert len(blocks.groups) == 2 < len(mixed.groups)


def test_the_rest_at_the_end() -> None:
    made = spread(100, 16, "decrease", remainder="left at the end")
    assert (set(expand(made)[:-1]), expand(made)[-1]) == ({4}, 4)
    assert (made.stitches, made.made) == (100, 84)


def test_a_ramp_down_takes_the_same_share_each_round() -> None:
    assert ramp(60, 20, 3) == (42, 29, 20)


def test_a_ramp_that_only_doubling_reaches() -> None:
    assert ramp(9, 72, 3) == (18, 36, 72)
    assert ramp(71, 9, 3) == (36, 18, 9)


def test_a_ramp_out_of_reach_says_what_is_reached() -> None:
    with pytest.raises(SpreadImpossible, match="10 sts cannot become 81 in 3 rounds, only 2 to 80"):
        ramp(10, 81, 3)
    with pytest.raises(SpreadImpossible):
        ramp(10, 11, 0)


def test_a_ramp_of_no_rounds() -> None:
    assert ramp(10, 10, 0) == ()


@pytest.mark.parametrize("bad", [(0, 5, 2), (5, 0, 2), (5, 5, -1)])
def test_ramps_without_stitches_are_refused(bad: tuple[int, int, int]) -> None:
    with pytest.raises(ValueError, match="no ramp"):
        ramp(*bad)
