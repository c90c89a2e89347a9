"""Yarn by colour, counted from the rows.

In: graded rows of one size and the weighed swatches. Out: grams of each colour, as separate terms:
stitches, foundations, tails and seams, and a margin. Without a weighed swatch there is no figure,
because published rules for yarn by stitch contradict one another.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from gaugewright.design.model import Design, Fabric, Piece
from gaugewright.design.sides import is_folded, on_both_sides
from gaugewright.grading.model import ChainStart, GradedPiece, Row, Run, Strip
from gaugewright.rounding import up
from gaugewright.trade.tails import tail
from gaugewright.yarn.ends import ends_of_pieces
from gaugewright.yarn.turns import joining_colour, made_by_colour

MARGIN = 0.10
"""Added to every colour (published: designers add 10 to 15 %, Devious Knitter)."""

CHAIN_SHARE = 0.5
"""A foundation chain is taken as half a stitch (common practice, no source)."""


SLIP_SHARE = 0.3
"""A slip stitch over the one below, or where a short row turns, is taken as three tenths of a stitch (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Amount:
    """Grams of one colour in one size; `total` includes the margin. `balls` is 0 without ball data."""

    colour: str
    stitches: float
    foundations: float
    tails_and_seams: float
    total: float
    balls: int


def mass_per_stitch(fabric: Fabric) -> float | None:
    """Grams of one stitch, from the weighed swatch."""
    if fabric.swatch_mass is None:
        return None
    return fabric.swatch_mass / (fabric.gauge.stitches * fabric.gauge.rows)


def amounts(design: Design, pieces: Mapping[str, GradedPiece]) -> dict[str, Amount] | None:
    """Grams by colour for one size; None where a fabric in use has no weighed swatch."""
    stitches: dict[str, float] = {}
    foundations: dict[str, float] = {}
    tails: dict[str, float] = {}
    ends = ends_of_pieces(design, pieces)
    masses = {fabric.key: mass_per_stitch(fabric) for fabric in design.fabrics}
    for piece in design.pieces:
        made = made_by_colour(piece, pieces[piece.key])
        for strip in pieces[piece.key].strips:
            for row in strip.all_rows():
                share = _share_of(row)
                for run in row.runs:
                    mass = masses[run.fabric]
                    if mass is None:
                        return None
                    if run.operation.kind == "skip":
                        continue
                    for colour, times in made(run.colour):
                        _add(stitches, colour, mass * share * stitches_worked(run) * times)
            _add_foundation(foundations, strip, design, piece.make)
            _add_band_seams(tails, strip, design, piece, pieces[piece.key])
        for colour, number in ends[piece.key].items():
            _add(tails, colour, number * grams_of(design, colour, tail("weave in")))
        _add_joins(tails, design, pieces[piece.key])
    _add_seams(tails, design, pieces)
    return {yarn.key: _amount(yarn.key, design, stitches, foundations, tails) for yarn in design.yarns if yarn.key in stitches}


def _add_joins(total: dict[str, float], design: Design, graded: GradedPiece) -> None:
    """Joined motifs: a strand of some times each side, in the colour of their last round."""
    if graded.layout is not None:
        colour = joining_colour(graded)
        sides = graded.layout.in_rows + graded.layout.between_rows
        length = graded.edges["top"].length / graded.layout.sides * sides
        _add(total, colour, grams_of(design, colour, tail("seam factor") * length))


def _share_of(row: Row) -> float:
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
    share = {"leave": 0.0, "skip": 0.0, "wait": 0.0, "slip over": SLIP_SHARE, "anchor": SLIP_SHARE, "join": SLIP_SHARE}.get(run.operation.kind, 1.0)
    worked = 1 if run.operation.kind in ("anchor", "join") else max(run.operation.uses, run.operation.makes)
    return share * worked * run.times * max(run.operation.height, SLIP_SHARE)


def _add(total: dict[str, float], colour: str, grams: float) -> None:
    total[colour] = total.get(colour, 0.0) + grams


def _add_foundation(total: dict[str, float], strip: Strip, design: Design, make: int) -> None:
    if isinstance(strip.start, ChainStart):
        first = strip.rows[0].runs[0]
        mass = mass_per_stitch(design.fabric(first.fabric)) or 0.0
        _add(total, first.colour, mass * CHAIN_SHARE * strip.start.chains * make)


def _add_band_seams(total: dict[str, float], strip: Strip, design: Design, piece: Piece, graded: GradedPiece) -> None:
    """A band worked sideways has its ends sewn together where it goes round, and is sewn on where it isn't joined as it grows."""
    join = strip.start.join if isinstance(strip.start, ChainStart) else None
    if join is not None:
        colour = strip.rows[0].colours[0]
        length = (graded.worked["width"] if join.ring else 0.0) + (graded.worked["length"] if join.sewn else 0.0)
        _add(total, colour, grams_of(design, colour, tail("seam factor") * length) * piece.make)


def _add_seams(total: dict[str, float], design: Design, pieces: Mapping[str, GradedPiece]) -> None:
    """A seam takes a strand of some times its length, in the first colour of the joined piece's last row; on both
    sides of the garment two. An edge folded and sewn to itself is half as long as a seam.
    """
    for seam in design.seams:
        piece = pieces[seam.join.piece]
        colour = piece.main.rows[-1].colours[0]
        length = piece.edges[seam.join.edge].length / (2 if is_folded(design, seam) else 1)
        strands = 2 if on_both_sides(design, seam) else 1
        _add(total, colour, grams_of(design, colour, tail("seam factor") * length * strands))


def grams_of(design: Design, colour: str, length: float) -> float:
    """Grams of a length of yarn in mm; nothing where its ball isn't known."""
    yarn = design.yarn(colour)
    if not yarn.ball_mass or not yarn.ball_length:
        return 0.0
    return yarn.ball_mass / yarn.ball_length * length


def _amount(colour: str, design: Design, stitches: dict[str, float], foundations: dict[str, float], tails: dict[str, float]) -> Amount:
    parts = stitches[colour], foundations.get(colour, 0.0), tails.get(colour, 0.0)
    total = sum(parts) * (1 + MARGIN)
    mass = design.yarn(colour).ball_mass
    return Amount(colour, *parts, total, up(total / mass) if mass else 0)
