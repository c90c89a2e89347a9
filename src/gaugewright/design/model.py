"""The design: the spec with defaults and `like:` made explicit, formulas parsed, origins attached.

In: `spec/`. Out: frozen dataclasses. Nothing later sees the spec.
"""

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from gaugewright.design.buttonholes import Buttonholes as Buttonholes
from gaugewright.design.buying import Buying as Buying
from gaugewright.design.colours import Bands as Bands
from gaugewright.design.colours import Colours as Colours
from gaugewright.design.conventions import Conventions as Conventions
from gaugewright.design.crowns import Crown as Crown
from gaugewright.design.formula import Extent as Extent
from gaugewright.design.formula import ForLength as ForLength
from gaugewright.design.formula import Formula as Formula
from gaugewright.design.formula import ForRows as ForRows
from gaugewright.design.formula import Rest as Rest
from gaugewright.design.formula import ToLevel as ToLevel
from gaugewright.design.motifs import Grid as Grid
from gaugewright.design.motifs import Motif as Motif
from gaugewright.design.opened import Opened as Opened
from gaugewright.design.piece_start import PieceStart as PieceStart
from gaugewright.design.raglans import Raglan as Raglan
from gaugewright.design.round_yokes import RoundYoke as RoundYoke
from gaugewright.design.shapes import Armhole as Armhole
from gaugewright.design.shapes import Cap as Cap
from gaugewright.design.shapes import Neck as Neck
from gaugewright.design.shapes import NeckEdge as NeckEdge
from gaugewright.design.shapes import RaglanEdge as RaglanEdge
from gaugewright.design.shapes import Shoulders as Shoulders
from gaugewright.design.size_list import SizeList
from gaugewright.design.timing import Timing as Timing
from gaugewright.design.triangles import Triangle as Triangle
from gaugewright.design.wedges import Wedge as Wedge
from gaugewright.design.slits import Slit as Slit
from gaugewright.errors import Origin
from gaugewright.gauge.counts import CountRule
from gaugewright.gauge.hanging import growth_between
from gaugewright.gauge.model import Gauge
from gaugewright.stitch_patterns.pattern import StitchPattern
from gaugewright.vocabulary import Direction, Loop, RowEdge, TakeUp, Worked

TAKE_UP_STITCHES: "dict[str, float]" = {"edge to edge": 0.0, "half stitch": 0.5, "whole stitch": 1.0}


@dataclass(frozen=True, slots=True)
class Yarn:
    """One colour of yarn. Ball figures are None where the spec gives no ball."""

    key: str
    label: str
    colour: str
    weight: int | None
    fibre: tuple[tuple[str, float], ...]
    ball_mass: float | None
    ball_length: float | None
    price: Decimal | None
    currency: str
    structure: str
    origin: Origin
    treatment: str = ""


@dataclass(frozen=True, slots=True)
class Fabric:
    """How a piece of cloth is worked, and its gauge. `tool` is the hook in mm, None where it isn't named.

    With a stitch `pattern`, `stitch` is that of its plain rows and `edge` the plain stitches kept at each edge. A fabric
    that grows when it hangs is graded as it hangs: `gauge` is that, `lying` what a flat swatch measures; `judged` says
    that its maker has stated whether it grows.
    """

    key: str
    stitch: str
    loop: Loop
    worked: Worked
    chains: int
    counts: bool
    tool: float | None
    by_hand: bool
    gauge: Gauge
    swatch_mass: float | None
    thickness: float
    rule: CountRule
    origin: Origin
    pattern: StitchPattern | None = None
    edge: int = 0
    timed: tuple[Timing, ...] = ()
    lying: Gauge | None = None
    judged: bool = False

    @property
    def flat(self) -> Gauge:
        """The gauge of a swatch that lies flat: what a maker measures and is told."""
        return self.lying or self.gauge

    @property
    def growth(self) -> float:
        """The share by which its rows lengthen when it hangs."""
        return growth_between(self.lying, self.gauge) if self.lying else 0.0


@dataclass(frozen=True, slots=True)
class Even:
    """A section without shaping."""

    extent: Extent
    fabric: str
    colour: str
    origin: Origin


@dataclass(frozen=True, slots=True)
class Taper:
    """A section that gains or loses stitches: two of extent, target and stitches per row.

    `each` is how many stitches every shaping row or round changes: with a target the target says
    which way, without one its sign does. `at` is "both", "starting" or "far" in rows and "all round",
    "pairs" or "sides" in rounds; "" lets the engine choose. `close` draws its last stitches together;
    `in_one` works several increases at an edge into one stitch.
    """

    extent: Extent | None
    target: Formula | None
    stitches: int | None
    each: int | None
    at: str
    direction: Direction
    fabric: str
    colour: str
    origin: Origin
    close: bool = False
    in_one: bool = False


