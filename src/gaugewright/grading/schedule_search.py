"""All schedules worth considering for one stretch, each with what it is judged by.

Nothing is left out by guessing: gaps outside the searched range cannot fill the rows and leave
fewer even rows than the last gap.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

from gaugewright.grading.schedule_model import Block, Schedule, ScheduleImpossible

First = Literal["after a gap", "on first row"]

Shape = Literal["one rate", "rising", "falling", "turns", "turns first", "turns last"]
"""Order of the blocks. Rising: the shorter gap first. Turns: two gaps by turns."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """A possible schedule: its shape, its rates, its deviation in changes, and the whole key
    by which it is compared (deviation, number of rates, first gap's distance from the even
    rate, how late the changes fall)."""

    schedule: Schedule
    shape: Shape
    gaps: frozenset[int]
    deviation: float
    key: tuple[float, int, float, int]


def plain_candidates(
    changes: int, rows: int, step: int = 1, first: First = "after a gap"
) -> Iterator[Candidate]:
    """Every schedule of one rate, or of two that differ by `step`, in either order."""
    yield from _opened(_plain, changes, rows, step, first)


def turning_candidates(
    changes: int, rows: int, step: int = 1, first: First = "after a gap"
) -> Iterator[Candidate]:
    """Every schedule in which two gaps that differ by `step` are worked by turns, before or
    after a block of one of them (a rate such as 1.35 rows needs both)."""
    yield from _opened(_turning, changes, rows, step, first)


def check_room(changes: int, rows: int, step: int, first: First = "after a gap") -> None:
    """Refuses what has no schedule."""
    if changes < 0 or rows < 0 or step < 1:
        raise ValueError(f"no schedule for {changes} changes in {rows} rows with step {step}")
    at_first = first == "on first row" and changes > 0
    needed = 1 + (changes - 1) * step if at_first else changes * step
    if needed > rows:
        raise ScheduleImpossible(changes, rows, needed)


def single_blocks(*pairs: tuple[int, int]) -> tuple[Block, ...]:
    """Blocks of one gap each, from (gap, times); a rate used no times is left out."""
    return tuple(Block((gap,), times) for gap, times in pairs if times)


_Find = Callable[[int, int, int], Iterator[Candidate]]


def _opened(find: _Find, changes: int, rows: int, step: int, first: First) -> Iterator[Candidate]:
    """The candidates, opened with a change on the first row if that is the convention.

    What follows the first row is judged by its own line, from that row to the end.
    """
    check_room(changes, rows, step, first)
    if changes == 0:
        yield Candidate(Schedule((), rows), "one rate", frozenset(), 0.0, (0.0, 0, 0.0, 0))
    elif first == "on first row":
        for rest in _opened(find, changes - 1, rows - 1, step, "after a gap"):
            opened = Schedule((Block((1,), 1), *rest.schedule.blocks), rest.schedule.even)
            yield replace(rest, schedule=opened)
    else:
        yield from find(changes, rows, step)


def _gaps(changes: int, rows: int, step: int) -> range:
    """The gaps that can fill the rows: at the longest the even rate, a step more for one of
    two; at the shortest that which leaves almost a whole gap over."""
    shortest = rows // (changes + 1) // step * step - step
    longest = rows // changes // step * step + 2 * step
    return range(max(step, shortest), longest, step)


def _plain(changes: int, rows: int, step: int) -> Iterator[Candidate]:
    for gap in _gaps(changes, rows, step):
        if 0 <= rows - gap * changes < gap:
            yield _one_or_two(rows, (gap, changes))
        for other in (gap - step, gap + step):
            if other < step:
                continue
            left = rows - other * changes
            for times in range(1, changes):
                if 0 <= left - (gap - other) * times < other:
                    yield _one_or_two(rows, (gap, times), (other, changes - times))


def _one_or_two(rows: int, *pairs: tuple[int, int]) -> Candidate:
    """A candidate of plain blocks, its deviation found from the ends of its blocks alone.

    Within a block of one gap the distance from the line grows evenly, so it is largest at the
    block's first or last change.
    """
    n = sum(times for _, times in pairs)
    worst = row = done = late = 0
    for gap, times in pairs:
        for i in (1, times):
            at, count = row + gap * i, done + i
            worst = max(worst, abs(rows * (count - 1) - n * (at - 1)), abs(rows * count - n * at))
        late += times * row + gap * times * (times + 1) // 2
        row, done = row + gap * times, done + times
    gaps = [gap for gap, _ in pairs]
    shape: Shape = "rising" if gaps[0] < gaps[-1] else "falling"
    return Candidate(
        Schedule(single_blocks(*pairs), rows - row),
        "one rate" if len(pairs) == 1 else shape,
        frozenset(gaps),
        worst / rows,
        (worst / rows, len(pairs), abs(gaps[0] - rows / n), late),
    )


def _turning(changes: int, rows: int, step: int) -> Iterator[Candidate]:
    for short in _gaps(changes, rows, step):
        for pair in ((short, short + step), (short + step, short)):
            for gap in pair:
                yield from _turning_with(changes, rows, pair, gap)


def _turning_with(
    changes: int, rows: int, pair: tuple[int, int], gap: int
) -> Iterator[Candidate]:
    """Turns of a pair of gaps, before or after a block of one of them."""
    for times in range(2, changes + 1):
        turns = Block(pair, times)
        even = rows - turns.rows - gap * (changes - times)
        if times == changes and gap == pair[0] and 0 <= even < turns.last:
            yield _turned((turns,), even, "turns")
        elif times < changes and 0 <= even < max(pair):
            plain = Block((gap,), changes - times)
            if even < gap:
                yield _turned((turns, plain), even, "turns first")
            if even < turns.last:
                yield _turned((plain, turns), even, "turns last")


def _turned(blocks: tuple[Block, ...], even: int, shape: Shape) -> Candidate:
    made = Schedule(blocks, even)
    lead = abs(blocks[0].gaps[0] - made.rows / made.changes)
    gaps = frozenset(g for block in blocks for g in block.gaps)
    deviation = made.deviation()
    key = (deviation, 1 + len(blocks), lead, sum(made.positions()))
    return Candidate(made, shape, gaps, deviation, key)
