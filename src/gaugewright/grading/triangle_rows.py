"""A triangle from the middle of its long edge in one size: its plan and its rows.

Every row lies in a V: two halves with the spine stitch between them. It gains alike at its four places, both
ends of both halves. The module knows no design: it turns whole numbers into runs.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.model import Run, increase, turning_chain, work
from gaugewright.grading.operations import at_corner

PLACES = 4
"""Where a row gains: both ends, and both sides of the spine."""

Runs = Iterator[Run]


@dataclass(frozen=True, slots=True)
class TrianglePlan:
    """Rows whose gains go round a `cycle`, row 1 with its first: the stitches gained at each place."""

    cloth: Cloth
    colour: str
    rows: int
    cycle: tuple[int, ...]

    def gain(self, row: int) -> int:
        """Stitches that a row gains at each place, counted from row 1."""
        return self.cycle[(row - 1) % len(self.cycle)]

    def after(self, row: int) -> int:
        """Stitches after a row."""
        return after_rows(row, self.cycle)

    @property
    def stitches(self) -> int:
        """Stitches worked into the ring: row 1."""
        return self.after(1)

    @property
    def end(self) -> int:
        """Stitches at the end."""
        return self.after(self.rows)


def after_rows(rows: int, cycle: tuple[int, ...]) -> int:
    """Stitches after so many rows: four times what a place has gained, and the spine.

    >>> [after_rows(rows, (1, 1, 2)) for rows in range(1, 8)]
    [5, 9, 17, 21, 25, 33, 37]
    """
    rounds, rest = divmod(rows, len(cycle))
    return PLACES * (rounds * sum(cycle) + sum(cycle[:rest])) + 1


def triangle_rows(plan: TrianglePlan, colours: list[str]) -> Iterator[Runs]:
    """Each row's runs; row 1 goes over the stitches that the ring holds."""
    for row, colour in enumerate(colours, start=1):
        before = plan.after(max(1, row - 1))
        yield _row(plan.cloth, (before - 1) // 2, plan.gain(row) if row > 1 else 0, colour)


def _row(cloth: Cloth, half: int, gain: int, colour: str) -> Runs:
    """At the spine the rows turn a corner, so that no edge moves by what is gained there."""
    plain = work(cloth.stitch, cloth.loop)
    edge = increase(cloth.stitch, gain + 1, cloth.loop) if gain else plain
    spine = at_corner(cloth.stitch, 1, gain + 1, cloth.loop) if gain else plain
    if cloth.chains:
        yield Run(turning_chain(cloth.stitch, cloth.counts), 1, colour, cloth.fabric)
    for operation, times in ((edge, 1), (plain, half - 2), (spine, 1), (plain, 1), (spine, 1), (plain, half - 2), (edge, 1)):
        yield Run(operation, times, colour, cloth.fabric)
