"""Every rounding rule, named, with its reason. The built-in `round` is never used on a count.

All rules work on a float that stands for an exact value; `SNAP` absorbs the last bits of a
product such as 0.1 * 3, so that a length which was made from whole stitches comes back to
exactly those stitches.
"""

import math
from decimal import ROUND_HALF_UP, Decimal

SNAP = 1e-9


def half_up(value: float) -> int:
    """Nearest whole number, halves up: the trade's rule (Quince & Co., 2015: 229.5 sts -> 230).

    >>> half_up(229.5), half_up(2.4), half_up(0.5), half_up(-0.5)
    (230, 2, 1, 0)
    """
    return math.floor(value + 0.5 + SNAP)


def up(value: float) -> int:
    """Next whole number up: balls to buy, an edge that may not be shorter than its opening.

    >>> up(2.0000000001), up(2.1)
    (2, 3)
    """
    return math.ceil(value - SNAP)


def down(value: float) -> int:
    """Next whole number down: what fits into a given room.

    >>> down(2.9999999999), down(2.1)
    (3, 2)
    """
    return math.floor(value + SNAP)


def to_step(value: float, step: float) -> float:
    """Nearest multiple of a step, halves up: cm to 0.5, inches to 1/4.

    >>> to_step(41.27, 0.5), to_step(16.13, 0.25)
    (41.5, 16.25)
    """
    return half_up(value / step) * step


def up_to_step(value: float, step: float) -> float:
    """Next multiple of a step upwards.

    >>> up_to_step(41.1, 0.5)
    41.5
    """
    return up(value / step) * step


def down_to_step(value: float, step: float) -> float:
    """Next multiple of a step downwards: the lower end of a range, which must hold what it stands for.

    >>> down_to_step(41.9, 0.5)
    41.5
    """
    return down(value / step) * step


def nearest_of_series(value: float, first: int, gap: int) -> int:
    """Nearest of `first`, `first + gap`, ... (never below `first`), halves up: a stitch
    repeat or a parity allows only some counts, and the wearer notices the nearest least.

    >>> nearest_of_series(38.25, first=4, gap=4), nearest_of_series(38.0, 4, 4)
    (40, 40)
    """
    return first + gap * max(0, half_up((value - first) / gap))


def up_to_series(value: float, first: int, gap: int) -> int:
    """Least of `first`, `first + gap`, ... that is not under the value: an opening that must
    go over a head or a hand.

    >>> up_to_series(101.2, first=2, gap=2), up_to_series(102.0, 2, 2)
    (102, 102)
    """
    return first + gap * max(0, up((value - first) / gap))


def down_to_series(value: float, first: int, gap: int) -> int:
    """Largest of `first`, `first + gap`, ... that is not over the value (but never below
    `first`): what several authors do with cuffs (TenDyke, 2014: 38.75 sts -> 38, even).

    >>> down_to_series(38.75, first=2, gap=2)
    38
    """
    return first + gap * max(0, down((value - first) / gap))


def to_coins(value: Decimal, places: int) -> Decimal:
    """Money to a currency's smallest unit, halves up, as a till does (ISO 4217 says how small; common practice, no source).

    >>> str(to_coins(Decimal("3.725"), 2)), str(to_coins(Decimal("740.5"), 0))
    ('3.73', '741')
    """
    return value.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)
