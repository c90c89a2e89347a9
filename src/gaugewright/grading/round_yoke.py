"""A circular yoke in one size: the counts between its rounds of increases, where these stand, and its plan.

In: stitches at the neck and below the arm, rounds, shares of the depth. Out: whole numbers. The module knows no design.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from gaugewright.gauge.counts import CountRule, count_for
from gaugewright.grading.cloth import Cloth
from gaugewright.grading.divide_start import Division
from gaugewright.grading.spread import Spread, SpreadImpossible, ramp
from gaugewright.rounding import half_up, up

WIDENED, WIDENED_AT_MOST = 2 / 3, 9 / 10
"""Increase rounds stand in the upper two thirds of the depth unless stated: the yoke has its whole width where it
goes over the shoulders and upper arms (common practice; the published percentages have it at half the depth).
Where that is more than lies flat they go on further down, but never to the underarm."""

LONGEST_PLAIN = 65.0
"""Millimetres from one increase round to the next: a longer tube stands off the shoulder instead of lying on it
(the published yoke of 10 in has 2.5 in)."""

MOST_ROUNDS = 99
"""No yoke has more rounds of increases; where these don't reach, its counts can't be."""


@dataclass(frozen=True, slots=True)
class RoundYokePlan:
    """A yoke's rounds: the spread of each that increases, None for the plain ones, and the count after each.
    `centred` where rounds begin in the middle of the back."""

    cloth: Cloth
    colour: str
    rows: int
    stitches: int
    division: Division
    spreads: tuple[Spread | None, ...]
    counts: tuple[int, ...]
    centred: bool = False

    @property
    def end(self) -> int:
        """Stitches before the yoke is divided."""
        return self.counts[-1]

    @property
    def sign(self) -> int:
        """A yoke worked from the neck down widens."""
        return 1

    def increase_rows(self) -> tuple[int, ...]:
        """The rounds of the section, from 1, that increase."""
        return tuple(row for row, spread in enumerate(self.spreads, start=1) if spread is not None)


def stage_counts(neck: int, end: int, rounds: int, rule: CountRule = CountRule()) -> tuple[int, ...]:
    """Counts after each of some increase rounds that lead from the neck to the end, each a count that the fabric allows.

    Each round takes the same share, so that none gathers more than another. The published percentages
    (200 stitches, three rounds, worked the other way round) come out exactly:

    >>> stage_counts(80, 268, 3)
    (120, 179, 268)
    >>> stage_counts(60, 144, 3, CountRule(multiple=6))
    (78, 108, 144)
    """
    *between, _ = ramp(neck, end, rounds)
    return (*(count_for(count, rule) for count in between), end)


def is_gentle(neck: int, counts: Sequence[int]) -> bool:
    """Whether each round widens, by no more than one increase in every two stitches.

    >>> is_gentle(80, (120, 179, 268)), is_gentle(80, (146, 268)), is_gentle(80, (80, 100))
    (True, False, False)
    """
    return all(0 < after - before <= before // 2 for before, after in zip((neck, *counts), counts, strict=False))


def fewest_rounds(neck: int, end: int, rule: CountRule = CountRule()) -> int | None:
    """The fewest increase rounds that lead gently from one count to another; None where none do.

    >>> fewest_rounds(80, 268), fewest_rounds(80, 120), fewest_rounds(80, 80)
    (3, 1, None)
    """
    for rounds in range(1, MOST_ROUNDS + 1):
        try:
            if is_gentle(neck, stage_counts(neck, end, rounds, rule)):
                return rounds
        except SpreadImpossible:
            continue
    return None


def widened_share(growth: float, depth: float) -> float:
    """The share of the depth over which a yoke widens so that it lies over the shoulders; `growth` of its girth in mm.

    A flat disc grows by 2 pi times its depth; a yoke that grows more would stand in waves.

    >>> [f"{widened_share(growth, 220.0):.3f}" for growth in (750.0, 1100.0, 1800.0)]
    ['0.667', '0.796', '0.900']
    """
    return min(WIDENED_AT_MOST, max(WIDENED, growth / (2 * math.pi * depth)))


def rounds_over(length: float) -> int:
    """Increase rounds for which no stretch of plain ones between them is too long; `length` from the first to the last in mm.

    >>> rounds_over(130.0), rounds_over(169.0)
    (3, 4)
    """
    return up(length / LONGEST_PLAIN) + 1


def even_rows(rows: int, lead: int, rounds: int, share: float) -> tuple[int, ...]:
    """The rounds, from 1, that increase at even intervals: the first that can, then down to a share of the depth.

    A single one stands in the middle of that. No two fall on one round, so the last may fall outside a shallow yoke.

    >>> even_rows(22, 0, 4, WIDENED), even_rows(22, 1, 1, WIDENED), even_rows(3, 0, 4, WIDENED)
    ((1, 6, 10, 15), (9,), (1, 2, 3, 4))
    """
    first = lead + 1
    reach = max(half_up(share * rows) - first, rounds - 1)
    if rounds == 1:
        return (first + half_up(reach / 2),)
    return tuple(first + half_up(reach * number / (rounds - 1)) for number in range(rounds))


def rows_at(rows: int, lead: int, shares: Sequence[float]) -> tuple[int, ...]:
    """The rounds, from 1, that increase at shares of the depth: as many rounds lie below each as its share leaves, to the nearest.

    No two fall on one round, and none on the `lead` ones worked even, so the last may fall outside a shallow yoke.

    >>> [tuple(rows - row for row in rows_at(rows, 0, (0.25, 0.5))) for rows in (66, 70, 75)]
    [(50, 33), (53, 35), (56, 38)]
    >>> rows_at(6, 1, (0.0, 0.1, 0.5))
    (2, 3, 4)
    """
    found: list[int] = []
    for share in shares:
        below = half_up((1 - share) * rows)
        found.append(max(rows - below, found[-1] + 1 if found else lead + 1))
    return tuple(found)
