"""A design in another yarn: its balls and price put in place of the main yarn's, its fabrics at the other gauge and weight.

What a stitch takes of a yarn that wasn't weighed follows from the pattern's own swatch by length: at one gauge a stitch takes
the same metres of any yarn (published: skeins are substituted by their metres), and a larger one takes metres in proportion
to its size (published as yards = gauge x length x width / 6, good for middle weights).
"""

import math
from dataclasses import dataclass, replace
from decimal import Decimal

from gaugewright.design.model import Design, Fabric, Yarn
from gaugewright.design.regauge import regauged
from gaugewright.gauge.hanging import hung
from gaugewright.gauge.model import Gauge
from gaugewright.grading.grade import Grading
from gaugewright.yarn.weighing import mass_per_stitch


@dataclass(frozen=True, slots=True)
class NewYarn:
    """A yarn to put in place of another; `stitch_mass` is grams of a stitch of the main fabric, None where it wasn't weighed.

    `growth` is the share by which its swatch lengthened, None where it wasn't hung.
    """

    weight: int | None
    fibre: tuple[tuple[str, float], ...]
    ball_mass: float
    ball_length: float
    price: Decimal | None
    currency: str
    structure: str
    treatment: str
    stitch_mass: float | None = None
    growth: float | None = None


def main_yarns(design: Design, grading: Grading) -> tuple[Yarn, ...]:
    """The yarn that the first piece begins in, with its other colours: alike in all but colour and name."""
    first = design.yarn(grading.pieces[design.pieces[0].key].values[0].main.rows[0].colours[0])
    return tuple(yarn for yarn in design.yarns if _kind(yarn) == _kind(first))


def _kind(yarn: Yarn) -> tuple[object, ...]:
    return yarn.weight, yarn.fibre, yarn.ball_mass, yarn.ball_length, yarn.structure, yarn.treatment


def fabrics_of_yarns(grading: Grading, yarns: tuple[Yarn, ...]) -> frozenset[str]:
    """The fabrics that any of these yarns is worked in."""
    keys = {yarn.key for yarn in yarns}
    runs = (run for sized in grading.pieces.values() for piece in sized for strip in piece.strips for row in strip.all_rows() for run in row.runs)
    return frozenset(run.fabric for run in runs if run.colour in keys)


def mass_factor(design: Design, yarn: Yarn, new: NewYarn, gauge: Gauge) -> float | None:
    """What a stitch of the new yarn weighs at this gauge, in stitches of the old at the pattern's; None where nothing tells it."""
    main = design.fabric(design.pieces[0].fabric)
    old = mass_per_stitch(main)
    if old is None:
        return None
    if new.stitch_mass is not None:
        return new.stitch_mass / old
    if not yarn.ball_mass or not yarn.ball_length:
        return None
    size = math.sqrt(gauge.stitch_width * gauge.row_height / (main.flat.stitch_width * main.flat.row_height))
    return size * (new.ball_mass / new.ball_length) / (yarn.ball_mass / yarn.ball_length)


def substituted(design: Design, yarns: tuple[Yarn, ...], fabrics: frozenset[str], new: NewYarn, gauge: Gauge) -> Design:
    """The design with the new yarn in place of these, at this flat gauge of its main fabric."""
    factor = mass_factor(design, yarns[0], new, gauge)
    at = {fabric.key: fabric for fabric in regauged(design, gauge).fabrics}
    keys = {yarn.key for yarn in yarns}
    changed = tuple(_weighed(at[fabric.key], factor, new.growth) if fabric.key in fabrics else fabric for fabric in design.fabrics)
    return replace(design, yarns=tuple(_as(yarn, new) if yarn.key in keys else yarn for yarn in design.yarns), fabrics=changed)


def _weighed(fabric: Fabric, factor: float | None, growth: float | None) -> Fabric:
    """A regauged fabric keeps its mass to the stitch; the new yarn's is another, and so may be its growth."""
    mass = None if fabric.swatch_mass is None or factor is None else fabric.swatch_mass * factor
    if growth is None:
        # Nobody has hung it: it is graded as the pattern's yarn is, and still to be judged.
        return replace(fabric, swatch_mass=mass, judged=False)
    lying = fabric.flat
    gauge = hung(lying, growth)
    return replace(fabric, swatch_mass=mass, gauge=gauge, lying=lying if gauge != lying else None, judged=True)


def _as(yarn: Yarn, new: NewYarn) -> Yarn:
    return replace(
        yarn, weight=new.weight, fibre=new.fibre, ball_mass=new.ball_mass, ball_length=new.ball_length,
        price=new.price, currency=new.currency, structure=new.structure, treatment=new.treatment,
    )

