"""The gauge of every fabric in use, and what to do at another."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gaugewright.design.model import Crown, Fabric, Motif
from gaugewright.gauge.model import Gauge
from gaugewright.grading.motifs import width_across
from gaugewright.instructions.fabric_words import fabric_words
from gaugewright.instructions.hanging import hanging_notes, percent
from gaugewright.instructions.motif_words import is_motif
from gaugewright.instructions.nodes import Block, Heading, Paragraph, Table, spans_text
from gaugewright.instructions.steps import spoken
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Slot, Spans, exact_length_text, spaced
from gaugewright.rounding import half_up, to_step
from gaugewright.sized import Sized


@dataclass(frozen=True, slots=True)
class CriticalLength:
    """A length whose rows decide the fit: its name, gauge, wanted mm and rows in each size."""

    name: str
    gauge: Gauge
    wanted: Sized[float]
    rows: Sized[int]


def gauge_page(book: Book, fabrics: Sequence[Fabric], critical: Sequence[CriticalLength], views: Sequence[PieceView]) -> Iterator[Block]:
    """The chapter on gauge (tension in UK terms)."""
    yield Heading(2, book.word("gauge").capitalize())
    for fabric in fabrics:
        yield Paragraph(spaced(*_lines(book, fabric)), "body")
    motifs = {fabric.key: view for fabric in fabrics for view in _motif_of(fabric, views)}
    for key, view in motifs.items():
        yield Paragraph(_motif_swatch(book, key, view), "note")
    swatched = [fabric for fabric in fabrics if fabric.key not in motifs]
    yield from _swatches(book, swatched, views, bool(motifs))
    for note in hanging_notes(book, fabrics):
        yield Paragraph(note, "note")
    if critical:
        yield _if_table(book, critical)


def _swatches(book: Book, fabrics: Sequence[Fabric], views: Sequence[PieceView], beside: bool) -> Iterator[Block]:
    """How swatches are worked of all that isn't its own swatch, `beside` what is."""
    if not fabrics:
        yield Paragraph(book.front_text("gauge-exact"), "note")
        return
    by_hand = all(fabric.by_hand for fabric in fabrics)
    yield Paragraph(book.front_text("gauge-advice-hands" if by_hand else "gauge-advice-others" if beside else "gauge-advice"), "note")
    if any(fabric.pattern for fabric in fabrics):
        yield Paragraph(book.front_text("gauge-pattern", gauge=book.word("gauge")), "note")
    round_only = [fabric for fabric in fabrics if fabric.worked in ("joined rounds", "spiral rounds")]
    discs = [fabric for fabric in round_only if all(_is_disc(view) for view in _using(fabric, views))]
    if len(round_only) > len(discs):
        yield Paragraph(book.front_text("gauge-rounds", gauge=book.word("gauge")), "note")
    if discs:
        yield Paragraph(book.front_text("gauge-disc"), "note")
    yield Paragraph(book.front_text("gauge-count"), "note")


def _using(fabric: Fabric, views: Sequence[PieceView]) -> list[PieceView]:
    """The pieces that a fabric is used in."""
    return [view for view in views if any(section.cloth.fabric == fabric.key for section in view.first.sections)]


def _is_disc(view: PieceView) -> bool:
    """Whether a piece is worked out from its centre and nothing else, so that it holds no tube to measure."""
    return view.piece.start.kind == "centre" and all(isinstance(section, (Crown, Motif)) for section in view.piece.sections)


def _motif_of(fabric: Fabric, views: Sequence[PieceView]) -> Iterator[PieceView]:
    """The motif that all of a fabric is worked in, the same in all sizes: it is its own swatch."""
    using = _using(fabric, views)
    if all(is_motif(view) and len({plan.rows for plan in view.plans}) == 1 for view in using):
        yield from using[:1]


def _motif_swatch(book: Book, key: str, view: PieceView) -> Spans:
    motif = view.piece.sections[0]
    assert isinstance(motif, Motif)  # is_motif has found it
    across = exact_length_text(width_across(motif.sides, view.graded.values[0].worked["length"]), book.units)
    kind = "gauge-motif-odd" if motif.sides % 2 else "gauge-motif"
    return book.front_text(kind, f"gauge.{key}", title=spoken(key).capitalize(), piece=view.piece.title, across=across)


