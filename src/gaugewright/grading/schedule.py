"""Shaping schedules: on which rows of a stretch a stitch is added or taken away.

In: how many changes in how many rows, of one size or of all sizes. Out: a `Schedule` each,
as straight as whole rows allow, and of one structure over all sizes.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from gaugewright.grading.schedule_model import Block, Schedule, ScheduleImpossible
from gaugewright.grading.schedule_search import (
    Candidate,
    First,
    Shape,
    check_room,
    plain_candidates,
    single_blocks,
    turning_candidates,
)
from gaugewright.tolerances import STRAY_STITCHES, UNSEEN_STITCHES
from gaugewright.vocabulary import Schedules

__all__ = [
    "Block",
    "First",
    "RowTaper",
    "Schedule",
    "ScheduleImpossible",
    "row_taper",
    "schedule",
    "schedule_sizes",
    "schedules_by",
    "stitches_per_change",
    "taper_steps",
    "two_rates",
]


def schedule(changes: int, rows: int, step: int = 1, first: First = "after a gap") -> Schedule:
    """The straightest schedule of at most two rates, g and g + `step`, in either order.

    Straightest: the largest distance from the line is least. Ties go to one rate, then to the
    first gap nearest the even rate, then to the earliest changes. After the last change fewer
    rows than the last gap are worked even. With `step` 2 every gap is even, so that all
    changes fall on the same side of the work.

    `first`: published schedules begin either after a gap, or with a change on the first row
    (Papermoon: ten increases from round 1 on leave only nine gaps); the rows after it are then
    shared out, and the schedule opens with a block of one change after 1 row.

    >>> schedule(5, 25)
    Schedule(blocks=(Block(gaps=(4,), times=3), Block(gaps=(5,), times=2)), even=3)
    >>> schedule(3, 11).positions(), schedule(0, 7).even
    ((3, 6, 9), 7)
    >>> schedule(3, 11, first="on first row").positions()
    (1, 5, 9)
    """
    return min(plain_candidates(changes, rows, step, first), key=lambda c: c.key).schedule


def two_rates(changes: int, rows: int, step: int = 1, longer_first: bool = False) -> Schedule:
    """The trade's own sum: with q, r = divmod(rows, changes), every q rows (changes - r) times,
    every q + 1 rows r times; or the longer gaps before the shorter. The last change falls on the last
    row that `step` allows.

    Known to machine knitters as the magic formula (Superneedle, 2008).

    >>> two_rates(42, 176)
    Schedule(blocks=(Block(gaps=(4,), times=34), Block(gaps=(5,), times=8)), even=0)
    >>> two_rates(11, 108, step=2).blocks
    (Block(gaps=(8,), times=1), Block(gaps=(10,), times=10))
    >>> two_rates(5, 23, longer_first=True).positions()
    (5, 10, 15, 19, 23)
    """
    check_room(changes, rows, step)
    if changes == 0:
        return Schedule((), rows)
    quotient, longer = divmod(rows // step, changes)
    short = quotient * step
    pairs = ((short, changes - longer), (short + step, longer))
    return Schedule(single_blocks(*(reversed(pairs) if longer_first else pairs)), rows % step)


def schedules_by(
    habit: Schedules, pairs: Sequence[tuple[int, int]], per_change: int = 1
) -> tuple[Schedule, ...]:
    """One schedule per size by the pattern's habit: the straightest ones, or the trade's sum.

    By the sum every change comes after a whole gap and the last one on the last row, which most
    published schedules do; so worked an edge may lie almost a stitch behind its line.

    >>> for s in schedules_by("shorter gap first", [(5, 25), (6, 27)]): print(s.blocks, s.even)
    (Block(gaps=(5,), times=5),) 0
    (Block(gaps=(4,), times=3), Block(gaps=(5,), times=3)) 0
    """
    if habit == "straightest":
        return schedule_sizes(pairs, per_change=per_change)
    return tuple(two_rates(*pair, longer_first=habit == "longer gap first") for pair in pairs)


def schedule_sizes(
    pairs: Sequence[tuple[int, int]],
    step: int = 1,
    first: First = "after a gap",
    per_change: int = 1,
) -> tuple[Schedule, ...]:
    """One schedule per size, for (changes, rows) per size, all of one structure.

    The blocks stand in the same order in all sizes, so that one sentence serves; that order is
    taken whose worst size is straightest. The same two rates are used in all sizes where that
    costs every size less than half a stitch. Where a size would stray more than one stitch
    (`per_change` stitches a change), two gaps by turns are used if that is straighter by half a
    stitch or more; for less the plainer words are kept. For the same reason a size takes one
    rate instead of two where that costs it less than half a stitch.

    >>> for s in schedule_sizes([(5, 25), (6, 27), (7, 30)]): print(s.blocks, s.even)
    (Block(gaps=(5,), times=5),) 0
    (Block(gaps=(4,), times=6),) 3
    (Block(gaps=(4,), times=7),) 2
    >>> schedule_sizes([(20, 27)])[0].blocks
    (Block(gaps=(1,), times=5), Block(gaps=(1, 2), times=15))
    """
    if not pairs:
        return ()
    per_size = [tuple(plain_candidates(n, rows, step, first)) for n, rows in pairs]
    best = _straightest_order(per_size, ("one rate",), (("rising",), ("falling",)))
    if best.worst * per_change > STRAY_STITCHES:
        turning = [tuple(turning_candidates(n, rows, step, first)) for n, rows in pairs]
        either = [(*a, *b) for a, b in zip(per_size, turning, strict=True)]
        turned = _straightest_order(
            either, ("one rate", "turns"), (("turns first",), ("turns last",))
        )
        if (best.worst - turned.worst) * per_change >= UNSEEN_STITCHES:
            best = turned
    chosen = _with_shared_rates(best, per_change).chosen
    return tuple(
        _plainest(found, c, per_change).schedule for found, c in zip(per_size, chosen, strict=True)
    )


def _plainest(found: tuple[Candidate, ...], chosen: Candidate, per_change: int) -> Candidate:
    """One rate where nobody sees what it costs: the words a maker follows most easily."""
    single = [c for c in found if c.shape == "one rate"]
    if not single:
        return chosen
    best = min(single, key=_by_key)
    return best if (best.deviation - chosen.deviation) * per_change < UNSEEN_STITCHES else chosen


@dataclass(frozen=True, slots=True)
class _Structure:
    """What one order of blocks offers: all its candidates per size, and one chosen per size."""

    offered: tuple[tuple[Candidate, ...], ...]
    chosen: tuple[Candidate, ...]

    @property
    def worst(self) -> float:
        """The deviation of the size that strays most."""
        return max(c.deviation for c in self.chosen)

    @property
    def key(self) -> tuple[float, float, float]:
        """Worst size first, then all sizes together, then how early the changes come."""
        late = sum(c.key[-1] for c in self.chosen)
        return self.worst, sum(c.deviation for c in self.chosen), late


def _straightest_order(
    per_size: Sequence[tuple[Candidate, ...]],
    always: tuple[Shape, ...],
    orders: tuple[tuple[Shape, ...], ...],
) -> _Structure:
    """The best of several orders; shapes without an order (`always`) belong to each of them."""
    structures = []
    for order in orders:
        offered = tuple(
            tuple(c for c in found if c.shape in always + order) for found in per_size
        )
        if all(offered):
            best = tuple(min(found, key=_by_key) for found in offered)
            structures.append(_Structure(offered, best))
    return min(structures, key=lambda s: s.key)


def _with_shared_rates(best: _Structure, per_change: int) -> _Structure:
    """The same rates in all sizes, where no size pays half a stitch for it."""
    shared = []
    for rates in {c.gaps for found in best.offered for c in found if c.gaps}:
        offered = tuple(tuple(c for c in found if c.gaps <= rates) for found in best.offered)
        if not all(offered):
            continue
        chosen = tuple(min(found, key=_by_key) for found in offered)
        costs = (
            (c.deviation - own.deviation) * per_change
            for c, own in zip(chosen, best.chosen, strict=True)
        )
        if max(costs) < UNSEEN_STITCHES:
            shared.append((_Structure(offered, chosen), tuple(sorted(rates))))
    if not shared:
        return best
    return min(shared, key=lambda pair: (pair[0].key, pair[1]))[0]


def _by_key(candidate: Candidate) -> tuple[float, int, float, int]:
    return candidate.key


@dataclass(frozen=True, slots=True)
class RowTaper:
    """A taper at one edge: `each_row` stitches on every row (0 while the rows suffice), and one
    more on the rows of `extra`."""

    each_row: int
    extra: Schedule

    def steps(self) -> tuple[int, ...]:
        """Stitches at the edge on each row, in order; 0 on an even row."""
        more = set(self.extra.positions())
        return tuple(self.each_row + (row in more) for row in range(1, self.extra.rows + 1))


def stitches_per_change(stitches: int, rows: int) -> int:
    """The fewest stitches that one row must take at one edge for all to fit into the rows.

    >>> stitches_per_change(10, 12), stitches_per_change(13, 6), stitches_per_change(0, 3)
    (1, 3, 1)
    """
    if stitches < 0 or rows < 1 <= stitches:
        raise ScheduleImpossible(stitches, rows, 1)
    return max(1, -(-stitches // max(rows, 1)))


def row_taper(stitches: int, rows: int) -> RowTaper:
    """Shares stitches over rows with at most one stitch between the steps of any two rows.

    Taking as many as possible on each row and what is left on the last makes a kink at the
    end; here the odd stitches are themselves spread over the rows as a schedule.

    >>> row_taper(13, 6)
    RowTaper(each_row=2, extra=Schedule(blocks=(Block(gaps=(4,), times=1),), even=2))
    """
    if stitches_per_change(stitches, rows) == 1:
        return RowTaper(0, schedule_sizes([(stitches, rows)])[0])
    each_row, extra = divmod(stitches, rows)
    return RowTaper(each_row, schedule_sizes([(extra, rows)])[0])


def taper_steps(stitches: int, rows: int) -> tuple[int, ...]:
    """Stitches to take at one edge on each row that changes, in order.

    One at a time while the rows suffice; with more stitches than rows one figure for every row.

    >>> taper_steps(13, 6), taper_steps(9, 6), taper_steps(2, 6)
    ((2, 2, 2, 3, 2, 2), (1, 2, 1, 2, 1, 2), (1, 1))
    """
    return tuple(step for step in row_taper(stitches, rows).steps() if step)
