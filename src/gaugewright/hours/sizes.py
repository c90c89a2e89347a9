"""The hours of one size: each piece, the finishing, all of it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from gaugewright.design.model import Design
from gaugewright.grading.model import GradedPiece
from gaugewright.hours.duration import Duration, total
from gaugewright.hours.finishing import Chore, finishing, made
from gaugewright.hours.paces import THE_DESIGNER, Maker, Pace, paces
from gaugewright.hours.work import Work, work_of


@dataclass(frozen=True, slots=True)
class PieceTime:
    """A piece as often as it is made: stitches' worth and rows in all, and how long they take."""

    key: str
    make: int
    stitches: float
    rows: int
    time: Duration


@dataclass(frozen=True, slots=True)
class SizeTime:
    """One size: pieces in the spec's order, and what finishes them."""

    pieces: tuple[PieceTime, ...]
    finishing: tuple[Chore, ...]

    @property
    def finish(self) -> Duration:
        """All finishing."""
        return total(one.time for one in self.finishing)

    @property
    def whole(self) -> Duration:
        """Pieces and finishing."""
        return total(one.time for one in self.pieces) + self.finish


def size_time(design: Design, pieces: Mapping[str, GradedPiece], maker: Maker = THE_DESIGNER) -> SizeTime:
    """The hours of one size at a maker's paces."""
    by_fabric = paces(design, maker)
    measured = frozenset(key for key, pace in by_fabric.items() if pace.basis != "published" and not pace.of)
    work = {piece.key: work_of(design, pieces[piece.key], measured) for piece in design.pieces}
    found = (_piece_time(piece.key, work[piece.key], made(piece, pieces[piece.key]), by_fabric) for piece in design.pieces)
    return SizeTime(tuple(found), finishing(design, pieces, work, maker.times))


def _piece_time(key: str, work: Work, make: int, by_fabric: Mapping[str, Pace]) -> PieceTime:
    once = total(_times(work, by_fabric))
    return PieceTime(key, make, sum(work.stitches.values()) * make, sum(work.rows.values()) * make, once.times(make))


def _times(work: Work, by_fabric: Mapping[str, Pace]) -> Iterable[Duration]:
    yield from (by_fabric[fabric].stitch.times(count) for fabric, count in work.stitches.items())
    yield from (by_fabric[fabric].row.times(count) for fabric, count in work.rows.items())


def fabrics_worked(design: Design, pieces: Mapping[str, GradedPiece]) -> tuple[str, ...]:
    """The fabrics whose stitches a pattern is worked of, in the spec's order."""
    used = {run.fabric for piece in pieces.values() for strip in piece.strips for row in strip.all_rows() for run in row.runs}
    return tuple(fabric.key for fabric in design.fabrics if fabric.key in used)
