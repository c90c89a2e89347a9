"""Between which eases a girth fits: less is tight, more is loose."""

from collections.abc import Mapping
from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.measurements.survey import DATA


class Limits(NamedTuple):
    """The least and the most ease of a measure, mm."""

    least: float
    most: float
    source: str


@cache
def limits() -> Mapping[str, Limits]:
    """The usual limits by body measure."""
    return {row["measure"]: Limits(float(row["least_cm"]) * 10, float(row["most_cm"]) * 10, row["source"]) for row in read_table(DATA / "fit_limits.csv")}
