"""What is done once the pieces are worked: seams by their length, ends by their number, picking up, buttons, laying out."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from gaugewright.design.model import Attachment, Design, Piece
from gaugewright.design.sides import is_folded, on_both_sides
from gaugewright.grading.model import ChainStart, GradedPiece
from gaugewright.grading.strands import ends_by_colour
from gaugewright.hours.duration import Duration, taking
from gaugewright.hours.work import Work
from gaugewright.trade.work_times import work_time
from gaugewright.yarn.turns import made_by_colour

Kind = Literal["seams", "ends", "picking up", "buttons", "laying out"]


@dataclass(frozen=True, slots=True)
class Chore:
    """One kind of finishing: how much of it (mm of seams, or a number) and how long it takes."""

    kind: Kind
    amount: float
    time: Duration


def finishing(design: Design, pieces: Mapping[str, GradedPiece], work: Mapping[str, Work], times: float) -> tuple[Chore, ...]:
    """The chores of one size, those that there are."""
    seams = tuple(_seams(design, pieces))
    buttons = sum(piece.buttonholes.count * piece.make for piece in design.pieces if piece.buttonholes is not None)
    picked = sum(work[piece.key].picked_up * made(piece, pieces[piece.key]) for piece in design.pieces)
    done = (
        Chore("picking up", picked, taking(work_time("pick up"), picked)),
        Chore("seams", sum(seams), taking(work_time("seam"), sum(seams) / 10)),
        Chore("ends", (ends := _ends(design, pieces) + 2 * len(seams)), taking(work_time("end"), ends)),
        Chore("buttons", buttons, taking(work_time("button"), buttons)),
        Chore("laying out", 1, taking(work_time("finish"), 1)),
    )
    return tuple(Chore(one.kind, one.amount, one.time.times(times)) for one in done if one.amount)


def made(piece: Piece, graded: GradedPiece) -> int:
    """How often a piece is made: of a grid as many as its size takes."""
    return graded.layout.motifs if graded.layout is not None else piece.make


def _ends(design: Design, pieces: Mapping[str, GradedPiece]) -> int:
    """Two of each strand of the pieces; a seam's own are counted with the seams."""
    found = 0
    for piece in design.pieces:
        of_colour = made_by_colour(piece, pieces[piece.key])
        for colour, ends in ends_by_colour(pieces[piece.key].strips, piece.colours.carry).items():
            found += ends * sum(times for _, times in of_colour(colour))
    return found


def _seams(design: Design, pieces: Mapping[str, GradedPiece]) -> Iterator[float]:
    """The length in mm of each seam as often as it is sewn; of joined motifs all their joins as one."""
    for seam in design.seams:
        length = pieces[seam.join.piece].edges[seam.join.edge].length / (2 if is_folded(design, seam) else 1)
        yield from (length,) * (2 if on_both_sides(design, seam) else 1)
    for one in design.attachments:
        yield _around(design, one, pieces[one.piece])
    for piece in design.pieces:
        graded = pieces[piece.key]
        if graded.layout is not None:
            joins = graded.layout.in_rows + graded.layout.between_rows
            yield graded.edges["top"].length / graded.layout.sides * joins
        for strip in graded.strips:
            join = strip.start.join if isinstance(strip.start, ChainStart) else None
            lengths = () if join is None else ((graded.worked["width"] if join.ring else 0.0), (graded.worked["length"] if join.sewn else 0.0))
            yield from (length for length in lengths * piece.make if length)


def _around(design: Design, one: Attachment, graded: GradedPiece) -> float:
    """The sides and the base of a piece sewn on; its top stays open."""
    return sum(graded.edges[name].length for name in ("starting", "far", "bottom") if name in graded.edges)
