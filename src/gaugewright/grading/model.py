"""Rows, strips and graded pieces of one size: the data that everything later reads.

A row is a sequence of *runs*: an operation that eats and makes stitches, how many times, in which colour
and fabric. Counts, edge changes, stitches worked and yarn are derived from the runs, never stored. A strip
starts from a chain, a ring, a centre, edges picked up, or a span of another strip's last row, so that divided
necks, raglans, colour blocks, motifs and picked-up bands are all made of the same parts.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.grading.divide_start import DivideStart as DivideStart
from gaugewright.grading.go_on_start import GoOnStart as GoOnStart
from gaugewright.grading.join_model import Join as Join
from gaugewright.grading.layout_model import Layout as Layout
from gaugewright.grading.operations import CORNERS as CORNERS
from gaugewright.grading.operations import Operation as Operation
from gaugewright.grading.operations import OperationKind as OperationKind
from gaugewright.grading.operations import anchor as anchor
from gaugewright.grading.operations import at_corner as at_corner
from gaugewright.grading.operations import bridge as bridge
from gaugewright.grading.operations import chain as chain
from gaugewright.grading.operations import decrease as decrease
from gaugewright.grading.operations import increase as increase
from gaugewright.grading.operations import join_to_edge as join_to_edge
from gaugewright.grading.operations import leave as leave
from gaugewright.grading.operations import pick_up as pick_up
from gaugewright.grading.operations import skip as skip
from gaugewright.grading.operations import slip_over as slip_over
from gaugewright.grading.operations import turning_chain as turning_chain
from gaugewright.grading.operations import wait as wait
from gaugewright.grading.operations import work as work
from gaugewright.grading.outline_model import Outline as Outline
from gaugewright.grading.outline_model import Point as Point
from gaugewright.grading.rim import RimPick as RimPick
from gaugewright.vocabulary import Side, Worked


@dataclass(frozen=True, slots=True)
class Run:
    """An operation worked `times` times in one colour and fabric."""

    operation: Operation
    times: int
    colour: str
    fabric: str


@dataclass(frozen=True, slots=True)
class Placed:
    """Where a stitch pattern stands in a row: which row of its cycle (from 0) with how many repeats, and the
    plain stitches before it and after it, in order of working, in the row before.

    `across` are the stitches by which the row is measured: what the row would have if it were plain, since a
    pattern may make more or fewer on its way.
    """

    phase: int
    repeats: int
    first: int
    last: int
    across: int


@dataclass(frozen=True, slots=True)
class Row:
    """One row or round, its runs in the order of working; `placed` where it is worked in a stitch pattern."""

    runs: tuple[Run, ...]
    side: Side
    placed: Placed | None = None

    @property
    def uses(self) -> int:
        """Stitches of the row before that are worked into, passed over or left."""
        return sum(run.operation.uses * run.times for run in self.runs)

    @property
    def makes(self) -> int:
        """Stitches of this row."""
        return sum(run.operation.makes * run.times for run in self.runs)

    @property
    def across(self) -> int:
        """Stitches by which the row is measured: those it makes, unless a stitch pattern has its own count."""
        return self.makes if self.placed is None else self.placed.across

    @property
    def height(self) -> float:
        """Rows of its fabric: 1, but where stitches of rising height make a slope as high as the tallest."""
        return max((run.operation.height for run in self.runs if run.operation.makes), default=1.0)

    @property
    def fabric(self) -> str:
        """The fabric that makes most of the row's stitches; it sets the row's height."""
        made: dict[str, int] = {}
        if all(run.fabric == self.runs[0].fabric for run in self.runs):
            return self.runs[0].fabric
        for run in self.runs:
            made[run.fabric] = made.get(run.fabric, 0) + max(run.operation.makes, run.operation.uses) * run.times
        return max(made, key=lambda name: made[name])

    @property
    def at_corners(self) -> int:
        """Stitches gained at corners, or lost there if negative."""
        return sum(run.operation.change * run.times for run in self.runs if run.operation.kind in CORNERS)

    @property
    def colours(self) -> tuple[str, ...]:
        """The row's colours in order of first use."""
        return tuple(dict.fromkeys(run.colour for run in self.runs))

    def edge_changes(self) -> tuple[int, int]:
        """Stitches gained at the row's first edge and at its last edge, in order of working.

        A change belongs to the nearer edge; one in the very middle is shared, the odd one to the
        last edge. Stitches left are always at the last edge, stitches slipped over at the first. Corners
        within a row move neither.

        >>> plain = work("hdc")
        >>> Row((Run(decrease("hdc"), 2, "oat", "body"), Run(plain, 6, "oat", "body")), "RS").edge_changes()
        (-2, 0)
        >>> Row((Run(plain, 20, "oat", "body"), Run(leave(), 30, "oat", "body")), "RS").edge_changes()
        (0, -30)
        """
        first = last = middle = position = 0
        end = self.uses
        for run in self.runs:
            uses, change = run.operation.uses, run.operation.change
            if run.operation.kind in ("leave", "slip over"):
                first += change * run.times * (run.operation.kind == "slip over")
                last += change * run.times * (run.operation.kind == "leave")
            elif change and run.operation.kind not in CORNERS and not (self.placed and run.operation.kind not in ("increase", "decrease")):
                for number in range(run.times):
                    twice = 2 * (position + uses * number) + uses
                    first += change * (twice < end)
                    last += change * (twice > end)
                    middle += change * (twice == end)
            position += uses * run.times
        half = int(middle / 2)
        return first + half, last + middle - half


