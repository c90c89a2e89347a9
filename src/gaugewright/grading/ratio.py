"""Two edges of different counts brought together: picked-up stitches and seams.

In: the exact ratio of two gauges, or two counts. Out: small whole numbers that a maker can
hold in mind, "2 stitches to every 3 rows", and, for two counts, parts that add up exactly.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from gaugewright.rounding import half_up
from gaugewright.tolerances import SEAM_SHARE


@dataclass(frozen=True, slots=True)
class Ratio:
    """`first` of the one edge to every `second` of the other."""

    first: int
    second: int

    @property
    def value(self) -> float:
        """The ratio as a number."""
        return self.first / self.second


@dataclass(frozen=True, slots=True)
class Part:
    """`first` of the one edge to `second` of the other, `times` times."""

    first: int
    second: int
    times: int


def best_ratio(exact: float, largest: int = 8, within: float = SEAM_SHARE) -> Ratio:
    """The least small numbers (by their sum) within a share of the exact ratio.

    Without any of them within it, the nearest that has no number over `largest`; beyond
    `largest` to 1 the nearest whole number to 1.

    >>> best_ratio(142 / 216), best_ratio(5 / 7), best_ratio(9 / 7)
    (Ratio(first=2, second=3), Ratio(first=5, second=7), Ratio(first=5, second=4))
    """
    if not 0 < exact < float("inf"):
        raise ValueError(f"no ratio of whole numbers for {exact}")
    if exact >= largest:
        return Ratio(half_up(exact), 1)
    if 1 / exact >= largest:
        return Ratio(1, half_up(1 / exact))
    errors = [(abs(r.value / exact - 1), r.first + r.second, r) for r in _small(largest)]
    fitting = [(total, error, r) for error, total, r in errors if error <= within + 1e-12]
    chosen = fitting or errors
    return min(chosen, key=lambda e: e[:2])[2]


def picked_up(rows: int, ratio: Ratio) -> int:
    """Stitches picked up along so many rows, at least one.

    >>> picked_up(120, Ratio(2, 3)), picked_up(1, Ratio(1, 3))
    (80, 1)
    """
    return max(1, half_up(rows * ratio.first / ratio.second)) if rows > 0 else 0


def sewing_ratio(first: int, second: int, largest: int = 5) -> Ratio:
    """The ratio to name for a seam of two counts: "3 rows to 2 stitches".

    >>> sewing_ratio(71, 48)
    Ratio(first=3, second=2)
    """
    _check_counts(first, second)
    return best_ratio(first / second, largest)


def parts(first: int, second: int, largest: int = 5) -> tuple[Part, ...]:
    """Two counts shared out exactly in at most two small ratios, the more frequent one first.

    The two are neighbours in the order of all fractions that have no number over `largest`;
    between such neighbours every ratio is made of whole numbers of both. The parts of the rarer
    one are spread among the others.

    >>> parts(10, 13)
    (Part(first=3, second=4, times=2), Part(first=4, second=5, times=1))
    >>> parts(72, 48)
    (Part(first=3, second=2, times=24),)
    """
    _check_counts(first, second)
    below, above = _neighbours(first, second, largest)
    times_below = second * above[0] - first * above[1]
    times_above = first * below[1] - second * below[0]
    found = (Part(*below, times_below), Part(*above, times_above))
    return tuple(sorted((p for p in found if p.times), key=lambda p: -p.times))


def _neighbours(
    first: int, second: int, largest: int
) -> tuple[tuple[int, int], tuple[int, int]]:
    """The nearest small fractions on both sides, by halving the gap with mediants."""
    below, above = (0, 1), (1, 0)
    while True:
        middle = (below[0] + above[0], below[1] + above[1])
        unusable = below[0] == 0 or above[1] == 0
        if max(middle) > largest and not unusable:
            return below, above
        if first * middle[1] >= second * middle[0]:
            below = middle
        else:
            above = middle
        if first * below[1] == second * below[0] and above[1] and below[0]:
            return below, above


def _small(largest: int) -> Iterator[Ratio]:
    """All ratios in lowest terms with no number over `largest`."""
    for first in range(1, largest + 1):
        for second in range(1, largest + 1):
            if Fraction(first, second).numerator == first:
                yield Ratio(first, second)


def _check_counts(first: int, second: int) -> None:
    if first < 1 or second < 1:
        raise ValueError(f"{first} and {second} cannot be sewn: both edges need a stitch or row")
