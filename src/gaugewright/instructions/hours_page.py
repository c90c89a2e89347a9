"""Hours of work: a line at a glance, and a table by piece and size."""

from collections.abc import Iterator, Mapping

from gaugewright.design.model import Design
from gaugewright.hours.paces import Pace, paces
from gaugewright.hours.printed import clock_text, finish_minutes, hour_range, piece_rows, whole_minutes
from gaugewright.hours.sizes import SizeTime
from gaugewright.instructions.nodes import Block, Heading, Paragraph, Table, measure_columns, spans_text
from gaugewright.instructions.steps import spoken
from gaugewright.instructions.wording import NO_BREAK, Book, Spans, length_text, listed, spaced
from gaugewright.rounding import half_up
from gaugewright.sized import Sized
from gaugewright.trade.work_times import work_time

SEAM = 101.6
"""The length of seam, mm, whose time is told."""


def hours_line(book: Book, design: Design, times: Sized[SizeTime]) -> Iterator[Block]:
    """About how long it takes, in the smallest and in the largest size printed."""
    basis = book.front["hours-timed" if _timed(design) else "hours-published"]
    (least, most), (less, more) = hour_range(times.values[0].whole), hour_range(times.values[-1].whole)
    if len(times) == 1 or (least, most) == (less, more):
        yield Paragraph(book.front_text("hours-line-one", "hours", least=least, most=most, basis=basis), "body")
        return
    first, last = times.labels[0], times.labels[-1]
    yield Paragraph(book.front_text("hours-line", "hours", first=first, least=least, most=most, last=last, less=less, more=more, basis=basis), "body")


def hours_chapter(book: Book, design: Design, times: Sized[SizeTime], used: tuple[str, ...]) -> Iterator[Block]:
    """The chapter: at what paces, then the table, then what is not in it. `used` are the fabrics worked."""
    yield Heading(2, book.front["hours-heading"])
    by_fabric = {key: pace for key, pace in paces(design).items() if key in used}
    yield Paragraph(spaced(*_paces(book, design, by_fabric), book.front_text("hours-yours")), "body")
    yield _table(book, design, times)


def _timed(design: Design) -> bool:
    return any(fabric.timed for fabric in design.fabrics)


def _paces(book: Book, design: Design, by_fabric: Mapping[str, Pace]) -> Iterator[Spans]:
    """What was timed, and what the others are taken from."""
    if not _timed(design):
        yards = work_time("yards")
        yield book.front_text("hours-how-published", slow=half_up(yards.low), fast=half_up(yards.high))
        return
    timed = [fabric for fabric in design.fabrics if fabric.timed]
    told = [f"{spoken(fabric.key).capitalize()}{NO_BREAK}{paces(design)[fabric.key].per_minute:.1f}" for fabric in timed]
    yield book.front_text("hours-how", paces=listed(book, told))
    if any(pace.of for pace in by_fabric.values()):
        yield book.front_text("hours-others")


def _table(book: Book, design: Design, times: Sized[SizeTime]) -> Table:
    rows = [(_title(book, design, row.key, row.make), *(clock_text(value) for value in row.minutes)) for row in piece_rows(times)]
    rows.append((book.front["hours-finish"], *(clock_text(value) for value in finish_minutes(times))))
    rows.append((book.front["hours-all"], *(clock_text(value) for value in whole_minutes(times))))
    rows.append((book.front["hours-range"], *("–".join(hour_range(size.whole)) for size in times)))
    note = book.front_text(
        "hours-note", length=length_text(Sized(("",), (SEAM,)), book.units, ("",)), seam=half_up(work_time("seam").usual * SEAM / 10 / 60), end=half_up(work_time("end").usual / 60), pick=half_up(work_time("pick up").usual),
        spell=half_up(work_time("spell").usual),
    )
    header = (book.front["hours-piece"], *book.labels)
    return Table(book.front["hours-caption"], header, tuple(rows), measure_columns(len(book.labels)), note=spans_text(note))


def _title(book: Book, design: Design, key: str, make: Sized[int]) -> str:
    title = design.piece(key).title
    return title if set(make.values) == {1} else spans_text(book.front_text("twice", piece=title, make=make))
