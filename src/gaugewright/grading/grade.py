"""The grading engine: pieces in the order of their edges, all sizes of a piece together.

In: the design and each size's body and ease. Out: plans and graded pieces of every size.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import TypeVar

from gaugewright.design.model import Design, Piece, Taper
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.grading.answers import answers
from gaugewright.grading.edges import edge_lengths, finished_measures
from gaugewright.grading.expand import expand
from gaugewright.grading.measure import Measured, measure_piece, pick_up_start, start_count
from gaugewright.grading.model import EdgeLength, EdgeStart, GradedPiece
from gaugewright.grading.order import grading_order
from gaugewright.grading.outline import outline_of
from gaugewright.grading.plan import PiecePlan
from gaugewright.grading.structure import plan_piece, shaped_edges
from gaugewright.grading.take_up import TakeUps, take_ups
from gaugewright.sized import Sized
from gaugewright.sizing.environment import Environment


T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Grading:
    """Every piece in every size: plans for the words, graded pieces for the rows. Keys in grading order."""

    plans: Mapping[str, Sized[PiecePlan]]
    pieces: Mapping[str, Sized[GradedPiece]]
    environments: Sized[Environment]


def grade(design: Design, environments: Sized[Environment]) -> Grading:
    """Grades all pieces; raises every problem of the first piece that has any."""
    taken = take_ups(design)
    graded: dict[str, dict[str, GradedPiece]] = {label: {} for label in environments.labels}
    for label, env in environments.items():
        env.answers = answers(design, graded[label])
    plans: dict[str, Sized[PiecePlan]] = {}
    pieces: dict[str, Sized[GradedPiece]] = {}
    for piece in grading_order(design):
        plans[piece.key] = _plan(piece, design, environments, taken, graded)
        sized = plans[piece.key].map(lambda plan, piece=piece: _graded(piece, plan, design, taken))  # type: ignore[misc]
        for label, one in sized.items():
            graded[label][piece.key] = one
        pieces[piece.key] = sized
    return Grading(plans, pieces, environments)


def _plan(
    piece: Piece, design: Design, environments: Sized[Environment], taken: TakeUps, graded: Mapping[str, Mapping[str, GradedPiece]]
) -> Sized[PiecePlan]:
    starts: Sized[EdgeStart] | None = None
    if piece.start.kind == "pick up":
        starts = Sized(environments.labels, tuple(pick_up_start(piece, design, _edges_of(graded[label])) for label in environments.labels))
        counts = starts.map(lambda start: start.stitches)
    else:
        counts = gather_problems(environments, lambda env: start_count(piece, design, env, taken))
    measured = _measured(piece, design, environments, taken, counts)
    return plan_piece(piece, design, measured, environments, starts)


def _measured(piece: Piece, design: Design, environments: Sized[Environment], taken: TakeUps, counts: Sized[int]) -> Sized[Measured]:
    """Counts and rows of all sizes; measured twice where shaping in pairs couples parities."""
    def measure(coupled: tuple[bool, ...]) -> Sized[Measured]:
        return gather_problems(environments, lambda env: measure_piece(piece, design, env, taken, counts[env.size], coupled))

    free = measure(tuple(False for _ in piece.sections))
    coupled = tuple(
        isinstance(section, Taper) and shaped_edges(piece, section, free, index) in ("both", "pairs")
        for index, section in enumerate(piece.sections)
    )
    return measure(coupled) if any(coupled) else free


def _edges_of(pieces: Mapping[str, GradedPiece]) -> dict[tuple[str, str], EdgeLength]:
    return {(key, name): edge for key, piece in pieces.items() for name, edge in piece.edges.items()}


def _graded(piece: Piece, plan: PiecePlan, design: Design, taken: TakeUps) -> GradedPiece:
    gauges = {fabric.key: fabric.gauge for fabric in design.fabrics}
    strip = expand(plan)
    outline = outline_of(strip, gauges)
    finished, worked = finished_measures(piece, strip, outline, gauges, taken)
    return GradedPiece(piece.key, (strip,), outline, edge_lengths(piece, plan, strip, outline, gauges), finished, worked)


def gather_problems(environments: Sized[Environment], make: Callable[[Environment], T]) -> Sized[T]:
    """One result per size; problems of all sizes at once, each fault once with the sizes it touches."""
    values: list[T] = []
    found: dict[tuple[str, object], list[Problem]] = {}
    for env in environments:
        try:
            values.append(make(env))
        except ProblemsFound as faults:
            for problem in faults.problems:
                found.setdefault((problem.name, problem.origin), []).append(problem)
    if found:
        raise ProblemsFound([_merged(problems) for problems in found.values()])
    return Sized(environments.labels, tuple(values))


def _merged(problems: list[Problem]) -> Problem:
    sizes = ", ".join(problem.size for problem in problems)
    return replace(problems[0], size=sizes)
