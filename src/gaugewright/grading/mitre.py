"""Corners of a band in one size: stitches lost or gained at marked stitches, row by row.

A band that turns an inner corner loses stitches there and one that turns an outer corner gains them, or it
flares or cups. Each change takes two, one on either side of a stitch that stays in line: three worked together
with the marked stitch in the middle, or three worked into it; further pairs stand beside those. The module
knows no design: it turns whole numbers into runs.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.operations import Operation, at_corner, turning_chain, work
from gaugewright.grading.model import Run
from gaugewright.vocabulary import CornerKind

Runs = Iterator[Run]


class Site(NamedTuple):
    """A corner: its kind, and which of the edges picked up holds its marked stitch; `second` of two there."""

    kind: CornerKind
    edge: int
    second: bool = False


class Corner(NamedTuple):
    """A corner of one size: `at` is its marked stitch, counted from 1 along the pick-up row; `changes` are the
    stitches gained (or lost, if negative) on each row after that, always in twos."""

    site: Site
    at: int
    changes: tuple[int, ...]


class RunsOut(NamedTuple):
    """The row of a band on which a corner needs more stitches beside it than there are."""

    row: int
    needed: int
    found: int


@dataclass(frozen=True, slots=True)
class MitredPlan:
    """Rows of a band that is even but for its corners. `before` rows of the band lie below them."""

    cloth: Cloth
    colour: str
    rows: int
    picked: int
    corners: tuple[Corner, ...]
    before: int = 0

    @property
    def stitches(self) -> int:
        """Stitches before the section's first row."""
        return self.after(self.before)

    @property
    def end(self) -> int:
        """Stitches at the end."""
        return self.after(self.before + self.rows)

    def after(self, row: int) -> int:
        """Stitches after a row of the band, counted from 1: the pick-up row."""
        return self.picked + sum(sum(corner.changes[: max(0, row - 1)]) for corner in self.corners)


def gaps(corners: tuple[Corner, ...], picked: int, row: int) -> tuple[int, ...]:
    """Plain stitches before, between and after the marked ones, after a row of the band.

    >>> gaps((Corner(Site("point", 0), 4, (-2, 0)),), 9, 1), gaps((Corner(Site("point", 0), 4, (-2, 0)),), 9, 2)
    ((3, 5), (2, 4))
    """
    marked = [0, *(corner.at for corner in corners), picked + 1]
    half = [0, *(sum(corner.changes[: row - 1]) // 2 for corner in corners), 0]
    between = zip(marked, marked[1:], half, half[1:], strict=False)
    return tuple(after - before - 1 + left + right for before, after, left, right in between)


def beside(change: int) -> int:
    """Stitches that a change at a corner works into on either side of the marked one: what is gained is all in that one.

    >>> beside(-2), beside(-4), beside(2), beside(4), beside(0)
    (1, 3, 0, 0, 0)
    """
    return -change - 1 if change < 0 else 0


def runs_out(corners: tuple[Corner, ...], picked: int, counted: bool, turned: bool) -> RunsOut | None:
    """The first row on which the stitches beside the corners don't suffice; a counted turning chain keeps the one it begins with."""
    rows = max((len(corner.changes) for corner in corners), default=0)
    for row in range(2, rows + 2):
        taken = [0, *(beside(corner.changes[row - 2]) for corner in corners), 0]
        for place, gap in enumerate(gaps(corners, picked, row - 1)):
            begins = len(corners) if turned and row % 2 == 0 else 0
            needed = taken[place] + taken[place + 1] + int(counted and place == begins)
            if gap < needed:
                return RunsOut(row, needed, gap)
    return None


def mitred_rows(plan: MitredPlan, turned: bool, colours: list[str]) -> Iterator[Runs]:
    """Each row's runs; `turned` work goes back over its even rows."""
    for row, colour in enumerate(colours, start=plan.before + 1):
        yield _row(plan, row, turned and row % 2 == 0, colour)


def _row(plan: MitredPlan, row: int, backwards: bool, colour: str) -> Runs:
    cloth, corners = plan.cloth, plan.corners
    changes = [corner.changes[row - 2] if row > 1 else 0 for corner in corners]
    below = list(gaps(corners, plan.picked, max(1, row - 1)))
    if backwards:
        changes, below = changes[::-1], below[::-1]
    taken = [0, *(beside(change) for change in changes), 0]
    plain = work(cloth.stitch, cloth.loop)
    counted = int(cloth.counts)
    if cloth.chains:
        yield Run(turning_chain(cloth.stitch, cloth.counts), 1, colour, cloth.fabric)
    for place, gap in enumerate(below):
        even = gap - taken[place] - taken[place + 1] - (counted if place == 0 else 0)
        yield Run(plain, even, colour, cloth.fabric)
        if place < len(changes):
            yield from (Run(operation, times, colour, cloth.fabric) for operation, times in _at(cloth, changes[place]))


def _at(cloth: Cloth, change: int) -> Iterator[tuple[Operation, int]]:
    """What is worked at a marked stitch: it stays in the middle."""
    if not change:
        yield work(cloth.stitch, cloth.loop), 1
    elif change > 0:
        yield at_corner(cloth.stitch, 1, 1 + change, cloth.loop), 1
    else:
        side, pairs = at_corner(cloth.stitch, 2, 1, cloth.loop), -change // 2 - 1
        yield side, pairs
        yield at_corner(cloth.stitch, 3, 1, cloth.loop), 1
        yield side, pairs
