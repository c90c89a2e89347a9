"""The outline of a triangle from the middle of its long edge, its edges, and its measures.

At the long edge rows meet it at 45 degrees and at the spine one another at a right angle, so each row takes
both halves of the long edge, and the spine, the square root of two times its height further.
"""

import math
from collections.abc import Mapping

from gaugewright.design.model import Piece
from gaugewright.gauge.model import Gauge
from gaugewright.grading.model import EdgeLength, Strip
from gaugewright.grading.outline import edge_length
from gaugewright.grading.outline_model import Outline
from gaugewright.grading.take_up import TakeUps

Measures = dict[str, float]


def triangle_edges(piece: Piece, strip: Strip, outline: Outline, gauge: Gauge) -> dict[str, EdgeLength]:
    """The long edge, made of all row ends; each half of it by its side; and the last row, along the other two edges."""
    rows = len(strip.rows)
    halves = {side: EdgeLength(edge_length(outline, side, 0, rows), rows, 0) for side in ("starting", "far")}
    long = EdgeLength(sum(half.length for half in halves.values()), 2 * rows, 0)
    last = EdgeLength(gauge.width_of(strip.last_count), 0, strip.last_count)
    return {piece.bottom: long, piece.top: last, **halves, "bottom": long, "top": last}


def triangle_measures(
    piece: Piece, edges: Mapping[str, EdgeLength], outline: Outline, gauge: Gauge, taken: TakeUps
) -> tuple[Measures, Measures]:
    """Finished and worked measures: `width` along the long edge, `length` from its middle to the point. Stitches that
    are taken up along the long edge lie across it at 45 degrees."""
    width, depth = edges[piece.bottom].length, outline.heights[-1]
    lost = taken.get((piece.key, piece.bottom), 0.0) * gauge.stitch_width / math.sqrt(2)
    lost += taken.get((piece.key, piece.top), 0.0) * gauge.row_height * math.sqrt(2)

    def measures(less: float) -> Measures:
        across = {name: width - 2 * less for name in (piece.bottom, "bottom", "width", "widest")}
        along = dict.fromkeys((piece.top, "top", "top_width"), edges[piece.top].length)
        return across | along | {"narrowest": 0.0, "length": depth - less, "longest": depth - less}

    return measures(lost), measures(0.0)
