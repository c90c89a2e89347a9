"""What holds for every shaped edge: totals, rising, rows accounted for, and its mirror image."""

from collections.abc import Callable

from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString

from gaugewright.gauge.model import Gauge
from gaugewright.grading.armhole import armhole
from gaugewright.grading.cap import CapImpossible, cap
from gaugewright.grading.curves import (
    Curve,
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
)
from gaugewright.grading.necks import NeckShape, neck
from gaugewright.grading.outline import run_length
from gaugewright.grading.profile import Profile
from gaugewright.grading.slopes import slope, slope_profile
from gaugewright.vocabulary import ShoulderSteps

# A busy machine is no fault of the arithmetic.
_any_time = settings(deadline=None, max_examples=60)

shapes = st.sampled_from([quarter_ellipse, straight, parabola, bell])
gauges = st.builds(Gauge, st.integers(6, 24), st.just(100.0), st.integers(5, 30), st.just(100.0))


def holds(profile: Profile, stitches: int, rows: int) -> None:
    """A profile takes its stitches within its rows, one step a row at most, and its phrases say all of it."""
    assert (profile.stitches, profile.rows) == (stitches, rows)
    numbers = [step.row for step in profile.steps]
    assert numbers == sorted(set(numbers))
    assert all(1 <= row <= rows for row in numbers)
    assert all(step.stitches > 0 for step in profile.steps)
    after = profile.after()
    assert len(after) == rows and list(after) == sorted(after)
    phrases, even = phrases_of(profile)
    assert sum(phrase.every * phrase.times for phrase in phrases) + even == rows
    assert stated_profile(phrases, stitches, rows) == profile


@_any_time
@given(shapes, st.integers(0, 30), st.integers(1, 40), st.integers(1, 4))
def test_curves(shape: Callable[[float, float], Curve], stitches: int, rows: int, most: int) -> None:
    curve = shape(stitches, rows)
    profile, off = curve_profile(curve, stitches, rows, most)
    holds(profile, stitches, rows)
    assert len(phrases_of(profile)[0]) <= most
    assert abs(off - deviation(profile, curve)) < 1e-9


@_any_time
@given(shapes, st.integers(1, 24), st.integers(4, 36))
def test_more_phrases_never_lie_much_further(shape: Callable[[float, float], Curve], stitches: int, rows: int) -> None:
    curve = shape(stitches, rows)
    offs = [curve_profile(curve, stitches, rows, most)[1] for most in (1, 2, 3, 4)]
    for fewer, more in zip(offs, offs[1:], strict=False):
        assert more <= max(fewer, 1.0) + 1e-9


@_any_time
@given(st.integers(0, 30), st.integers(4, 60), st.data(), gauges)
def test_armholes(stitches: int, rows: int, data: st.DataObject, gauge: Gauge) -> None:
    block = data.draw(st.none() | st.integers(0, stitches))
    curve_rows = data.draw(st.none() | st.integers(2, rows))
    made = armhole(stitches, rows, block, curve_rows, gauge)
    holds(made, stitches, rows)
    if made.steps and block:
        assert made.steps[0] == (1, block, "leave")
    assert made.after()[(curve_rows or rows) - 1] == stitches


@_any_time
@given(st.sampled_from(["round", "v", "boat", "square"]), st.integers(2, 70), st.integers(1, 50))
def test_necks(shape: NeckShape, width: int, rows: int) -> None:
    plan = neck(shape, width, rows)
    assert plan.centre + 2 * plan.side.stitches == width
    holds(plan.side, plan.side.stitches, rows)


@_any_time
@given(st.integers(1, 80), st.integers(0, 8), st.sampled_from(["larger at the neck", "larger at the armhole", "spread"]))
def test_slopes(stitches: int, rows: int, remainder: ShoulderSteps) -> None:
    if stitches > rows:
        groups = slope(stitches, rows, remainder)
        assert sum(groups) == stitches and max(groups) - min(groups) <= 1
        holds(slope_profile(stitches, rows, remainder), stitches - groups[-1], rows)


@settings(deadline=None, max_examples=25)
@given(st.integers(24, 70), st.floats(380, 640), st.integers(2, 9), st.floats(0, 25), st.floats(170, 260))
def test_caps(upper: int, edge: float, block: int, ease: float, depth: float) -> None:
    gauge = Gauge(13, 100.0, 9, 100.0)
    try:
        made = cap(upper, edge, gauge, block, ease, depth)
    except CapImpossible as refused:
        assert refused.fits is None or cap(refused.fits, edge, gauge, block, ease, depth).edge_length >= edge - 0.05
        return
    holds(made.profile, (upper - made.top) // 2, made.rows)
    assert upper == made.top + 2 * made.profile.stitches
    assert edge - 0.05 <= made.edge_length
    assert abs(made.edge_length - edge - ease) <= gauge.row_height + 1e-9


@_any_time
@given(shapes, st.integers(1, 24), st.integers(2, 30), gauges)
def test_a_mirrored_edge_is_exactly_its_twin(
    shape: Callable[[float, float], Curve], stitches: int, rows: int, gauge: Gauge
) -> None:
    profile, _ = curve_profile(shape(stitches, rows), stitches, rows)
    left = frozenset(step.row for step in profile.steps if step.way == "leave")
    points = profile_points(profile, gauge)
    mirrored = tuple((-x, y) for x, y in points)
    assert run_length(mirrored, left) == run_length(points, left) == profile_length(profile, gauge)


@_any_time
@given(shapes, st.integers(1, 24), st.integers(2, 30), gauges)
def test_an_edge_is_between_its_chord_and_its_staircase(
    shape: Callable[[float, float], Curve], stitches: int, rows: int, gauge: Gauge
) -> None:
    profile, _ = curve_profile(shape(stitches, rows), stitches, rows)
    points = profile_points(profile, gauge)
    stairs = [points[0]]
    for low, high in zip(points, points[1:], strict=False):
        stairs += [(high[0], low[1]), high]
    length = profile_length(profile, gauge)
    assert LineString((points[0], points[-1])).length - 1e-6 <= length <= LineString(stairs).length + 1e-6
