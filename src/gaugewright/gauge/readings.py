"""Readings of a swatch to a gauge: mean, spread, and the range in which the true figure lies.

In: counts over measured lengths. Out: the length of one stitch or row with its uncertainty. A count is read to
half a stitch at best, and stitches differ among themselves; both show in how far readings differ from one another.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from statistics import median

from gaugewright.datafiles import read_table

DATA = Path(__file__).with_name("data")

READ_TO = 0.5
"""A count may be off by half a stitch or row, both ends taken together (common practice, no source)."""

UNEVEN = 0.10
"""How much stitches differ from one another where readings can't tell, as a share (common practice, no source)."""

FEWEST_FOR_OUTLIER = 4
FAR_OFF = 3.5
"""A reading is pointed out beyond so many robust deviations (the modified z score of Iglewicz and Hoaglin, 1993; from memory)."""

NORMAL = 1.96
"""The share of 95 % of a normal distribution, in standard deviations."""


@dataclass(frozen=True, slots=True)
class Reading:
    """So many stitches or rows over a length in mm."""

    count: float
    over: float

    @property
    def each(self) -> float:
        """Length of one, mm."""
        return self.over / self.count


@dataclass(frozen=True, slots=True)
class Estimate:
    """The length of one stitch or row in mm: its mean, the standard deviation of readings, the 95 % range of the mean.

    `outlier` is the place of a reading far from the others, from 0.
    """

    mean: float
    spread: float
    low: float
    high: float
    readings: int
    outlier: int | None = None

    @property
    def share(self) -> float:
        """Half of the range, as a share of the mean: a width of so many stitches may be off by so much of itself."""
        return (self.high - self.low) / 2 / self.mean


def estimate(readings: Sequence[Reading]) -> Estimate:
    """The gauge of these readings; a reading over a longer stretch weighs more.

    With one reading the range is what half a stitch misread makes; with more it is the t range of their mean, and
    never narrower than misreading allows.

    >>> one = estimate([Reading(18, 205.0)])
    >>> round(one.mean, 2), round(one.low, 2), round(one.high, 2)
    (11.39, 11.07, 11.71)
    """
    if not readings or any(one.count <= 0 or one.over <= 0 for one in readings):
        raise ValueError("an estimate needs readings of more than nothing")
    number = len(readings)
    mean = sum(one.over for one in readings) / sum(one.count for one in readings)
    counted = sum(one.count for one in readings) / number
    misread = mean * READ_TO / counted / math.sqrt(number)
    spread = math.sqrt(sum((one.each - mean) ** 2 for one in readings) / (number - 1)) if number > 1 else 0.0
    half = max(misread, student_t(number - 1) * spread / math.sqrt(number)) if number > 1 else misread
    return Estimate(mean, spread, mean - half, mean + half, number, outlier(readings))


def outlier(readings: Sequence[Reading]) -> int | None:
    """The reading farthest from the others, if it is so far off that it was misread rather than uneven.

    >>> outlier([Reading(18, 205), Reading(18, 204), Reading(18, 206), Reading(16, 205), Reading(18, 205.5)])
    3
    """
    if len(readings) < FEWEST_FOR_OUTLIER:
        return None
    each = [one.each for one in readings]
    middle = median(each)
    # Readings that agree to the hair would make any other an outlier: a quarter of a stitch is always allowed.
    allowed = middle * READ_TO / 2 / (sum(one.count for one in readings) / len(readings))
    usual = max(1.4826 * median(abs(value - middle) for value in each), allowed)
    far = max(range(len(each)), key=lambda place: abs(each[place] - middle))
    return far if abs(each[far] - middle) > FAR_OFF * usual else None


@cache
def _table() -> tuple[float, ...]:
    return tuple(float(row["t"]) for row in read_table(DATA / "student_t.csv"))


def student_t(freedom: int) -> float:
    """Student's t for a 95 % range, by degrees of freedom; beyond the table it comes down to the normal's as 1 / freedom.

    >>> student_t(1), student_t(4), round(student_t(1000), 3)
    (12.706, 2.776, 1.962)
    """
    table = _table()
    if freedom <= len(table):
        return table[freedom - 1]
    return NORMAL + (table[-1] - NORMAL) * len(table) / freedom


def width_needed(stitch: float, allowed: float, uneven: float = UNEVEN) -> float:
    """How wide a swatch must be, mm, so that its gauge is known within a share (95 %): `stitch` is one stitch's width.

    Two things blur a count over a width: half a stitch misread, which weighs 1 / n, and stitches that differ among
    themselves (`uneven`, their standard deviation as a share), whose mean over n differs by 1 / sqrt(n).

    >>> round(width_needed(25.0, 0.04) / 10), round(width_needed(5.0, 0.04) / 10)
    (76, 15)
    """
    if allowed <= 0:
        raise ValueError("a swatch of no width is known to nothing; allow more than 0")
    misread, differing = NORMAL * READ_TO / math.sqrt(3), NORMAL * uneven
    # allowed^2 = misread^2 / n^2 + differing^2 / n, solved for n
    count = (differing**2 + math.sqrt(differing**4 + 4 * allowed**2 * misread**2)) / (2 * allowed**2)
    return max(count, 1.0) * stitch
