"""What is measured at a shaped top: shoulders, necks, armholes, raglans, slopes and caps."""

from collections.abc import Callable, Iterator
from typing import NamedTuple

from gaugewright.drawings.model import Measure
from gaugewright.grading.model import GradedPiece, Point
from gaugewright.grading.plan import DividedPlan, PiecePlan, ProfilePlan, ShouldersPlan
from gaugewright.sized import Sized
from gaugewright.vocabulary import RowEdge

SIDES: tuple[RowEdge, RowEdge] = ("starting", "far")


class Top(NamedTuple):
    """One size of a piece: its plan and what came of it."""

    plan: PiecePlan
    piece: GradedPiece

    @property
    def height(self) -> float:
        """The whole height."""
        return self.piece.outline.heights[-1]

    def edge(self, side: RowEdge) -> tuple[Point, ...]:
        """One outer edge."""
        return self.piece.outline.starting if side == "starting" else self.piece.outline.far

    def outer(self) -> RowEdge:
        """The edge with the armhole: the starting one unless that is a neck edge."""
        last = self.plan.sections[-1]
        at_neck = isinstance(last, ProfilePlan) and any(part.name == "neck" for part in last.starting)
        return "far" if at_neck else "starting"


def is_shaped(plan: PiecePlan) -> bool:
    """Whether a piece's row ends end below its top, or something is shaped like an armhole."""
    return any(isinstance(section, (ProfilePlan, DividedPlan)) for section in plan.sections) or any(
        plan.edge_end(side) < plan.rows for side in SIDES
    )


def top_measures(plans: Sized[PiecePlan], graded: Sized[GradedPiece], drawn: str) -> Iterator[Measure]:
    """The measures of a shaped top, each in all sizes."""
    tops = Sized(plans.labels, tuple(Top(plans[label], graded[label]) for label in plans.labels))
    for name, along, between in _wanted(plans.values[0]):
        found = tops.map(between)
        start, end = found[drawn]
        index = 0 if along == "across" else 1
        values = tuple(abs(last[index] - first[index]) for first, last in found)
        if any(value > 1 for value in values):
            yield Measure(name, "across" if along == "across" else "up", start, end, values)


Between = Callable[[Top], tuple[Point, Point]]


def _wanted(plan: PiecePlan) -> Iterator[tuple[str, str, Between]]:
    last = plan.sections[-1]
    names = {part.name for section in plan.sections if isinstance(section, ProfilePlan) for part in (*section.starting, *section.far)}
    if "cap" in names:
        yield "Width at the top of the cap", "across", _top
        yield "Cap height", "up", _cap
        return
    if plan.raglan:
        yield "Width at the neck", "across", _neck
        yield "Raglan depth", "up", _raglan
        if isinstance(last, DividedPlan) or "neck" in names:
            yield "Neck depth", "up", _neck_depth
        return
    if "armhole" in names:
        yield "Width above the armhole" if "neck" in names else "Width above the armholes", "across", _above_armholes
    if isinstance(last, (DividedPlan, ShouldersPlan)) or "neck" in names:
        yield "Shoulder", "across", _shoulder
        yield "Neck", "across", _neck
    if "armhole" in names:
        yield "Armhole depth", "up", _armhole
    if isinstance(last, DividedPlan) or "neck" in names:
        yield "Neck depth", "up", _neck_depth
    if isinstance(last, (DividedPlan, ShouldersPlan)) or "neck" in names:
        yield "Shoulder slope", "up", _slope


def _top(top: Top) -> tuple[Point, Point]:
    return top.edge("starting")[-1], top.edge("far")[-1]


def _cap(top: Top) -> tuple[Point, Point]:
    return top.edge("far")[top.plan.edge_end("far")], top.edge("far")[-1]


def _above_armholes(top: Top) -> tuple[Point, Point]:
    """Where the armhole has ended: the last row that is shaped there, be it above the foot of the neck."""
    row = last_armhole_row(top.plan)
    return top.edge("starting")[row], top.edge("far")[row]


def last_armhole_row(plan: PiecePlan) -> int:
    """The row with the last step of an armhole; an armhole goes on beside a neck that begins low.

    Its last step may leave all that goes: the piece is then as wide as it will be after that row.
    """
    found = before = 0
    for section in plan.sections:
        edges = (section.starting, section.far) if isinstance(section, ProfilePlan) else (section.outer,) if isinstance(section, DividedPlan) else ()
        rows = [step.row for parts in edges for part in parts if part.name == "armhole" for step in part.profile.steps]
        found = max([found, *(before + row for row in rows)])
        before += section.rows
    return found


def _armhole(top: Top) -> tuple[Point, Point]:
    """From the row below the armhole's first step up to the shoulder's tip, at the armhole edge."""
    return _depth(top, "armhole")


def _raglan(top: Top) -> tuple[Point, Point]:
    """From the row below the raglan's first step up to the neck."""
    return _depth(top, "raglan")


def _depth(top: Top, name: str) -> tuple[Point, Point]:
    side, before = top.outer(), 0
    for section in top.plan.sections:
        if isinstance(section, ProfilePlan) and any(part.name == name for part in section.parts(side)):
            break
        before += section.rows
    else:  # nothing is shaped below the neck
        before = sum(section.rows for section in top.plan.sections[:-2])
    points = top.edge(side)
    return points[before], points[top.plan.edge_end(side)]


def _tip(top: Top) -> Point:
    return top.edge(top.outer())[top.plan.edge_end(top.outer())]


def _neck_point(top: Top) -> Point:
    """Where the neck meets the shoulder of the edge with the armhole, at the top; a raglan edge's own end."""
    side = top.outer()
    inwards = _shoulder_length(top) * (1 if side == "starting" else -1)
    return _tip(top)[0] + inwards, top.height


def _shoulder_length(top: Top) -> float:
    return 0.0 if top.plan.raglan else top.piece.edges["shoulder"].length


def _shoulder(top: Top) -> tuple[Point, Point]:
    return (_tip(top)[0], top.height), _neck_point(top)


def _slope(top: Top) -> tuple[Point, Point]:
    tip = _tip(top)
    return tip, (tip[0], top.height)


def _neck(top: Top) -> tuple[Point, Point]:
    """Across the neck at its top; of a half front from its neck edge's foot inwards."""
    left, last = _neck_point(top), top.plan.sections[-1]
    if isinstance(last, ProfilePlan):
        side: RowEdge = "far" if top.outer() == "starting" else "starting"
        return left, (top.edge(side)[top.plan.edge_end(side)][0], top.height)
    far = top.edge("far")[top.plan.edge_end("far")][0] - _shoulder_length(top)
    return left, (far, top.height)


def _neck_depth(top: Top) -> tuple[Point, Point]:
    rows = top.plan.rows - top.plan.sections[-1].rows
    y = top.piece.outline.heights[rows]
    if top.piece.outline.sides:
        return (top.piece.outline.sides[0].far[0][0], y), (_neck_point(top)[0], top.height)
    side: RowEdge = "far" if top.outer() == "starting" else "starting"
    return top.edge(side)[rows], top.edge(side)[-1]
