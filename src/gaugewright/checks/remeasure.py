"""Pieces measured anew: row counts, the printed gauge (whole stitches and rows over a width) and take-up.

Written apart from the engine that graded them, so that the two can disagree.
"""

import math
from collections.abc import Mapping, Sequence

from gaugewright.checks.model import Measured, Remade, Subject
from gaugewright.checks.remeasure_tops import has_shaped_top, top_edges, widths_across
from gaugewright.checks.rims import joined_measures, with_borders
from gaugewright.checks.row_ends import RowEnds, along, row_ends
from gaugewright.checks.triangles import remade_triangle
from gaugewright.checks.waiting import gained
from gaugewright.checks.slits import opening_edges
from gaugewright.design.model import TAKE_UP_STITCHES, Design, FinishedMeasure, Formula, NamedEdge, Piece
from gaugewright.design.rims import RIM
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.formulas.nodes import Call, FormulaError, Name
from gaugewright.gauge.model import Gauge
from gaugewright.grading.gather import gather
from gaugewright.grading.grade import Grading
from gaugewright.grading.model import Strip
from gaugewright.grading.plan import PiecePlan
from gaugewright.measurements.model import Body
from gaugewright.rounding import half_up
from gaugewright.sized import Sized, for_each_size, join
from gaugewright.sizing.environment import Environment, named_formulas
from gaugewright.vocabulary import RowEdge

SIDES: tuple[RowEdge, RowEdge] = ("starting", "far")

Gauges = Mapping[str, Gauge]
Lost = Mapping[tuple[str, RowEdge | None], float]
Wedged = Sequence[tuple[int, tuple[int, ...], float]]
"""Short rows: the row they follow, the rows that each stitch gains there, and a row's height."""


def subject_of(design: Design, bodies: Sized[Body], grading: Grading) -> Subject:
    """Everything measured anew, once for all checks."""
    gauges = {fabric.key: fabric.gauge for fabric in design.fabrics}
    remade = {
        piece.key: join(
            lambda plan, graded, piece=piece, lost=lost_stitches(piece, design): remeasure(piece, plan, graded.strips, gauges, lost),
            grading.plans[piece.key], grading.pieces[piece.key],
        )
        for piece in design.pieces
    }
    remade = with_borders(design, remade)
    environments = for_each_size(bodies.labels, lambda label: _environment(label, design, bodies, remade, gauges))
    measured, faults = _measurements(design, environments)
    return Subject(design, bodies, grading, remade, environments, measured, faults)


def lost_stitches(piece: Piece, design: Design) -> Lost:
    """Stitches that seams and picked-up edges take off each edge of a piece, by its name and side."""
    used = [(edge.piece, edge.edge, seam.take_up) for seam in design.seams for edge in (seam.join, *seam.to)]
    for other in design.pieces:
        for key, name in other.start.edges:
            # The second of two bands lies along the other one of two mirrored pieces.
            twins = [p.key for p in design.pieces if other.make > 1 and (p.mirrored and p.like == key or design.piece(key).mirrored and design.piece(key).like == p.key)]
            used += [(each, name, other.start.take_up) for each in (key, *twins)]
    lost: dict[tuple[str, RowEdge | None], float] = {}
    for key, called, take_up in used:
        for edge in _edges_called(piece, called) if key == piece.key else ():
            lost[edge] = max(lost.get(edge, 0.0), TAKE_UP_STITCHES[take_up])
    return lost


def _edges_called(piece: Piece, called: str) -> tuple[tuple[str, RowEdge | None], ...]:
    """The edges a name stands for, by their own names: a name on both sides stands for both, a side for all of its edges."""
    along = tuple((edge.name, edge.side) for edge in side_edges(piece) if called in (edge.name, edge.side))
    return along or (({"bottom": piece.bottom, "top": piece.top}.get(called, called), None),)


def side_edges(piece: Piece) -> tuple[NamedEdge, ...]:
    """The edges along row ends, those of a side without names under the side's own name."""
    named = {edge.side for edge in piece.edges}
    return (*piece.edges, *(NamedEdge(side, side, None, None) for side in SIDES if side not in named))


def remeasure(piece: Piece, plan: PiecePlan, strips: Sequence[Strip], gauges: Gauges, lost: Lost) -> Remade:
    """One size of a piece: finished measures (worked less take-up) and the true length of each edge."""
    if piece.start.kind == "middle":
        return remade_triangle(piece, strips[0], gauges, lost)
    rows, ends = (*strips[0].rows, *(strips[-1].rows if len(strips) > 1 else ())), row_ends(strips, gauges)
    of_rows = [gauges[row.fabric] for row in rows]
    if has_shaped_top(plan):
        row_widths = widths_across(plan, ends, strips[0].start.stitches * of_rows[0].width / of_rows[0].stitches)
    else:
        row_widths = [row.across * gauge.width / gauge.stitches for row, gauge in zip(rows, of_rows, strict=True)]
    sides = side_edges(piece) if strips[0].worked == "rows" else ()
    spans = [(lost.get((edge.name, edge.side), 0.0), *_seam_rows(edge, plan)) for edge in sides]
    off = [
        sum(stitches for stitches, low, high in spans if low < number <= high) * gauge.width / gauge.stitches
        for number, gauge in enumerate(of_rows, start=1)
    ]
    finished = [width - seam for width, seam in zip(row_widths, off, strict=True)]
    first, last = of_rows[0], of_rows[-1]
    top_names = (piece.top, "shoulder")
    wedged = [(group.after, gained(strips[0], group.after), of_rows[group.after].height / of_rows[group.after].rows) for group in strips[0].short]
    rows_length = sum(gauge.height / gauge.rows * row.height for gauge, row in zip(of_rows, rows, strict=True))
    length = rows_length - lost.get((piece.bottom, None), 0.0) * first.height / first.rows
    length -= max(lost.get((name, None), 0.0) for name in top_names) * last.height / last.rows
    measures = {
        piece.bottom: finished[0], piece.top: finished[-1], "top": finished[-1], "bottom": finished[0], "top_width": finished[-1],
        "width": finished[-1 if piece.start.kind == "centre" else 0],
        "widest": max(finished), "narrowest": min(finished), "length": length,
        "longest": length + sum(max(stitches) * row for _, stitches, row in wedged),
    }
    joined = joined_measures(piece, plan, rows_length, last)
    rim = {RIM: joined.pop(RIM)} if joined else {}
    return Remade(measures | joined, _edges(piece, plan, strips, row_widths[-1], ends, of_rows, sides, wedged) | rim, rows_length)


