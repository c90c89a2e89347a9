"""Stitches that short rows leave: does each row begin where the one before it turned, and are all taken up again?

Written apart from the engine that planned them, from the rows alone.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from gaugewright.grading.model import Row, Strip


class Worked(NamedTuple):
    """A row in the order of working, with the number of the strip's row it follows or is, and what it is called."""

    number: int
    called: str
    row: Row
    is_short: bool


def in_order(strip: Strip) -> Iterator[Worked]:
    """All rows of a strip; short rows come after the row they are worked on."""
    for number, row in enumerate(strip.rows, start=1):
        yield Worked(number, f"row {number}", row, False)
        for group in strip.short:
            if group.after == number:
                yield from (Worked(number, f"short row {place} after row {number}", short, True) for place, short in enumerate(group.rows, start=1))


def waits(row: Row) -> tuple[int, int]:
    """Stitches that wait at a row's start and at its end.

    >>> from gaugewright.grading.model import Run, wait, work
    >>> waits(Row((Run(wait(), 3, "oat", "body"), Run(work("hdc"), 9, "oat", "body")), "RS"))
    (3, 0)
    """
    places = [place for place, run in enumerate(row.runs) if run.operation.kind == "wait"]
    first = row.runs[0].times if places[:1] == [0] else 0
    last = row.runs[-1].times if places and places[-1] == len(row.runs) - 1 and places[-1] > 0 else 0
    return first, last


def waiting_faults(strip: Strip) -> Iterator[tuple[int, str]]:
    """Rows that don't begin where the one before turned, and stitches that no later row takes up."""
    left = 0
    rows = list(in_order(strip))
    for place, one in enumerate(rows):
        first, last = waits(one.row)
        inside = sum(run.times for run in one.row.runs if run.operation.kind == "wait") - first - last
        if first != left:
            yield one.number, f"{one.called} begins {first} stitches in, and the row before it turned {left} from there"
        if inside:
            yield one.number, f"{one.called} passes over {inside} stitches"
        if last and not one.is_short:
            yield one.number, f"{one.called} leaves {last} stitches to wait and is no short row"
        if first and not one.is_short and not rows[place - 1].is_short:
            yield one.number, f"{one.called} begins within the row and follows no short row"
        left = last
    yield from _lost(rows)


def _lost(rows: Sequence[Worked]) -> Iterator[tuple[int, str]]:
    """The two rows after short ones work every stitch between them, and the second of them works all."""
    for place, one in enumerate(rows):
        if one.is_short and not rows[place + 1 : place + 2]:
            yield one.number, f"{one.called} is the last of its strip, and stitches wait"
        elif one.is_short and not rows[place + 1].is_short and waits(rows[place + 1].row)[0] and not rows[place + 2 : place + 3]:
            yield one.number, f"no row takes up the stitches that wait at the start of {rows[place + 1].called}"


def gained(strip: Strip, after: int) -> tuple[int, ...]:
    """Rows that each stitch gains by the short rows after a row, from the starting edge on.

    The row that closes them is counted with them, less the one row that every stitch has there anyway.
    """
    closing = strip.rows[after]
    found = [-1] * closing.makes
    for row in (*(row for group in strip.short if group.after == after for row in group.rows), closing):
        first, last = waits(row)
        low, high = (first, len(found) - last) if row.side == "RS" else (last, len(found) - first)
        for stitch in range(low, high):
            found[stitch] += 1
    return tuple(found)
