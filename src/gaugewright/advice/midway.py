"""In the middle of a piece that comes out otherwise than it should: go on, change hook, follow another size, or rip out."""

from dataclasses import dataclass
from typing import Literal

from gaugewright import pipeline
from gaugewright.advice.follow import Follow, got, nearest
from gaugewright.design.model import Design
from gaugewright.errors import UserError
from gaugewright.gauge.model import Gauge
from gaugewright.grading.hanging import flat_height
from gaugewright.grading.model import GradedPiece, Row
from gaugewright.rounding import half_up
from gaugewright.spec.worked_text import WorkedText

Way = Literal["go on", "go on with other rows", "follow another size", "change hook", "rip out"]

MOST_CHANGED = 2
"""One stitch at each edge can be made or lost on the next row without being seen (common practice, no source)."""

HOOK_SHOWS = 0.05
"""Stitches that change by more than a twentieth from one row to the next leave a line across the cloth (common practice, no source)."""

SHORT_SHARE = 0.1
"""With a tenth of a piece worked, ripping out costs less than a hem that flares or draws in (common practice, no source)."""

UNLIKELY = 2.0
"""Nobody's stitches are twice or half as large as the pattern's: then something else was counted or measured."""


@dataclass(frozen=True, slots=True)
class Hand:
    """What the piece says of its maker's stitches: their width and height as shares of the pattern's, and the main fabric's gauge."""

    across: float
    along: float
    gauge: Gauge


@dataclass(frozen=True, slots=True)
class Another:
    """Another size to follow from here: stitches to make (or lose, if negative) on the next row, and what comes of it."""

    size: str
    stitches: int
    result: Follow


@dataclass(frozen=True, slots=True)
class Midway:
    """The answer for one size begun. `continued` is what each size's numbers give in this hand; `rest` the rows still to
    work of `total`, `new_total` those that this hand needs for the same length; `begin` the numbers to begin anew with;
    `lost` the rows that ripping out costs, and their stitches; `sewn` the titles of pieces
    whose edges must still match.
    """

    piece: str
    size: str
    rows: int
    total: int
    new_total: int
    stitches: int
    hand: Hand
    continued: tuple[Follow, ...]
    this: Follow
    another: Another | None
    begin: Follow
    lost: int
    lost_stitches: int
    way: Way
    sewn: tuple[str, ...]

    @property
    def rest(self) -> int:
        """Rows still to work."""
        return self.total - self.rows


def advise(graded: pipeline.Graded, piece: str, worked: WorkedText, size: str) -> tuple[Midway, ...]:
    """The advice, for the size begun; for each that has these stitches on this row, where none is named."""
    if piece not in graded.grading.pieces:
        raise UserError("unknown-piece", f"this pattern has no piece {piece!r}", f"its pieces are {', '.join(graded.grading.pieces)}")
    return tuple(_midway(graded, piece, worked, begun) for begun in _begun(graded, piece, worked, size))


def _begun(graded: pipeline.Graded, piece: str, worked: WorkedText, size: str) -> tuple[str, ...]:
    sized = graded.grading.pieces[piece]
    if size and size not in sized.labels:
        raise UserError("size-not-made", f"this pattern has no size {size}", f"its sizes are {', '.join(sized.labels)}")
    counts = {label: row.across if (row := _row(one, worked.rows)) else 0 for label, one in sized.items()}
    alike = tuple(label for label, count in counts.items() if count == worked.stitches)
    found = tuple(label for label in alike if label == size) if size else alike
    if not found:
        told = ", ".join(f"{label} {count}" if count else f"{label} is finished by then" for label, count in counts.items() if not size or label == size)
        hint = f"name the size that has them: {', '.join(alike)}" if alike else "count the stitches of the last whole row; turning chains that don't count are none"
        raise UserError("worked-astray", f"after row {worked.rows} the {piece} has other stitches than {worked.stitches}: {told}", hint)
    return found


def _row(piece: GradedPiece, number: int) -> Row | None:
    """The row of that number, of one side where the piece is divided; None beyond the last."""
    main, *sides = piece.strips
    rows = (*main.rows, *(sides[0].rows if sides else ()))
    return rows[number - 1] if number <= len(rows) else None


def _hand(graded: pipeline.Graded, piece: GradedPiece, worked: WorkedText) -> Hand:
    row = _row(piece, worked.rows)
    assert row is not None  # its size was chosen by it
    across = worked.width / graded.design.fabric(row.fabric).gauge.width_of(worked.stitches)
    along = worked.height / flat_height(piece, {fabric.key: fabric for fabric in graded.design.fabrics}, worked.rows)
    for share, what, measured in ((across, "wide", worked.width), (along, "high", worked.height)):
        if not 1 / UNLIKELY <= share <= UNLIKELY:
            raise UserError(
                "worked-unlikely", f"{measured / 10:g} cm {what} is {share:.1f} times what the pattern has after row {worked.rows} ({measured / share / 10:.0f} cm)",
                "measure the piece laid flat, and check the unit and the counts",
            )
    old = graded.design.fabric(graded.design.pieces[0].fabric).flat
    return Hand(across, along, Gauge(old.stitches, old.width * across, old.rows, old.height * along))


def _midway(graded: pipeline.Graded, key: str, worked: WorkedText, size: str) -> Midway:
    piece = graded.grading.pieces[key][size]
    hand = _hand(graded, piece, worked)
    own, inhand = pipeline.side(graded), pipeline.side(pipeline.worked_at(graded, hand.gauge))
    sizes = graded.bodies.labels
    continued = tuple(got(own, inhand, numbers, numbers, key) for numbers in sizes)
    this = got(own, inhand, size, size, key)
    total = graded.grading.plans[key][size].rows
    begin = next(one for one in nearest(own, inhand, key) if one.wanted == size)
    tried = [one for numbers in sizes if numbers != size and (one := _another(graded, key, worked, got(own, inhand, size, numbers, key))) is not None]
    another = min(tried, key=lambda one: abs(one.result.lead.off), default=None)
    stitches = sum(row.across for row in (_row(piece, number) for number in range(1, worked.rows + 1)) if row)
    way = _way(this, another, hand, worked.rows / total)
    new_total = max(worked.rows, half_up(total / hand.along))
    return Midway(key, size, worked.rows, total, new_total, worked.stitches, hand, continued, this, another, begin, worked.rows, stitches, way, _sewn(graded.design, key))


def _sewn(design: Design, key: str) -> tuple[str, ...]:
    """The other pieces that it is sewn to, in order of the seams."""
    seams = [[edge.piece for edge in (seam.join, *seam.to)] for seam in design.seams]
    return tuple(dict.fromkeys(design.piece(other).title for seam in seams if key in seam for other in seam if other != key))


def _another(graded: pipeline.Graded, key: str, worked: WorkedText, result: Follow) -> Another | None:
    """Another size, if its stitches on this row are so near that one at each edge makes up for them."""
    row = _row(graded.grading.pieces[key][result.numbers], worked.rows)
    if row is None or abs(row.across - worked.stitches) > MOST_CHANGED:
        return None
    return Another(result.numbers, row.across - worked.stitches, result)


def _way(this: Follow, another: Another | None, hand: Hand, share: float) -> Way:
    """What to do, the cheapest that gives the wanted fit first."""
    if this.lead.fits:
        return "go on" if all(one.fits for one in this.others if one.rows) else "go on with other rows"
    if another is not None and another.result.lead.fits:
        return "follow another size"
    return "change hook" if abs(hand.across - 1) <= HOOK_SHOWS and share > SHORT_SHARE else "rip out"
