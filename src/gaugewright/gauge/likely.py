"""The range in which the true length of a stitch lies, from readings that are rounded.

In: counts and the lengths they measure, and by how much either may be misread. Out: the middle 90 % of the likely
values. Stitches differ among themselves by a share that isn't known, so every share in `SHARES` is given its
likelihood; a reading is a stretch of unequal stitches plus what rounding may have moved it by. Rounding that moves all
readings alike can't hide in readings that agree, which a t range would take for certainty.
"""

import math
from collections import Counter
from collections.abc import Iterable, Sequence

CONFIDENCE = 0.90

SHARES = tuple(0.01 * 50 ** (step / 8) for step in range(9))
"""How much stitches may differ from one another: from 1 % to 50 %, in even ratios."""

LEAN = 0.3
"""The weight of a share is its power of so much. Chosen so that the range holds the truth as often as it says in
simulated swatches (`tests/gauge/test_swatch_simulation.py`)."""

TAPE_STEPS = (6.35, 5.0, 3.175, 1.5875, 1.0)
"""To what a tape is read, mm: quarters, eighths and sixteenths of an inch, half centimetres, millimetres."""

POINTS = 41

FEW = 4
"""With fewer readings the range has long ends."""

_Read = tuple[float, float, float, float, int]
"""A reading against the mean of all; its two roundings and the deviation of its mean for a share of 1, as shares of it; how often it was read."""


def tape_step(lengths: Iterable[float]) -> float:
    """The coarsest step that all these lengths are whole multiples of; otherwise the finest.

    >>> tape_step([205.0, 200.0]), tape_step([205.0, 203.0]), tape_step([101.6, 95.25])
    (5.0, 1.0, 6.35)
    """
    some = list(lengths)
    fits = (step for step in TAPE_STEPS if all(abs(one / step - round(one / step)) * step < 0.05 for one in some))
    return next(fits, TAPE_STEPS[-1])


def likely_range(counts: Sequence[float], lengths: Sequence[float], misread: float, mismeasured: float, uneven: float) -> tuple[float, float]:
    """Low and high end, mm, for the mean length of a stitch. A count may be off by `misread` stitches and a length by
    `mismeasured` mm, to either side. One reading can't tell how unequal stitches are: they then differ by `uneven`.
    """
    mean = sum(lengths) / sum(counts)
    shares = SHARES if len(counts) > 1 else (uneven,)
    read = [
        (length / count / mean, misread / count, mismeasured / length, 1 / math.sqrt(count), times)
        for (count, length), times in Counter(zip(counts, lengths, strict=True)).items()
    ]
    points = _points(read, len(counts), uneven)
    likelihoods = [[_log_likelihood(point, share, read) + LEAN * math.log(share) for share in shares] for point in points]
    best = max(map(max, likelihoods))
    weights = [sum(math.exp(one - best) for one in row) for row in likelihoods]
    low, high = ((1 - CONFIDENCE) / 2, (1 + CONFIDENCE) / 2)
    return mean * _quantile(points, weights, low), mean * _quantile(points, weights, high)


def _points(read: Sequence[_Read], number: int, uneven: float) -> list[float]:
    """Even points round 1, as far out as the mean may be."""
    spread = math.sqrt(sum(times * (each - 1) ** 2 for each, *_, times in read) / max(1, number - 1))
    rounding = max(one[1] + one[2] for one in read)
    widest = max(spread, rounding, uneven * read[0][3] if number == 1 else 0.0)
    reach = min(0.6, (14.0 if number < FEW else 8.0) * widest / math.sqrt(number))
    return [1 + reach * (2 * step / (POINTS - 1) - 1) for step in range(POINTS)]


def _log_likelihood(point: float, share: float, read: Sequence[_Read]) -> float:
    return sum(times * math.log(max(_density(each - point, share * of_one, miscount, mismeasure), 1e-300)) for each, miscount, mismeasure, of_one, times in read)


def _density(apart: float, deviation: float, first: float, second: float) -> float:
    """Density of a normal deviation plus two errors spread evenly over +-first and +-second, either of which may be 0."""
    if not first or not second:
        wide = max(first, second)
        return (_below((apart + wide) / deviation) - _below((apart - wide) / deviation)) / (2 * wide)
    corners = ((apart + first + second, 1), (apart + first - second, -1), (apart - first + second, -1), (apart - first - second, 1))
    return sum(sign * _area_below(at, deviation) for at, sign in corners) / (4 * first * second)


def _below(z: float) -> float:
    """The share of a standard normal distribution below z."""
    return math.erfc(-z / math.sqrt(2)) / 2


def _area_below(at: float, deviation: float) -> float:
    """The integral of a normal distribution's share below, up to `at`."""
    z = at / deviation
    return at * _below(z) + deviation * math.exp(-z * z / 2) / math.sqrt(2 * math.pi)


def _quantile(points: Sequence[float], weights: Sequence[float], share: float) -> float:
    """Where so much of the weight lies below, between the points."""
    wanted, so_far = share * sum(weights), 0.0
    step = points[1] - points[0]
    for point, weight in zip(points, weights, strict=True):
        if so_far + weight >= wanted:
            return point + step * ((wanted - so_far) / weight - 0.5)
        so_far += weight
    raise AssertionError("a share of the weight lies below its last point")
