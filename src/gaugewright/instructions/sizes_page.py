"""Sizes and finished measurements: bodies, the garment's own, and the ease, never in one line."""

import math
from collections.abc import Callable, Iterator, Mapping

from gaugewright.design.model import Design, FinishedMeasure
from gaugewright.design.size_list import ONE_SIZE
from gaugewright.instructions.nodes import Block, Heading, Paragraph, Table, plain, spans_text
from gaugewright.instructions.steps import spoken
from gaugewright.instructions.wording import Book
from gaugewright.measurements import Body, credit
from gaugewright.sized import Sized
from gaugewright.units import cm_text, inches_text

CHART = ("bust", "chest")


def sizes_page(book: Book, design: Design, bodies: Sized[Body], finished: Mapping[str, Sized[float]], thickness: float) -> Iterator[Block]:
    """The chapter on sizes. `finished` holds each finished measure in mm; `thickness` is the cloth's, mm."""
    yield Heading(2, book.front["sizes-heading"])
    if len(book.labels) > 1:
        yield Paragraph(book.front_text("sizes-body", sizes=", ".join(book.labels)))
    elif book.labels != (ONE_SIZE,):
        yield Paragraph(book.front_text("sizes-one", sizes=book.labels[0]))
    tables = (("table-cm", cm_text), ("table-in", inches_text))
    for caption, text in () if not design.finished else tables if book.units == "cm" else tables[::-1]:
        rows = tuple(row for measure in design.finished for row in _rows(book, measure, bodies, finished[measure.key], thickness, text))
        yield Table(book.front[caption], (book.front["measure"], *book.labels), rows, ("left", *("right" for _ in book.labels)))
    for note in _notes(book, design, bodies, thickness):
        yield Paragraph(note, "note")


def _rows(
    book: Book, measure: FinishedMeasure, bodies: Sized[Body], values: Sized[float], thickness: float, text: Callable[[float], str]
) -> Iterator[tuple[str, ...]]:
    name = measure.label.lower()
    if measure.of and all(measure.of in body.values for body in bodies):
        body = bodies.map(lambda one: one.values[measure.of])
        star = "" if all(_from_chart(value.confirmed, value.source) for value in body) else "*"
        line = spans_text(book.front_text("body-line", measure=spoken(measure.of)))
        yield (line + star, *(text(value.mm) for value in body))
        yield (spans_text(book.front_text("finished-line", measure=name)), *(text(v) for v in values))
        if measure.of in GIRTHS:
            ease = [v - b.mm for v, b in zip(values, body, strict=True)]
            yield (spans_text(book.front_text("ease-line", measure=name)), *(text(e) for e in ease))
            if thickness:
                yield (spans_text(book.front_text("worn-line", measure=name)), *(text(e - math.pi * thickness) for e in ease))
    else:
        yield (spans_text(book.front_text("finished-line", measure=name)), *(text(v) for v in values))


GIRTHS = ("bust", "chest", "waist", "hip", "upper_arm", "wrist", "neck", "head", "hand", "thigh", "calf", "ankle")
"""Measures round a body: the ones that have ease, and that thick cloth makes smaller inside."""


def _from_chart(confirmed: bool, source: str) -> bool:
    return confirmed and "survey" not in source.lower()


def _notes(book: Book, design: Design, bodies: Sized[Body], thickness: float) -> Iterator[tuple]:  # type: ignore[type-arg]
    yield book.front_text("units-note")
    if thickness and any(measure.of in GIRTHS for measure in design.finished):
        yield book.front_text("ease-note")
    for ease in design.sizes.ease:
        if ease.words:
            yield book.front_text("ease-fit", measure=spoken(ease.measure), words=ease.words)
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
        yield book.front_text("survey-note", measures=", ".join(spoken(name) for name in surveyed))
