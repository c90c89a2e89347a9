"""A slope within one row: stitches of rising height from its low edge to its high one, instead of steps.

The row of the fabric's own stitch is as high as its swatch says, the others by their published ratios. The
slope's line runs from nothing at the low edge to its full height at the middle of the last stitch; each
stitch is the one whose height is nearest to the line there, so that none is further from it than half a row
of single crochet, the lowest stitch that has a height.
"""

from itertools import groupby
from typing import NamedTuple

from gaugewright.design.model import Design, Piece
from gaugewright.errors import Origin, Problem, ProblemsFound
from gaugewright.rounding import down, up_to_step
from gaugewright.sizing.environment import Environment
from gaugewright.trade.stitch_heights import times_as_high
from gaugewright.trade.stitches import stitch_names


class Rise(NamedTuple):
    """So many stitches of one height, in rows of the fabric."""

    stitch: str
    stitches: int
    height: float


def heights_beside(stitch: str) -> dict[str, float]:
    """Each stitch's height in rows of another stitch, the lowest first.

    >>> [round(height, 2) for height in heights_beside("hdc").values()]
    [0.0, 0.64, 1.0, 1.55, 2.06]
    """
    return {name: times_as_high(name, stitch) for name in stitch_names()}


def rising(stitches: int, slope: float, stitch: str) -> tuple[Rise, ...]:
    """The groups of a slope of so many rows over `stitches`, from its low edge up.

    >>> [(each.stitch, each.stitches) for each in rising(12, 1.55, "hdc")]
    [('sl st', 2), ('sc', 4), ('hdc', 3), ('dc', 3)]
    """
    heights = heights_beside(stitch)
    line = (slope * (2 * place - 1) / (2 * stitches - 1) for place in range(1, stitches + 1))
    chosen = (min(heights, key=lambda name: abs(heights[name] - height)) for height in line)
    return tuple(Rise(name, len(list(alike)), heights[name]) for name, alike in groupby(chosen))


def tallest(slope: float, stitch: str) -> float:
    """The height that a slope of so many rows ends with, in rows: the row is as high as its tallest stitch."""
    return min(heights_beside(stitch).values(), key=lambda height: abs(height - slope))


def is_rising(piece: Piece) -> bool:
    """Whether the piece's top slopes by rising stitches."""
    return bool(getattr(piece.sections[-1], "rising", False))


def rise_of(piece: Piece, design: Design, env: Environment) -> float:
    """The slope in rows of the fabric, for a piece whose top rises; located problems where stitches can't give it."""
    top = piece.sections[-1]
    fabric = design.fabric(top.fabric)
    origin: Origin = top.slope.origin  # type: ignore[union-attr]
    if fabric.stitch == "sl st":
        message = f"the shoulders of {piece.key} are of slip stitches, whose height no other stitch's follows from"
        raise ProblemsFound([Problem("rising-too-low", message, origin, "take out `as`: the slope is then worked in steps", env.size)])
    heights = heights_beside(fabric.stitch)
    slope = fabric.gauge.rows_in(env.length(top.slope))  # type: ignore[union-attr,arg-type]
    least, most = heights["sc"], max(heights.values())
    cm = {name: fabric.gauge.height_of(height) / 10 for name, height in (("slope", slope), ("least", least), ("most", most))}
    if slope > most:
        message = f"the shoulders of {piece.key} slope by {cm['slope']:.1f} cm, and rising stitches give {cm['most']:.1f} cm at most"
        hint = f"make `slope` at most {down(cm['most'] * 10) / 10:.1f} cm, or take out `as`: it is then worked in steps"
        raise ProblemsFound([Problem("rising-too-high", message, origin, hint, env.size)])
    if slope < least:
        message = f"the shoulders of {piece.key} slope by {cm['slope']:.1f} cm, less than the lowest stitch is high ({cm['least']:.1f} cm)"
        hint = f"make `slope` at least {up_to_step(cm['least'], 0.1):.1f} cm, or take it out"
        raise ProblemsFound([Problem("rising-too-low", message, origin, hint, env.size)])
    return slope


def extra_height(piece: Piece, design: Design, env: Environment) -> float:
    """What a top's last row is higher than a row of its fabric, mm; less than nothing where it is lower."""
    if not is_rising(piece):
        return 0.0
    fabric = design.fabric(piece.sections[-1].fabric)
    return fabric.gauge.height_of(tallest(rise_of(piece, design, env), fabric.stitch) - 1)
