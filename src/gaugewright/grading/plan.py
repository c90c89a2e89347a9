"""The plan of a piece in one size: its sections, each with the few whole numbers a phrase needs.

Expanded (`expand.py`) a plan gives rows; merged over sizes it gives the written text. Its structure
(kinds and order of sections, which edges are shaped, how many rates) is the same for all sizes.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from gaugewright.grading.buttonholes import HolePlan as HolePlan
from gaugewright.grading.cloth import Cloth as Cloth
from gaugewright.grading.colour_plans import BlockPlan as BlockPlan
from gaugewright.grading.colour_plans import ColourBandRows as ColourBandRows
from gaugewright.grading.colour_plans import StripePlan as StripePlan
from gaugewright.grading.mitre import Corner as Corner
from gaugewright.grading.mitre import MitredPlan as MitredPlan
from gaugewright.grading.layout_model import Layout as Layout
from gaugewright.grading.model import Start
from gaugewright.grading.motif_rows import MotifPlan as MotifPlan
from gaugewright.grading.opened import OpenedPlan as OpenedPlan
from gaugewright.grading.raglan_rows import RaglanPlan as RaglanPlan
from gaugewright.grading.rising import Rise as Rise
from gaugewright.grading.round_yoke import RoundYokePlan as RoundYokePlan
from gaugewright.grading.schedule_model import Schedule
from gaugewright.grading.shape_plans import DividedPlan as DividedPlan
from gaugewright.grading.shape_plans import EdgeParts, gone
from gaugewright.grading.shape_plans import ProfilePlan as ProfilePlan
from gaugewright.grading.slits import SlitPlan as SlitPlan
from gaugewright.grading.spread import Spread
from gaugewright.grading.triangle_rows import TrianglePlan as TrianglePlan
from gaugewright.grading.wedge_rows import WedgePlan as WedgePlan
from gaugewright.vocabulary import RowEdge, Worked

ShapedEdges = Literal["both", "starting", "far", "pairs", "sides"]

PLACES: dict[ShapedEdges, int] = {"both": 2, "starting": 1, "far": 1, "pairs": 2, "sides": 4}
"""Places shaped on one row: both ends of rows, or of rounds at their beginning; of rounds also opposite it."""


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
    """Shaping at edges (or in pairs at the underarm line of a round, or at both sides of it) on the rows of a schedule.

    `sign` is +1 or -1; `steps` gives the stitches changed at each shaped edge on each shaping row.
    `lead` rows are worked even before the schedule begins (the row into the foundation). Several increases at an edge
    stand side by side, or `in_one` stitch.
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
    in_one: bool = False

    def uses(self, step: int) -> int:
        """Stitches of the row before that so many changes at one place take: as many as they are, two each where
        they are decreases, or the edge stitch alone."""
        return 1 if self.in_one else step * (1 if self.sign > 0 else 2)

    @property
    def edge_count(self) -> int:
        """Places shaped on one row."""
        return PLACES[self.edges]

    @property
    def half(self) -> int:
        """Stitches of the first half of a round shaped at both sides, the larger one, as the section begins."""
        return self.stitches - self.stitches // 2

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
    """The top divided into shoulder, neck, shoulder; no rows but those of the shoulders' `slope`, or one of `rising` stitches."""

    cloth: Cloth
    colour: str
    stitches: int
    shoulder: int
    neck: int
    rows: int = 0
    slope: EdgeParts = ()
    rising: tuple[Rise, ...] = ()

    @property
    def end(self) -> int:
        """Stitches at the end."""
        return self.stitches - 2 * gone(self.slope)


SectionPlan = EvenPlan | MitredPlan | TaperPlan | SpreadPlan | ShouldersPlan | ProfilePlan | DividedPlan | RaglanPlan | RoundYokePlan | WedgePlan | SlitPlan | OpenedPlan | MotifPlan | TrianglePlan


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
    holes: HolePlan | None = None
    corners: tuple[Corner, ...] = ()
    stripes: StripePlan | None = None
    blocks: tuple[BlockPlan, ...] = ()
    layout: Layout | None = None

    @property
    def rows(self) -> int:
        """Rows in all."""
        return sum(section.rows for section in self.sections)

    @property
    def raglan(self) -> bool:
        """Whether row ends run up to the neck as raglan edges, which leave no shoulder."""
        shaped = (section for section in self.sections if isinstance(section, ProfilePlan))
        divided = isinstance(self.sections[-1], DividedPlan) and self.sections[-1].raglan
        return divided or any(part.name == "raglan" for section in shaped for part in (*section.starting, *section.far))

    def edge_end(self, side: RowEdge) -> int:
        """The row after which the row ends of a side end: its shoulder, neck edge or cap begins there."""
        before = 0
        for section in self.sections:
            first = _top_begins(section, side)
            if first is not None:
                return before + first - 1
            before += section.rows
        return before

    def wedges(self) -> Iterator[tuple[int, WedgePlan]]:
        """The wedges that this size has, each with the row after which it lies."""
        before = 0
        for section in self.sections:
            if isinstance(section, WedgePlan) and section.leaves:
                yield before + section.lead, section
            before += section.rows

    def colour_of(self, row: int) -> str:
        """The colour of a row, counted from 1."""
        return next(band.colour for band in self.bands if band.first <= row <= band.last)


def _top_begins(section: SectionPlan, side: RowEdge) -> int | None:
    """The row of a section on which an edge turns into shoulder, neck or cap."""
    match section:
        case ProfilePlan():
            parts = section.parts(side)
        case DividedPlan(outer=parts) | ShouldersPlan(slope=parts):
            pass
        case _:
            return None
    for part in parts:
        if part.name in ("neck", "cap"):
            return 1
        if part.name == "shoulder" and part.profile.steps:
            return part.profile.steps[0].row
    return section.rows if section.rising else None
