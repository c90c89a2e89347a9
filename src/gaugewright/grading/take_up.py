"""What seams take off: finished = worked - take-up.

A seam through one whole edge stitch on each side costs 4.6 cm of bust at 9 sts / 10 cm, so each
seam and each picked-up edge states its take-up, and widths are graded with it.
"""

from collections.abc import Iterator

from gaugewright.design.model import TAKE_UP_STITCHES, Design, NamedEdge, Piece
from gaugewright.grading.rings import picked_edges
from gaugewright.grading.stack import SAME_HEIGHT, level_height
from gaugewright.sizing.environment import Environment
from gaugewright.vocabulary import RowEdge

SIDES: tuple[RowEdge, RowEdge] = ("starting", "far")

TakeUps = dict[tuple[str, str], float]


def take_ups(design: Design) -> TakeUps:
    """Stitches (0, 1/2, 1) that each edge loses, by piece and name; an edge used twice loses the larger."""
    found: TakeUps = {}
    used = [
        (edge.piece, edge.edge, seam.take_up) for seam in design.seams for edge in (seam.join, *seam.to)
    ] + [
        (piece, edge, taker.start.take_up) for taker in design.pieces for piece, edge in picked_edges(design, taker)
    ]
    for piece_key, edge_name, take_up in used:
        piece = design.piece(piece_key)
        name = {"bottom": piece.bottom, "top": piece.top}.get(edge_name, edge_name)
        found[piece_key, name] = max(found.get((piece_key, name), 0.0), TAKE_UP_STITCHES[take_up])
    return found


def edge_take_up(piece: Piece, taken: TakeUps, edge: NamedEdge) -> float:
    """Stitches that a row-end edge loses, sewn by its own name or by its side's."""
    return max(taken.get((piece.key, name), 0.0) for name in (edge.name, edge.side))


def row_end_edges(piece: Piece, side: RowEdge) -> tuple[NamedEdge, ...]:
    """The named edges of one side from the bottom up; one of the side's own name where none is named."""
    return tuple(edge for edge in piece.edges if edge.side == side) or (NamedEdge(side, side, None, None),)


def side_take_up(piece: Piece, taken: TakeUps, height: float | None, env: Environment) -> float:
    """Stitches that seams take off the width at a height, at both sides; None means the top."""
    return sum(
        edge_take_up(piece, taken, edge) for side in SIDES for edge in _edge_at(piece, side, height, env)
    )


def _edge_at(piece: Piece, side: RowEdge, height: float | None, env: Environment) -> Iterator[NamedEdge]:
    """The side's edge at a height; a level itself belongs to the edge below it."""
    edges = row_end_edges(piece, side)
    if height is not None:
        for edge in edges:
            if edge.top is None or height <= level_height(edge.top, env) + SAME_HEIGHT:
                yield edge
                return
    yield edges[-1]
