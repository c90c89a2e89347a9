"""Shaped sections as plans, with every row held against the stitches it has."""

from gaugewright.design.model import Armhole, Cap, Even, Neck, NeckEdge, Piece, RaglanEdge
from gaugewright.errors import Origin, Problem, ProblemsFound, UserError
from gaugewright.grading.cloth import Cloth
from gaugewright.grading.measure import Measured
from gaugewright.grading.shape_plans import DividedPlan, EdgePart, EdgeParts, ProfilePlan, gone, later
from gaugewright.grading.shape_rows import narrowest_fault
from gaugewright.grading.tops import Shape
from gaugewright.trade.stitches import decrease_of


def profile_plan(section: Even | Armhole | RaglanEdge | NeckEdge | Cap, cloth: Cloth, index: int, measured: Measured, size: str) -> ProfilePlan:
    """A section shaped at its edges; an even one below a steep slope may be, and has no shape where it isn't."""
    rows, shape = measured.rows[index], measured.shapes[index] or Shape((), ())
    starting, far = _at_top(shape.starting, rows), _at_top(shape.far, rows)
    colour = "" if isinstance(section, NeckEdge) else section.colour
    plan = ProfilePlan(cloth, colour, rows, measured.before(index), starting, far, shape.rising)
    _check(cloth, plan.stitches, (starting, far), rows, section.origin, size)
    return plan


def divided_plan(section: Neck, piece: Piece, cloth: Cloth, index: int, measured: Measured, size: str) -> DividedPlan:
    """Both sides of a neck, which are alike."""
    shape = measured.shapes[index]
    assert shape is not None  # a neck always has one
    below = measured.shapes[index - 1]
    sloped = 0 if below is None else gone(part for part in below.starting if part.name == "shoulder")
    rows, stitches = measured.rows[index], measured.before(index)
    raglan = isinstance(piece.sections[index - 1], RaglanEdge)
    plan = DividedPlan(cloth, "", rows, stitches, shape.centre, shape.starting, shape.inner, sloped, raglan, shape.rising)
    _check(cloth, plan.side, (plan.outer, plan.inner), plan.rows, section.origin, size, sides=2)
    return plan


def _at_top(parts: EdgeParts, rows: int) -> EdgeParts:
    """The parts at the end of so many rows: a row more or less of even work moves them along."""
    return tuple(EdgePart(part.name, later(part.profile, rows - part.profile.rows, rows)) for part in parts)


def _check(cloth: Cloth, stitches: int, edges: tuple[EdgeParts, EdgeParts], rows: int, origin: Origin, size: str, sides: int = 1) -> None:
    if any(step.way == "decrease" for parts in edges for part in parts for step in part.profile.steps):
        try:
            decrease_of(cloth.stitch)
        except UserError as lacking:
            message, hint = f"this section decreases, and {lacking.message}", "work it in another stitch"
            raise ProblemsFound([Problem(lacking.name, message, origin, hint, size)]) from None
    fault = narrowest_fault(cloth, stitches, *edges, rows)
    if fault is not None:
        row, needed, found = fault
        message = f"row {row} of this section has {found} stitches, and its shaping takes {needed}"
        more = sides * (needed - found)
        hint = f"make the piece at least {more} stitch{'es' if more > 1 else ''} wider there, or what is shaped away so much narrower, or shape it over more rows"
        raise ProblemsFound([Problem("edges-meet", message, origin, hint, size)])
