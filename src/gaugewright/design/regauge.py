"""Another gauge for a whole design: what `--gauge` asks for."""

from collections.abc import Mapping
from dataclasses import replace

from gaugewright.design.model import Design, Fabric
from gaugewright.errors import UserError
from gaugewright.gauge.hanging import PRINTED_MM, hung
from gaugewright.gauge.model import Gauge
from gaugewright.rounding import to_step

MAIN = ""
"""Stands for the main fabric, the first piece's, where a gauge is asked for without a name."""


def regauged(design: Design, gauge: Gauge | Mapping[str, Gauge]) -> Design:
    """The design at a follower's own gauge: in its main fabric, or in each fabric that is named.

    Fabrics that share the main fabric's gauge take its new one; the others are scaled by the same
    ratios of width and height, since one maker's hand is looser or tighter in all of them. Scaled
    figures keep whole stitches and rows: the measured width and height change instead. Where only
    others than the main fabric are named, everything else stays as it is. Gauges are those of swatches that
    lie flat; what grows when it hangs grows by the same share. Raises `UserError` for a
    fabric that the design hasn't.
    """
    asked = {MAIN: gauge} if isinstance(gauge, Gauge) else dict(gauge)
    main_key = design.pieces[0].fabric
    known = [fabric.key for fabric in design.fabrics]
    unknown = [key for key in asked if key not in (MAIN, *known)]
    if unknown:
        raise UserError("unknown-fabric", f"there is no fabric {unknown[0]!r} to give a gauge", f"its fabrics are {', '.join(known)}")
    if MAIN in asked and main_key in asked:
        raise UserError(
            "two-gauges", f"the main fabric, {main_key}, has two gauges: one without a name and one as {main_key}", f"leave one of them out: a gauge without a name is that of {main_key}"
        )
    main = design.fabric(main_key).flat
    new = asked.get(MAIN, asked.get(main_key, main))
    return replace(design, fabrics=tuple(_changed(fabric, main, new, asked.get(fabric.key)) for fabric in design.fabrics))


def _changed(fabric: Fabric, main: Gauge, new: Gauge, own: Gauge | None) -> Fabric:
    """A fabric at its own new gauge, at the main fabric's, or scaled as that is."""
    old = fabric.flat
    if own is None and old != main:
        if new == main:
            return fabric
        across, along = new.stitch_width / main.stitch_width, new.row_height / main.row_height
        width, height = to_step(old.width * across, PRINTED_MM), to_step(old.height * along, PRINTED_MM)
        return _at(fabric, Gauge(old.stitches, width, old.rows, height))
    taken = own or new
    # The mass per stitch is the yarn's; the swatch just became larger or smaller.
    mass = fabric.swatch_mass
    new_mass = None if mass is None else mass / (old.stitches * old.rows) * taken.stitches * taken.rows
    return replace(_at(fabric, taken), swatch_mass=new_mass)


def _at(fabric: Fabric, lying: Gauge) -> Fabric:
    """The fabric at another flat gauge, growing by the same share."""
    gauge = hung(lying, fabric.growth)
    return replace(fabric, gauge=gauge, lying=lying if gauge != lying else None)
