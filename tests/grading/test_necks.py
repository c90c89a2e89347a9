"""Necks: exact totals, a centre that suits the depth, sides that round off."""

from typing import get_args

import pytest

from gaugewright.grading.curves import ProfileImpossible, deviation, parabola, quarter_ellipse, straight
from gaugewright.grading.necks import NeckPlan, NeckShape, neck, shoulder_stitches, side_curve
from gaugewright.grading.profile import Profile

SHAPES: tuple[NeckShape, ...] = get_args(NeckShape)


@pytest.mark.parametrize("shape", SHAPES)
def test_a_neck_has_exactly_its_width_and_rows(shape: NeckShape) -> None:
    for width in range(2, 60):
        for rows in (1, 2, 3, 5, 8, 13, 21):
            plan = neck(shape, width, rows)
            assert plan.centre + 2 * plan.side.stitches == plan.width == width
            assert plan.side.rows == rows
            assert all(1 <= step.row <= rows for step in plan.side.steps)


def test_a_v_sets_one_stitch_aside_if_the_count_is_odd() -> None:
    assert [neck("v", width, 20).centre for width in (30, 31)] == [0, 1]


def test_a_v_is_nearly_a_straight_line_of_its_smallest_steps() -> None:
    for width in range(10, 44):
        for rows in range(16, 44):
            side = neck("v", width, rows).side
            assert deviation(side, straight(width // 2, rows)) <= 1.5
            assert len({step.stitches for step in side.steps} - {1}) <= (width // 2 > rows)


def test_a_square_is_its_centre() -> None:
    assert neck("square", 24, 12) == NeckPlan(24, Profile(12, ()))


@pytest.mark.parametrize("width", range(16, 44))
def test_a_deep_round_neck_has_about_a_third_at_its_centre(width: int) -> None:
    assert width / 3 - 2 < neck("round", width, 24).centre <= width / 3


def test_a_shallow_neck_has_a_wide_centre() -> None:
    centres = [neck("round", 36, rows).centre for rows in range(1, 24)]
    assert centres == sorted(centres, reverse=True)
    assert centres[0] == 36


def test_a_boat_is_flatter_at_its_ends_than_a_round_neck() -> None:
    boat, curved = neck("boat", 40, 6).side, neck("round", 40, 6).side
    assert boat.after()[-1] - boat.after()[-3] > curved.after()[-1] - curved.after()[-3]


@pytest.mark.parametrize(("shape", "curve"), [("round", quarter_ellipse), ("boat", parabola)])
def test_sides_keep_to_their_curve(shape: NeckShape, curve: type) -> None:
    for width in range(12, 40):
        for rows in (4, 6, 9, 14):
            plan = neck(shape, width, rows)
            wanted = side_curve(curve(width / 2, rows), plan.centre / 2, rows)
            assert wanted(rows) == pytest.approx(plan.side.stitches)
            assert deviation(plan.side, wanted) <= 1.0 + 1e-9


def test_a_side_is_flattest_where_it_leaves_the_centre() -> None:
    after = neck("round", 36, 10).side.after()
    assert after[1] >= after[-1] - after[-3]


@pytest.mark.parametrize(("width", "rows"), [(1, 4), (-3, 4), (20, 0)])
def test_a_neck_without_stitches_or_rows_is_refused(width: int, rows: int) -> None:
    with pytest.raises(ProfileImpossible):
        neck("round", width, rows)


def test_an_unknown_shape_is_an_error_of_ours() -> None:
    with pytest.raises(TypeError, match="keyhole"):
        neck("keyhole", 20, 10)  # type: ignore[arg-type]


def test_shoulders_are_what_the_neck_leaves() -> None:
    assert shoulder_stitches(60, neck("round", 22, 8)) == 19


@pytest.mark.parametrize("total", [61, 20])
def test_shoulders_that_cannot_be_equal_are_refused(total: int) -> None:
    with pytest.raises(ProfileImpossible, match="equal shoulders"):
        shoulder_stitches(total, neck("round", 22, 8))
