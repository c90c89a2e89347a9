"""An armhole of one size: what goes at its edge, and what would fit where it doesn't."""

from gaugewright.design.model import Armhole, Piece
from gaugewright.errors import ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.armhole import armhole
from gaugewright.grading.curves import ProfileImpossible
from gaugewright.grading.fault import fault
from gaugewright.grading.profile import Profile
from gaugewright.rounding import half_up
from gaugewright.sizing.environment import Environment
from gaugewright.tolerances import BLOCK_STITCHES


def armhole_of(section: Armhole, piece: Piece, gauge: Gauge, env: Environment, counts: tuple[int, int], rows: int, sloped: int) -> Profile:
    """The armhole at one edge over the rows up to the shoulder's slope, which takes `sloped` more; `counts` are below and above it."""
    before, after = counts
    each = (before - after) // (2 if section.at == "both" else 1)
    if each < 1:
        message = f"{piece.key} is {before} stitches wide below its armholes and {after} above: nothing goes"
        places = 2 if section.at == "both" else 1
        narrower = env.length(section.target) - gauge.width_of(after - before + places)
        hint = f"make `target` at most {narrower / 10:.1f} cm, or work even instead"
        raise fault("armhole-takes-nothing", message, section.target.origin, hint, env)
    block = None
    if section.block is not None:
        exact = gauge.stitches_in(env.length(section.block))
        block = each if abs(exact - each) < BLOCK_STITCHES else max(1, half_up(exact))
        if block > each:
            message = f"the armhole of {piece.key} leaves {block} stitches at once, and {each} go at each edge in all"
            hint = f"make `block` at most {gauge.width_of(each) / 10:.1f} cm"
            raise fault("armhole-block-too-wide", message, section.block.origin, hint, env)
    try:
        return armhole(each, rows, block, None, gauge)
    except ProfileImpossible as why:
        raise _too_shallow(section, piece, gauge, env, (each, rows, block), sloped, why) from None


def _too_shallow(
    section: Armhole, piece: Piece, gauge: Gauge, env: Environment, asked: tuple[int, int, int | None], sloped: int, why: ProfileImpossible
) -> ProblemsFound:
    """An armhole without the rows for its curve, or whose shoulder's slope takes them."""
    each, rows, block = asked
    needed = next(number for number in range(1, each + 3) if _can_be_shaped(each, number, block, gauge))
    deep = f"make it at least {gauge.height_of(needed + sloped) / 10:.1f} cm deep"
    if sloped:
        message = f"the slope of {piece.key} takes {sloped} rows and its armhole at least {needed}, and there are {rows + sloped}"
        most = rows + sloped - needed
        hint = f"{deep}, or `slope` at most {gauge.height_of(most) / 10:.1f} cm" if most > 0 else deep
        return fault("armhole-too-shallow", message, section.origin, hint, env)
    message = f"the armhole of {piece.key} can't be shaped in {max(0, rows)} rows: {why}"
    return fault("armhole-too-shallow", message, section.origin, f"{deep}, or `target` wider", env)


def _can_be_shaped(stitches: int, rows: int, block: int | None, gauge: Gauge) -> bool:
    try:
        armhole(stitches, rows, block, None, gauge)
    except ProfileImpossible:
        return False
    return True
