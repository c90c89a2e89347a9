"""A piece of all printed sizes as the instructions look at it."""

from dataclasses import dataclass

from gaugewright.design.model import Fabric, Piece
from gaugewright.grading.model import GradedPiece, Row
from gaugewright.grading.plan import PiecePlan
from gaugewright.instructions.hanging import flat_heights
from gaugewright.instructions.wording import Mm
from gaugewright.sized import Sized
from gaugewright.yarn.blocks import BlockAmount


@dataclass(frozen=True, slots=True)
class PieceView:
    """One piece with its plans and rows; `fabrics` by name. One of a mirrored pair is `paired`: either
    face of it may come outside, so its rows have no right side. `passes` says what its beginning must pass, hand or head.
    What is made twice is worked onto its `own` piece each where those are made twice too.
    `sewn` says whether any of its edges is, `winding` what each block of colour takes.
    """

    piece: Piece
    plans: Sized[PiecePlan]
    graded: Sized[GradedPiece]
    fabrics: dict[str, Fabric]
    paired: bool = False
    passes: str = ""
    own: bool = False
    sewn: bool = False
    winding: Sized[tuple[tuple[BlockAmount, ...], ...]] = Sized((), ())

    @property
    def labels(self) -> tuple[str, ...]:
        """The sizes printed."""
        return self.plans.labels

    @property
    def first(self) -> PiecePlan:
        """Any size's plan: structure is the same in all."""
        return self.plans.values[0]

    @property
    def planned(self) -> bool:
        """Whether its colours are told beforehand, as stripes or blocks."""
        return bool(self.piece.colours.stripes or self.piece.colours.blocks)

    @property
    def in_rounds(self) -> bool:
        """Worked in rounds of any kind."""
        return self.first.worked != "rows"

    def height(self, rows: Sized[int]) -> Mm:
        """Height above the bottom edge after those rows, for the sizes of `rows`, as a piece that lies flat is measured."""
        return flat_heights(self.graded, self.fabrics, rows)

    def width(self, rows: Sized[int]) -> Mm:
        """Worked width (girth in rounds) of those rows."""
        widths = []
        for label, number in rows.items():
            row, across = self._row(label, number)
            widths.append(self.fabrics[row.fabric].gauge.width_of(across))
        return Mm(Sized(rows.labels, tuple(widths)))

    def stitches(self, rows: Sized[int]) -> Sized[int]:
        """Stitches after those rows; in a stitch pattern its own count, which the row may exceed on its way."""
        return Sized(rows.labels, tuple(self._row(label, number)[1] for label, number in rows.items()))

    def _row(self, label: str, number: int) -> tuple[Row, int]:
        """A row of the piece, of one side where it is divided, and its stitches, of both sides together."""
        main, *sides = self.graded[label].strips
        if number <= len(main.rows) or not sides:
            return main.rows[number - 1], main.rows[number - 1].across
        rows = [side.rows[number - 1 - len(main.rows)] for side in sides]
        return rows[0], sum(row.across for row in rows)

    def colour_at(self, rows: Sized[int]) -> str:
        """The colour of those rows in the first of their sizes."""
        label, number = next(rows.items())
        return self.plans[label].colour_of(number)

    def section_first_rows(self, index: int) -> Sized[int]:
        """The first row of a section in each size."""
        return self.plans.map(lambda plan: 1 + sum(section.rows for section in plan.sections[:index]))

    def section_last_rows(self, index: int) -> Sized[int]:
        """The last row of a section in each size."""
        return self.plans.map(lambda plan: sum(section.rows for section in plan.sections[: index + 1]))

    @property
    def made(self) -> Sized[int]:
        """How many of it are made in each size."""
        return self.plans.map(lambda plan: plan.layout.motifs if plan.layout else self.piece.make)
