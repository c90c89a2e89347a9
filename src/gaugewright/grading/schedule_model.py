"""A shaping schedule as data: the few numbers that a written phrase needs.

"Every 4 rows 3 times, then every 5 rows 2 times, then 3 rows even" is two blocks and the even
rows. Rows count from 1 within the stretch, and every row is accounted for.
"""

from collections.abc import Sequence
from dataclasses import dataclass


class ScheduleImpossible(ValueError):
    """More changes than rows can hold; `needed` is the rows that would be enough."""

    def __init__(self, changes: int, rows: int, needed: int) -> None:
        self.changes, self.rows, self.needed = changes, rows, needed
        super().__init__(f"{changes} shaping rows do not fit in {rows} rows: {needed} are needed")


@dataclass(frozen=True, slots=True)
class Block:
    """`times` changes. One gap g: on every g-th row. Two gaps g, h: after g rows, after h
    rows, after g rows ... by turns, and `times` still counts the changes (an odd number ends
    with a g).

    >>> Block((4,), 3).rows, Block((1, 2), 5).each_gap()
    (12, (1, 2, 1, 2, 1))
    """

    gaps: tuple[int, ...]
    times: int

    @property
    def rows(self) -> int:
        """Rows from the last row before the block up to its last change."""
        rounds, rest = divmod(self.times, len(self.gaps))
        return rounds * sum(self.gaps) + sum(self.gaps[:rest])

    @property
    def last(self) -> int:
        """The gap before the last change."""
        return self.gaps[(self.times - 1) % len(self.gaps)]

    def each_gap(self) -> tuple[int, ...]:
        """The gap before each change."""
        return tuple(self.gaps[i % len(self.gaps)] for i in range(self.times))


def blocks_of(gaps: Sequence[int]) -> tuple[Block, ...]:
    """The blocks that these gaps make one after the other, each as long as it goes.

    >>> blocks_of((1, 1, 1, 2, 1, 2, 1))
    (Block(gaps=(1,), times=3), Block(gaps=(2, 1), times=4))
    """
    found: list[Block] = []
    place = 0
    while place < len(gaps):
        rest = gaps[place:]
        alike = next((i for i, gap in enumerate(rest) if gap != rest[0]), len(rest))
        turns = next((i for i, gap in enumerate(rest) if i > 1 and gap != rest[i - 2]), len(rest))
        by_turns = alike == 1 and turns > 2
        found.append(Block((rest[0], rest[1]), turns) if by_turns else Block((rest[0],), alike))
        place += turns if by_turns else alike
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Schedule:
    """Blocks in order, then `even` rows without a change.

    >>> s = Schedule((Block((4,), 3), Block((5,), 2)), even=3)
    >>> s.changes, s.rows, s.positions()
    (5, 25, (4, 8, 12, 17, 22))
    """

    blocks: tuple[Block, ...]
    even: int

    @property
    def changes(self) -> int:
        """Number of rows with a change."""
        return sum(block.times for block in self.blocks)

    @property
    def rows(self) -> int:
        """All rows of the stretch, the even ones at the end included."""
        return sum(block.rows for block in self.blocks) + self.even

    def positions(self) -> tuple[int, ...]:
        """The row of each change."""
        row, found = 0, []
        for block in self.blocks:
            for gap in block.each_gap():
                row += gap
                found.append(row)
        return tuple(found)

    def deviation(self) -> float:
        """The largest distance, in changes, from the straight line over all rows.

        The line has made changes x r / rows of a change after row r. It is furthest from the
        worked staircase at a change or on the row before one.

        >>> Schedule((Block((4,), 5),), 0).deviation()
        0.75
        """
        n, rows = self.changes, self.rows
        worst = 0
        for i, row in enumerate(self.positions()):
            worst = max(worst, abs(rows * i - n * (row - 1)), abs(rows * (i + 1) - n * row))
        return worst / rows if rows else 0.0
