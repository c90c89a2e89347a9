"""A shaped edge row by row: how many stitches go at that edge, on which rows, and in which way.

Armholes, neck edges, shoulder slopes and sleeve caps are all profiles. Crochet is not cast off: a step
of several stitches is left unworked at a row's end and slip-stitched over at a row's start, so a
mirrored edge needs no row more than its twin.
"""

from typing import Literal, NamedTuple

Way = Literal["decrease", "leave"]


class EdgeStep(NamedTuple):
    """On `row` (from 1 within its stretch) `stitches` go at one edge: worked together, or left."""

    row: int
    stitches: int
    way: Way


class Profile(NamedTuple):
    """One edge over `rows` rows; steps in order of rows, at most one per row."""

    rows: int
    steps: tuple[EdgeStep, ...]

    @property
    def stitches(self) -> int:
        """Stitches gone at the end.

        >>> Profile(8, (EdgeStep(1, 3, "leave"), EdgeStep(2, 1, "decrease"), EdgeStep(4, 1, "decrease"))).stitches
        5
        """
        return sum(step.stitches for step in self.steps)

    def after(self) -> tuple[int, ...]:
        """Stitches gone after each row.

        >>> Profile(4, (EdgeStep(1, 3, "leave"), EdgeStep(3, 1, "decrease"))).after()
        (3, 3, 4, 4)
        """
        by_row = {step.row: step.stitches for step in self.steps}
        gone, found = 0, []
        for row in range(1, self.rows + 1):
            gone += by_row.get(row, 0)
            found.append(gone)
        return tuple(found)
