"""Materials, by colour and size; hooks and notions."""

from collections.abc import Iterator

from gaugewright.design.model import Design, Fabric, Yarn
from gaugewright.instructions.nodes import Block, Heading, Paragraph, Span, Table, spans_text
from gaugewright.instructions.wording import Book, Spans
from gaugewright.rounding import half_up, up_to_step
from gaugewright.sized import Sized
from gaugewright.trade.hooks import hook_label
from gaugewright.trade.yarn_weights import yarn_weight
from gaugewright.yarn.amounts import MARGIN, Amount

Amounts = Sized[dict[str, Amount] | None]


def materials(book: Book, design: Design, amounts: Amounts, fabrics: tuple[Fabric, ...], markers: int) -> Iterator[Block]:
    """The chapter on materials; `fabrics` are those in use."""
    yield Heading(2, book.front["materials-heading"])
    for yarn in design.yarns:
        yield Paragraph(_yarn_line(book, yarn), "bullet")
    hands = any(fabric.by_hand for fabric in fabrics)
    hooks = [hook_label(tool) for tool in dict.fromkeys(fabric.tool for fabric in fabrics if fabric.tool is not None)]
    if hooks:
        yield Paragraph(book.front_text("hooks-line" if len(hooks) > 1 else "hook-line", hooks=" and ".join(hooks)), "bullet")
    if hands:
        yield Paragraph(book.front_text("hands-line", gauge=book.word("gauge")), "bullet")
    yield Paragraph(book.front_text("notions-line", markers=markers), "bullet")
    yield from _amounts(book, design, amounts)


def _yarn_line(book: Book, yarn: Yarn) -> Spans:
    weight = "" if yarn.weight is None else str(yarn.weight)
    name = "" if yarn.weight is None else yarn_weight(yarn.weight).name.lower() if book.terms == "us" else yarn_weight(yarn.weight).uk_name.lower()
    fibre = ", ".join(f"{share:g} % {name}" for name, share in yarn.fibre)
    parts = [f"{yarn.label}"]
    if weight:
        parts.append(f": yarn of weight category {weight} ({name or yarn_weight(yarn.weight or 0).name.lower()})")
    text = "".join(parts)
    if fibre:
        text += f", {fibre}"
    if yarn.ball_mass and yarn.ball_length:
        text += f"; {yarn.ball_mass:g} g and {half_up(yarn.ball_length / 1000)} m ({half_up(yarn.ball_length / 914.4)} yd) to the ball"
    return (Span(text + ".", fact=f"yarn.{yarn.key}"),)


def _amounts(book: Book, design: Design, amounts: Amounts) -> Iterator[Block]:
    if any(one is None for one in amounts):
        yield Paragraph(book.front_text("no-yarn"), "note")
        return
    found: Sized[dict[str, Amount]] = amounts  # type: ignore[assignment]
    used = [yarn for yarn in design.yarns if any(yarn.key in one for one in found)]
    header = (book.front["colour"], *book.labels)
    align = ("left", *("right" for _ in book.labels))
    note = spans_text(book.front_text("balls-note", margin=f"{half_up(MARGIN * 100)} %"))
    if all(yarn.ball_mass for yarn in used):
        rows = tuple((yarn.label, *(str(one[yarn.key].balls) if yarn.key in one else book.words["no-value"] for one in found)) for yarn in used)
        yield Table(book.front["balls-caption"], header, rows, align, note=note)
    grams = tuple(
        (yarn.label, *(f"{up_to_step(one[yarn.key].total, 5):.0f}" if yarn.key in one else book.words["no-value"] for one in found))
        for yarn in used
    )
    yield Table(book.front["balls-grams"], header, grams, align)
