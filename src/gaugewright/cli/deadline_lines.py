"""Whether it can be done by a day, in lines: the answer, its reason, what would make it possible."""

import datetime
from collections.abc import Iterator, Sequence

from gaugewright.advice.finish_by import Answer, Days, Done
from gaugewright.design.model import Design
from gaugewright.hours.printed import clock_text, halves_text, hour_range
from gaugewright.rounding import down, half_up, to_step
from gaugewright.trade.work_times import work_time

HANDS = "Stop and take licensed advice if there is tingling, numbness or lasting pain."


def deadline_lines(design: Design, answers: Sequence[Answer], labels: Sequence[str], days: Days | None, today: bool) -> Iterator[str]:
    """The answer of each size asked for; nothing where no day is given."""
    if days is None:
        return
    count = f"{days.number} day{'s' if days.number != 1 else ''}"
    yield ""
    yield f"From {days.begin}{' (today)' if today else ''} to {days.by}, both included: {count} of {_hours(days.hours)}, {_clock(days.work)} hours of it work, with {work_time('pause').usual:.0f} minutes of pause after each {work_time('spell').usual:.0f} (common practice). {HANDS}"
    if days.hours > work_time("day").usual:
        yield f"More than {work_time('day').usual:.0f} hours a day for several days is hard on hands, pauses or not (common practice)."
    for one in answers:
        if one.size in labels:
            yield from _answer(design, one, answers, days)


def _answer(design: Design, one: Answer, answers: Sequence[Answer], days: Days) -> Iterator[str]:
    low, high = hour_range(one.needed)
    takes = f"it takes {low} to {high} hours, about {halves_text(to_step(one.needed.mean / 3600, 0.5))}, and there are {_clock(one.work)}"
    why = {"yes": "even at the slowest", "likely": "at the expected pace, not at the slowest", "no": "not at the expected pace"}[one.verdict]
    if one.verdict == "no" and one.needed.low <= one.work * 3600:
        why = "only if it goes as fast as it ever may"
    yield f"{one.size}: {one.verdict}, {why}: {takes}"
    if one.verdict == "yes":
        yield f"  done on {_day(one.likely_day)}, at the slowest on {_day(one.sure_day)}"
        return
    yield f"  {_by_then(design, one.by_then)}"
    yield f"  at {_hours(days.hours)} a day done on {_day(one.likely_day)}, at the slowest on {_day(one.sure_day)}"
    yield f"  {_more_hours(one)}"
    if one.verdict == "no":
        yield f"  {_smaller(one, answers)}"


def _by_then(design: Design, done: Sequence[Done]) -> str:
    """What is finished by the day, and how far the next piece is."""
    whole = [_name(design, one.piece) for one in done if one.share >= 1]
    begun = [f"{down(one.share * 100)} % of {_name(design, one.piece)}" for one in done if 0 < one.share < 1 and down(one.share * 100)]
    parts = [*whole, *begun]
    return f"by then at the expected pace: {', '.join(parts)}" if parts else "by then at the expected pace: the beginning of the first piece"


def _name(design: Design, piece: str) -> str:
    return design.piece(piece).title if piece else "the finishing"


def _more_hours(one: Answer) -> str:
    if one.likely_hours is None:
        return "no day has enough hours: give it more days"
    said = f"likely with {_hours(one.likely_hours)} a day" if one.verdict == "no" else "likely as it is"
    sure = f"sure with {_hours(one.sure_hours)}" if one.sure_hours is not None else "sure only with more days"
    limit = work_time("day").usual
    hard = one.likely_hours > limit or (one.sure_hours or 0) > limit
    return f"{said}, {sure}, pauses included{f'; more than {limit:.0f} hours a day is hard on hands' if hard else ''}"


def _smaller(one: Answer, answers: Sequence[Answer]) -> str:
    """The largest smaller size that can be done."""
    before = answers[: [each.size for each in answers].index(one.size)]
    can = [each for each in before if each.verdict != "no"]
    if not before:
        return "it is the smallest size"
    if not can:
        return "no smaller size can be done by then either"
    return f"a smaller size would do: {can[-1].size} ({can[-1].verdict})"


def _day(day: datetime.date | None) -> str:
    return "no day in sight" if day is None else f"{day:%A} {day}"


def _hours(hours: float) -> str:
    """
    >>> _hours(1.0), _hours(2.5), _hours(0.75)
    ('1 hour', '2½ hours', '0.75 hours')
    """
    text = halves_text(hours) if hours % 0.5 == 0 else f"{hours:g}"
    return f"{text} hour{'s' if hours != 1 else ''}"


def _clock(hours: float) -> str:
    return clock_text(half_up(hours * 60))
