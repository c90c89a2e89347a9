"""What is done once the pieces are worked: seams by their length, ends by their number, picking up, buttons, laying out."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from gaugewright.design.model import Design, Piece
from gaugewright.grading.model import GradedPiece
from gaugewright.hours.duration import Duration, taking
from gaugewright.hours.work import Work
from gaugewright.trade.work_times import work_time
from gaugewright.yarn.ends import ends_of_pieces
from gaugewright.yarn.seams import sewn

Kind = Literal["seams", "ends", "picking up", "buttons", "laying out"]


@dataclass(frozen=True, slots=True)
class Chore:
    """One kind of finishing: how much of it (mm of seams, or a number) and how long it takes."""

    kind: Kind
    amount: float
    time: Duration


def finishing(design: Design, pieces: Mapping[str, GradedPiece], work: Mapping[str, Work], times: float) -> tuple[Chore, ...]:
    """The chores of one size, those that there are."""
    seams = tuple(sewn(design, pieces))
    length = sum(one.length for one in seams)
    ends = sum(number for colours in ends_of_pieces(design, pieces).values() for number in colours.values()) + sum(one.ends for one in seams)
    buttons = sum(piece.buttonholes.count * piece.make for piece in design.pieces if piece.buttonholes is not None)
    picked = sum(work[piece.key].picked_up * made(piece, pieces[piece.key]) for piece in design.pieces)
    done = (
        Chore("picking up", picked, taking(work_time("pick up"), picked)),
        Chore("seams", length, taking(work_time("seam"), length / 10)),
        Chore("ends", ends, taking(work_time("end"), ends)),
        Chore("buttons", buttons, taking(work_time("button"), buttons)),
        Chore("laying out", 1, taking(work_time("finish"), 1)),
    )
    return tuple(Chore(one.kind, one.amount, one.time.times(times)) for one in done if one.amount)


def made(piece: Piece, graded: GradedPiece) -> int:
    """How often a piece is made: of a grid as many as its size takes."""
    return graded.layout.motifs if graded.layout is not None else piece.make