def _lines(book: Book, fabric: Fabric) -> list[Spans]:
    gauge = fabric.flat
    rounds = fabric.worked != "rows"
    slots: dict[str, Slot] = {
        "title": spoken(fabric.key).capitalize(), "stitches": gauge.stitches, "rows": gauge.rows,
        "width": exact_length_text(gauge.width, book.units), "height": exact_length_text(gauge.height, book.units), "fabric": fabric_words(book, fabric),
        "rowword": book.words["rounds" if rounds else "rows"], "rowone": "rnd" if rounds else "row",
        "stwidth": exact_length_text(gauge.stitch_width, book.units), "rowheight": exact_length_text(gauge.row_height, book.units),
    }
    fact = f"gauge.{fabric.key}"
    weighed = [book.front_text("gauge-mass", fact, mass=f"{to_step(fabric.swatch_mass, 0.1):g}", **{key: slots[key] for key in ("stitches", "rows", "rowword")})] if fabric.swatch_mass else []
    return [
        book.front_text("gauge-line-hands" if fabric.by_hand else "gauge-line", fact, **slots),
        book.front_text(
            "gauge-ten", fact, tensts=f"{to_step(gauge.stitches_in(100), 0.1):.1f}",
            tenrows=f"{to_step(gauge.rows_in(100), 0.1):.1f}", rowword=str(slots["rowword"]),
        ),
        *weighed,
        *([book.front_text("gauge-hung", fact, **slots, hung=exact_length_text(fabric.gauge.height, book.units), growth=percent(fabric.growth))] if fabric.lying else []),
    ]


FOOTED = 3
"""So many gauges have room in a footer beside workshop, version and date."""


def footer_gauge(book: Book, fabrics: Sequence[Fabric], own: bool) -> str:
    """The gauges of an edition in short, each once: stitches by rows to 10 cm or 4 in."""
    mm = 100.0 if book.units == "cm" else 101.6
    gauges = list(dict.fromkeys(f"{_short(fabric.flat.stitches_in(mm))}\u00a0×\u00a0{_short(fabric.flat.rows_in(mm))}" for fabric in fabrics))
    more = f" {book.words['and']} {len(gauges) - FOOTED} more" if len(gauges) > FOOTED else ""
    kind = "footer-own-gauge" if own else "footer-gauge"
    length = "10\u00a0cm" if book.units == "cm" else "4\u00a0in"
    return spans_text(book.front_text(kind, gauge=book.word("gauge"), gauges=", ".join(gauges[:FOOTED]) + more, length=length))


def _short(count: float) -> str:
    """
    >>> _short(8.7804), _short(8.0)
    ('8.78', '8')
    """
    return f"{to_step(count, 0.01):.2f}".rstrip("0").rstrip(".")


def _if_table(book: Book, critical: Sequence[CriticalLength]) -> Table:
    """Rows at half a row fewer to 10 cm, at the pattern's own gauge, and at half a row more.

    Worked out from the wanted length, as an edition for that gauge is: the pattern's rows are rounded already, and
    taken in proportion they would be rounded twice, which is a row off in one case out of six.
    """
    rows = []
    for length in critical:
        own = to_step(length.gauge.rows_in(100), 0.1)
        for step in (-0.5, 0.0, 0.5):
            gauge = own + step
            counts = length.rows if not step else length.wanted.map(lambda mm, gauge=gauge: half_up(mm * gauge / 100))  # type: ignore[misc]
            name = length.name if step < 0 else ""
            rows.append((name, f"{to_step(gauge, 0.1):.1f}", *(str(count) for count in counts)))
    header = (book.front["if-length"], book.front["if-rows"], *book.labels)
    align = ("left", "right", *("right" for _ in book.labels))
    caption = spans_text(book.front_text("if-caption", gauge=book.word("gauge")))
    return Table(caption, header, tuple(rows), align, note=spans_text(book.front_text("if-note")))  # type: ignore[arg-type]
