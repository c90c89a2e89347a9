"""Named edges of a graded piece and its finished measures.

Every edge has a true length: row ends along the line through them, stitch edges by their stitches.
"""

from collections.abc import Mapping

from gaugewright.design.model import NamedEdge, Piece
from gaugewright.design.rims import RIM
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.layout_model import Layout, with_border
from gaugewright.grading.model import EdgeLength, Outline, Strip
from gaugewright.grading.across import stitches_across
from gaugewright.grading.outline import edge_length
from gaugewright.grading.opened import opened_lengths
from gaugewright.grading.rim import rim_of
from gaugewright.grading.shape_edges import shape_edges
from gaugewright.grading.slits import slit_lengths
from gaugewright.grading.plan import PiecePlan
from gaugewright.grading.take_up import SIDES, TakeUps, edge_take_up, row_end_edges
from gaugewright.grading.yokes import yoke_edges
from gaugewright.grading.triangle_edges import triangle_edges, triangle_measures
from gaugewright.tolerances import seam_tolerance

Gauges = Mapping[str, Gauge]


def edge_lengths(
    piece: Piece, plan: PiecePlan, strips: tuple[Strip, ...], outline: Outline, gauges: Gauges, size: str, layout: Layout | None = None
) -> dict[str, EdgeLength]:
    """Each edge's length in this size: those the piece names, and those that every piece has; the rim of its joined `layout`."""
    strip = strips[0]
    if outline.spine:
        return triangle_edges(piece, strip, outline, gauges[strip.rows[-1].fabric])
    first, last = gauges[strip.rows[0].fabric], gauges[strips[-1].rows[-1].fabric]
    bottom = _stitch_edge(strip.start.stitches, first)
    top = _stitch_edge(stitches_across(plan, strips)[-1], last)
    edges = {piece.bottom: bottom}
    edges |= shape_edges(plan, outline, last) | yoke_edges(plan.sections[-1], last) | slit_lengths(plan.sections, gauges)
    edges |= opened_lengths(plan.sections[-1], last)
    edges[piece.top] = top
    if layout is not None and piece.grid is not None:
        edges[RIM] = _rim(layout, top.stitches)
    if strip.worked == "rows":
        edges |= _row_end_edges(piece, plan, outline, gauges, first, size)
    return edges | {"bottom": bottom, "top": top}


def _stitch_edge(stitches: int, gauge: Gauge) -> EdgeLength:
    return EdgeLength(gauge.width_of(stitches), 0, stitches)


