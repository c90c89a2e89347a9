"""The plan of a piece in one size: its sections, each with the few whole numbers a phrase needs.

Expanded (`expand.py`) a plan gives rows; merged over sizes it gives the written text. Its structure
(kinds and order of sections, which edges are shaped, how many rates) is the same for all sizes.
"""

from dataclasses import dataclass
from typing import Literal

from gaugewright.grading.model import Start
from gaugewright.grading.schedule_model import Schedule
from gaugewright.grading.spread import Spread
from gaugewright.vocabulary import Loop, RowEdge, Worked

ShapedEdges = Literal["both", "starting", "far", "pairs"]


@dataclass(frozen=True, slots=True)
class Cloth:
    """What a plan needs to know of a fabric to work its rows."""

    fabric: str
    stitch: str
    loop: Loop
    chains: int
    counts: bool


@dataclass(frozen=True, slots=True)
class EvenPlan:
    """Rows without shaping."""

    cloth: Cloth
    colour: str
    rows: int
    stitches: int

    @property
    def end(self) -> int:
        """Stitches at the end."""
        return self.stitches


@dataclass(frozen=True, slots=True)
class TaperPlan:
    """Shaping at edges (or in pairs at the underarm line of a round) on the rows of a schedule.

    `sign` is +1 or -1; `steps` gives the stitches changed at each shaped edge on each shaping row.
    `lead` rows are worked even before the schedule begins (the row into the foundation).
    """

    cloth: Cloth
    colour: str
    rows: int
    stitches: int
    sign: int
    edges: ShapedEdges
    steps: tuple[int, ...]
    schedule: Schedule
    lead: int = 0

    @property
    def edge_count(self) -> int:
        """Places shaped on one row: two for both edges and for pairs."""
        return 2 if self.edges in ("both", "pairs") else 1

    @property
    def end(self) -> int:
        """Stitches at the end."""
        return self.stitches + self.sign * self.edge_count * sum(self.steps)

    def shaping_rows(self) -> tuple[int, ...]:
        """Row numbers within the section, from 1, on which stitches change."""
        return tuple(self.lead + position for position in self.schedule.positions())


@dataclass(frozen=True, slots=True)
class SpreadPlan:
    """Changes spread round a round, on each of the section's rounds; None where a size changes nothing."""

    cloth: Cloth
    colour: str
    rows: int
    stitches: int
    sign: int
    spreads: tuple[Spread | None, ...]
    counts: tuple[int, ...]

    @property
    def end(self) -> int:
        """Stitches at the end."""
        return self.counts[-1]


@dataclass(frozen=True, slots=True)
class ShouldersPlan:
    """The top divided into shoulder, neck, shoulder; no rows."""

    cloth: Cloth
    colour: str
    stitches: int
    shoulder: int
    neck: int
    rows: int = 0

    @property
    def end(self) -> int:
        """Stitches at the end."""
        return self.stitches


SectionPlan = EvenPlan | TaperPlan | SpreadPlan | ShouldersPlan


@dataclass(frozen=True, slots=True)
class ColourBandRows:
    """Rows `first` to `last` of the piece in one colour."""

    colour: str
    first: int
    last: int


@dataclass(frozen=True, slots=True)
class Mark:
    """A level marked at the end of a row: below it the edge has one name, above it another."""

    level: str
    row: int
    below: str
    above: str
    side: RowEdge


@dataclass(frozen=True, slots=True)
class PiecePlan:
    """One piece in one size, ready to be expanded and worded."""

    piece: str
    start: Start
    worked: Worked
    sections: tuple[SectionPlan, ...]
    bands: tuple[ColourBandRows, ...]
    marks: tuple[Mark, ...]
    start_colour: str
    start_cloth: Cloth

    @property
    def rows(self) -> int:
        """Rows in all."""
        return sum(section.rows for section in self.sections)

    def colour_of(self, row: int) -> str:
        """The colour of a row, counted from 1."""
        return next(band.colour for band in self.bands if band.first <= row <= band.last)
