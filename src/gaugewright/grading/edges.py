"""Named edges of a graded piece and its finished measures.

Every edge has a true length: row ends along the line through them, stitch edges by their stitches.
"""

from collections.abc import Mapping

from gaugewright.design.model import Piece
from gaugewright.gauge.model import Gauge
from gaugewright.grading.model import EdgeLength, Outline, Strip
from gaugewright.grading.outline import run_length
from gaugewright.grading.plan import PiecePlan, ShouldersPlan
from gaugewright.grading.take_up import TakeUps


def edge_lengths(piece: Piece, plan: PiecePlan, strip: Strip, outline: Outline, gauges: Mapping[str, Gauge]) -> dict[str, EdgeLength]:
    """Each named edge's length in this size."""
    bottom = gauges[strip.rows[0].fabric] if strip.rows else gauges[piece.start.fabric]
    top = gauges[strip.rows[-1].fabric] if strip.rows else bottom
    edges = {piece.bottom: _stitch_edge(strip.start.stitches, bottom)}
    for part in plan.sections:
        if isinstance(part, ShouldersPlan):
            edges["shoulder"] = _stitch_edge(part.shoulder, top)
            edges["neck"] = _stitch_edge(part.neck, top)
    if "shoulder" not in edges:
        edges[piece.top] = _stitch_edge(strip.last_count, top)
    rows_at = {mark.level: mark.row for mark in plan.marks}
    for edge in piece.edges:
        first = 0 if edge.bottom is None else rows_at[edge.bottom]
        last = len(strip.rows) if edge.top is None else rows_at[edge.top]
        points = (outline.starting if edge.side == "starting" else outline.far)[first : last + 1]
        edges[edge.name] = EdgeLength(run_length(points), last - first, 0)
    return edges


def _stitch_edge(stitches: int, gauge: Gauge) -> EdgeLength:
    return EdgeLength(gauge.width_of(stitches), 0, stitches)


MEASURES = ("width", "bottom", "top_width", "widest", "narrowest", "length")


def finished_measures(piece: Piece, strip: Strip, outline: Outline, gauges: Mapping[str, Gauge], taken: TakeUps) -> tuple[dict[str, float], dict[str, float]]:
    """Finished and worked measures in mm, by name: finished = worked - take-up.

    `width` and `bottom` are taken at the start, `top_width` at the last row, in rounds as the whole
    girth; `length` is all rows, less what a seam on the top or bottom edge takes.
    """
    widths = [gauges[row.fabric].width_of(row.makes) for row in strip.rows]
    worked = {
        "width": widths[0], "bottom": widths[0], "top_width": widths[-1],
        "widest": max(widths), "narrowest": min(widths), "length": outline.heights[-1],
    }
    low = _side_take_up(piece, strip, gauges, taken, 0)
    high = _side_take_up(piece, strip, gauges, taken, -1)
    off = {
        "width": low, "bottom": low, "top_width": high, "widest": low, "narrowest": high,
        "length": _end_take_up(piece, strip, gauges, taken),
    }
    return {name: worked[name] - off[name] for name in MEASURES}, worked


def _side_take_up(piece: Piece, strip: Strip, gauges: Mapping[str, Gauge], taken: TakeUps, end: int) -> float:
    total = 0.0
    for side in ("starting", "far"):
        names = [edge.name for edge in piece.edges if edge.side == side]
        if names:
            total += taken.get((piece.key, names[end]), 0.0)
    return total * gauges[strip.rows[end].fabric].stitch_width


def _end_take_up(piece: Piece, strip: Strip, gauges: Mapping[str, Gauge], taken: TakeUps) -> float:
    bottom = taken.get((piece.key, piece.bottom), 0.0) * gauges[strip.rows[0].fabric].row_height
    top = max(taken.get((piece.key, name), 0.0) for name in (piece.top, "shoulder"))
    return bottom + top * gauges[strip.rows[-1].fabric].row_height
