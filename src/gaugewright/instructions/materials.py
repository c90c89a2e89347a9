"""Materials, by colour and size; hooks and notions."""

from collections.abc import Iterator, Sequence
from typing import Literal

from gaugewright.design.model import Design, Fabric, Yarn
from gaugewright.instructions.buttonhole_words import button_lines
from gaugewright.instructions.fabric_words import hook_text
from gaugewright.instructions.nodes import Block, Heading, Paragraph, Span, Table, measure_columns, spans_text
from gaugewright.instructions.wording import Book, Spans
from gaugewright.rounding import half_up, up_to_step
from gaugewright.sized import Sized
from gaugewright.trade.yarn_weights import yarn_weight
from gaugewright.yarn.amounts import MARGIN, Amount

Amounts = Sized[dict[str, Amount] | None]


MARKERS = {0: "-none", 1: "-one"}


def materials(book: Book, design: Design, amounts: Amounts, fabrics: tuple[Fabric, ...], markers: int) -> Iterator[Block]:
    """The chapter on materials; `fabrics` are those in use."""
    yield Heading(2, book.front["materials-heading"])
    for alike in _alike(design.yarns):
        yield Paragraph(_yarn_line(book, alike), "bullet")
    hands = any(fabric.by_hand for fabric in fabrics)
    hooks = [hook_text(tool) for tool in dict.fromkeys(fabric.tool for fabric in fabrics if fabric.tool is not None)]
    if hooks:
        yield Paragraph(book.front_text("hooks-line" if len(hooks) > 1 else "hook-line", hooks=listed(book, hooks), gauge=book.word("gauge")), "bullet")
    if hands:
        yield Paragraph(book.front_text("hands-line", gauge=book.word("gauge")), "bullet")
    yield Paragraph(book.front_text(f"notions-line{MARKERS.get(markers, '')}", markers=markers), "bullet")
    for line in button_lines(book, design):
        yield Paragraph(line, "bullet")
    yield from _amounts(book, design, amounts)


def _alike(yarns: tuple[Yarn, ...]) -> list[tuple[Yarn, ...]]:
    """Colours of one yarn together: all that is printed of them but the name is the same."""
    found: dict[tuple[object, ...], list[Yarn]] = {}
    for yarn in yarns:
        found.setdefault((yarn.weight, yarn.fibre, yarn.ball_mass, yarn.ball_length, yarn.structure), []).append(yarn)
    return [tuple(group) for group in found.values()]


def _yarn_line(book: Book, yarns: tuple[Yarn, ...]) -> Spans:
    yarn = yarns[0]
    parts = [listed(book, [one.label for one in yarns])]
    if yarn.weight is not None:
        facts = yarn_weight(yarn.weight)
        name = (facts.uk_name if book.terms == "uk" and facts.uk_name else facts.name).lower()
        parts.append(f"yarn of weight category {yarn.weight} ({name})")
    parts += [f"{share:g}\u00a0% {fibre}" for fibre, share in yarn.fibre]
    if yarn.structure:
        parts.append(yarn.structure)
    text = f"{parts[0]}: {', '.join(parts[1:])}" if parts[1:] else parts[0]
    if yarn.ball_mass and yarn.ball_length:
        metres, yards = half_up(yarn.ball_length / 1000), half_up(yarn.ball_length / 914.4)
        text += f"; {yarn.ball_mass:g}\u00a0g and {metres}\u00a0m ({yards}\u00a0yd) to the ball"
    return (Span(text + ".", fact=f"yarn.{yarn.key}"),)


def listed(book: Book, names: Sequence[str], link: Literal["and", "or"] = "and") -> str:
    """ "A, B and C"."""
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} {book.words[link]} {names[-1]}"


def _amounts(book: Book, design: Design, amounts: Amounts) -> Iterator[Block]:
    if any(one is None for one in amounts):
        yield Paragraph(book.front_text("no-yarn"), "note")
        return
    found: Sized[dict[str, Amount]] = amounts  # type: ignore[assignment]
    used = [yarn for yarn in design.yarns if any(yarn.key in one for one in found)]
    header = (book.front["colour"], *book.labels)
    align = measure_columns(len(book.labels))
    note = spans_text(book.front_text("balls-note", margin=f"{half_up(MARGIN * 100)}\u00a0%"))
    if all(yarn.ball_mass for yarn in used):
        rows = tuple((yarn.label, *(str(one[yarn.key].balls) if yarn.key in one else book.words["no-value"] for one in found)) for yarn in used)
        yield Table(book.front["balls-caption"], header, rows, align, note=note)
    grams = tuple(
        (yarn.label, *(f"{up_to_step(one[yarn.key].total, 5):.0f}" if yarn.key in one else book.words["no-value"] for one in found))
        for yarn in used
    )
    yield Table(book.front["balls-grams"], header, grams, align)
