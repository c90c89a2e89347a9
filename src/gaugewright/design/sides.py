"""Seams that a spec names once and a maker sews twice, on both sides of the garment; and edges folded and sewn to themselves."""

from gaugewright.design.model import Design, EdgeName, Piece, Seam, Shoulders
from gaugewright.design.shapes import Neck
from gaugewright.vocabulary import RowEdge


def on_both_sides(design: Design, seam: Seam) -> bool:
    """Whether all edges of a seam are there twice: pieces made twice, or edges on both sides of a piece.

    What is sewn to itself uses both sides up.
    """
    if _to_itself(design, seam):
        return design.piece(seam.join.piece).make == 2
    return all(_there_twice(design, end) for end in (seam.join, *seam.to))


def _there_twice(design: Design, end: EdgeName) -> bool:
    piece = design.piece(end.piece)
    if piece.make == 2:
        return True
    if end.edge == "shoulder" and piece.sections and isinstance(piece.sections[-1], (Shoulders, Neck)):
        return True
    return len(_sides(piece, end.edge)) == 2


def is_folded(design: Design, seam: Seam) -> bool:
    """Whether a seam folds one edge in half and sews it to itself: the top of a hood, the heel of a slipper.

    A name on both sides of a piece is two edges, which are sewn to each other.
    """
    return _to_itself(design, seam) and len(_sides(design.piece(seam.join.piece), seam.join.edge)) < 2


def _to_itself(design: Design, seam: Seam) -> bool:
    piece = design.piece(seam.join.piece)
    ends = {(end.piece, _own_name(piece, end.edge)) for end in seam.to}
    return ends == {(piece.key, _own_name(piece, seam.join.edge))}


def _own_name(piece: Piece, edge: str) -> str:
    """The piece's own name for an end, or for a side that is one edge and no other side's."""
    of_side = [one.name for one in piece.edges if one.side == edge]
    if len(of_side) == 1 and len(_sides(piece, of_side[0])) == 1:
        return of_side[0]
    return {"bottom": piece.bottom, "top": piece.top}.get(edge, edge)


def _sides(piece: Piece, name: str) -> set[RowEdge]:
    return {edge.side for edge in piece.edges if edge.name == name}
