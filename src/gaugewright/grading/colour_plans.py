"""The colours of a piece in one size: which rows have one colour, which have blocks, where a stripe sequence stands."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ColourBandRows:
    """Rows `first` to `last` of the piece in one colour; of rows in blocks, that of the block at the starting edge."""

    colour: str
    first: int
    last: int


@dataclass(frozen=True, slots=True)
class StripePlan:
    """A sequence of (colour, rows) repeated over the piece; `shift` rows of it are passed before row 1."""

    sequence: tuple[tuple[str, int], ...]
    shift: int

    @property
    def period(self) -> int:
        """Rows after which the sequence begins again."""
        return sum(rows for _, rows in self.sequence)

    def place(self, row: int) -> tuple[int, int]:
        """Which stripe a row is in, counted from the sequence's first one that touches row 1's repeat, and which row of it.

        >>> plan = StripePlan((("oat", 4), ("kelp", 2)), shift=1)
        >>> [plan.place(row) for row in (1, 3, 4, 6)]
        [(0, 2), (0, 4), (1, 1), (2, 1)]
        """
        repeats, within = divmod(self.shift + row - 1, self.period)
        for index, (_, rows) in enumerate(self.sequence):
            if within < rows:
                return repeats * len(self.sequence) + index, within + 1
            within -= rows
        raise AssertionError("a row lies within its period")

    def colour_at(self, row: int) -> str:
        """The colour of a row, counted from 1."""
        return self.sequence[self.place(row)[0] % len(self.sequence)][0]


@dataclass(frozen=True, slots=True)
class BlockPlan:
    """Rows `first` to `last` with blocks of (colour, stitches) in order from the starting edge, counted on the first of them."""

    first: int
    last: int
    blocks: tuple[tuple[str, int], ...]

    @property
    def several(self) -> bool:
        """Whether the rows have more than one colour."""
        return len(self.blocks) > 1
