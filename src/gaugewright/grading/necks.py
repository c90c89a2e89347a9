"""Neck openings: stitches left at the centre at once, and each neck edge's profile above them."""

from collections.abc import Callable
from functools import lru_cache
from typing import Literal, NamedTuple

from gaugewright.grading.curves import Curve, ProfileImpossible, curve_profile, parabola, quarter_ellipse, straight
from gaugewright.grading.profile import EdgeStep, Profile
from gaugewright.grading.schedule import two_rates
from gaugewright.rounding import down_to_series, up
from gaugewright.vocabulary import Schedules

NeckShape = Literal["round", "v", "boat", "square"]

CENTRE_SHARE = 1 / 3
"""At least a third of a round neck is its centre (hand-knitting manual, 'Necklines: round and square')."""

_CURVES: dict[str, Callable[[float, float], Curve]] = {"round": quarter_ellipse, "boat": parabola}
"""Half of a neck's whole width, drawn over its depth."""

HALVINGS = 40
"""So often halved, a stretch of rows is known to far less than a hair."""


class NeckPlan(NamedTuple):
    """`centre` stitches left on the way to row 1; `side` is either neck edge from row 1 on."""

    centre: int
    side: Profile

    @property
    def width(self) -> int:
        """All the neck's stitches.

        >>> NeckPlan(12, Profile(0, ())).width
        12
        """
        return self.centre + 2 * self.side.stitches


@lru_cache(maxsize=256)
def neck(shape: NeckShape, width: int, depth_rows: int, habit: Schedules = "straightest") -> NeckPlan:
    """A neck of exactly `width` stitches over `depth_rows` rows, both sides alike; a V by the pattern's habit.

    >>> plan = neck("v", 31, 20)
    >>> plan.centre, plan.side.stitches
    (1, 15)
    >>> [step.row for step in neck("v", 10, 22, "longer gap first").side.steps]
    [5, 10, 14, 18, 22]
    """
    if width < 2 or depth_rows < 1:
        raise ProfileImpossible(f"a neck of {width} stitches can't be worked in {depth_rows} rows")
    match shape:
        case "square":
            return NeckPlan(width, Profile(depth_rows, ()))
        case "v":
            return NeckPlan(width % 2, _slanted(width // 2, depth_rows, habit))
        case "round" | "boat":
            centre = centre_of(shape, width, depth_rows)
            sides = (width - centre) // 2
            side, _ = curve_profile(neck_curve(shape, width, depth_rows), sides, depth_rows)
            return NeckPlan(centre, side)
        case _:
            raise TypeError(f"no neck of shape {shape!r}")


def _slanted(stitches: int, rows: int, habit: Schedules) -> Profile:
    """A V's straight edge; with more stitches than rows there are no gaps to have a habit about."""
    if habit == "straightest" or stitches > rows:
        return curve_profile(straight(stitches, rows), stitches, rows, most_at_once=up(stitches / rows))[0]
    falls = two_rates(stitches, rows, longer_first=habit == "longer gap first").positions()
    return Profile(rows, tuple(EdgeStep(row, 1, "decrease") for row in falls))


def centre_of(shape: NeckShape, width: int, rows: int) -> int:
    """The stitches of a neck that are left at once in its middle.

    Of a curve it is what the curve takes by row 1, and at least a third, in the neck's parity: a shallow
    neck so gets a wide centre and a deep one a narrow one.

    >>> centre_of("round", 32, 12), centre_of("v", 31, 20), centre_of("square", 30, 9)
    (12, 1, 30)
    """
    if shape not in _CURVES:
        return width if shape == "square" else width % 2
    wanted = max(width * CENTRE_SHARE, 2 * _CURVES[shape](width / 2, rows)(1))
    return min(width, down_to_series(wanted, width % 2 or 2, 2))


def neck_curve(shape: NeckShape, width: int, rows: int) -> Curve:
    """Either neck edge as drawn, from the neck's first row on: stitches gone beside the centre after each row.

    >>> [neck_curve("v", 31, 30)(row) for row in (0, 10, 30)], neck_curve("square", 30, 9)(4)
    ([0.0, 5.0, 15.0], 0.0)
    """
    if shape not in _CURVES:
        return straight(0 if shape == "square" else width // 2, rows)
    return side_curve(_CURVES[shape](width / 2, rows), centre_of(shape, width, rows) / 2, rows)


def side_curve(curve: Curve, taken: float, rows: int) -> Curve:
    """What is left of a half neck's curve beyond `taken` stitches, stretched to begin on the first row.

    >>> round(side_curve(straight(10, 20), 4, 20)(10), 6)
    3.0
    """
    low, high = 0.0, float(rows)
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if curve(middle) < taken else (low, middle)
    return lambda row: max(0.0, curve(high + row * (rows - high) / rows) - taken)


def shoulder_stitches(total: int, opening: NeckPlan) -> int:
    """The stitches of each shoulder beside a neck: what is left, shared equally.

    >>> shoulder_stitches(75, NeckPlan(29, Profile(0, ())))
    23
    """
    left = total - opening.width
    if left < 0 or left % 2:
        raise ProfileImpossible(f"{total} stitches less a neck of {opening.width} don't make two equal shoulders")
    return left // 2
