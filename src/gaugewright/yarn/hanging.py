"""Whether a garment is so heavy that it will lengthen when it hangs, and what to hang a swatch with to see by how much.

Published advice gives directions and no figure: heavier yarn, cotton and silk lengthen more, most at the shoulders, which
carry all that is below; make loose, heavy cloth a little shorter than wanted. So the limit here is common practice.
"""

from collections.abc import Mapping

from gaugewright.design.model import Design, Fabric
from gaugewright.grading.model import GradedPiece
from gaugewright.measurements import Body
from gaugewright.sized import Sized
from gaugewright.tolerances import HEAVY_GARMENT
from gaugewright.yarn.amounts import Amount
from gaugewright.yarn.mass import garment_mass

LENGTHENING = frozenset(("cotton", "silk", "linen", "flax", "viscose", "rayon", "modal", "bamboo", "lyocell", "alpaca", "superwash wool", "superwash merino"))
"""Fibres that lengthen more than others: cotton and silk as published in 2006, the rest common practice, no source."""


def masses(design: Design, amounts: Sized[dict[str, Amount] | None]) -> Sized[float] | None:
    """Grams of the finished piece in each size; None where a size has no amounts, or only an estimate's two ends."""
    if any(one is None or any(amount.estimated for amount in one.values()) for one in amounts):
        return None
    return amounts.map(lambda one: garment_mass(design, one or {}))


def heavy_sizes(design: Design, bodies: Sized[Body], amounts: Sized[dict[str, Amount] | None]) -> tuple[str, ...]:
    """Sizes of a garment for the trunk that weigh so much that they lengthen; none of a blanket, a bag or a hat."""
    found = masses(design, amounts)
    if found is None or not all({"bust", "chest"} & body.values.keys() for body in bodies):
        return ()
    return tuple(label for label, grams in found.items() if grams >= HEAVY_GARMENT)


def lengthens_more(design: Design) -> tuple[str, ...]:
    """The fibres in it that lengthen more than others, and unspun yarn, which has no twist to hold it."""
    names = [name.strip().lower() for yarn in design.yarns for name, _ in yarn.fibre]
    fibres = tuple(dict.fromkeys(name for name in names if name in LENGTHENING))
    return (*fibres, *(["unspun yarn"] if any(yarn.structure == "roving" for yarn in design.yarns) else []))


def is_judged(design: Design) -> bool:
    """Whether the maker has said of the main fabric whether it grows, if by nothing at all."""
    return design.fabric(design.pieces[0].fabric).judged


def grams_per_m2(fabric: Fabric) -> float | None:
    """What a square metre of the flat fabric weighs, from its weighed swatch.

    >>> from gaugewright.gauge.model import Gauge
    >>> from types import SimpleNamespace
    >>> round(grams_per_m2(SimpleNamespace(swatch_mass=41.0, flat=Gauge(18, 205.0, 14, 195.0))))
    1026
    """
    if fabric.swatch_mass is None:
        return None
    return fabric.swatch_mass / (fabric.flat.width * fabric.flat.height) * 1_000_000


def load_for_swatch(design: Design, pieces: Mapping[str, GradedPiece]) -> float | None:
    """Grams to hang on 10 cm of a swatch's width, so that it carries what the shoulders do: cloth as long as the longest piece."""
    main = design.fabric(design.pieces[0].fabric)
    mass = grams_per_m2(main)
    longest = max((pieces[piece.key].finished["length"] for piece in design.pieces if piece.fabric == main.key), default=0.0)
    return None if mass is None else mass * longest / 1000 * 0.1
