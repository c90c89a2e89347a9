"""Ends of yarn to weave in, by piece and colour: two of every strand, but none where a piece goes on uncut from another."""

from collections.abc import Mapping

from gaugewright.design.model import Design
from gaugewright.grading.divide_start import DivideStart
from gaugewright.grading.go_on_start import GoOnStart
from gaugewright.grading.model import GradedPiece
from gaugewright.grading.strands import ends_by_colour
from gaugewright.yarn.turns import made_by_colour


def ends_of_pieces(design: Design, pieces: Mapping[str, GradedPiece]) -> dict[str, dict[str, int]]:
    """Ends of each yarn in one size, for all that a piece is made of."""
    found: dict[str, dict[str, int]] = {piece.key: {} for piece in design.pieces}
    for piece in design.pieces:
        for colour, ends in _of_one(design, pieces, piece.key).items():
            for own, times in made_by_colour(piece, pieces[piece.key])(colour):
                found[piece.key][own] = found[piece.key].get(own, 0) + ends * times
    return found


def any_goes_on(pieces: Mapping[str, GradedPiece]) -> bool:
    """Whether a piece goes on from another with the same yarn."""
    return any(_goes_on_from(pieces, key) for key in pieces)


def _of_one(design: Design, pieces: Mapping[str, GradedPiece], key: str) -> dict[str, int]:
    """Ends by colour of one piece of its kind: its yarn's first is the last of the piece before where that goes on."""
    ends = ends_by_colour(pieces[key].strips, design.piece(key).colours.carry)
    going_on = [other.key for other in design.pieces if _goes_on_from(pieces, other.key) == key]
    for colour in ([_first(pieces[key])] if _goes_on_from(pieces, key) else []) + [_first(pieces[other]) for other in going_on]:
        ends[colour] -= 1
    return ends


def _goes_on_from(pieces: Mapping[str, GradedPiece], key: str) -> str:
    """The piece from whose last stitch this one goes on with the same yarn; none else.

    A yoke's yarn goes on with its body; the sleeves are joined anew.
    """
    start = pieces[key].main.start
    if not isinstance(start, (GoOnStart, DivideStart)) or isinstance(start, DivideStart) and start.part != "body":
        return ""
    return start.piece if pieces[start.piece].main.rows[-1].runs[-1].colour == _first(pieces[key]) else ""


def _first(piece: GradedPiece) -> str:
    return piece.main.rows[0].runs[0].colour
