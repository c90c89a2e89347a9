"""Curves in few phrases: nothing with as many phrases lies nearer, and no row goes missing."""

import math
from collections.abc import Iterator

import pytest
from scipy.optimize import Bounds, LinearConstraint, milp
from shapely import LineString

from gaugewright.gauge.model import Gauge
from gaugewright.grading.curves import (
    Curve,
    Phrase,
    ProfileImpossible,
    bell,
    curve_profile,
    deviation,
    parabola,
    phrases_of,
    profile_length,
    profile_points,
    quarter_ellipse,
    stated_profile,
    straight,
    through,
)
from gaugewright.grading.profile import EdgeStep, Profile

SHAPES = (quarter_ellipse, straight, parabola, bell)
SMALL = [(stitches, rows) for stitches in range(1, 7) for rows in range(stitches, 10, 2)]


def every_profile(stitches: int, rows: int, phrases: int, row: int = 0) -> Iterator[tuple[int, ...]]:
    """Stitches gone after each further row, for every way to say it in at most so many phrases."""
    if not stitches:
        yield (0,) * (rows - row)
    elif phrases:
        for each in range(1, stitches + 1):
            for every in range(1, rows - row + 1):
                for times in range(1, min(stitches // each, (rows - row) // every) + 1):
                    head = tuple(each * (at // every) for at in range(1, every * times + 1))
                    for tail in every_profile(stitches - each * times, rows, phrases - 1, row + every * times):
                        yield head + tuple(each * times + gone for gone in tail)


def distance(after: tuple[int, ...], curve: Curve) -> float:
    return max(abs(gone - curve(row)) for row, gone in enumerate(after, start=1))


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("most", [1, 2, 3])
def test_nothing_with_as_many_phrases_lies_nearer(shape: type, most: int) -> None:
    for stitches, rows in SMALL:
        curve = shape(stitches, rows)
        profile, off = curve_profile(curve, stitches, rows, most)
        used = len(phrases_of(profile)[0])
        assert used <= most
        by_number = [min(distance(after, curve) for after in every_profile(stitches, rows, number)) for number in range(1, most + 1)]
        assert off == pytest.approx(by_number[used - 1])
        assert off <= max(by_number[-1], min(by_number[-1] + 0.5, 1.0)) + 1e-9
        assert off == pytest.approx(deviation(profile, curve))


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize(("stitches", "rows"), [(7, 12), (12, 9), (15, 26), (21, 30)])
def test_free_steps_lie_no_nearer_than_the_integer_programme(shape: type, stitches: int, rows: int) -> None:
    curve = shape(stitches, rows)
    least = nearest_of_any_steps([curve(row) for row in range(1, rows + 1)], stitches)
    _, free = curve_profile(curve, stitches, rows, most_phrases=rows)
    _, four = curve_profile(curve, stitches, rows)
    assert least - 1e-6 <= free <= max(least, min(least + 0.5, 1.0)) + 1e-6
    assert least - 1e-6 <= four


def nearest_of_any_steps(targets: list[float], stitches: int) -> float:
    """The least largest distance of any rising whole numbers that end at `stitches`, as an integer programme."""
    rows = len(targets)
    unit = [[float(column == row) for column in range(rows)] for row in range(rows)]
    above = [[*line, -1.0] for line in unit]
    below = [[*line, 1.0] for line in unit]
    rising = [[unit[row + 1][column] - unit[row][column] for column in range(rows)] + [0.0] for row in range(rows - 1)]
    found = milp(
        [0.0] * rows + [1.0],
        constraints=[
            LinearConstraint(above, [-math.inf] * rows, targets),
            LinearConstraint(below, targets, [math.inf] * rows),
            LinearConstraint(rising, [0.0] * (rows - 1), [math.inf] * (rows - 1)),
        ],
        integrality=[1] * rows + [0],
        bounds=Bounds([0.0] * (rows - 1) + [stitches, 0.0], [stitches] * rows + [math.inf]),
    )
    assert found.success
    return float(found.fun)


def test_a_straight_line_of_whole_gaps_is_one_phrase() -> None:
    profile, off = curve_profile(straight(6, 24), 6, 24)
    assert phrases_of(profile) == ((Phrase(1, 4, 6, "decrease"),), 0)
    assert off == 0.75


def test_points_are_a_curve_too() -> None:
    points = ((0, 0), (4, 8), (12, 12))
    assert curve_profile(points, 12, 12) == curve_profile(through(points), 12, 12)
    assert phrases_of(curve_profile(points, 12, 12)[0]) == ((Phrase(2, 1, 4, "decrease"), Phrase(1, 2, 4, "decrease")), 0)


def test_a_step_of_three_is_left_and_two_are_worked_together() -> None:
    steps = curve_profile(((0, 0), (1, 3), (2, 5), (3, 6)), 6, 3)[0].steps
    assert steps == (EdgeStep(1, 3, "leave"), EdgeStep(2, 2, "decrease"), EdgeStep(3, 1, "decrease"))


def test_a_limit_on_each_row_is_kept() -> None:
    profile, off = curve_profile(quarter_ellipse(12, 12), 12, 12, most_at_once=2)
    assert max(step.stitches for step in profile.steps) == 2
    assert profile.stitches == 12
    assert off > curve_profile(quarter_ellipse(12, 12), 12, 12)[1]


@pytest.mark.parametrize(
    ("stitches", "rows", "most", "limit"), [(-1, 4, 4, None), (3, -1, 4, None), (3, 0, 4, None), (3, 4, 0, None), (13, 4, 4, 3)]
)
def test_what_cannot_go_is_refused(stitches: int, rows: int, most: int, limit: int | None) -> None:
    with pytest.raises(ProfileImpossible):
        curve_profile(straight(stitches, max(1, rows)), stitches, rows, most, limit)


def test_stitches_that_do_not_come_to_their_total_in_one_phrase_are_refused() -> None:
    with pytest.raises(ProfileImpossible, match="1 phrases can't take 7 stitches in 4 rows, at most 2 on each"):
        curve_profile(straight(7, 4), 7, 4, most_phrases=1, most_at_once=2)


def test_nothing_to_take_leaves_the_rows_even() -> None:
    assert curve_profile(straight(0, 9), 0, 9) == (Profile(9, ()), 0.0)
    assert phrases_of(Profile(9, ())) == ((), 9)


def test_stated_phrases_must_fit_their_rows() -> None:
    with pytest.raises(ProfileImpossible, match="need 18 rows, but there are 17"):
        stated_profile((Phrase(1, 2, 9, "decrease"),), 9, 17)


def test_equal_steps_in_another_way_are_another_phrase() -> None:
    phrases = (Phrase(2, 1, 1, "leave"), Phrase(2, 1, 3, "decrease"))
    assert phrases_of(stated_profile(phrases, 8, 6)) == (phrases, 2)


GAUGE = Gauge(14, 100.0, 10, 100.0)


@pytest.mark.parametrize("steps", [(1, 1, 1, 1), (2, 1, 1, 2), (5, 2, 1, 1), (1, 4, 4, 1), (3, 3, 3, 3)])
def test_an_edge_that_steps_on_every_row_is_as_long_as_its_drawn_line(steps: tuple[int, ...]) -> None:
    made = Profile(4, tuple(EdgeStep(row, step, "leave" if step > 2 else "decrease") for row, step in enumerate(steps, start=1)))
    line, x = [(0.0, 0.0)], 0.0
    for row, step in enumerate(steps, start=1):
        x += GAUGE.width_of(step)
        if step > 2:
            line.append((x, GAUGE.height_of(row - 1)))
        line.append((x, GAUGE.height_of(row)))
    assert profile_length(made, GAUGE) == pytest.approx(LineString(line).length)


@pytest.mark.parametrize(("every", "times"), [(2, 5), (3, 4), (5, 2)])
def test_an_even_slope_is_as_long_as_its_hypotenuse(every: int, times: int) -> None:
    made = stated_profile((Phrase(1, every, times, "decrease"),), times, every * times)
    points = profile_points(made, GAUGE)
    assert profile_length(made, GAUGE) == pytest.approx(LineString((points[0], points[-1])).length)
    assert profile_length(made, GAUGE) < LineString(points).length
