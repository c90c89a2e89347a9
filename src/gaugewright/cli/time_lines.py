"""`time`: hours of work by piece and size, and whether they fit into the days there are."""

import datetime
import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from gaugewright import pipeline
from gaugewright.advice.finish_by import Answer, Days, finish_by
from gaugewright.cli.deadline_lines import deadline_lines
from gaugewright.cli.gauge_option import parse_gauge_options
from gaugewright.cli.outcome import say
from gaugewright.cli.pace_option import maker_of
from gaugewright.cli.regauging import table
from gaugewright.errors import UserError
from gaugewright.hours.paces import Maker, Pace, paces
from gaugewright.hours.printed import ChoreRow, chore_rows, clock_text, hour_range, piece_rows, whole_minutes
from gaugewright.hours.sizes import SizeTime, fabrics_worked
from gaugewright.sized import Sized
from gaugewright.trade.work_times import work_time
from gaugewright.units import cm_text

NOT_IN = "Swatches and drying are not in these hours. What is said of turns, seams, ends, picking up and laying out is common practice, without a source."
PUBLISHED = "No swatch of this pattern was timed: a rough estimate from published paces ({slow:.0f} to {fast:.0f} yards of medium yarn an hour). Nothing is published for very thick yarn."


@dataclass(frozen=True, slots=True)
class Asked:
    """What was asked of the command, as written."""

    spec: Path
    gauge: Sequence[str]
    sizes: tuple[str, ...]
    pace: Sequence[str]
    hours: float
    by: str
    begin: str


def time_lines(asked: Asked, templates: Path | None, as_json: bool) -> None:
    """Prints the hours, and the answer for a day where one is given."""
    days = days_of(asked.hours, asked.begin, asked.by, datetime.date.today())
    graded = pipeline.grade(pipeline.load(asked.spec, parse_gauge_options(asked.gauge), templates))
    labels = pipeline.chosen(graded, asked.sizes).bodies.labels
    fabrics = fabrics_worked(graded.design, {key: sized.values[0] for key, sized in graded.grading.pieces.items()})
    maker = maker_of(asked.pace, fabrics)
    times = pipeline.hours(graded, maker)
    by_fabric = {key: pace for key, pace in paces(graded.design, maker).items() if key in fabrics}
    answers = finish_by(graded, times, days) if days else ()
    if as_json:
        say(json.dumps(_data(times.pick(labels), by_fabric, maker, days, [one for one in answers if one.size in labels]), indent=2, ensure_ascii=False))
        return
    for line in (*_hours(graded, times.pick(labels), by_fabric, maker), *deadline_lines(graded.design, answers, labels, days, not asked.begin)):
        say(line)


def days_of(hours: float, begin: str, by: str, today: datetime.date) -> Days | None:
    """The days given; None without an end. The first one is today unless stated."""
    if not 0 < hours <= 24:
        raise UserError("hours-a-day", f"--hours {hours:g} is no number of hours in a day", "write the hours you have a day, pauses included, such as --hours 2")
    first = _day("--from", begin) if begin else today
    if not by:
        return None
    last = _day("--by", by)
    if last < first:
        raise UserError("date-past", f"--by {last} lies before {'--from ' if begin else 'today, '}{first}", "write a day to come, or an earlier --from")
    return Days(first, last, hours)


def _day(option: str, text: str) -> datetime.date:
    try:
        return datetime.datetime.strptime(text.strip(), "%Y-%m-%d").date()
    except ValueError:
        raise UserError("date-text", f"{option} {text!r} is not a date", "write year-month-day, such as 2026-11-25") from None


def _hours(graded: pipeline.Graded, times: Sized[SizeTime], by_fabric: Mapping[str, Pace], maker: Maker) -> Iterator[str]:
    design = graded.design
    yield f"{design.about.title}: hours and minutes of work"
    yield from _basis(by_fabric, maker)
    yield ""
    rows = [(_made(design.piece(row.key).title, row.make), [clock_text(value) for value in row.minutes]) for row in piece_rows(times)]
    rows += [(chore_text(row), [clock_text(value) for value in row.minutes]) for row in chore_rows(times)]
    whole = whole_minutes(times)
    rows.append(("In all", [clock_text(value) for value in whole]))
    rows.append(("likely range, hours", ["-".join(hour_range(size.whole)) for size in times]))
    yield from table("", times.labels, rows)
    yield from ("", NOT_IN)


def _basis(by_fabric: Mapping[str, Pace], maker: Maker) -> Iterator[str]:
    """Where the paces come from, fabrics of one kind together."""
    if all(pace.basis == "published" for pace in by_fabric.values()):
        yards = work_time("yards")
        yield PUBLISHED.format(slow=yards.low, fast=yards.high)
    for key, pace in by_fabric.items():
        yield f"  {key}: {pace.per_minute:.1f} stitches a minute, {f'from {pace.of} by the movements in a stitch' if pace.of else SAID[pace.basis]}"
    if maker.times != 1:
        yield f"Everything but paces of your own takes {maker.times:.2f} times as long, as published hours of beginners are beside those of experienced makers."


SAID = {"timed": "as timed on the swatch", "stated": "as you state", "published": "as published"}


def _made(title: str, make: Sized[int]) -> str:
    return title if set(make) == {1} else f"{title} (make {', '.join(str(one) for one in dict.fromkeys(make))})"


def chore_text(row: ChoreRow) -> str:
    """A kind of finishing with how much of it there is, the least and the most over the sizes.

    >>> chore_text(ChoreRow("ends", Sized(("S", "M"), (40.0, 48.0)), Sized(("S", "M"), (80, 95))))
    'Ends (40 to 48)'
    """
    if row.kind == "laying out":
        return "Washing and laying out"
    unit = " cm" if row.kind == "seams" else ""
    ends = [cm_text(value) if row.kind == "seams" else f"{value:.0f}" for value in (min(row.amount), max(row.amount))]
    return f"{row.kind.capitalize()} ({' to '.join(dict.fromkeys(ends))}{unit})"


def _data(times: Sized[SizeTime], by_fabric: Mapping[str, Pace], maker: Maker, days: Days | None, answers: Sequence[Answer]) -> dict[str, Any]:
    """Seconds throughout, but for hours a day."""
    return {
        "paces": {key: {**asdict(pace), "per_minute": pace.per_minute} for key, pace in by_fabric.items()},
        "times_as_long": maker.times,
        "sizes": {size: {**asdict(one), "finish": asdict(one.finish), "whole": asdict(one.whole)} for size, one in times.items()},
        "days": None if days is None else {"from": str(days.begin), "by": str(days.by), "number": days.number, "hours_a_day": days.hours, "hours_of_work": days.work},
        "answers": [{**asdict(one), "likely_day": _iso(one.likely_day), "sure_day": _iso(one.sure_day)} for one in answers],
    }


def _iso(day: datetime.date | None) -> str | None:
    return None if day is None else day.isoformat()
