"""A gauge as the finished piece hangs: the rows longer, the stitches as they were.

The one measured case found has its stitches unchanged and its rows longer (reference: three swatch states of one
acrylic, October 2024), so width is left alone.
"""

from dataclasses import replace

from gaugewright.gauge.model import Gauge
from gaugewright.rounding import to_step

PRINTED_MM = 0.1
"""A gauge is printed to the hundredth of a centimetre, and graded from what is printed."""


def hung(lying: Gauge, growth: float) -> Gauge:
    """The gauge after hanging; `growth` is the share by which rows lengthen. Without any, the same gauge.

    >>> hung(Gauge(18, 205.0, 14, 195.0), 0.05)
    Gauge(stitches=18, width=205.0, rows=14, height=204.8)
    """
    return replace(lying, height=to_step(lying.height * (1 + growth), PRINTED_MM)) if growth else lying


def growth_between(lying: Gauge, hanging: Gauge) -> float:
    """The share by which rows lengthen.

    >>> round(growth_between(Gauge(17, 101.6, 23, 101.6), Gauge(17, 101.6, 21, 101.6)), 3)
    0.095
    """
    return hanging.row_height / lying.row_height - 1
