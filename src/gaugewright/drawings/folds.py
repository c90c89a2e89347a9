"""Where an edge is folded and sewn to itself: a mark at its middle."""

from dataclasses import replace

from gaugewright.design.model import Design, Piece
from gaugewright.design.sides import is_folded
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.primitives import Point
from gaugewright.grading.model import Outline
from gaugewright.grading.plan import PiecePlan


def with_folds(figure: PieceFigure, piece: Piece, design: Design, plan: PiecePlan, outline: Outline) -> PieceFigure:
    """The figure with a mark at the fold of each edge sewn to itself; a tube has its folds at its sides, unmarked."""
    if figure.in_rounds:
        return figure
    edges = dict.fromkeys(seam.join.edge for seam in design.seams if seam.join.piece == piece.key and is_folded(design, seam))
    points = [_middle(piece, edge, plan, outline) for edge in edges]
    return replace(figure, marks=(*figure.marks, *(("fold", point) for point in points if point is not None)))


def _middle(piece: Piece, edge: str, plan: PiecePlan, outline: Outline) -> Point | None:
    """The middle of a row of stitches or of row ends; none of a neck or a cap, whose middle is plain to see."""
    row = 0 if edge in ("bottom", piece.bottom) else plan.rows if edge in ("top", piece.top) else None
    if row is not None:
        (left, y), (right, _) = outline.starting[row], outline.far[row]
        return (left + right) / 2, y
    named = next((one for one in piece.edges if one.name == edge), None)
    side = named.side if named else edge
    if side not in ("starting", "far"):
        return None
    rows = {mark.level: mark.row for mark in plan.marks if mark.side == side}
    low = rows[named.bottom] if named and named.bottom else 0
    high = rows[named.top] if named and named.top else plan.edge_end(side)  # type: ignore[arg-type]
    return (outline.starting if side == "starting" else outline.far)[(low + high) // 2]
