"""Curves as a maker works them: at most four phrases of equal steps, as near to the curve as they go.

A phrase is "the same stitches on every g-th row, n times". Nobody counts out a different step on each
row, so an edge is drawn as a curve and worked as a few phrases whose row ends lie nearest to it.
"""

import math
from collections.abc import Callable, Sequence
from typing import NamedTuple

from gaugewright.gauge.model import Gauge
from gaugewright.grading.curve_search import fewest_phrases
from gaugewright.grading.model import Point
from gaugewright.grading.outline import run_length
from gaugewright.grading.profile import EdgeStep, Profile, Way
from gaugewright.tolerances import MOST_DECREASED

Curve = Callable[[float], float]
"""Stitches gone after so many rows, both exact."""

BELL_STEEPEST = 1.5
"""At its ends a cap's curve takes half as many stitches again on a row as on the average."""


class ProfileImpossible(ValueError):
    """Steps that can't be worked, or don't come to the stitches they should."""


class Phrase(NamedTuple):
    """`stitches` go on every `every`-th row, `times` times; the first `every` rows after the step before."""

    stitches: int
    every: int
    times: int
    way: Way


def quarter_ellipse(stitches: float, rows: float) -> Curve:
    """Level at the start, upright at the end: an armhole, a round neck.

    >>> [round(quarter_ellipse(10, 10)(row), 6) for row in (0, 2, 10)]
    [0.0, 6.0, 10.0]
    """
    return lambda row: stitches * math.sqrt(max(0.0, 1.0 - (1.0 - min(1.0, row / rows)) ** 2))


def straight(stitches: float, rows: float) -> Curve:
    """One slope: a V neck."""
    return lambda row: stitches * min(1.0, row / rows)


def parabola(stitches: float, rows: float) -> Curve:
    """Level at the start and still sloping at the end: a boat neck."""
    return lambda row: stitches * math.sqrt(min(1.0, row / rows))


def bell(stitches: float, rows: float) -> Curve:
    """Half a sleeve cap: three times as flat at both ends as in the middle, where it stands steepest.

    >>> [round(bell(10, 20)(row), 2) for row in (0, 5, 10, 20)]
    [0.0, 3.3, 5.0, 10.0]
    """
    return lambda row: stitches * (row / rows + math.sin(2.0 * math.pi * row / rows) * (BELL_STEEPEST - 1.0) / (2.0 * math.pi))


def through(points: Sequence[tuple[float, float]]) -> Curve:
    """Straight lines through (row, stitches gone), rows rising; level outside them.

    >>> through(((0, 0), (4, 6), (8, 8)))(6)
    7.0
    """
    return lambda row: _between(points, row)


def _between(points: Sequence[tuple[float, float]], row: float) -> float:
    if row <= points[0][0]:
        return points[0][1]
    for (low, start), (high, end) in zip(points, points[1:], strict=False):
        if row <= high:
            return start + (end - start) * (row - low) / (high - low)
    return points[-1][1]


def curve_profile(
    curve: Curve | Sequence[tuple[float, float]],
    stitches: int,
    rows: int,
    most_phrases: int = 4,
    most_at_once: int | None = None,
) -> tuple[Profile, float]:
    """The phrases that take `stitches` in `rows` nearest to the curve, and how far they stray, in stitches.

    Nearest is least in the largest distance at a row's end. Fewer phrases are taken where they cost less
    than anyone sees. At most `most_at_once` stitches go on one row, if it is given.

    >>> profile, off = curve_profile(straight(6, 12), 6, 12)
    >>> [(step.row, step.stitches) for step in profile.steps], off
    ([(2, 1), (4, 1), (6, 1), (8, 1), (10, 1), (12, 1)], 0.5)
    """
    line = curve if callable(curve) else through(curve)
    if rows < 0 or stitches < 0 or most_phrases < 1:
        raise ProfileImpossible(f"{stitches} stitches can't go in {rows} rows in {most_phrases} phrases")
    limit = stitches if most_at_once is None else min(stitches, most_at_once)
    if stitches > limit * rows:
        raise ProfileImpossible(f"{stitches} stitches can't go in {rows} rows, at most {limit} on each")
    targets = tuple(line(row) for row in range(rows + 1))
    found = fewest_phrases(targets, stitches, limit, most_phrases)
    if found is None:
        raise ProfileImpossible(f"{most_phrases} phrases can't take {stitches} stitches in {rows} rows, at most {limit} on each")
    phrases, off = found
    return stated_profile(tuple(Phrase(*phrase, way_of(phrase[0])) for phrase in phrases), stitches, rows), off


def way_of(stitches: int) -> Way:
    """One or two stitches are worked together; more would bunch, so they are left.

    >>> way_of(2), way_of(3)
    ('decrease', 'leave')
    """
    return "decrease" if stitches <= MOST_DECREASED else "leave"


def stated_profile(phrases: Sequence[Phrase], stitches: int, rows: int) -> Profile:
    """The profile that these phrases make; they must take exactly `stitches` within `rows`.

    >>> stated_profile((Phrase(1, 1, 9, "decrease"), Phrase(1, 2, 9, "decrease")), 20, 30)
    Traceback (most recent call last):
    ...
    gaugewright.grading.curves.ProfileImpossible: the steps take 18 stitches, but 20 go
    """
    steps, row = [], 0
    for phrase in phrases:
        for _ in range(phrase.times):
            row += phrase.every
            steps.append(EdgeStep(row, phrase.stitches, phrase.way))
    profile = Profile(rows, tuple(steps))
    if profile.stitches != stitches:
        raise ProfileImpossible(f"the steps take {profile.stitches} stitches, but {stitches} go")
    if row > rows:
        raise ProfileImpossible(f"the steps need {row} rows, but there are {rows}")
    return profile


def phrases_of(profile: Profile) -> tuple[tuple[Phrase, ...], int]:
    """A profile's phrases in order, and the rows worked even after the last step: what is said of it.

    >>> phrases_of(Profile(9, (EdgeStep(1, 3, "leave"), EdgeStep(3, 1, "decrease"), EdgeStep(5, 1, "decrease"))))
    ((Phrase(stitches=3, every=1, times=1, way='leave'), Phrase(stitches=1, every=2, times=2, way='decrease')), 4)
    """
    found: list[Phrase] = []
    row = 0
    for step in profile.steps:
        one = Phrase(step.stitches, step.row - row, 1, step.way)
        if found and found[-1]._replace(times=1) == one:
            found[-1] = one._replace(times=found[-1].times + 1)
        else:
            found.append(one)
        row = step.row
    return tuple(found), profile.rows - row


def deviation(profile: Profile, curve: Curve) -> float:
    """How far a profile's row ends lie from a curve at most, in stitches."""
    return max((abs(gone - curve(row)) for row, gone in enumerate(profile.after(), start=1)), default=0.0)


def profile_points(profile: Profile, gauge: Gauge) -> tuple[Point, ...]:
    """The edge's row ends in mm from where it begins: x inwards, y up."""
    return tuple((gauge.width_of(gone), gauge.height_of(row)) for row, gone in enumerate((0, *profile.after())))


def profile_length(profile: Profile, gauge: Gauge) -> float:
    """Length of the edge in mm, as an outline's edge is measured: left stitches level and in full.

    >>> profile_length(Profile(3, (EdgeStep(1, 3, "leave"),)), Gauge(10, 100.0, 10, 100.0))
    60.0
    """
    left = frozenset(step.row for step in profile.steps if step.way == "leave")
    return run_length(profile_points(profile, gauge), left)
