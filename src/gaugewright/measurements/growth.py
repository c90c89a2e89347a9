"""How bodies grow with the bust: what a measure can be expected to gain per 10 cm, from open surveys.

Large bodies are not small ones blown up: girths of trunk grow with the chest, while neck, shoulders,
wrist and head hardly do. The rates are those of the mean body of a chest; single bodies differ from it
by `spread`.
"""

import math
from collections.abc import Mapping
from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.measurements.survey import DATA

NECK_ACROSS = 1 / math.pi
"""A neck is about round, so that its width grows by its girth's share of pi."""


class Growth(NamedTuple):
    """A measure's gain in mm per mm of bust, its standard error, and the bodies' spread in mm at one bust.

    Nobody with more than `surveyed` mm of bust was measured: beyond that the rate is carried on.
    """

    rate: float
    error: float
    spread: float
    surveyed: float
    how: str
    source: str

    def over(self, bust: float) -> float:
        """What a body gains with so many mm of bust.

        >>> Growth(0.156, 0.006, 22.2, 1266.0, "", "").over(200.0)
        31.2
        """
        return self.rate * bust

    def times(self, share: float) -> "Growth":
        """The same for a share of the measure."""
        return self._replace(rate=self.rate * share, error=self.error * share, spread=self.spread * share)


@cache
def growth(table: str) -> Mapping[str, Growth]:
    """The rates of women or men by measure, `neck_width` among them; none for children and babies."""
    found = {
        row["measure"]: Growth(
            float(row["cm_per_10"]) / 10, float(row["se_cm_per_10"]) / 10, float(row["spread_cm"]) * 10,
            float(row["chest_max_cm"]) * 10, row["how"], row["source"],
        )
        for row in read_table(DATA / "growth.csv")
        if row["table"] == table
    }
    return {**found, "neck_width": found["neck"].times(NECK_ACROSS)} if found else found
