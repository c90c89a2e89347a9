"""Hours as they are printed: minutes to the five that add up in a table, and ranges in hours that hold theirs."""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.hours.duration import Duration
from gaugewright.hours.finishing import Kind
from gaugewright.hours.sizes import SizeTime
from gaugewright.rounding import down_to_step, up_to_step
from gaugewright.sized import Sized

WHOLE_FROM = 10
"""From so many hours on ranges are in whole hours, below in halves: no pace is known nearer than a tenth."""


@dataclass(frozen=True, slots=True)
class PieceRow:
    """A piece as often as it is made, in minutes."""

    key: str
    make: Sized[int]
    minutes: Sized[int]


@dataclass(frozen=True, slots=True)
class ChoreRow:
    """A kind of finishing: how much (mm of seams, or a number), and minutes."""

    kind: Kind
    amount: Sized[float]
    minutes: Sized[int]


def piece_rows(times: Sized[SizeTime]) -> tuple[PieceRow, ...]:
    """Each piece in the spec's order."""
    return tuple(
        PieceRow(one.key, times.map(lambda size, i=index: size.pieces[i].make), times.map(lambda size, i=index: size.pieces[i].time.minutes))  # type: ignore[misc]
        for index, one in enumerate(times.values[0].pieces)
    )


def chore_rows(times: Sized[SizeTime]) -> Iterator[ChoreRow]:
    """Each kind of finishing that any size has."""
    for kind in dict.fromkeys(chore.kind for size in times for chore in size.finishing):
        found = times.map(lambda size, kind=kind: next((chore for chore in size.finishing if chore.kind == kind), None))  # type: ignore[misc]
        yield ChoreRow(kind, found.map(lambda chore: chore.amount if chore else 0.0), found.map(lambda chore: chore.time.minutes if chore else 0))


def finish_minutes(times: Sized[SizeTime]) -> Sized[int]:
    """All finishing, as the sum of what is printed of it."""
    return times.map(lambda size: sum(chore.time.minutes for chore in size.finishing))


def whole_minutes(times: Sized[SizeTime]) -> Sized[int]:
    """All of it, as the sum of what is printed."""
    return times.map(lambda size: sum(piece.time.minutes for piece in size.pieces) + sum(chore.time.minutes for chore in size.finishing))


def clock_text(minutes: int) -> str:
    """Hours and minutes.

    >>> clock_text(0), clock_text(65), clock_text(600)
    ('0:00', '1:05', '10:00')
    """
    return f"{minutes // 60}:{minutes % 60:02d}"


def hour_range(time: Duration) -> tuple[str, str]:
    """Hours at least and at most: halves below ten, whole ones from there, outwards.

    >>> hour_range(Duration(3 * 3600 + 1, 4 * 3600, 12.2 * 3600)), hour_range(Duration(60, 60, 60))
    (('3', '13'), ('½', '½'))
    """
    low, high = time.low / 3600, time.high / 3600
    least = down_to_step(low, 1 if low >= WHOLE_FROM else 0.5)
    return halves_text(max(least, 0.5)), halves_text(up_to_step(high, 1 if high > WHOLE_FROM else 0.5))


def halves_text(hours: float) -> str:
    """Whole and half hours.

    >>> halves_text(0.5), halves_text(12.0), halves_text(3.5)
    ('½', '12', '3½')
    """
    whole, half = divmod(int(hours * 2), 2)
    return f"{whole or ''}{'½' if half else ''}" or "0"
