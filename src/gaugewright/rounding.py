"""Every rounding rule, named, with its reason. The built-in `round` is never used on a count.

All rules work on a float that stands for an exact value; `SNAP` absorbs the last bits of a
product such as 0.1 * 3, so that a length which was made from whole stitches comes back to
exactly those stitches.
"""

import math

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
