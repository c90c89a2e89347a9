"""The rim of joined motifs: the one edge that a grid has, and the border that is picked up round it."""

from collections.abc import Iterator

from gaugewright.design.model import Design, Piece
from gaugewright.spec.names import RIM as RIM


def on_rim(piece: Piece, design: Design) -> bool:
    """Whether a piece is picked up round joined motifs, and on nothing else."""
    return piece.start.kind == "pick up" and len(piece.start.edges) == 1 and any(_rims(piece, design))


def names_rim(piece: Piece, design: Design) -> bool:
    """Whether a rim is among the edges that a piece is made on."""
    return any(_rims(piece, design))


def border_of(piece: Piece, design: Design) -> Piece | None:
    """The border picked up round a piece's grid; None where there is none."""
    return next((other for other in design.pieces if other.start.kind == "pick up" and (piece.key, RIM) in other.start.edges), None) if piece.grid else None


def _rims(piece: Piece, design: Design) -> Iterator[bool]:
    keys = {one.key for one in design.pieces if one.grid is not None}
    return (key in keys and name == RIM for key, name in piece.start.edges)
