"""Stitches worked by the clock, as a swatch states them."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Timing:
    """So many stitches in so many seconds, turns included."""

    stitches: int
    seconds: float
