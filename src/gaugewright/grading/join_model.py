"""A band worked sideways and joined to edges as it grows: how many places of an edge each pair of rows takes.

A row goes out and the next comes back, so every second row ends at the edge. In: pairs of rows and the places
(stitches or row ends) they share. Out: whole numbers that add up to the places exactly.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class JoinRun:
    """Edges of like places laid end to end, and the pairs of rows that are joined to them; `ratio` is rows to a place by gauge."""

    edges: tuple[tuple[str, str], ...]
    places: int
    along_rows: bool
    pairs: int
    ratio: float = 1.0

    def takes(self) -> tuple[int, ...]:
        """Places that each pair of rows is joined over, spread evenly; the first takes the most.

        >>> JoinRun((("back", "hem"),), 7, False, 4).takes()
        (2, 2, 2, 1)
        """
        reached = [-(-pair * self.places // self.pairs) for pair in range(self.pairs + 1)]
        return tuple(after - before for before, after in zip(reached, reached[1:], strict=False))

    def counts(self) -> dict[int, int]:
        """How many pairs take how many places.

        >>> JoinRun((("back", "hem"),), 7, False, 4).counts()
        {1: 1, 2: 3}
        """
        takes = self.takes()
        return {take: takes.count(take) for take in sorted(set(takes))}


@dataclass(frozen=True, slots=True)
class Join:
    """All that a band is joined to, in order; `ring` where its ends meet, `sewn` where it is sewn on afterwards."""

    runs: tuple[JoinRun, ...]
    ring: bool
    sewn: bool

    @property
    def rows(self) -> int:
        """Rows of the band: two to each join."""
        return 2 * sum(run.pairs for run in self.runs)

    @property
    def places(self) -> int:
        """Stitches and row ends of the edges."""
        return sum(run.places for run in self.runs)

    def takes(self) -> tuple[int, ...]:
        """Places of each join, in order of working."""
        return tuple(take for run in self.runs for take in run.takes())
