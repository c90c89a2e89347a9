"""Whether a pattern can be made by a day: hours of work against the days there are, with pauses for the hands."""

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from gaugewright.grading.waiting import in_working_order
from gaugewright.hours.duration import Duration
from gaugewright.hours.sizes import SizeTime
from gaugewright.pipeline import Graded
from gaugewright.rounding import down, up, up_to_step
from gaugewright.sized import Sized
from gaugewright.trade.work_times import work_time

Verdict = Literal["yes", "likely", "no"]

HOUR = 3600


@dataclass(frozen=True, slots=True)
class Days:
    """The days there are, both ends among them, and the hours of each, pauses included."""

    begin: datetime.date
    by: datetime.date
    hours: float

    @property
    def number(self) -> int:
        """How many days."""
        return (self.by - self.begin).days + 1

    @property
    def work(self) -> float:
        """Hours of work in all of them."""
        return self.number * at_work(self.hours)


@dataclass(frozen=True, slots=True)
class Done:
    """What share of a piece is worked by the day, at the expected pace; "" stands for the finishing."""

    piece: str
    share: float


@dataclass(frozen=True, slots=True)
class Answer:
    """One size: whether it can be done, and what would make it possible.

    `likely_hours` and `sure_hours` are hours a day, pauses included, with which it would be done at the expected and at the
    slowest pace (None: a day has too few); `likely_day` and `sure_day` are the days it is done at the hours given.
    """

    size: str
    verdict: Verdict
    needed: Duration
    work: float
    likely_hours: float | None
    sure_hours: float | None
    likely_day: datetime.date | None
    sure_day: datetime.date | None
    by_then: tuple[Done, ...]


def finish_by(graded: Graded, times: Sized[SizeTime], days: Days) -> tuple[Answer, ...]:
    """An answer for each size."""
    order = in_working_order(graded.design)
    return tuple(_answer(size, time, days, order) for size, time in times.items())


def _answer(size: str, time: SizeTime, days: Days, order: Sequence[str]) -> Answer:
    needed, work = time.whole, days.work
    verdict: Verdict = "yes" if needed.high <= work * HOUR else "likely" if needed.mean <= work * HOUR else "no"
    likely, sure = (at_the_table(seconds / HOUR / days.number) for seconds in (needed.mean, needed.high))
    return Answer(
        size, verdict, needed, work, likely, sure,
        _day(days, needed.mean), _day(days, needed.high), tuple(_by_then(time, work * HOUR, order)),
    )  # fmt: skip


def _day(days: Days, seconds: float) -> datetime.date | None:
    """The day on which so much work is done; None beyond all calendars."""
    try:
        needed = up(seconds / HOUR / at_work(days.hours))
        return days.begin + datetime.timedelta(days=max(needed, 1) - 1)
    except OverflowError:
        return None


def _by_then(time: SizeTime, seconds: float, order: Sequence[str]) -> Iterator[Done]:
    """Pieces in working order, then the finishing, as far as the time reaches."""
    expected = {piece.key: piece.time.mean for piece in time.pieces}
    left = seconds
    for key, takes in (*((key, expected[key]) for key in order), ("", time.finish.mean)):
        yield Done(key, min(1.0, left / takes) if takes else 1.0)
        left = max(0.0, left - takes)


def at_work(hours: float) -> float:
    """Hours of work in hours at the table: after each spell a pause (common practice, no source).

    >>> at_work(0.5), round(at_work(2) * 60), round(at_work(0.55) * 60)
    (0.5, 105, 30)
    """
    spell, pause = (work_time(key).usual / 60 for key in ("spell", "pause"))
    rounds = down(hours / (spell + pause))
    return rounds * spell + min(spell, max(0.0, hours - rounds * (spell + pause)))


def at_the_table(work: float) -> float | None:
    """Hours a day that hold so many hours of work and the pauses between its spells, to the half hour; None where a day doesn't.

    >>> at_the_table(0.5), at_the_table(1.75), at_the_table(23.0)
    (0.5, 2.0, None)
    """
    spell, pause = (work_time(key).usual / 60 for key in ("spell", "pause"))
    hours = up_to_step(work + max(0, up(work / spell) - 1) * pause, 0.5)
    return hours if hours <= 24 else None
