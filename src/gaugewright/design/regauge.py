"""Another gauge for a whole design: what `--gauge` asks for."""

from dataclasses import replace

from gaugewright.design.model import Design, Fabric
from gaugewright.gauge.model import Gauge
from gaugewright.rounding import to_step

PRINTED_MM = 0.1
"""A gauge is printed to the hundredth of a centimetre, and graded from what is printed."""


def regauged(design: Design, gauge: Gauge) -> Design:
    """The design at a follower's own gauge in its main fabric, the first piece's.

    Fabrics that share the main fabric's gauge take the new one; the others are scaled by the same
    ratios of width and height, since one maker's hand is looser or tighter in all of them. Scaled
    figures keep whole stitches and rows: the measured width and height change instead.
    """
    main = design.fabric(design.pieces[0].fabric).gauge
    across, along = gauge.stitch_width / main.stitch_width, gauge.row_height / main.row_height

    def changed(fabric: Fabric) -> Fabric:
        old = fabric.gauge
        if old == main:
            # The mass per stitch is the yarn's; the swatch just became larger or smaller.
            mass = fabric.swatch_mass
            new_mass = None if mass is None else mass / (old.stitches * old.rows) * gauge.stitches * gauge.rows
            return replace(fabric, gauge=gauge, swatch_mass=new_mass)
        width, height = to_step(old.width * across, PRINTED_MM), to_step(old.height * along, PRINTED_MM)
        return replace(fabric, gauge=Gauge(old.stitches, width, old.rows, height))

    return replace(design, fabrics=tuple(changed(fabric) for fabric in design.fabrics))
