"""A sleeve's cap fitted to its armhole, in one size."""

from functools import lru_cache

from gaugewright.design.model import Cap, Piece
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.cap import Cap as FittedCap
from gaugewright.grading.cap import CapImpossible, cap
from gaugewright.rounding import half_up
from gaugewright.sizing.environment import Environment

USUAL_BLOCK = 25.0
"""Left at once at each edge where the spec doesn't say: an inch, in mm (common practice, no source)."""


def cap_of(section: Cap, piece: Piece, gauge: Gauge, env: Environment, stitches: int) -> FittedCap:
    """The cap of a sleeve of so many stitches; a located problem where none fills the armhole."""
    opening, depth = env.length(section.opening), env.length(section.depth)
    ease = 0.0 if section.ease is None else env.length(section.ease)
    block = USUAL_BLOCK if section.block is None else env.length(section.block)
    try:
        return _fitted(stitches, opening, gauge, max(1, half_up(gauge.stitches_in(block))), ease, depth)
    except CapImpossible as fault:
        message = f"the cap of {piece.key} can't be made to fit: {fault}"
        hint = "make the armhole deeper, or the sleeve narrower where the cap begins"
        if fault.fits is not None:
            hint = f"end the sleeve below it with {fault.fits} stitches ({gauge.width_of(fault.fits) / 10:.1f} cm)"
        raise ProblemsFound([Problem("cap-impossible", message, section.origin, hint, env.size)]) from None


@lru_cache(maxsize=64)
def _fitted(stitches: int, opening: float, gauge: Gauge, block: int, ease: float, depth: float) -> FittedCap:
    """The same cap is asked for with a size's rows, counts and edges; it is looked for once."""
    return cap(stitches, opening, gauge, block, ease, depth)
