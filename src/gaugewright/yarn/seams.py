"""All that is sewn in one size: how long, in which colour, with how many ends.

In: graded pieces of one size. Out: one entry for each length of yarn, but for joined motifs all their joins as one.
"""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from gaugewright.design.model import Attachment, Design
from gaugewright.design.sides import is_folded, on_both_sides
from gaugewright.grading.layout_model import Layout
from gaugewright.grading.model import ChainStart, GradedPiece
from gaugewright.yarn.turns import joining_colour

ENDS = 2
"""A length of yarn has two ends."""


class Sewn(NamedTuple):
    """So many mm sewn in a piece's colour, and the ends that are woven in for it."""

    piece: str
    colour: str
    length: float
    ends: int = ENDS


def sewn(design: Design, pieces: Mapping[str, GradedPiece]) -> Iterator[Sewn]:
    """Seams of the pieces, in the first colour of the joined piece's last row; what is sewn on; joined motifs; bands worked sideways."""
    yield from _seams(design, pieces)
    yield from _sewn_on(design, pieces)
    for piece in design.pieces:
        graded = pieces[piece.key]
        if graded.layout is not None:
            joins = graded.layout.in_rows + graded.layout.between_rows
            yield Sewn(piece.key, joining_colour(graded), graded.edges["top"].length / graded.layout.sides * joins, joining_ends(graded.layout))
        yield from _bands(piece.key, graded, piece.make)


def joining_ends(layout: Layout) -> int:
    """Two ends of each length that motifs are joined with: one for each join in a row, and one from row to row."""
    return ENDS * (layout.in_rows + layout.down - 1)


def _seams(design: Design, pieces: Mapping[str, GradedPiece]) -> Iterator[Sewn]:
    """On both sides of the work a seam is sewn twice; an edge folded and sewn to itself is half as long as a seam."""
    for seam in design.seams:
        piece = pieces[seam.join.piece]
        length = piece.edges[seam.join.edge].length / (2 if is_folded(design, seam) else 1)
        yield from (Sewn(seam.join.piece, _last(piece), length),) * (2 if on_both_sides(design, seam) else 1)


def _sewn_on(design: Design, pieces: Mapping[str, GradedPiece]) -> Iterator[Sewn]:
    """A piece sewn on another by its sides and base; its top stays open. A piece made several times is sewn on as often in all."""
    for one in design.attachments:
        piece = pieces[one.piece]
        around = sum(piece.edges[name].length for name in ("starting", "far", "bottom") if name in piece.edges)
        yield from (Sewn(one.piece, _last(piece), around),) * _times(design, one)


def _times(design: Design, one: Attachment) -> int:
    places = sum(1 for other in design.attachments if other.piece == one.piece)
    return max(1, design.piece(one.piece).make // places)


def _bands(key: str, graded: GradedPiece, make: int) -> Iterator[Sewn]:
    """A band worked sideways has its ends sewn together where it goes round, and is sewn on where it isn't joined as it grows."""
    for strip in graded.strips:
        join = strip.start.join if isinstance(strip.start, ChainStart) else None
        if join is not None:
            lengths = (graded.worked["width"] if join.ring else 0.0, graded.worked["length"] if join.sewn else 0.0)
            yield from (Sewn(key, strip.rows[0].colours[0], length) for length in lengths * make if length)


def _last(piece: GradedPiece) -> str:
    return piece.main.rows[-1].colours[0]
