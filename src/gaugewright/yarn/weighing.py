"""What a stitch and a mm of strand weigh, as surely as it is known.

In: a design and what was counted. Out: grams at the lower end, in the middle and at the upper end. A weighed swatch
is sure to a few percent; without one there are only published measurements, whose range is as wide as they disagree.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from gaugewright.design.model import Design, Fabric, Yarn
from gaugewright.gauge.readings import READ_TO
from gaugewright.trade.consumption import Consumption, consumption
from gaugewright.trade.yarn_weights import yarn_weight
from gaugewright.yarn.counted import Share

SCALE_READS_TO = 0.5
"""A kitchen scale reads whole grams, so a swatch may weigh half a gram more or less (as in Interweave's published swatches)."""


ALIKE_WITHIN = 0.15
"""A yarn stands in for another if its metres to the gram differ by no more (published: 15 % for thick yarns, 20 % for others;
docslib handout 'Yarn substitutions')."""


@dataclass(frozen=True, slots=True)
class Weights:
    """Grams of a stitch by fabric and colour, and of a mm of strand by colour."""

    stitch: Mapping[tuple[str, str], float]
    strand: Mapping[str, float]

    def of(self, share: Share) -> float:
        """Grams of a share."""
        each = self.stitch[share.fabric, share.colour] if share.fabric else self.strand[share.colour]
        return share.amount * each


@dataclass(frozen=True, slots=True)
class Weighing:
    """The ends of what is known and the middle of it; `estimated` names the fabrics in use whose swatch wasn't weighed.

    Of an estimate the middle is the upper end: there is no single figure, and whoever needs one must have enough.
    """

    low: Weights
    middle: Weights
    high: Weights
    estimated: tuple[str, ...]


def mass_per_stitch(fabric: Fabric) -> float | None:
    """Grams of one stitch, from the weighed swatch."""
    if fabric.swatch_mass is None:
        return None
    return fabric.swatch_mass / (fabric.gauge.stitches * fabric.gauge.rows)


def unsure(fabric: Fabric) -> float:
    """By what share a weighed swatch's grams to the stitch may be off, either way: half a gram on the scale, half a stitch
    and half a row in the count, which have nothing to do with one another and so are added as squares.

    >>> from gaugewright.gauge.model import Gauge
    >>> from types import SimpleNamespace
    >>> round(unsure(SimpleNamespace(swatch_mass=41.0, gauge=Gauge(18, 205.0, 14, 195.0))), 3)
    0.047
    """
    if fabric.swatch_mass is None:
        return 0.0
    parts = SCALE_READS_TO / fabric.swatch_mass, READ_TO / fabric.gauge.stitches, READ_TO / fabric.gauge.rows
    return math.sqrt(sum(part**2 for part in parts))


def weighing(design: Design, shares: Iterable[Share]) -> Weighing | None:
    """The weights of all that was counted; None where neither a swatch nor anything published tells them."""
    pairs = {(share.fabric, share.colour) for share in shares}
    strand = {colour: metres_per_gram(design.yarn(colour)) for _, colour in pairs}
    ends: dict[tuple[str, str], tuple[float, float, float]] = {}
    for key, colour in sorted(pairs):
        if key:
            found = _stitch(design.fabric(key), strand[colour])
            if found is None:
                return None
            ends[key, colour] = found
    estimated = tuple(fabric.key for fabric in design.fabrics if fabric.swatch_mass is None and any(key == fabric.key for key, _ in pairs))
    low, middle, high = (Weights({pair: one[end] for pair, one in ends.items()}, {colour: _strand(one, end) for colour, one in strand.items()}) for end in range(3))
    return Weighing(low, middle, high, estimated)


def metres_per_gram(yarn: Yarn) -> tuple[float, float] | None:
    """The least and the most metres in a gram: the ball's, or those published for the yarn's weight category."""
    if yarn.ball_mass and yarn.ball_length:
        each = yarn.ball_length / 1000 / yarn.ball_mass
        return each, each
    if yarn.weight is None:
        return None
    low, high = yarn_weight(yarn.weight).metres_per_100g
    return None if low is None else (low / 100, high / 100)


def published(fabric: Fabric) -> Consumption | None:
    """What is published of yarn in this fabric's stitch."""
    return consumption(fabric.stitch)


def _stitch(fabric: Fabric, per_gram: tuple[float, float] | None) -> tuple[float, float, float] | None:
    """Grams of a stitch: lower end, middle, upper end."""
    mass = mass_per_stitch(fabric)
    if mass is not None:
        return mass * (1 - unsure(fabric)), mass, mass * (1 + unsure(fabric))
    taken = published(fabric)
    if taken is None or per_gram is None:
        return None
    low, high = (heights * fabric.flat.row_height / 1000 for heights in (taken.low, taken.high))
    return low / per_gram[1], high / per_gram[0], high / per_gram[0]


def _strand(per_gram: tuple[float, float] | None, end: int) -> float:
    """Grams of a mm at an end; nothing where neither a ball nor a category tells, and the heavier end in the middle."""
    return 0.001 / per_gram[1 if end == 0 else 0] if per_gram else 0.0
