"""What every renderer says, and in which order.

In: a `Document`. Out: its blocks as `Part`s, with what the renderers must agree on settled: the
title block comes first, neighbouring bullets form one list, a table with too many columns becomes
several. The text file and the PDF are both made from this, so they hold the same words in the
same order, and a test can hold one against the other.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from gaugewright.errors import InternalError
from gaugewright.instructions.nodes import Document, Figure, Heading, Paragraph, Table

NO_BREAK = "\u00a0"
PAGE_EMS = 62.0  # what fits beside each other on the narrower sheet in the smallest size, in em
NARROW, WIDE = ".,:;'|!()[] \u00a0", "⅛⅜⅝⅞¼½¾☐mwMW—"


class Byline(NamedTuple):
    """The author or workshop, under the title."""

    text: str


class Bullets(NamedTuple):
    """Neighbouring bullets: one list."""

    items: tuple[Paragraph, ...]


Part = Heading | Byline | Paragraph | Bullets | Table | Figure


def reading_order(document: Document) -> tuple[Part, ...]:
    """The document's parts from first to last."""
    return tuple(_parts(document))


def _parts(document: Document) -> Iterator[Part]:
    blocks = document.blocks
    if not (blocks and isinstance(blocks[0], Heading) and blocks[0].level == 1):
        blocks = (Heading(1, document.title), *blocks)
    bullets: list[Paragraph] = []
    for place, block in enumerate(blocks):
        if isinstance(block, Paragraph) and block.role == "bullet":
            bullets.append(block)
            continue
        if bullets:
            yield Bullets(tuple(bullets))
            bullets = []
        if isinstance(block, Table):
            yield from split_columns(block)
        elif isinstance(block, Heading | Paragraph | Figure):
            yield block
        else:
            raise InternalError(f"a document can't hold a {type(block).__name__}")
        if place == 0 and document.author:
            yield Byline(document.author)
    if bullets:
        yield Bullets(tuple(bullets))


def ems(text: str) -> float:
    """Roughly how wide a text is, in em, in a face made for reading.

    >>> round(ems("118.5"), 2)
    2.4
    """
    return sum(0.28 if c in NARROW else 0.84 if c in WIDE else 0.53 for c in text)


def split_columns(table: Table) -> tuple[Table, ...]:
    """The table, or several with the head column repeated where a page can't hold its columns.

    Decided from the words alone, not from a font, so that the text file splits where the page does.
    Columns of running text can wrap and count with their longest word only.
    """
    check_grid(table)
    widths = [_least_ems(table, column) for column in range(len(table.header))]
    groups: list[list[int]] = [[]]
    used = widths[0]
    for column, width in enumerate(widths[1:], start=1):
        if groups[-1] and used + width > PAGE_EMS:
            groups.append([])
            used = widths[0]
        groups[-1].append(column)
        used += width
    if len(groups) == 1:
        return (table,)
    last = len(groups) - 1
    return tuple(_pick(table, group, number == last) for number, group in enumerate(groups))


def check_grid(table: Table) -> None:
    """A table that isn't a grid is our own fault: say so before anything is drawn."""
    columns = len(table.header)
    if columns == 0 or len(table.align) != columns or any(len(row) != columns for row in table.rows):
        raise InternalError(f"the table {table.caption!r} is not a regular grid")


def _least_ems(table: Table, column: int) -> float:
    cells = [table.header[column], *(row[column] for row in table.rows)]
    if table.align[column] == "left":
        pieces = [word for cell in cells for word in cell.split(" ")]
        return min(max(ems(piece) for piece in pieces), 12.0) + 0.6
    return max(ems(line) for cell in cells for line in cell.split("\n")) + 0.6


def _pick(table: Table, columns: list[int], last: bool) -> Table:
    chosen = [0, *columns]
    return replace(
        table,
        header=tuple(table.header[c] for c in chosen),
        rows=tuple(tuple(row[c] for c in chosen) for row in table.rows),
        align=tuple(table.align[c] for c in chosen),
        note=table.note if last else "",
    )
