"""How near another yarn's fineness must come, for its amounts and cloth to be much the same."""

from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.trade.stitches import DATA
from gaugewright.trade.yarn_weights import category_of, yarn_weights


class Nearness(NamedTuple):
    """Metres to 100 g from least to most, the share they may differ by, and the source of that share."""

    low: float
    high: float
    share: float
    source: str


def metres_per_100g(mass: float, length: float) -> float:
    """From a ball's grams and mm; the inverse of tex.

    >>> round(metres_per_100g(100, 58_000), 6)
    58.0
    """
    return length / 1000 / mass * 100


def near_enough(metres: float, category: int | None) -> Nearness:
    """What comes near enough to a yarn of so many metres to 100 g; without its category, by the one its metres are in.

    >>> near = near_enough(58, 6)
    >>> round(near.low, 1), round(near.high, 1)
    (49.3, 66.7)
    """
    share, source = _shares()[_category(metres) if category is None else category]
    return Nearness(metres * (1 - share), metres * (1 + share), share, source)


def _category(metres: float) -> int:
    """The category that holds these metres, or the one whose range they are nearest to."""
    found = category_of(metres)
    if found is not None:
        return found
    return min(yarn_weights(), key=lambda one: min(abs((one.metres_per_100g[0] or 0) - metres), abs(one.metres_per_100g[1] - metres))).category


@cache
def _shares() -> dict[int, tuple[float, str]]:
    return {int(row["category"]): (int(row["percent"]) / 100, row["publication"]) for row in read_table(DATA / "substitution.csv")}
