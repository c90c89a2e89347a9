"""Edges that a shaped top gives a piece of itself: shoulder, neck and cap."""

from gaugewright.gauge.model import Gauge
from gaugewright.grading.model import EdgeLength, Outline
from gaugewright.grading.outline import edge_length, run_length
from gaugewright.grading.plan import DividedPlan, PiecePlan, ProfilePlan, ShouldersPlan
from gaugewright.grading.shape_plans import gone
from gaugewright.grading.take_up import SIDES
from gaugewright.vocabulary import RowEdge


def shape_edges(plan: PiecePlan, outline: Outline, gauge: Gauge) -> dict[str, EdgeLength]:
    """Shoulders are as long as their stitches, sloped or not, since they are sewn stitch to stitch; neck
    edges and caps run along their row ends and over the stitches left."""
    section, first = plan.sections[-1], plan.rows - plan.sections[-1].rows
    match section:
        case ShouldersPlan(shoulder=shoulder, neck=neck):
            return {"shoulder": _stitches(shoulder, gauge), "neck": _stitches(neck, gauge)}
        case DividedPlan(raglan=True, side_end=above):
            return {"neck": _with_ends(_divided_neck(section, outline, gauge), section.end, above, gauge)}
        case DividedPlan(shoulder=shoulder):
            return {"shoulder": _stitches(shoulder, gauge), "neck": _divided_neck(section, outline, gauge)}
        case ProfilePlan():
            return _of_raglan(section, outline, gauge, first) if plan.raglan else _of_profile(section, outline, gauge, first)
    return {}


def slant_of(plan: PiecePlan, gauge: Gauge) -> tuple[float, float]:
    """How wide the last row rises at the starting and at the far edge, mm: a shoulder of rising stitches is as wide as those."""
    last = plan.sections[-1]
    if not isinstance(last, (ShouldersPlan, DividedPlan, ProfilePlan)) or not last.rising:
        return 0.0, 0.0
    wide = gauge.width_of(sum(each.stitches for each in last.rising))
    if not isinstance(last, ProfilePlan):
        return wide, wide
    return (0.0, wide) if _has(last, "starting", "neck") else (wide, 0.0)


def _stitches(count: int, gauge: Gauge) -> EdgeLength:
    return EdgeLength(gauge.width_of(count), 0, count)


def _divided_neck(section: DividedPlan, outline: Outline, gauge: Gauge) -> EdgeLength:
    starting, far = outline.sides
    inner = run_length(starting.far, starting.left[1]) + run_length(far.starting, far.left[0])
    return EdgeLength(inner + gauge.width_of(section.centre), 2 * section.rows, section.centre)


def _of_profile(section: ProfilePlan, outline: Outline, gauge: Gauge, first: int) -> dict[str, EdgeLength]:
    """The neck edge and shoulder of a half front, or a cap with the stitches of its last row."""
    last = first + section.rows
    if all(_has(section, side, "cap") for side in SIDES):
        length = sum(edge_length(outline, side, first, last) for side in SIDES) + gauge.width_of(section.end)
        return {"cap": EdgeLength(length, 2 * section.rows, section.end)}
    necks = [side for side in SIDES if _has(section, side, "neck")]
    if not necks:
        return {}
    outer = section.parts("far" if necks[0] == "starting" else "starting")
    shoulder = section.end + gone(part for part in outer if part.name == "shoulder")
    return {
        "shoulder": _stitches(shoulder, gauge),
        "neck": EdgeLength(edge_length(outline, necks[0], first, last), section.rows, _left_first(section, necks[0])),
    }


def _left_first(section: ProfilePlan, side: RowEdge) -> int:
    """Stitches left at once where a half front's neck begins: a level stretch of its edge."""
    steps = [step for part in section.parts(side) if part.name == "neck" for step in part.profile.steps][:1]
    return sum(step.stitches for step in steps if step.way == "leave" and step.stitches > 1)


def _of_raglan(section: ProfilePlan, outline: Outline, gauge: Gauge, first: int) -> dict[str, EdgeLength]:
    """The neck that raglan edges leave: the last row, and the neck edge of a half front below it."""
    for side in SIDES:
        if _has(section, side, "neck"):
            along = EdgeLength(edge_length(outline, side, first, first + section.rows), section.rows, _left_first(section, side))
            return {"neck": _with_ends(along, section.end, section.end, gauge)}
    return {"neck": _stitches(section.end, gauge)}


def _with_ends(neck: EdgeLength, stitches: int, above: int, gauge: Gauge) -> EdgeLength:
    """A neck edge with the stitches at the upper ends of its row ends, which lie along the neck."""
    return EdgeLength(neck.length + gauge.width_of(stitches), neck.rows, neck.stitches + stitches, above=above)


def _has(section: ProfilePlan, side: RowEdge, name: str) -> bool:
    return any(part.name == name for part in section.parts(side))
