"""Where the motifs of a grid lie: rows from the top down, colours by turns. Lengths in mm."""

import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from gaugewright.vocabulary import ColourPlan


class Place(NamedTuple):
    """A motif's row and place in it, from 0, and its middle: x from the left, y from the bottom."""

    row: int
    number: int
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Layout:
    """Motifs joined in `down` rows of `across`; of hexagons every second row has one less and lies half a motif in.

    `width` is a motif's own from side to side once joined; `turns` are the yarns they begin in, `border` the depth of
    what is picked up round them; their corners are spaces or stitches.
    """

    sides: int
    across: int
    down: int
    width: float
    turns: tuple[str, ...] = ()
    plan: ColourPlan = "checkerboard"
    border: float = 0.0
    spaced: bool = False

    @property
    def is_offset(self) -> bool:
        """Whether rows lie half a motif in by turns."""
        return self.sides == 6

    def in_row(self, row: int) -> int:
        """Motifs of a row, counted from 0."""
        return self.across - (1 if self.is_offset and row % 2 else 0)

    @property
    def motifs(self) -> int:
        """Motifs in all."""
        return sum(self.in_row(row) for row in range(self.down))

    @property
    def rise(self) -> float:
        """From one row's middle to the next one's."""
        return self.width * (math.sqrt(3) / 2 if self.is_offset else 1.0)

    @property
    def joined_width(self) -> float:
        """The whole from side to side."""
        return self.across * self.width

    @property
    def joined_length(self) -> float:
        """The whole from top to bottom: of hexagons between the outermost corners."""
        high = self.width * (2 / math.sqrt(3) if self.is_offset else 1.0)
        return (self.down - 1) * self.rise + high

    @property
    def with_border(self) -> tuple[float, float]:
        """Width and length of the whole with its border."""
        return with_border(self, self.border)

    def places(self) -> Iterator[Place]:
        """Every motif, row by row from the top."""
        top = self.joined_length - self.width / (math.sqrt(3) if self.is_offset else 2)
        for row in range(self.down):
            inset = self.width / 2 * (1 + (self.is_offset and row % 2))
            for number in range(self.in_row(row)):
                yield Place(row, number, inset + number * self.width, top - row * self.rise)

    @property
    def in_rows(self) -> int:
        """Joins between neighbours in a row."""
        return sum(self.in_row(row) - 1 for row in range(self.down))

    @property
    def between_rows(self) -> int:
        """Joins between motifs of neighbouring rows: a hexagon of a shorter row meets two of each row beside it."""
        return sum(2 * min(self.in_row(row), self.in_row(row + 1)) if self.is_offset else self.across for row in range(self.down - 1))

    def colour(self, place: Place) -> str:
        """The yarn that a motif begins in; "" where they don't take turns."""
        if not self.turns:
            return ""
        return self.turns[(place.row + (place.number if self.plan == "checkerboard" else 0)) % len(self.turns)]

    def by_colour(self) -> dict[str, int]:
        """Motifs that begin in each yarn."""
        found = Counter(self.colour(place) for place in self.places())
        return {colour: found[colour] for colour in dict.fromkeys(self.turns) if found[colour]}


def with_border(layout: Layout, depth: float) -> tuple[float, float]:
    """Width and length with a border so deep all round: over the outermost corners of hexagons it is deeper, as their corners are sharp.

    >>> with_border(Layout(4, 2, 3, 100.0), 10.0)
    (220.0, 320.0)
    """
    over = depth / math.cos(math.pi / 6) if layout.is_offset else depth
    return layout.joined_width + 2 * depth, layout.joined_length + 2 * over
