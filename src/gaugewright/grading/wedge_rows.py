"""A wedge's rows: short rows between two rows of the piece, and the row that takes up what they leave.

At its middle a wedge begins at whichever edge the work is: its first short row stands for the row that the
side edge gets there, and the row that closes the wedge for the one at the other edge, so that neither side
gains a row. At one edge short rows begin there and come back, and the row after them takes up all.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Literal

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.model import Row, Run, ShortRows, anchor, turning_chain, wait, work
from gaugewright.grading.short_rows import Reach, reaches
from gaugewright.vocabulary import RowEdge, Side


@dataclass(frozen=True, slots=True)
class WedgePlan:
    """Short rows after `lead` rows of the section above: `leaves` at each turn on a side, none where a size has no wedge."""

    cloth: Cloth
    colour: str
    stitches: int
    at: Literal["middle", "starting", "far"]
    lead: int
    leaves: tuple[int, ...]
    rows: int = 0

    @property
    def end(self) -> int:
        """Stitches at the end: all of them."""
        return self.stitches

    @property
    def short(self) -> int:
        """How many short rows: two for each turn on a side."""
        return 2 * len(self.leaves)

    def reach(self) -> tuple[Reach, ...]:
        """What each short row works and leaves."""
        both = self.at == "middle"
        return reaches(self.stitches, [left for step in self.leaves for left in (step, step if both else 0)])

    def gained_at(self, side: RowEdge) -> int:
        """Rows that a side edge gains."""
        return self.short if self.at == side else 0


def short_rows(plan: WedgePlan, after: int, colour: str, side: Callable[[int], Side]) -> ShortRows:
    """The wedge as rows after row `after`; `side` tells the face of a row by its number."""
    found = []
    for number, reach in enumerate(plan.reach()):
        begins = plan.at != "middle" and number % 2 == 0 or number == 0
        found.append(Row(tuple(run for run in _runs(plan.cloth, reach, begins, colour) if run.times), side(after + 1 + number)))
    return ShortRows(after, tuple(found))


def closing_row(plan: WedgePlan, row: Row) -> Row:
    """The row after the wedge: where the last short row turned within the row, it begins there."""
    waiting = plan.reach()[-1].after
    if not waiting:
        return row
    colour = row.runs[0].colour
    reach = Reach(waiting, plan.stitches - waiting, 0)
    return Row(tuple(run for run in _runs(plan.cloth, reach, False, colour) if run.times), row.side)


def _runs(cloth: Cloth, reach: Reach, begins: bool, colour: str) -> Iterator[Run]:
    """One row: only one that begins at an edge has a turning chain; one that turns before the end is anchored."""
    taken = int(cloth.counts and begins)
    yield Run(wait(), reach.before, colour, cloth.fabric)
    if cloth.chains and begins:
        yield Run(turning_chain(cloth.stitch, cloth.counts), 1, colour, cloth.fabric)
    yield Run(work(cloth.stitch, cloth.loop), reach.works - taken, colour, cloth.fabric)
    yield Run(anchor(), int(reach.after > 0), colour, cloth.fabric)
    yield Run(wait(), reach.after, colour, cloth.fabric)
