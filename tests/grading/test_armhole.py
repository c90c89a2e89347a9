"""Armholes: a block on row 1, a curve that flattens out, and even rows to the shoulder."""

import pytest
from tiny_specs import THREE_SIZES, counts, told

from gaugewright.gauge.model import Gauge
from gaugewright.grading.armhole import armhole, armhole_curve, default_curve_rows
from gaugewright.grading.curves import ProfileImpossible, deviation, phrases_of
from gaugewright.grading.profile import EdgeStep, Profile

HALF_DOUBLE = Gauge(14, 100.0, 10, 100.0)
THICK = Gauge(9, 100.0, 7, 100.0)
GAUGES = (HALF_DOUBLE, THICK, Gauge(14, 100.0, 16, 100.0), Gauge(22, 100.0, 28, 100.0))


def test_the_block_is_left_on_row_1() -> None:
    made = armhole(10, 21, 6, 10, HALF_DOUBLE)
    assert made.steps[0] == EdgeStep(1, 6, "leave")
    assert (made.rows, made.stitches) == (21, 10)


@pytest.mark.parametrize("gauge", GAUGES)
def test_typical_armholes_stray_less_than_a_stitch_from_their_curve(gauge: Gauge) -> None:
    for stitches in range(2, 30):
        rows = 20 if gauge.rows < 11 else 45
        made = armhole(stitches, rows, None, None, gauge)
        curved = default_curve_rows(stitches, rows, gauge)
        block = made.steps[0].stitches
        rest = Profile(curved - 1, tuple(step._replace(row=step.row - 1) for step in made.steps[1:]))
        assert deviation(rest, armhole_curve(stitches - block, curved - 1)) <= 1.0 + 1e-9
        assert len(phrases_of(made)[0]) <= 4


@pytest.mark.parametrize("gauge", GAUGES)
def test_the_curve_ends_between_a_third_and_half_of_the_depth(gauge: Gauge) -> None:
    for stitches in range(1, 30):
        for rows in range(6, 60):
            assert rows / 3 <= default_curve_rows(stitches, rows, gauge) <= rows / 2
            assert armhole(stitches, rows, None, None, gauge).after()[rows // 2 - 1] == stitches


def test_all_stitches_may_go_at_once() -> None:
    assert armhole(5, 12, 5, 4, THICK) == Profile(12, (EdgeStep(1, 5, "leave"),))


def test_no_block_leaves_only_the_curve() -> None:
    made = armhole(5, 12, 0, 6, THICK)
    assert (made.stitches, made.steps[0].row > 1) == (5, True)


def test_nothing_to_take_is_an_even_edge() -> None:
    assert armhole(0, 12, None, None, THICK) == Profile(12, ())


@pytest.mark.parametrize(
    ("stitches", "rows", "block", "curve"), [(5, 12, 6, 4), (5, 12, -1, 4), (-2, 12, None, 4), (5, 12, 2, 13), (5, 12, 2, 0), (5, 12, 2, 1)]
)
def test_what_does_not_fit_is_refused(stitches: int, rows: int, block: int | None, curve: int) -> None:
    with pytest.raises(ProfileImpossible):
        armhole(stitches, rows, block, curve, THICK)


DROPPED = THREE_SIZES + """
levels: {shoulder: 60 cm, underarm: 38 cm}
pieces:
  piece:
    fabric: plain
    colours: oat
    start: {chain: body.bust / 2}
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: body.bust / 2 - 12 cm, block: BLOCK}
      - shoulders: {neck: 12 cm}
"""


@pytest.mark.parametrize("block", ["6 cm", "6.6 cm", "5.2 cm"])
def test_a_block_within_a_stitch_of_all_that_goes_takes_all(block: str) -> None:
    """A modified drop: no stitch is decreased by itself after the block, and half a stitch too much is no fault."""
    for size, wide in (("S", 40), ("M", 50), ("L", 60)):
        assert counts(DROPPED.replace("BLOCK", block), size=size) == (*[wide] * 38, *[wide - 12] * 22)


def test_a_smaller_block_leaves_a_curve_and_a_wider_one_is_told() -> None:
    assert len(set(counts(DROPPED.replace("BLOCK", "5 cm")))) == 3
    line = "- armhole: {to: shoulder, target: body.bust / 2 - 12 cm, block: 7 cm}"
    assert told(DROPPED.replace("BLOCK", "7 cm")) == [("armhole-block-too-wide", line, "S, M, L")]
