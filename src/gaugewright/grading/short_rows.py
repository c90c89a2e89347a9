"""Short rows: rows that stop before the end and turn, so that cloth grows longer in one place than at its edge.

In: the stitches there are, and how many each row leaves (or takes in again) where it ends. Out: what each
row works and what waits on either side of it. Nothing here knows what the rows are for.
"""

from collections.abc import Sequence
from typing import NamedTuple

from gaugewright.rounding import half_up


class ShortRowsImpossible(Exception):
    """Short rows that the stitches have no room for; the message says which."""


class Reach(NamedTuple):
    """One short row in order of working: stitches that wait before it, that it works, that wait after it."""

    before: int
    works: int
    after: int


def reaches(stitches: int, leaves: Sequence[int], begin: int = 0) -> tuple[Reach, ...]:
    """Each row goes back over the row before it, and stops `leaves` stitches before that one's other end.

    A row that takes stitches in again leaves fewer than none. `begin` stitches wait before the first row.
    At a turn the next row begins where the last one stopped: nothing is passed over.

    >>> reaches(20, (3, 3, 2, 2))
    (Reach(before=0, works=17, after=3), Reach(before=3, works=14, after=3), Reach(before=3, works=12, after=5), Reach(before=5, works=10, after=5))
    >>> reaches(15, (5, -2, -2), begin=5)[-1]
    Reach(before=3, works=9, after=3)
    """
    first, last = begin, stitches
    found: list[Reach] = []
    for number, left in enumerate(leaves):
        if number % 2:
            first += left
        else:
            last -= left
        if not 0 <= first < last <= stitches:
            raise ShortRowsImpossible(f"short row {number + 1} has no stitch to work, or more than there are")
        before, after = first, stitches - last
        found.append(Reach(after, last - first, before) if number % 2 else Reach(before, last - first, after))
    return tuple(found)


def turns(number: int, first: int, room: int) -> tuple[int, ...]:
    """How many stitches to leave at each of `number` turns on one side: `first`, then `room` shared evenly.

    Steps differ by at most one stitch, the larger ones spread among the others, so that the slope is even.

    >>> turns(4, 6, 10), turns(1, 6, 10), turns(3, 2, 2)
    ((6, 3, 4, 3), (6,), (2, 1, 1))
    """
    if number < 1 or first < 1 or (number > 1 and room < number - 1):
        raise ShortRowsImpossible(f"{number} turns don't fit into {room} stitches beyond the first {first}")
    ends = [half_up(room * turn / (number - 1)) for turn in range(number)] if number > 1 else [0]
    return (first, *(high - low for low, high in zip(ends, ends[1:], strict=False)))
