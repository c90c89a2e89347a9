"""How a cloth feels, from how tightly its yarn is worked: stitches to 4 in against those published for its weight category.

More stitches than the category's are a stiff cloth, fewer a drapey one. The ranges are published; that they tell the hand is
common practice, no source. They are counted in single crochet (lace in double), and other stitches are taken as wide.
"""

from typing import Literal

from gaugewright.gauge.hanging import PRINTED_MM
from gaugewright.gauge.model import Gauge
from gaugewright.rounding import to_step
from gaugewright.trade.yarn_weights import yarn_weight

FOUR_INCHES = 101.6

Hand = Literal["stiff", "usual", "drapey"]


def usual_stitches(category: int) -> tuple[int, int]:
    """Fewest and most stitches to 4 in for a category; jumbo has only a most.

    >>> usual_stitches(6), usual_stitches(7)
    ((7, 9), (6, 6))
    """
    low, high = yarn_weight(category).stitches
    return (high if low is None else low), high


def hand_of(category: int, gauge: Gauge) -> Hand:
    """What a yarn of this category feels like at this gauge; whole stitches are what is published, so half of one more is within.

    >>> hand_of(6, Gauge(18, 205.0, 14, 195.0)), hand_of(6, Gauge(10, 100.0, 8, 100.0)), hand_of(4, Gauge(8, 100.0, 7, 100.0))
    ('usual', 'stiff', 'drapey')
    """
    low, high = usual_stitches(category)
    stitches = gauge.stitches_in(FOUR_INCHES)
    if stitches > high + 0.5:
        return "stiff"
    # Jumbo is published as so many stitches and fewer: there is no gauge too loose for it.
    return "drapey" if stitches < low - 0.5 and yarn_weight(category).stitches[0] is not None else "usual"


def at_stitches(pattern: Gauge, per_four_inches: float) -> Gauge:
    """A gauge of so many stitches to 4 in, its rows as high to the stitch as the pattern's: ranges are published of stitches alone.

    >>> at_stitches(Gauge(8, 100.0, 7, 50.0), 8.128)
    Gauge(stitches=8, width=100.0, rows=7, height=50.0)
    """
    scale = FOUR_INCHES / per_four_inches / pattern.stitch_width
    return Gauge(pattern.stitches, to_step(pattern.width * scale, PRINTED_MM), pattern.rows, to_step(pattern.height * scale, PRINTED_MM))
