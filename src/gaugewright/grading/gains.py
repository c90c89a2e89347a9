"""How many stitches a slanting edge gains from row to row: a small ratio, worked as a short cycle of rows.

Where rows meet an edge at 45 degrees, each row is a row height longer at that end than the row before. As many
stitches as a row is high keep the cloth flat; told as p stitches in q rows they make a cycle that a maker can
hold in mind. The module knows no design.
"""

import math
from itertools import pairwise

from gaugewright.gauge.model import Gauge
from gaugewright.grading.ratio import Ratio
from gaugewright.rounding import half_up
from gaugewright.tolerances import SEAM_SHARE

LONGEST_CYCLE = 6
"""Rows of a cycle: four are soon known by heart; five and six are used only where no shorter one is within
3 % of flat, as single crochet's five in six rows is (common practice, no source)."""


def exact_gain(gauge: Gauge) -> float:
    """Stitches, not rounded, as wide as a row is high.

    >>> f"{exact_gain(Gauge(stitches=13, width=100, rows=10, height=100)):.2f}"
    '1.30'
    """
    return gauge.row_height / gauge.stitch_width


def gain_ratio(exact: float) -> Ratio:
    """Stitches gained to rows: the shortest cycle within 3 % of the exact gain, else the nearest one there is.

    >>> gain_ratio(1.3), gain_ratio(2.03), gain_ratio(0.85)
    (Ratio(first=4, second=3), Ratio(first=2, second=1), Ratio(first=5, second=6))
    """
    found = [Ratio(max(1, half_up(exact * rows)), rows) for rows in range(1, LONGEST_CYCLE + 1)]
    near = [ratio for ratio in found if abs(ratio.value / exact - 1) <= SEAM_SHARE]
    return near[0] if near else min(found, key=lambda ratio: abs(ratio.value - exact))


def gained_after(rows: int, ratio: Ratio, shift: int) -> int:
    """Stitches gained in so many rows, the cycle begun `shift` steps of a row's share later."""
    return -((shift - rows * ratio.first) // ratio.second)


def cycle_of(ratio: Ratio) -> tuple[int, ...]:
    """Gains of the rows of a cycle, row 1 first: nearest to an even slope, from a first row that holds its stitches,
    and never more than doubling a row.

    >>> cycle_of(Ratio(4, 3)), cycle_of(Ratio(2, 1)), cycle_of(Ratio(5, 6))
    ((1, 1, 2), (2,), (1, 1, 0, 1, 1, 1))
    """
    shifts = sorted(range(ratio.second), key=lambda shift: (abs(2 * shift - ratio.second), shift))
    for shift in shifts:
        after = [gained_after(rows, ratio, shift) for rows in range(ratio.second + 2)]
        if after[1] and all(high <= 2 * low for low, high in pairwise(after[1:])):
            break
    return tuple(high - low for low, high in pairwise(after[: ratio.second + 1]))


def rows_of_width(width: float, gauge: Gauge) -> int:
    """Rows of a triangle from the middle of its long edge: each takes that edge a row height along both ways at
    45 degrees.

    >>> rows_of_width(1400, Gauge(stitches=10, width=100, rows=10, height=100))
    49
    """
    return half_up(width / width_of_rows(1, gauge))


def width_of_rows(rows: int, gauge: Gauge) -> float:
    """The long edge after so many rows, mm."""
    return 2 * math.sqrt(2) * rows * gauge.row_height
