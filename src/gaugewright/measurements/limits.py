"""Between which eases a girth fits: less is tight, more is loose.

What is tight is a matter of the body; how loose a garment hangs is the design's own. So a size's upper limit
rises with the ease it is meant to have, and only bodies much slimmer than its own find it loose.
"""

from collections.abc import Mapping
from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.measurements.model import BodyValue
from gaugewright.measurements.survey import DATA
from gaugewright.tolerances import BUST_ABOVE, BUST_BELOW, LOOSE_SPREADS


class Limits(NamedTuple):
    """The least and the most ease of a measure, mm."""

    least: float
    most: float
    source: str

    def allow(self, ease: float) -> bool:
        """Whether an ease in mm lies within."""
        return self.least <= ease <= self.most

    def meant(self, intended: float, spread: float) -> "Limits":
        """The limits of a size meant to have so much ease, among bodies of such a spread; mm.

        >>> usual = Limits(0.0, 120.0, "")
        >>> usual.meant(270.0, 20.0).most, usual.meant(50.0, 20.0).most
        (310.0, 120.0)
        """
        return self._replace(most=max(self.most, intended + LOOSE_SPREADS * spread))


def bust_limits(intended: float) -> Limits:
    """The ease at bust or chest that passes for what a size intends, mm."""
    return Limits(intended - BUST_BELOW, intended + BUST_ABOVE, "common practice, no source")


def intended_ease(finished: float, body: BodyValue) -> float:
    """The ease of a size on the middle of the bodies it is made for, mm, whatever end of them its formulas read."""
    return finished - (body.low_mm + body.high_mm) / 2


@cache
def limits() -> Mapping[str, Limits]:
    """The usual limits by body measure."""
    return {row["measure"]: Limits(float(row["least_cm"]) * 10, float(row["most_cm"]) * 10, row["source"]) for row in read_table(DATA / "fit_limits.csv")}