def _rim(layout: Layout, stitches: int) -> EdgeLength:
    """All round joined motifs, each of which has so many stitches round it."""
    rim = rim_of(layout)
    return EdgeLength(rim.length, 0, rim.sides * stitches // layout.sides, layout=layout)


def _row_end_edges(piece: Piece, plan: PiecePlan, outline: Outline, gauges: Gauges, gauge: Gauge, size: str) -> dict[str, EdgeLength]:
    """Both sides' edges. One name on both sides is one edge, so its two lengths must agree."""
    found: dict[str, EdgeLength] = {}
    for edge in piece.edges:
        length = _row_end_edge(edge, plan, outline, gauges)
        before = found.setdefault(edge.name, length)
        if abs(before.length - length.length) > seam_tolerance(before.length, gauge.row_height):
            both = f"{before.length / 10:.1f} cm long on one side and {length.length / 10:.1f} cm on the other"
            message = f"{edge.name} of {piece.key} is {both}"
            hint = "name the two sides apart, under `starting` and `far`"
            raise ProblemsFound([Problem("edge-twice", message, piece.origin, hint, size)])
    for side in SIDES:
        found[side] = _row_end_edge(NamedEdge(side, side, None, None), plan, outline, gauges)
    return found


def _row_end_edge(edge: NamedEdge, plan: PiecePlan, outline: Outline, gauges: Gauges) -> EdgeLength:
    """Along its row ends, those of a wedge that is deepest at this edge among them."""
    first, last = _rows_between(edge, plan)
    gained = {w.cloth.fabric: w.gained_at(edge.side) for after, w in plan.wedges() if first <= after < last}
    corners = sum(first < row <= last for row in outline.left[0 if edge.side == "starting" else 1])
    wedged = sum(gauges[fabric].height_of(rows) for fabric, rows in gained.items())
    return EdgeLength(edge_length(outline, edge.side, first, last) + wedged, last - first + sum(gained.values()), 0, corners)


def _rows_between(edge: NamedEdge, plan: PiecePlan) -> tuple[int, int]:
    """The rows after which the edge begins and ends."""
    rows_at = {mark.level: mark.row for mark in plan.marks if mark.side == edge.side}
    return 0 if edge.bottom is None else rows_at[edge.bottom], plan.edge_end(edge.side) if edge.top is None else rows_at[edge.top]


Measures = dict[str, float]


def finished_measures(
    piece: Piece, plan: PiecePlan, strips: tuple[Strip, ...], outline: Outline, gauges: Gauges, taken: TakeUps, layout: Layout | None = None
) -> tuple[Measures, Measures]:
    """Finished and worked measures in mm, by name: finished = worked - take-up.

    `width` and `bottom` are taken at the start (the width of what begins at a centre at its last round),
    `top_width` at the last row, in rounds as the whole girth; a width loses what the seams at its own row take, and is measured across a neck and over the
    shoulders' slopes. `length` is all rows, less what a seam on the top or bottom edge takes; `longest` is that with a wedge.
    Of joined motifs, and of a border round them, `layout` is how they lie.
    """
    strip = strips[0]
    if outline.spine:
        gauge = gauges[strip.rows[-1].fabric]
        return triangle_measures(piece, triangle_edges(piece, strip, outline, gauge), outline, gauge, taken)
    rows = (*strip.rows, *(strips[-1].rows if len(strips) > 1 else ()))
    worked = [gauges[row.fabric].width_of(count) for row, count in zip(rows, stitches_across(plan, strips), strict=True)]
    losses = _losses(piece, plan, taken) if strip.worked == "rows" else [0.0] * len(worked)
    finished = [
        width - loss * gauges[row.fabric].stitch_width for width, loss, row in zip(worked, losses, rows, strict=True)
    ]
    length = outline.heights[-1]
    wedged = sum(gauges[wedge.cloth.fabric].height_of(wedge.short) for _, wedge in plan.wedges())
    joined = _joined(piece, layout, length)
    return (
        _measures(piece, finished, length - _end_take_up(piece, strip, gauges, taken), wedged) | joined,
        _measures(piece, worked, length, wedged) | joined,
    )


def _joined(piece: Piece, layout: Layout | None, depth: float) -> Measures:
    """Width and length of joined motifs, and of those that a border goes round with it."""
    if layout is None:
        return {}
    return dict(zip(("joined_width", "joined_length"), with_border(layout, 0.0 if piece.grid is not None else depth), strict=True))


def _measures(piece: Piece, widths: list[float], length: float, wedged: float) -> Measures:
    first, last = widths[0], widths[-1]
    own = {piece.bottom: first, piece.top: last, "top": last}
    return own | {
        "width": last if piece.start.kind == "centre" else first, "bottom": first, "top_width": last, "widest": max(widths), "narrowest": min(widths), "length": length, "longest": length + wedged,
    }


def _losses(piece: Piece, plan: PiecePlan, taken: TakeUps) -> list[float]:
    """Stitches that seams take off each row, at both sides together."""
    losses = [0.0] * plan.rows
    for side in SIDES:
        for edge in row_end_edges(piece, side):
            loss = edge_take_up(piece, taken, edge)
            first, last = _rows_between(edge, plan)
            last = plan.rows if edge.top is None else last
            for row in range(first, last):
                losses[row] += loss
    return losses


def _end_take_up(piece: Piece, strip: Strip, gauges: Gauges, taken: TakeUps) -> float:
    bottom = taken.get((piece.key, piece.bottom), 0.0) * gauges[strip.rows[0].fabric].row_height
    top = max(taken.get((piece.key, name), 0.0) for name in (piece.top, "shoulder"))
    return bottom + top * gauges[strip.rows[-1].fabric].row_height
