"""Shaped tops measured anew: widths across necks and slopes, and the edges that a top has of itself."""

from collections.abc import Sequence

from gaugewright.checks.row_ends import RowEnd, RowEnds, along
from gaugewright.grading.model import Strip
from gaugewright.grading.plan import DividedPlan, OpenedPlan, PiecePlan, ProfilePlan, RaglanPlan, RoundYokePlan, ShouldersPlan
from gaugewright.vocabulary import RowEdge

SIDES: tuple[RowEdge, RowEdge] = ("starting", "far")


def has_shaped_top(plan: PiecePlan) -> bool:
    """Whether the piece's row ends end before its last row, or its top is divided."""
    return any(plan.edge_end(side) < plan.rows for side in SIDES) or isinstance(plan.sections[-1], DividedPlan)


def widths_across(plan: PiecePlan, ends: RowEnds, start: float) -> list[float]:
    """Each row's width over a neck's opening; a slope leaves the shoulder as wide as it is."""
    width, found = start, []
    for number, rows in enumerate(zip(ends.starting, ends.far, strict=True), start=1):
        for side, row in zip(SIDES, rows, strict=True):
            width += 0.0 if _slopes(plan, side) and number > plan.edge_end(side) else row.move
        found.append(width)
    return found


def _slopes(plan: PiecePlan, side: RowEdge) -> bool:
    """Whether a side's row ends end at a shoulder, and not at a neck edge or a cap."""
    last = plan.sections[-1]
    return not isinstance(last, ProfilePlan) or all(part.name in ("armhole", "raglan", "shoulder") for part in last.parts(side))


def top_edges(plan: PiecePlan, strips: Sequence[Strip], ends: RowEnds, stitch: float) -> dict[str, float]:
    """Shoulder, neck and cap, from the rows that make them."""
    last, top = plan.sections[-1], strips[-1].last_count * stitch
    above = {side: getattr(ends, side)[plan.edge_end(side) :] for side in SIDES}
    if isinstance(last, ShouldersPlan):
        return {"shoulder": last.shoulder * stitch, "neck": top - 2 * (last.shoulder * stitch - _left(above["far"]))}
    if plan.raglan and isinstance(last, (ProfilePlan, DividedPlan)):
        tops = sum(strip.last_count for strip in strips[1:] or strips)
        return {"neck": tops * stitch + _neck_edges(strips, plan, ends, stitch)}
    if isinstance(last, DividedPlan):
        centre = strips[0].last_count - sum(strip.start.stitches for strip in strips[1:])
        return {"shoulder": top + _left(above["far"]), "neck": sum(map(along, ends.neck)) + centre * stitch}
    if isinstance(last, OpenedPlan):
        return {last.left: last.gap * stitch, last.rest: (strips[0].last_count - last.gap) * stitch}
    if isinstance(last, (RaglanPlan, RoundYokePlan)):
        parts = last.division
        return {"body": 2 * (parts.back + parts.underarm) * stitch, "sleeve": (parts.sleeve + parts.underarm) * stitch}
    if not isinstance(last, ProfilePlan):
        return {}
    if not any(_slopes(plan, side) for side in SIDES):
        return {"cap": along(above["starting"]) + along(above["far"]) + top}
    found = {}
    for side, other in zip(SIDES, reversed(SIDES), strict=True):
        if not _slopes(plan, side):
            found = {"neck": along(above[side]), "shoulder": top + _left(above[other])}
    return found


def _neck_edges(strips: Sequence[Strip], plan: PiecePlan, ends: RowEnds, stitch: float) -> float:
    """What a neck between raglan edges has below its top: both neck edges and the centre, or a half front's edge."""
    if ends.neck:
        centre = strips[0].last_count - sum(strip.start.stitches for strip in strips[1:])
        return sum(map(along, ends.neck)) + centre * stitch
    return sum(along(getattr(ends, side)[plan.edge_end(side) :]) for side in SIDES if plan.edge_end(side) < plan.rows)


def _left(rows: Sequence[RowEnd]) -> float:
    return -sum(row.move for row in rows)
