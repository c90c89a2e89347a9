"""The grading engine: pieces in the order of their edges, all sizes of a piece together.

In: the design and each size's body and ease. Out: plans and graded pieces of every size.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from gaugewright.design.model import Design, EdgeName, Even, ForRows, Piece
from gaugewright.design.rims import on_rim
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.grading.answers import answers
from gaugewright.grading.corners import Turn, turns
from gaugewright.grading.edges import edge_lengths, finished_measures
from gaugewright.grading.expand import expand_all
from gaugewright.grading.gather import gather
from gaugewright.grading.joins import join_of
from gaugewright.grading.layouts import layout_worked
from gaugewright.grading.measure import Measured, Shaped, measure_piece
from gaugewright.grading.model import DivideStart, EdgeStart, GoOnStart, GradedPiece, Join
from gaugewright.grading.never_falls import settled
from gaugewright.grading.order import grading_order, pieces_needed
from gaugewright.grading.outline import outline_of_all
from gaugewright.grading.opened import go_on_start
from gaugewright.grading.plan import OpenedPlan, PiecePlan
from gaugewright.grading.shape_edges import slant_of
from gaugewright.grading.shaping import edges_of_rows, pairs_of_rounds
from gaugewright.grading.starts import pick_up_start, start_count
from gaugewright.grading.stripes import matched_stripes
from gaugewright.grading.structure import plan_piece
from gaugewright.grading.take_up import TakeUps, take_ups
from gaugewright.grading.workable import faults_of
from gaugewright.grading.yokes import divide_start
from gaugewright.sized import Sized
from gaugewright.sizing.environment import Environment

BySize = dict[str, dict[str, GradedPiece]]


@dataclass(frozen=True, slots=True)
class Grading:
    """Every piece in every size: plans for the words, graded pieces for the rows. Keys in grading order."""

    plans: Mapping[str, Sized[PiecePlan]]
    pieces: Mapping[str, Sized[GradedPiece]]
    environments: Sized[Environment]


def grade(design: Design, environments: Sized[Environment]) -> Grading:
    """Grades all pieces; raises every problem at once, but none of pieces that wait for a faulty one."""
    taken = take_ups(design)
    graded: BySize = {label: {} for label in environments.labels}
    for label, env in environments.items():
        env.answers = answers(design, graded[label])
    plans: dict[str, Sized[PiecePlan]] = {}
    pieces: dict[str, Sized[GradedPiece]] = {}
    problems: list[Problem] = []
    for piece in grading_order(design):
        if any(needed not in pieces for needed in pieces_needed(piece, design)):
            continue
        try:
            plans[piece.key] = _plan(piece, design, environments, taken, graded, plans)
            pieces[piece.key] = gather(environments.labels, _grader(piece, plans[piece.key], design, taken, graded))
        except ProblemsFound as faults:
            problems += faults.problems
            continue
        for label, one in pieces[piece.key].items():
            graded[label][piece.key] = one
    problems += _unknown_edges(design, pieces)
    if problems:
        raise ProblemsFound(list(dict.fromkeys(problems)))
    return Grading(plans, pieces, environments)


def worked_at(design: Design, plans: Mapping[str, Sized[PiecePlan]], environments: Sized[Environment]) -> Grading:
    """Plans made for another gauge, worked at the design's: the same rows and stitches, other lengths.

    Nothing is planned anew, so that it tells what somebody gets who follows the numbers as they are.
    """
    taken = take_ups(design)
    graded: BySize = {label: {} for label in environments.labels}
    for label, env in environments.items():
        env.answers = answers(design, graded[label])
    pieces: dict[str, Sized[GradedPiece]] = {}
    for key, sized in plans.items():
        pieces[key] = gather(environments.labels, _grader(design.piece(key), sized, design, taken, graded))
        for label, one in pieces[key].items():
            graded[label][key] = one
    return Grading(plans, pieces, environments)


def _plan(
    piece: Piece, design: Design, environments: Sized[Environment], taken: TakeUps, graded: BySize, plans: Mapping[str, Sized[PiecePlan]]
) -> Sized[PiecePlan]:
    faults = faults_of(piece, design)
    if faults:
        raise ProblemsFound(faults)
    labels = environments.labels
    inside = gather(labels, lambda label: _inside(piece, environments[label]))
    starts: Sized[EdgeStart] | Sized[DivideStart] | Sized[GoOnStart] | None = None
    turned: Sized[tuple[Turn, ...]] | None = None
    joins = gather(labels, lambda label: join_of(piece, design, label, graded[label])) if piece.start.joined else None
    if piece.start.kind == "pick up":
        picked = starts = gather(labels, lambda label: pick_up_start(piece, design, label, graded[label]))
        counts = picked.map(lambda start: start.stitches)
        turned = gather(labels, lambda label: turns(piece, design, picked[label], graded[label], inside[label]))
    elif piece.start.kind == "divide":
        divided = starts = plans[piece.start.edges[0][0]].map(lambda plan: divide_start(piece, plan))
        counts = divided.map(lambda start: start.stitches)
    elif piece.start.kind == "go on":
        going_on = starts = plans[piece.start.edges[0][0]].map(lambda plan: go_on_start(piece, _opened(plan)))
        counts = going_on.map(lambda start: start.stitches)
    else:
        counts = gather(labels, lambda label: start_count(piece, design, inside[label], taken))

    def measure(shaped: Shaped) -> Sized[Measured]:
        return gather(labels, lambda label: measure_piece(_in_size(piece, joins, label), design, inside[label], taken, counts[label], shaped))

    shaped = edges_of_rows(piece)
    measured = measure(shaped)
    if piece.start.in_rounds:
        shaped = pairs_of_rounds(piece, design, measured)
        measured = measure(shaped) if any(shaped) else measured
    return plan_piece(piece, design, shaped, settled(piece, design, inside, measured), inside, starts, matched_stripes(piece, design, environments, plans), joins, turned)


def _in_size(piece: Piece, joins: Sized[Join] | None, label: str) -> Piece:
    """A band joined along edges has, in each size, the rows that those need."""
    if joins is None:
        return piece
    (even,) = piece.sections
    assert isinstance(even, Even)  # anything else is a fault of its design
    return replace(piece, sections=(replace(even, extent=ForRows(joins[label].rows)),))


def _opened(plan: PiecePlan) -> OpenedPlan:
    """The opening that ends a tube which others go on from."""
    section = plan.sections[-1]
    assert isinstance(section, OpenedPlan)  # a piece that starts otherwise is a fault of its design
    return section


def _inside(piece: Piece, env: Environment) -> Environment:
    """The names that formulas of this piece may use: its total as well."""
    return env if piece.total is None else env.within({"total": env.length(piece.total)})


def _grader(piece: Piece, plans: Sized[PiecePlan], design: Design, taken: TakeUps, before: BySize) -> Callable[[str], GradedPiece]:
    """`before` holds the pieces graded so far, of which a border needs what it goes round."""
    gauges = {fabric.key: fabric.gauge for fabric in design.fabrics}

    def graded(label: str) -> GradedPiece:
        plan = plans[label]
        layout = layout_worked(piece, plan, gauges[piece.sections[0].fabric])
        lies = before[label][piece.start.edges[0][0]].layout if on_rim(piece, design) else layout
        strips = expand_all(plan)
        slant = slant_of(plan, gauges[strips[-1].rows[-1].fabric])
        outline = replace(outline_of_all(strips, gauges), slant=slant)
        finished, worked = finished_measures(piece, plan, strips, outline, gauges, taken, lies)
        edges = edge_lengths(piece, plan, strips, outline, gauges, label, layout)
        return GradedPiece(piece.key, strips, outline, edges, finished, worked, layout)

    return graded


def _unknown_edges(design: Design, pieces: Mapping[str, Sized[GradedPiece]]) -> list[Problem]:
    """Edges that seams, openings and attachments name and that a graded piece turns out not to have."""
    named: list[EdgeName] = [edge for seam in design.seams for edge in (seam.join, *seam.to)]
    named += [edge for opening in design.openings for edge in opening.around]
    named += [EdgeName(one.to, one.from_edge, one.origin) for one in design.attachments]
    problems = []
    for name in named:
        edges = pieces[name.piece].values[0].edges if name.piece in pieces else None
        if edges is not None and name.edge not in edges:
            message = f"{name.piece} has no edge {name.edge}: it has {', '.join(edges)}"
            problems.append(Problem("unknown-edge", message, name.origin, "use one of those edges"))
    return problems
