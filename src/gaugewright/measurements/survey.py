"""Measures the charts lack, from an open survey of real bodies.

A least-squares line on chest gives the mean body of a chest size. It is never carried on
beyond the surveyed chests: outside them the value is held at the edge, and the note says so.
"""

import math
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.measurements.model import BodyValue

DATA = Path(__file__).with_name("data")


class Bodies(NamedTuple):
    """One measure of the bodies of one chest, mm: they lie about their mean as the normal distribution says."""

    mean: float
    spread: float

    def over(self, mm: float) -> float:
        """The part of these bodies that measures more.

        >>> Bodies(300.0, 20.0).over(300.0), round(Bodies(300.0, 20.0).over(340.0), 4)
        (0.5, 0.0228)
        """
        return math.erfc((mm - self.mean) / (self.spread * math.sqrt(2))) / 2

    def with_over(self, part: float) -> float:
        """The measure in mm that no more than this part of the bodies exceeds, a hundredth of a millimetre at the most over it.

        >>> bodies = Bodies(300.0, 20.0)
        >>> round(bodies.with_over(0.5), 1), bodies.over(bodies.with_over(0.2)) <= 0.2
        (300.0, True)
        """
        low, high = self.mean - 9 * self.spread, self.mean + 9 * self.spread
        while high - low > 0.01:
            middle = (low + high) / 2
            low, high = (middle, high) if self.over(middle) > part else (low, middle)
        return high


class Line(NamedTuple):
    """A measure as a straight line on chest, in cm, with the range of chests it was fitted to."""

    intercept: float
    slope: float
    spread: float
    chest_min: float
    chest_max: float
    factor: float
    offset: float
    how: str
    source: str

    def at(self, chest_mm: float) -> float:
        """The measure in mm at a chest in mm, held at the edges of the surveyed range.

        >>> wrist = Line(10.0, 0.05, 0.7, 70.0, 120.0, 1.0, 0.0, "", "")
        >>> wrist.at(900.0), wrist.at(1500.0) == wrist.at(1200.0)
        (145.0, True)
        """
        chest = min(max(chest_mm / 10, self.chest_min), self.chest_max)
        return self.as_charted((self.intercept + self.slope * chest) * 10)

    def as_charted(self, mm: float) -> float:
        """A measure as the survey took it, brought to where charts measure it; mm."""
        return mm * self.factor + self.offset * 10

    def bodies(self, chest_mm: float) -> Bodies:
        """The bodies of one chest."""
        return Bodies(self.at(chest_mm), self.spread * 10)


@cache
def lines(table: str) -> Mapping[str, Line]:
    """The survey's lines for women or men, by measure; none for children and babies."""
    return {
        row["measure"]: Line(
            intercept=float(row["intercept_cm"]),
            slope=float(row["slope"]),
            spread=float(row["resid_sd_cm"]) * float(row["factor"]),
            chest_min=float(row["chest_min_cm"]),
            chest_max=float(row["chest_max_cm"]),
            factor=float(row["factor"]),
            offset=float(row["offset_cm"]),
            how=row["how"],
            source=row["source"],
        )
        for row in read_table(DATA / "survey.csv")
        if row["table"] == table
    }


def surveyed(table: str, girth: BodyValue) -> dict[str, BodyValue]:
    """Every measure the survey knows for a bust or chest, read at the same place in its range."""
    return {measure: _value(line, girth) for measure, line in lines(table).items()}


def _value(line: Line, girth: BodyValue) -> BodyValue:
    ends = sorted((line.at(girth.low_mm), line.at(girth.high_mm)))
    return BodyValue(
        mm=line.at(girth.mm),
        low_mm=ends[0],
        high_mm=ends[1],
        source=line.source,
        confirmed=True,
        note="; ".join(part for part in (line.how, _held(line, girth.mm)) if part),
        spread_mm=line.spread * 10,
    )


def _held(line: Line, chest_mm: float) -> str:
    """Says so when a chest lies outside the survey."""
    if chest_mm / 10 > line.chest_max:
        return f"held at a chest of {line.chest_max:g} cm, the largest surveyed"
    if chest_mm / 10 < line.chest_min:
        return f"held at a chest of {line.chest_min:g} cm, the smallest surveyed"
    return ""
