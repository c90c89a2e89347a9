"""Readings of a swatch to a gauge: mean, spread, and the range in which the true figure lies.

In: counts over measured lengths. Out: the length of one stitch or row with its uncertainty. Readings that share
stitches tell one thing twice, so of overlapping ones only some are used.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from gaugewright.gauge.likely import likely_range, tape_step

READ_TO = 0.5
"""A count is read to the half stitch or row (common practice, no source)."""

UNEVEN = 0.10
"""How much stitches differ from one another where readings can't tell, as a share (common practice, no source)."""

FEWEST_FOR_OUTLIER = 4
FAR_OFF = 3.5
"""A reading is pointed out beyond so many robust deviations (the modified z score of Iglewicz and Hoaglin, 1993; from memory)."""

NORMAL = 1.96
"""A swatch is asked to be wide enough for 95 % of a normal distribution, in standard deviations: width costs little."""


@dataclass(frozen=True, slots=True)
class Reading:
    """So many stitches or rows over a length in mm; `along` names the row (of rows: the column of stitches) it was
    counted along, and `start` where it begins there, mm. Unnamed, it lies along a row of its own.
    """

    count: float
    over: float
    along: int | None = None
    start: float = 0.0

    @property
    def each(self) -> float:
        """Length of one, mm."""
        return self.over / self.count


@dataclass(frozen=True, slots=True)
class Estimate:
    """The length of one stitch or row in mm: its mean, the standard deviation of readings, the 90 % range of the mean.

    `outlier` is the place of a reading far from the others, from 0; `shared` are those left out, since they share
    stitches with others.
    """

    mean: float
    spread: float
    low: float
    high: float
    readings: int
    outlier: int | None = None
    shared: tuple[int, ...] = ()

    @property
    def share(self) -> float:
        """Half of the range, as a share of the mean: a width of so many stitches may be off by so much of itself."""
        return (self.high - self.low) / 2 / self.mean


def estimate(readings: Sequence[Reading]) -> Estimate:
    """The gauge of these readings; a reading over a longer stretch weighs more.

    >>> one = estimate([Reading(18, 205.0)])
    >>> round(one.mean, 2), round(one.low, 2), round(one.high, 2)
    (11.39, 10.9, 11.88)
    """
    if not readings or any(one.count <= 0 or one.over <= 0 for one in readings):
        raise ValueError("an estimate needs readings of more than nothing")
    shared = sharing(readings)
    used = [one for place, one in enumerate(readings) if place not in shared]
    number, counted = len(used), [one.count for one in used]
    mean = sum(one.over for one in used) / sum(counted)
    spread = math.sqrt(sum((one.each - mean) ** 2 for one in used) / (number - 1)) if number > 1 else 0.0
    low, high = likely_range(counted, [one.over for one in used], _misread(used), tape_step(one.over for one in used) / 2, UNEVEN)
    return Estimate(mean, spread, low, high, number, outlier(readings), shared)


def sharing(readings: Sequence[Reading]) -> tuple[int, ...]:
    """The readings left out so that no two of the rest share stitches, as many staying as can.

    >>> sharing([Reading(9, 100.0, 1, 0.0), Reading(9, 100.0, 1, 50.0), Reading(9, 100.0, 1, 100.0), Reading(9, 100.0, 2, 50.0)])
    (1,)
    """
    ends: dict[int, float] = {}
    left_out = []
    for place, one in sorted(enumerate(readings), key=lambda placed: placed[1].start + placed[1].over):
        if one.along is None:
            continue
        if one.start < ends.get(one.along, -math.inf):
            left_out.append(place)
        else:
            ends[one.along] = one.start + one.over
    return tuple(sorted(left_out))


def _misread(readings: Sequence[Reading]) -> float:
    """By how much a count may be off. Whole stitches that are the same over lengths that differ were counted off first."""
    counts, lengths = {one.count for one in readings}, {one.over for one in readings}
    counted_off = len(counts) == 1 and len(lengths) > 1 and all(one.count % 1 == 0 for one in readings)
    return 0.0 if counted_off else READ_TO / 2


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
