"""Materials, by colour and size; hooks and notions."""

from collections.abc import Iterator

from gaugewright.design.model import Design, Fabric, Yarn
from gaugewright.drawings.primitives import Drawing
from gaugewright.instructions.amount_tables import Amounts, amount_tables
from gaugewright.instructions.buttonhole_words import button_lines
from gaugewright.instructions.fabric_words import hook_text
from gaugewright.instructions.nodes import Block, Figure, Heading, Paragraph, Span
from gaugewright.instructions.wording import Book, Spans, listed
from gaugewright.rounding import half_up, to_step
from gaugewright.trade.yarn_weights import yarn_weight

MARKERS = {0: "-none", 1: "-one"}
MOST_MARKERS = 24
"""Nobody buys more stitch markers: scraps of yarn do as well."""


def materials(book: Book, design: Design, amounts: Amounts, fabrics: tuple[Fabric, ...], markers: int, plot: Drawing | None) -> Iterator[Block]:
    """The chapter on materials; `fabrics` are those in use, `plot` the amounts drawn."""
    yield Heading(2, book.front["materials-heading"])
    for group in alike(design.yarns):
        yield Paragraph(_yarn_line(book, group), "bullet")
    hands = any(fabric.by_hand for fabric in fabrics)
    hooks = [hook_text(tool) for tool in dict.fromkeys(fabric.tool for fabric in fabrics if fabric.tool is not None)]
    if hooks:
        yield Paragraph(book.front_text("hooks-line" if len(hooks) > 1 else "hook-line", hooks=listed(book, hooks), gauge=book.word("gauge")), "bullet")
    if hands:
        yield Paragraph(book.front_text("hands-line", gauge=book.word("gauge")), "bullet")
    yield Paragraph(book.front_text(f"notions-line{MARKERS.get(markers, '-many' if markers > MOST_MARKERS else '')}", markers=markers), "bullet")
    for line in button_lines(book, design):
        yield Paragraph(line, "bullet")
    yield from amount_tables(book, design, amounts, fabrics)
    if plot is not None:
        yield Figure(plot, plot.description, plot.title, "yarn")


def alike(yarns: tuple[Yarn, ...]) -> list[tuple[Yarn, ...]]:
    """Colours of one yarn together: all that is printed of them but the name is the same."""
    found: dict[tuple[object, ...], list[Yarn]] = {}
    for yarn in yarns:
        found.setdefault((yarn.weight, yarn.fibre, yarn.ball_mass, yarn.ball_length, yarn.structure, yarn.treatment), []).append(yarn)
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
        text += f"; {to_step(yarn.ball_mass, 0.1):g}\u00a0g and {metres}\u00a0m ({yards}\u00a0yd) to the ball"
    return (Span(text + ".", fact=f"yarn.{yarn.key}"),)