def span_of(edge: NamedEdge, plan: PiecePlan) -> tuple[int, int]:
    """The rows of an edge: after the first figure, up to the second."""
    ends = {mark.level: mark.row for mark in plan.marks if mark.side == edge.side}
    return 0 if edge.bottom is None else ends[edge.bottom], plan.edge_end(edge.side) if edge.top is None else ends[edge.top]


def _seam_rows(edge: NamedEdge, plan: PiecePlan) -> tuple[int, int]:
    """The rows that a seam on an edge takes stitches off: a shoulder's slope goes on with its armhole."""
    low, high = span_of(edge, plan)
    return low, plan.rows if edge.top is None else high


def _edges(
    piece: Piece, plan: PiecePlan, strips: Sequence[Strip], across: float, ends: RowEnds, of_rows: Sequence[Gauge], sides: Sequence[NamedEdge],
    wedged: Wedged,
) -> dict[str, float]:
    """Stitch edges by their stitches, row ends along their line; of one name on two sides the first."""
    bottom = strips[0].start.stitches * of_rows[0].width / of_rows[0].stitches
    edges = {piece.bottom: bottom, piece.top: across, "bottom": bottom, "top": across}
    edges |= opening_edges(piece, strips[0], of_rows)
    edges |= top_edges(plan, strips, ends, of_rows[-1].width / of_rows[-1].stitches)
    whole = [NamedEdge(side, side, None, None) for side in SIDES] if sides else []
    for edge in (*sides, *whole):
        low, high = span_of(edge, plan)
        more = sum(stitches[0 if edge.side == "starting" else -1] * row for after, stitches, row in wedged if low <= after < high)
        edges.setdefault(edge.name, along(getattr(ends, edge.side)[low:high]) + more)
    return edges


def _environment(label: str, design: Design, bodies: Sized[Body], remade: Mapping[str, Sized[Remade]], gauges: Gauges) -> Environment:
    """Formulas of one size, answered from its body, its ease and the pieces measured anew."""
    place = bodies.labels.index(label)
    measures = {name: value.mm for name, value in bodies.values[place].values.items()}
    ease = {each.measure: each.values[place] for each in design.sizes.ease}
    pieces = {key: sized.values[place] for key, sized in remade.items()}

    def looked_up(call: Call, kind: str) -> float:
        argument = call.arguments[0] if call.arguments else None
        piece, _, name = argument.name.partition(".") if isinstance(argument, Name) else ("", "", "")
        known = (pieces[piece].edges if kind == "edge" else pieces[piece].measures) if piece in pieces else {}
        if name not in known:
            hint = f"it has {', '.join(known)}" if known else f"write it like {kind}({next(iter(pieces))}.{'top' if kind == 'edge' else 'width'})"
            raise FormulaError(f"{piece or 'this'} has no {'edge' if kind == 'edge' else 'measure'} {name}".rstrip(), call.column, hint)
        return known[name]

    def whole_rows(call: Call, env: Environment) -> float:
        fabric = call.arguments[1] if len(call.arguments) == 2 else None
        if not isinstance(fabric, Name) or fabric.name not in gauges:
            raise FormulaError("in_rows() takes a length and a fabric", call.column, f"write it like in_rows(4 cm, {next(iter(gauges))})")
        gauge = gauges[fabric.name]
        return max(1, half_up(env.value(call.arguments[0]).amount * gauge.rows / gauge.height)) * gauge.height / gauge.rows

    return Environment(label, measures, ease, named_formulas(design), {
        "finished": lambda call, _env: looked_up(call, "measure"),
        "edge": lambda call, _env: looked_up(call, "edge"),
        "in_rows": whole_rows,
    }, dimensions=design.sizes.dimensions_of(label))


def _measurements(design: Design, environments: Sized[Environment]) -> tuple[tuple[Measured, ...], tuple[Problem, ...]]:
    """Each finished measurement in all sizes; the located faults of those that can't be worked out."""
    measured: list[Measured] = []
    faults: list[Problem] = []
    for measure in design.finished:
        try:
            measured.append(_measurement(measure, environments))
        except ProblemsFound as found:
            faults += found.problems
    return tuple(measured), tuple(faults)


def _measurement(measure: FinishedMeasure, environments: Sized[Environment]) -> Measured:
    def worked_out(formula: Formula) -> Sized[float]:
        return gather(environments.labels, lambda size: environments[size].length(formula))

    return Measured(measure, worked_out(measure.measure), worked_out(measure.wanted) if measure.wanted else None)
