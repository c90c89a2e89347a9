"""Colour bands as rows that weigh something: what each place of a line between bands does to the yarn of each colour.

In: a graded piece with bands. Out: where its lines are, and grams of each colour for any other place of them.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from gaugewright import pipeline
from gaugewright.design.colours import Bands
from gaugewright.design.model import Piece, Triangle
from gaugewright.grading.colour_rows import own_colours
from gaugewright.grading.model import GradedPiece
from gaugewright.grading.outline_model import row_nearest
from gaugewright.grading.plan import PiecePlan
from gaugewright.yarn.counted import share_of, stitches_worked
from gaugewright.yarn.turns import made_by_colour

Weigh = Mapping[tuple[str, str], float]
"""Grams of a stitch by fabric and colour."""


@dataclass(frozen=True, slots=True)
class BandedPiece:
    """One piece with bands: its order of colours, heights of its row ends, the rows after which its colours change, and
    by colour the grams of its rows up to each, rows with a colour of their own left out.
    """

    piece: Piece
    heights: tuple[float, ...]
    lines: tuple[int, ...]
    up_to: Mapping[str, tuple[float, ...]]

    @property
    def rows(self) -> int:
        """All rows of the bands."""
        return len(self.heights) - 1

    def grams(self, lines: Sequence[int]) -> dict[str, float]:
        """What the bands take of each colour with their lines after these rows."""
        found: dict[str, float] = {}
        for colour, (first, last) in zip(self.piece.colours.order, pairwise((0, *lines, self.rows)), strict=True):
            sums = self.up_to[colour]
            found[colour] = found.get(colour, 0.0) + sums[last] - sums[first]
        return found

    def shows_all(self, lines: Sequence[int]) -> bool:
        """Whether every band has a row to be seen, so that the piece keeps its colours and its ends."""
        return all(self.up_to[colour][last] > self.up_to[colour][first] for colour, (first, last) in zip(self.piece.colours.order, pairwise((0, *lines, self.rows)), strict=True))


@dataclass(frozen=True, slots=True)
class BandGroup:
    """Pieces that share one list of bands. The first of them leads; `meets` gives for each the row that lies level with each of its."""

    bands: Bands
    members: tuple[BandedPiece, ...]
    meets: tuple[tuple[int, ...], ...]

    @property
    def lead(self) -> BandedPiece:
        """The piece whose rows the lines are told in."""
        return self.members[0]

    def grams(self, lines: Sequence[int]) -> dict[str, float]:
        """What all its pieces take of each colour."""
        found: dict[str, float] = {}
        for member, level in zip(self.members, self.meets, strict=True):
            for colour, grams in member.grams([level[line] for line in lines]).items():
                found[colour] = found.get(colour, 0.0) + grams
        return found

    def shows_all(self, lines: Sequence[int]) -> bool:
        """Whether no band of any of its pieces is lost."""
        return all(member.shows_all([level[line] for line in lines]) for member, level in zip(self.members, self.meets, strict=True))


def band_groups(graded: pipeline.Graded, size: str, weigh: Weigh) -> tuple[BandGroup, ...]:
    """All bands of a pattern in one size whose lines can be moved; those of rows in a V are left alone."""
    found: dict[str, list[BandedPiece]] = {}
    bands: dict[str, Bands] = {}
    for piece in graded.design.pieces:
        if piece.colours.bands is None or any(isinstance(section, Triangle) for section in piece.sections):
            continue
        plan, one = graded.grading.plans[piece.key][size], graded.grading.pieces[piece.key][size]
        banded = _banded(piece, plan, one, weigh)
        if banded is not None:
            key = str(piece.colours.bands.origin.location)
            bands[key] = piece.colours.bands
            found.setdefault(key, []).append(banded)
    return tuple(BandGroup(bands[key], tuple(members), tuple(_level(members[0], member) for member in members)) for key, members in found.items())


def _level(lead: BandedPiece, member: BandedPiece) -> tuple[int, ...]:
    return tuple(range(lead.rows + 1)) if member is lead else tuple(row_nearest(member.heights, height) for height in lead.heights)


def _banded(piece: Piece, plan: PiecePlan, graded: GradedPiece, weigh: Weigh) -> BandedPiece | None:
    own = own_colours(piece, tuple(section.rows for section in plan.sections))
    lines = _lines(piece.colours.order, plan, own)
    if lines is None or len(graded.outline.heights) != plan.rows + 1:
        return None
    worth = _worth(piece, graded, plan.rows)
    up_to = {
        colour: tuple(accumulate((sum(stitches * weigh[fabric, colour] for fabric, stitches in worth[row].items()) if row not in own else 0.0 for row in range(1, plan.rows + 1)), initial=0.0))
        for colour in dict.fromkeys(piece.colours.order)
    }
    return BandedPiece(piece, graded.outline.heights, lines, up_to)


def _lines(order: tuple[str, ...], plan: PiecePlan, own: Mapping[int, str]) -> tuple[int, ...] | None:
    """The last row of each band but the top one; None where rows of another colour hide one."""
    lines: list[int] = []
    for row in range(1, plan.rows + 1):
        colour = plan.colour_of(row)
        if row in own or colour == order[len(lines)]:
            continue
        if len(lines) + 1 == len(order) or order[len(lines) + 1] != colour:
            return None
        lines.append(row - 1)
    return tuple(lines) if len(lines) + 1 == len(order) else None


def _worth(piece: Piece, graded: GradedPiece, rows: int) -> dict[int, dict[str, float]]:
    """Stitches' worth of each row by fabric; rows of both sides of a division have one number."""
    found: dict[int, dict[str, float]] = {row: {} for row in range(1, rows + 1)}
    made = made_by_colour(piece, graded)
    for strip in graded.strips:
        before = 0 if strip is graded.main else len(graded.main.rows)
        short = {group.after: group.rows for group in strip.short}
        for number, row in enumerate(strip.rows, start=1):
            for each in (row, *short.get(number, ())):
                for run in each.runs:
                    times = sum(count for _, count in made(run.colour))
                    found[before + number][run.fabric] = found[before + number].get(run.fabric, 0.0) + share_of(each) * stitches_worked(run) * times
    return found
