"""Stitch and row counts: from an exact number to one that the fabric allows.

In: an exact number of stitches (length x gauge) and the rule of the place it belongs to.
Out: the whole count. A repeat ("multiple of 6 plus 1"), a parity (the neck takes its body's)
and a minimum together allow only some counts; the error this makes is kept by the caller and
may be up to half of `spacing(rule)`.
"""

import math
from dataclasses import dataclass
from typing import Literal

from gaugewright.rounding import down_to_series, nearest_of_series, up_to_series
from gaugewright.vocabulary import Direction

Parity = Literal["any", "even", "odd"]

_ROUND = {"nearest": nearest_of_series, "up": up_to_series, "down": down_to_series}


class CountImpossible(ValueError):
    """No count obeys the rule; the message says why and what would."""


@dataclass(frozen=True, slots=True)
class CountRule:
    """Which counts a place allows, and which of them an exact number is taken to.

    Allowed are `multiple` x k + `plus` for k = 0, 1, 2 ... that have the parity and are at
    least `minimum`.
    """

    multiple: int = 1
    plus: int = 0
    parity: Parity = "any"
    minimum: int = 1
    direction: Direction = "nearest"


def count_for(exact: float, rule: CountRule) -> int:
    """The count that the rule gives for an exact number; between two allowed ones, halves up.

    `down` never goes below the least allowed count: a piece with no stitches is no piece.

    >>> count_for(229.5, CountRule()), count_for(38.25, CountRule(multiple=4))
    (230, 40)
    >>> count_for(127.4, CountRule(parity="even")), count_for(127.4, CountRule(parity="odd"))
    (128, 127)
    >>> count_for(161, CountRule(multiple=7, plus=4, parity="odd"))
    165
    """
    if not math.isfinite(exact):
        raise CountImpossible(f"a count cannot be made from {exact}")
    first, gap = _series(rule)
    return _ROUND[rule.direction](exact, first, gap)


def spacing(rule: CountRule) -> int:
    """The gap from one allowed count to the next; a nearest count errs by up to half of it.

    >>> spacing(CountRule()), spacing(CountRule(multiple=7, parity="odd"))
    (1, 14)
    """
    return _series(rule)[1]


def allows(rule: CountRule, count: int) -> bool:
    """Whether the rule allows this count.

    >>> allows(CountRule(multiple=6, plus=1), 13), allows(CountRule(multiple=6, plus=1), 12)
    (True, False)
    """
    first, gap = _series(rule)
    return count >= first and (count - first) % gap == 0


def _series(rule: CountRule) -> tuple[int, int]:
    """The least allowed count and the gap to the next: every rule allows one such series.

    An even multiple fixes the parity; an odd one meets a wanted parity in every other repeat.
    """
    if rule.multiple < 1 or rule.plus < 0:
        raise CountImpossible(
            f"a multiple of {rule.multiple} plus {rule.plus} allows no counts: "
            "the multiple is 1 or more, and the extra is 0 or more"
        )
    gap, first = rule.multiple, rule.plus
    if rule.parity != "any":
        if first % 2 != (rule.parity == "odd"):
            first += gap
        if first % 2 != (rule.parity == "odd"):
            raise CountImpossible(_contradiction(rule))
        gap = gap if gap % 2 == 0 else 2 * gap
    least = max(rule.minimum, 1)
    return first + gap * max(0, -((first - least) // gap)), gap


def _contradiction(rule: CountRule) -> str:
    """Says what would fit where a repeat can never have the wanted parity."""
    is_now = "odd" if rule.plus % 2 else "even"
    others = sorted({rule.plus - 1, rule.plus + 1} - {-1})
    extra = " or ".join(str(n) for n in others)
    return (
        f"a multiple of {rule.multiple} plus {rule.plus} is always {is_now}, never {rule.parity}; "
        f"a multiple of {rule.multiple} plus {extra} would fit, "
        f"so would an odd multiple, or {is_now} counts"
    )