Section = Even | Taper | Shoulders | Armhole | RaglanEdge | Neck | NeckEdge | Cap | Crown | Raglan | RoundYoke | Wedge | Slit | Opened | Motif | Triangle

TOPS = (Shoulders, Neck, NeckEdge, Opened)
"""Sections that end a piece without rows of their own: those of a slope or a neck are the last ones below them."""

UNSTACKED = (*TOPS, Wedge)
"""Sections that add no row to the edges: tops have rows of what is below them, a wedge has short rows."""

YOKES = (Raglan, RoundYoke)
"""Sections from the neck down that end a piece and are divided into a body and sleeves."""


@dataclass(frozen=True, slots=True)
class NamedEdge:
    """Part of a row-end edge, from one level to the next; None means the hem or the top."""

    name: str
    side: RowEdge
    bottom: str | None
    top: str | None


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece as designed, `like:` resolved."""

    key: str
    title: str
    make: int
    fabric: str
    start: PieceStart
    sections: tuple[Section, ...]
    edges: tuple[NamedEdge, ...]
    bottom: str
    top: str
    colours: Colours
    total: Formula | None
    mirrored: bool
    notes: tuple[str, ...]
    origin: Origin
    like: str = ""
    buttonholes: Buttonholes | None = None
    grid: Grid | None = None

    @property
    def is_shut(self) -> bool:
        """Whether its last stitches are drawn together."""
        last = self.sections[-1]
        return isinstance(last, (Crown, Taper)) and last.close


@dataclass(frozen=True, slots=True)
class EdgeName:
    """`piece.edge` with the place it was written."""

    piece: str
    edge: str
    origin: Origin

    def __str__(self) -> str:
        return f"{self.piece}.{self.edge}"


@dataclass(frozen=True, slots=True)
class Seam:
    """An edge joined to one or more edges laid end to end."""

    join: EdgeName
    to: tuple[EdgeName, ...]
    take_up: TakeUp
    method: str
    origin: Origin


@dataclass(frozen=True, slots=True)
class Attachment:
    """A piece sewn on another: `up` from the bottom edge, `inset` from a named edge."""

    piece: str
    to: str
    up: Formula
    inset: Formula
    from_edge: str
    origin: Origin


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening that a hand or a head must pass; `stretch` as a share (0.1 = 10 %)."""

    name: str
    around: tuple[EdgeName, ...]
    passes: Literal["hand", "head", "foot"]
    stretch: float
    origin: Origin


@dataclass(frozen=True, slots=True)
class FinishedMeasure:
    """A measurement printed in the table: how it is made up, what was wanted, whose body measure it clothes."""

    key: str
    label: str
    measure: Formula
    wanted: Formula | None
    of: str
    origin: Origin


@dataclass(frozen=True, slots=True)
class About:
    """Who made the pattern and how it is worded. `hours` is "" where the spec says nothing of them."""

    title: str
    workshop: str
    level: str
    version: str
    date: str
    language: str
    terms: Literal["us", "uk"]
    units: Literal["cm", "in"]
    about: str
    licence: str
    notes: tuple[str, ...]
    hours: Literal["", "never", "at a glance", "by piece"] = ""


@dataclass(frozen=True, slots=True)
class Design:
    """Everything the engine needs, in order of the spec."""

    about: About
    sizes: SizeList
    conventions: Conventions
    yarns: tuple[Yarn, ...]
    fabrics: tuple[Fabric, ...]
    lengths: tuple[tuple[str, Formula], ...]
    levels: tuple[tuple[str, Formula], ...]
    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]
    attachments: tuple[Attachment, ...]
    openings: tuple[Opening, ...]
    finished: tuple[FinishedMeasure, ...]
    buying: Buying = Buying()
    notions: tuple[tuple[str, float], ...] = ()

    def fabric(self, key: str) -> Fabric:
        """The fabric of that name."""
        return next(fabric for fabric in self.fabrics if fabric.key == key)

    def yarn(self, key: str) -> Yarn:
        """The yarn of that name."""
        return next(yarn for yarn in self.yarns if yarn.key == key)

    def piece(self, key: str) -> Piece:
        """The piece of that name."""
        return next(piece for piece in self.pieces if piece.key == key)
