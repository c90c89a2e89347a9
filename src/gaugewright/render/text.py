"""The document as plain text: for reading without a PDF, for comparing, and for goldens.

In: a `Document`. Out: text of at most 100 columns. It holds the words of the PDF in the PDF's
order, with a drawing's alternative text in its place; brackets around drawings, `|` between
cells and the lines under headings are all it adds.
"""

from textwrap import TextWrapper

from gaugewright.errors import InternalError
from gaugewright.instructions.nodes import Document, Figure, Heading, Paragraph, Table, is_blank, spans_text
from gaugewright.render.reading_order import (
    NO_BREAK,
    Bullets,
    Byline,
    Part,
    reading_order,
)

COLUMNS = 100
WIDEST_START = 60  # of the columns before one that is wrapped
SHORT_CELL = 24
UNDERLINES = {1: "=", 2: "-", 3: "."}


def render_text(document: Document) -> str:
    """The whole document; U+00A0 comes out as a space, but no line breaks there."""
    chunks = [_part_text(part) for part in reading_order(document)]
    return "\n\n".join(chunk for chunk in chunks if chunk).replace(NO_BREAK, " ") + "\n"


def _part_text(part: Part) -> str:
    if isinstance(part, Heading):
        text = _wrap(part.text)
        width = max(len(line) for line in text.split("\n"))
        return f"{text}\n{UNDERLINES.get(part.level, '.') * width}"
    if isinstance(part, Byline):
        return _wrap(part.text)
    if isinstance(part, Paragraph):
        return _wrap(_labelled(part), indent="    " if part.role == "step" else "")
    if isinstance(part, Bullets):
        return "\n".join(_wrap("• " + _labelled(item), indent="  ") for item in part.items)
    if isinstance(part, Table):
        return _table(part)
    if isinstance(part, Figure):
        return "\n".join(_wrap(f"[{text}]", indent=" ") for text in (part.alt, part.caption) if text)
    raise InternalError(f"no text for a {type(part).__name__}")


def _labelled(paragraph: Paragraph) -> str:
    text = spans_text(paragraph.spans)
    return f"{paragraph.label} {text}" if paragraph.label else text


def _wrap(text: str, indent: str = "") -> str:
    """Wrapped at ordinary spaces only; later lines are indented."""
    return "\n".join(_wrapped(text, indent, COLUMNS))


def _wrapped(text: str, indent: str, columns: int) -> list[str]:
    wrapper = TextWrapper(
        columns, subsequent_indent=indent, break_long_words=False, break_on_hyphens=False
    )
    # A wrapper breaks at U+00A0 as well, so that stands aside as a private letter meanwhile.
    return [line.replace("\ue000", NO_BREAK) for line in wrapper.wrap(text.replace(NO_BREAK, "\ue000"))]


def _table(table: Table) -> str:
    rows = [tuple(_one_line(cell) for cell in row) for row in (table.header, *table.rows)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(table.header))]
    left = sum(width + 2 for width in widths[:-1])
    if left + widths[-1] <= COLUMNS:
        body = _aligned(table, rows, widths)
    elif table.align[-1] == "left" and left <= WIDEST_START:
        body = [line for row in rows for line in _last_wrapped(table, row, widths, left)]
    else:
        body = [_wrap(" | ".join(_together(cell) for cell in row), indent="    ") for row in rows]
    caption = [_wrap(table.caption)] if table.caption else []
    note = [_wrap(table.note)] if table.note else []
    return "\n".join([*caption, *body, *note])


def _last_wrapped(table: Table, row: tuple[str, ...], widths: list[int], left: int) -> list[str]:
    """Only the last column may be wrapped: the words of a row then still follow one another."""
    lines = _wrapped(row[-1], "", COLUMNS - left) or [""]
    first = _aligned(table, [(*row[:-1], lines[0])], widths)
    return [*first, *(" " * left + line for line in lines[1:])]


def _together(cell: str) -> str:
    return cell.replace(" ", NO_BREAK) if len(cell) <= SHORT_CELL else cell


def _one_line(cell: str) -> str:
    return "_" * len(cell) if is_blank(cell) else " ".join(cell.split("\n"))


def _aligned(table: Table, rows: list[tuple[str, ...]], widths: list[int]) -> list[str]:
    lines = []
    for row in rows:
        cells = [
            cell.ljust(width) if align == "left" else cell.rjust(width) if align == "right" else cell.center(width)
            for cell, width, align in zip(row, widths, table.align, strict=True)
        ]
        lines.append("  ".join(cells).rstrip())
    return lines
