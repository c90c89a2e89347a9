"""Neck to wrist over two pieces: rows settled over all sizes, by trying every way where there are few."""

from itertools import pairwise, product

from hypothesis import given
from hypothesis import strategies as st
from tiny_specs import HEAD, graded

from gaugewright.grading.never_falls import FELT_SAME, settle

few = st.integers(1, 5).flatmap(
    lambda n: st.tuples(st.lists(st.floats(500, 900), min_size=n, max_size=n), st.lists(st.floats(-9, 9), min_size=n, max_size=n))
)


def falls(wanted: list[float], errors: list[float], moves: tuple[int, ...], row: float) -> bool:
    """Whether a size falls behind the one before although it isn't meant to."""
    reached = [w + e + move * row for w, e, move in zip(wanted, errors, moves, strict=True)]
    return any(
        b < a - FELT_SAME and wb >= wa - FELT_SAME for (a, b), (wa, wb) in zip(pairwise(reached), pairwise(wanted), strict=True)
    )


def cost(errors: list[float], moves: tuple[int, ...], row: float) -> float:
    return sum((e + move * row) ** 2 for e, move in zip(errors, moves, strict=True))


@given(few, st.floats(4, 30))
def test_settling_is_the_best_of_all_ways(drawn: tuple[list[float], list[float]], row: float) -> None:
    wanted, errors = drawn
    moves = settle(wanted, errors, row)
    ways = [way for way in product((-1, 0, 1), repeat=len(wanted)) if not falls(wanted, errors, way, row)]
    if ways:
        assert not falls(wanted, errors, moves, row)
        assert cost(errors, moves, row) <= min(cost(errors, way, row) for way in ways) + 1e-6
    else:
        assert moves == (0,) * len(wanted)


TWO = HEAD + """\
sizes: {own: {A: {bust: 80 cm}, B: {bust: 82 cm}, C: {bust: 84 cm}, D: {bust: 86 cm}}}
pieces:
  back:
    fabric: thick
    colours: oat
    start: {chain: body.bust / 2}
    sections: [even: {rows: 5}]
  sleeve:
    fabric: thick
    colours: oat
    start: {chain: 30 cm}
    sections:
      - even: {rows: 2}
      - even: {length: rest}
    total: TOTAL
"""


def neck_to_wrist(total: str) -> list[float]:
    text = TWO.replace("  rib:", '  thick: {stitch: hdc, gauge: "5 sts, 4 rows / 10 cm"}\n  rib:').replace("TOTAL", total)
    pieces = graded(text).pieces
    return [back.worked["width"] / 2 + sleeve.worked["length"] for back, sleeve in zip(pieces["back"], pieces["sleeve"], strict=True)]


def test_no_size_falls_behind_a_smaller_one() -> None:
    found = neck_to_wrist("74 cm - finished(back.width) / 2")
    assert all(below <= above + FELT_SAME for below, above in pairwise(found))
    assert all(abs(length - 740) <= 25 + 12.5 for length in found)


def test_a_total_divided_by_another_pieces_width_is_left_as_it_is() -> None:
    assert len(neck_to_wrist("40 cm * (80 cm / finished(back.width))")) == 4
