"""Motifs whose yarns take turns: how many are made of each, and which one joins them."""

from collections.abc import Callable

from gaugewright.design.model import Piece
from gaugewright.grading.model import GradedPiece


def made_by_colour(piece: Piece, graded: GradedPiece) -> Callable[[str], tuple[tuple[str, int], ...]]:
    """In which yarns, and how often each, what is worked in a yarn of the piece's rows is made: motifs that begin in
    several by turns have these in place of the first.
    """
    layout, first = graded.layout, graded.main.rows[0].colours[0]

    def made(colour: str) -> tuple[tuple[str, int], ...]:
        if layout is not None and layout.turns and colour == first:
            return tuple(layout.by_colour().items())
        return ((colour, layout.motifs if layout else piece.make),)

    return made


def joining_colour(graded: GradedPiece) -> str:
    """The colour that motifs are joined in: that of their last round, or the first of those that take turns there."""
    first, last = graded.main.rows[0].colours[0], graded.main.rows[-1].colours[0]
    turns = graded.layout.turns if graded.layout else ()
    return turns[0] if turns and last == first else last