@dataclass(frozen=True, slots=True)
class ChainStart:
    """A foundation chain that gives `stitches`; closed into a ring if `ring`; of a band along edges, what it is joined to."""

    stitches: int
    chains: int
    ring: bool = False
    join: Join | None = None


@dataclass(frozen=True, slots=True)
class CentreStart:
    """A closed centre (adjustable ring) holding `stitches` as its first round."""

    stitches: int


@dataclass(frozen=True, slots=True)
class PickUp:
    """Stitches picked up along one edge of another piece: `rows` row ends or `of` stitches, or both, `level` of them then
    across the stitches, with row ends on `both` sides of them or on one; the rest as the edge's. Round joined motifs its `rim` says more.
    """

    piece: str
    edge: str
    stitches: int
    rows: int = 0
    of: int = 0
    corners: int = 0
    level: int = 0
    both: bool = False
    above: int = 0
    chains: int = 0
    rim: RimPick | None = None


@dataclass(frozen=True, slots=True)
class EdgeStart:
    """Stitches picked up along edges, in order of working. They count as the strip's row 1."""

    pick_ups: tuple[PickUp, ...]

    @property
    def stitches(self) -> int:
        """Stitches picked up in all."""
        return sum(pick_up.stitches for pick_up in self.pick_ups)


@dataclass(frozen=True, slots=True)
class SpanStart:
    """A span of another strip's last row, counted from its starting edge: `first` stitches in."""

    strip: str
    first: int
    stitches: int


Start = ChainStart | CentreStart | EdgeStart | SpanStart | DivideStart | GoOnStart


@dataclass(frozen=True, slots=True)
class ShortRows:
    """Rows that leave stitches to wait, worked back and forth between row `after` and the next."""

    after: int
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Strip:
    """Rows worked one on the other from one start. Short rows are no rows of a side edge, so they are not among `rows`."""

    name: str
    start: Start
    worked: Worked
    rows: tuple[Row, ...]
    short: tuple[ShortRows, ...] = ()

    def all_rows(self) -> Iterator[Row]:
        """Every row as it is worked, short ones in their place."""
        between = {each.after: each.rows for each in self.short}
        for number, row in enumerate(self.rows, start=1):
            yield row
            yield from between.get(number, ())

    @property
    def last_count(self) -> int:
        """Stitches of the last row, or of the start when there are no rows."""
        return self.rows[-1].makes if self.rows else self.start.stitches

    def counts(self) -> Iterator[int]:
        """Stitches after each row."""
        return (row.makes for row in self.rows)


@dataclass(frozen=True, slots=True)
class EdgeLength:
    """One named edge of one size: its true length in mm as worked, its row ends and stitches, how many rows leave
    stitches there (corners make it longer than its rows are high), the stitches `above` each side's row ends, and
    how many of the stitches round an opening are `chains`; the `layout` of joined motifs that it goes round."""

    length: float
    rows: int
    stitches: int
    corners: int = 0
    above: int = 0
    chains: int = 0
    layout: Layout | None = None


@dataclass(frozen=True, slots=True)
class GradedPiece:
    """A piece in one size: its strips, outline, named edges, and finished and worked measures in mm.

    `layout` is how many of it are joined. Measures: width and bottom (at the start), top_width, widest, narrowest, length, longest; both ends by their own names too.
    """

    key: str
    strips: tuple[Strip, ...]
    outline: Outline
    edges: "dict[str, EdgeLength]"
    finished: "dict[str, float]"
    worked: "dict[str, float]"
    layout: Layout | None = None

    @property
    def main(self) -> Strip:
        """The first strip: the only one of a piece that is not divided."""
        return self.strips[0]
