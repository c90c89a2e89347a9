"""Sizes and finished measurements: bodies, the garment's own, and the ease, never in one line."""

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from gaugewright.design.model import Design, FinishedMeasure
from gaugewright.design.size_list import ONE_SIZE
from gaugewright.instructions.wording import listed
from gaugewright.instructions.nodes import Block, Heading, Paragraph, Table, measure_columns, plain, spans_text
from gaugewright.instructions.steps import spoken
from gaugewright.instructions.wording import Book, Spans, exact_length_text, length_text
from gaugewright.measurements import Body, credit
from gaugewright.rounding import to_step
from gaugewright.sized import Sized
from gaugewright.units import cm_text, eighths_text, inches_text



def sizes_page(book: Book, design: Design, bodies: Sized[Body], finished: Mapping[str, Sized[float]], thickness: float, hung: frozenset[str] = frozenset()) -> Iterator[Block]:
    """The chapter on sizes. `finished` holds each finished measure in mm; `thickness` is the cloth's, mm; `hung` names those measured hung."""
    yield Heading(2, book.front["sizes-heading"])
    if len(book.labels) > 1:
        kind = "sizes-body" if any(body.values for body in bodies) else "sizes-things"
        yield Paragraph(book.front_text(kind, sizes=", ".join(book.labels)))
    elif book.labels != (ONE_SIZE,):
        yield Paragraph(book.front_text("sizes-one", sizes=book.labels[0]))
    units = (CM, INCHES) if book.units == "cm" else (INCHES, CM)
    tables = [
        tuple(row for measure in design.finished for row in _rows(book, measure, bodies, finished[measure.key], thickness, unit, measure.key in hung))
        for unit in units
    ]
    if design.finished and len(book.labels) == 1:
        rows = tuple((*first, second[-1]) for first, second in zip(*tables, strict=True))
        yield Table(book.front["table-one"], (book.front["measure"], *(unit.name for unit in units)), rows, measure_columns(2))
    elif design.finished:
        for unit, rows in zip(units, tables, strict=True):
            yield Table(book.front[unit.caption], (book.front["measure"], *book.labels), rows, measure_columns(len(book.labels)))
    if hung:
        yield Paragraph(book.front_text("finished-hung-note"), "note")
    for note in _notes(book, design, bodies, thickness):
        yield Paragraph(note, "note")


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit of the tables: its name, its caption, a length and a difference as printed, and the length that the print stands for, mm."""

    name: str
    caption: str
    text: Callable[[float], str]
    difference: Callable[[float], str]
    printed: Callable[[float], float]


CM = Unit("cm", "table-cm", cm_text, cm_text, lambda mm: to_step(mm / 10, 0.5) * 10)
INCHES = Unit("in", "table-in", inches_text, eighths_text, lambda mm: to_step(mm / 25.4, 0.125 if mm < 127 else 0.25) * 25.4)


def _rows(
    book: Book, measure: FinishedMeasure, bodies: Sized[Body], values: Sized[float], thickness: float, unit: Unit, hung: bool
) -> Iterator[tuple[str, ...]]:
    """The body's line, the garment's, and the ease: printed figures less printed figures, so that anybody's sum agrees."""
    name = measure.label.lower()
    finished = (spans_text(book.front_text("finished-hung-line" if hung else "finished-line", measure=name)), *(unit.text(v) for v in values))
    if not measure.of or any(measure.of not in body.values for body in bodies):
        yield finished
        return
    body = bodies.map(lambda one: one.values[measure.of])
    star = "" if all(_from_chart(value.confirmed, value.source) for value in body) else "*"
    line = spans_text(book.front_text("body-line", measure=measure_name(book, measure.of)))
    yield (line + star, *(unit.text(value.mm) for value in body))
    yield finished
    if measure.of not in GIRTHS:
        return
    ease = [unit.printed(v) - unit.printed(b.mm) for v, b in zip(values, body, strict=True)]
    if measure.of in ("bust", "chest") or not thickness:
        yield (spans_text(book.front_text("ease-line", measure=name)), *(unit.difference(e) for e in ease))
    if thickness:
        takes = unit.printed(math.pi * thickness)
        yield (spans_text(book.front_text("worn-line", measure=name)), *(unit.difference(e - takes) for e in ease))


def measure_name(book: Book, measure: str) -> str:
    """A body measure's printed name."""
    return book.measures.get(measure, spoken(measure))


GIRTHS = ("bust", "chest", "waist", "hip", "upper_arm", "wrist", "neck", "head", "hand", "foot", "thigh", "calf", "ankle")
"""Measures round a body: the ones that have ease, and that thick cloth makes smaller inside."""


def _from_chart(confirmed: bool, source: str) -> bool:
    return confirmed and "survey" not in source.lower()


def _notes(book: Book, design: Design, bodies: Sized[Body], thickness: float) -> Iterator[Spans]:
    yield book.front_text("units-note")
    if thickness and any(measure.of in GIRTHS for measure in design.finished):
        takes = length_text(Sized(("",), (math.pi * thickness,)), book.units, ("",))
        yield book.front_text("ease-note", thickness=exact_length_text(thickness, book.units), takes=takes)
    for ease in design.sizes.ease:
        if ease.words:
            yield book.front_text("ease-fit", measure=measure_name(book, ease.measure), words=ease.words)
    if not design.sizes.table:
        return
    yield book.front_text(f"read-{design.sizes.read}")
    printed = [measure.of for measure in design.finished if measure.of]
    first = bodies.values[0].values
    surveyed = [name for name in dict.fromkeys(printed) if name in first and "survey" in first[name].source.lower()]
    if any(not _from_chart(body.values[name].confirmed, body.values[name].source) for body in bodies for name in printed if name in body.values):
        yield book.front_text("chart-note", credit=credit(design.sizes.table))
    else:
        yield plain(credit(design.sizes.table))
    if surveyed:
        yield book.front_text("survey-note", measures=listed(book, [measure_name(book, name) for name in surveyed], "or"))
