"""By which size a body is dressed."""

from collections.abc import Iterable

from gaugewright.measurements.model import BodyValue
from gaugewright.rounding import half_up


def nearest_size(bodies: Iterable[tuple[str, BodyValue]], mm: float) -> str:
    """The size whose range of bodies holds this girth in mm, else the one whose range is nearest, the larger of two."""
    return min(reversed(tuple(bodies)), key=lambda one: half_up(outside(one[1], mm)))[0]


def outside(value: BodyValue, mm: float) -> float:
    """How far a body is from the range that a size is made for, mm."""
    return max(value.low_mm - mm, mm - value.high_mm, 0.0)
