"""How much yarn a stitch takes by published measurements, which contradict one another by a factor of two.

A fabric's yarn is told as its length per area times the width of a stitch, a number without unit: a published rule
(yards = stitches to the inch x length x width / 6) says that this is the same in thick yarn as in thin. So one
swatch in one yarn speaks for others, as far as any does; what a stitch takes is that number times the row's height.
"""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.trade.stitches import DATA
from gaugewright.trade.yarn_weights import yarn_weight

INCH = 25.4
FOUR_INCHES = 101.6


class Consumption(NamedTuple):
    """Yarn of a stitch in heights of its row: the least and the most that is published, and who measured either."""

    low: float
    high: float
    low_source: str
    high_source: str


@cache
def consumption(stitch: str) -> Consumption | None:
    """The published range for a stitch; None where nobody measured it.

    >>> found = consumption("hdc")
    >>> round(found.low, 1), round(found.high, 1)
    (5.4, 11.7)
    """
    ends = tuple(_of_stitch(stitch))
    if not ends:
        return None
    least, most = min(ends, key=lambda one: one.low), max(ends, key=lambda one: one.high)
    return Consumption(least.low, most.high, least.low_source, most.high_source)


def _of_stitch(stitch: str) -> Iterator[Consumption]:
    """What each publication says of a stitch."""
    for row in read_table(DATA / "consumption.csv"):
        if row["stitch"] != stitch:
            continue
        if row["grams"]:
            yield _weighed(row)
        elif row["inches_per_sq_in"]:
            yield _unravelled(row)
        else:
            yield from _reworked(row)


def _weighed(row: Mapping[str, str]) -> Consumption:
    """A swatch of counted stitches, weighed: its yarn's length lies within what its category holds."""
    least, most = yarn_weight(int(row["category"])).metres_per_100g
    assert least is not None  # no swatch of the thickest yarns is published
    height = float(row["height_in"]) * INCH / float(row["rows"])
    grams = float(row["grams"]) / (float(row["stitches"]) * float(row["rows"]))
    low, high = (grams * metres * 10 / height for metres in (least, most))
    return Consumption(low, high, row["publication"], row["publication"])


def _unravelled(row: Mapping[str, str]) -> Consumption:
    """Length per area as measured; its stitches are as wide as its category's may be."""
    few, many = yarn_weight(int(row["category"])).stitches
    assert few is not None
    per_area = float(row["inches_per_sq_in"]) / INCH
    return Consumption(per_area * FOUR_INCHES / many, per_area * FOUR_INCHES / few, row["publication"], row["publication"])


def _reworked(row: Mapping[str, str]) -> Iterator[Consumption]:
    """The same yarn at the same width: as much less per area as the piece is higher, of each figure of the other stitch."""
    share = float(row["against_height_in"]) / float(row["height_in"])
    for one in _of_stitch(row["against"]):
        low, high = (f"{source} with {row['publication']}" for source in (one.low_source, one.high_source))
        yield Consumption(one.low * share, one.high * share, low, high)
