"""What changes in an edition worked at another gauge: old and new numbers of every size, one under the other."""

from collections.abc import Iterator
from decimal import Decimal
from itertools import groupby

from gaugewright.changes import Changes, CountChange
from gaugewright.instructions.nodes import Block, Heading, Paragraph, Table, measure_columns, spans_text
from gaugewright.instructions.wording import Book
from gaugewright.sized import Sized
from gaugewright.units import cm_text, inches_text


def own_gauge_page(book: Book, changed: Changes, gauge: str) -> Iterator[Block]:
    """The chapter on what the gauge changes."""
    yield Heading(2, spans_text(book.front_text("changes-heading", gauge=book.word("gauge"))))
    yield Paragraph(book.front_text("changes-intro", gauge=gauge), "note")
    for title, counts in groupby(changed.counts, lambda one: one.title):
        yield _table(book, title, [(_place(book, one), _texts(one.old), _texts(one.new)) for one in counts])
    text = cm_text if book.units == "cm" else inches_text
    measured = [(one.label, tuple(map(text, one.old)), tuple(map(text, one.new))) for one in changed.measures]
    yield _table(book, spans_text(book.front_text("changes-measures", unit=book.units)), measured)
    bought = [(one.label, _texts(one.old), _texts(one.new)) for one in changed.balls]
    paid = [(spans_text(book.front_text("changes-cost", currency=one.currency)), _money(one.old), _money(one.new)) for one in changed.costs]
    if bought:
        yield _table(book, book.front["changes-balls"], [*bought, *paid])


def _place(book: Book, one: CountChange) -> str:
    if one.part == 0:
        return spans_text(book.front_text("changes-foundation"))
    return spans_text(book.front_text("changes-sts" if one.unit == "sts" else "changes-rows", part=one.part, shape=one.kind, rowword=book.words["rows" if one.unit == "rows" else "rounds"]))


def _texts(values: Sized[int]) -> tuple[str, ...]:
    return tuple(map(str, values))


def _money(values: Sized[Decimal]) -> tuple[str, ...]:
    return tuple(f"{value:.2f}" for value in values)


def _table(book: Book, caption: str, pairs: list[tuple[str, tuple[str, ...], tuple[str, ...]]]) -> Table:
    rows = []
    for name, old, new in pairs:
        rows += [(name, book.front["changes-pattern"], *old), ("", book.front["changes-here"], *new)]
    header = (book.front["changes-place"], book.front["changes-edition"], *book.labels)
    return Table(caption, header, tuple(rows), measure_columns(len(book.labels), heads=2))
