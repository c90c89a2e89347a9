"""What the rows, the tails and the seams of one size take, counted but not yet weighed.

In: graded pieces of one size. Out: shares, each of one piece, one colour and one term: stitches' worth of a fabric,
or mm of strand. Nothing here knows what a stitch weighs, so that every end of a range is the same count.
"""

from collections.abc import Iterator, Mapping
from typing import Literal, NamedTuple

from gaugewright.design.model import Design, Fabric, Piece
from gaugewright.grading.model import ChainStart, GradedPiece, Row, Run, Strip
from gaugewright.rounding import up
from gaugewright.trade.tails import tail
from gaugewright.yarn.ends import ends_of_pieces
from gaugewright.yarn.seams import sewn
from gaugewright.yarn.turns import made_by_colour

Term = Literal["stitches", "picked up", "foundations", "tails", "seams", "swatches"]
"""What a garment takes, and swatches, which are apart from it."""

CHAIN_SHARE = 0.5
"""A foundation chain is taken as half a stitch (common practice, no source); a chain within a row stands for a stitch of it."""

SLIP_SHARE = 0.3
"""A slip stitch over the one below, or where a short row turns, is taken as three tenths of a stitch (common practice, no source)."""

SWATCH_LARGER = 4 / 3
"""A swatch is asked for with a third more stitches and rows than the gauge is told over."""

SHARES: Mapping[str, float] = {
    "leave": 0.0, "skip": 0.0, "wait": 0.0, "slip over": SLIP_SHARE, "anchor": SLIP_SHARE, "join": SLIP_SHARE,
}  # fmt: skip
"""Operations that take other yarn than the stitch they stand for."""


class Share(NamedTuple):
    """So many stitches' worth of a fabric, or, where it has none, mm of strand."""

    piece: str
    colour: str
    term: Term
    fabric: str
    stitch: str
    amount: float


def counted(design: Design, pieces: Mapping[str, GradedPiece]) -> tuple[Share, ...]:
    """All that one size takes, what is alike together, in order of the pieces; the swatches that are asked for last."""
    found: dict[tuple[str, str, Term, str, str], float] = {}
    for share in _shares(design, pieces):
        *key, amount = share
        found[tuple(key)] = found.get(tuple(key), 0.0) + amount  # type: ignore[index, arg-type]
    garment = tuple(Share(*key, amount) for key, amount in found.items() if amount)
    return (*garment, *_swatches(design, garment))


def _shares(design: Design, pieces: Mapping[str, GradedPiece]) -> Iterator[Share]:
    ends = ends_of_pieces(design, pieces)
    for piece in design.pieces:
        graded = pieces[piece.key]
        yield from _rows(piece, graded)
        for strip in graded.strips:
            yield from _foundation(piece, strip)
        yield from (_strand(piece.key, colour, "tails", number * tail("weave in")) for colour, number in ends[piece.key].items())
    yield from (_strand(one.piece, one.colour, "seams", tail("seam factor") * one.length) for one in sewn(design, pieces))


def _rows(piece: Piece, graded: GradedPiece) -> Iterator[Share]:
    made = made_by_colour(piece, graded)
    for strip in graded.strips:
        for row in strip.all_rows():
            each = share_of(row)
            for run in row.runs:
                term: Term = "picked up" if run.operation.kind == "picked up" else "stitches"
                for colour, times in made(run.colour):
                    yield Share(piece.key, colour, term, run.fabric, run.operation.stitch or "ch", each * stitches_worked(run) * times)


def share_of(row: Row) -> float:
    """What a stitch of the row counts for: in a stitch pattern the row weighs what the swatch's do, whatever it makes."""
    if row.placed is None:
        return 1.0
    return row.across / sum(stitches_worked(run) for run in row.runs)


def stitches_worked(run: Run) -> float:
    """Stitches' worth of yarn in a run: what is left or passed over takes none.

    >>> from gaugewright.grading.model import leave, slip_over, work
    >>> [stitches_worked(Run(kind, 10, "oat", "body")) for kind in (work("hdc"), leave(), slip_over())]
    [10.0, 0.0, 3.0]
    """
    worked = 1 if run.operation.kind in ("anchor", "join") else max(run.operation.uses, run.operation.makes)
    return SHARES.get(run.operation.kind, 1.0) * worked * run.times * max(run.operation.height, SLIP_SHARE)


def _foundation(piece: Piece, strip: Strip) -> Iterator[Share]:
    if isinstance(strip.start, ChainStart):
        first = strip.rows[0].runs[0]
        yield Share(piece.key, first.colour, "foundations", first.fabric, "ch", CHAIN_SHARE * strip.start.chains * piece.make)


def _strand(piece: str, colour: str, term: Term, length: float) -> Share:
    return Share(piece, colour, term, "", "", length)


def _swatches(design: Design, garment: tuple[Share, ...]) -> Iterator[Share]:
    """A swatch of each fabric, in the colour it is first worked in: stitches, a chain where it is worked in rows, two tails."""
    for fabric in design.fabrics:
        colour = next((share.colour for share in garment if share.fabric == fabric.key), "")
        if colour:
            yield Share("", colour, "swatches", fabric.key, fabric.stitch, _swatch_worth(fabric))
            yield Share("", colour, "swatches", "", "", 2 * tail("weave in"))


def _swatch_worth(fabric: Fabric) -> float:
    across, rows = (up(SWATCH_LARGER * count) for count in (fabric.gauge.stitches, fabric.gauge.rows))
    return across * rows + (CHAIN_SHARE * across if fabric.worked == "rows" else 0.0)
