"""The finished document as plain data: what the renderers receive.

In: nothing (pure data). Out: `Document`, a title block and a flat list of blocks in
reading order. Renderers (`render/text.py`, `render/pdf/`) see this and `drawings.primitives`
only, never the spec or the design. Text may hold U+00A0 where a line must not break
(inside the brackets of a size list).
"""

from dataclasses import dataclass, field
from typing import Literal

from gaugewright.drawings.primitives import Drawing

SpanStyle = Literal["plain", "strong", "count", "term"]
Role = Literal["body", "lead", "step", "note", "caution", "small", "bullet"]
Align = Literal["left", "right", "center"]


@dataclass(frozen=True, slots=True)
class Span:
    """A run of text in one style. `fact` names the fact whose numbers it prints, if any.

    Styles: plain; strong (labels, sizes); count (stitch counts at a row's end, set apart);
    term (an abbreviation where it is defined).
    """

    text: str
    style: SpanStyle = "plain"
    fact: str = ""


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is the document title, 2 a chapter, 3 a part of a chapter."""

    level: int
    text: str
    new_page: bool = False


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph. `label` stands first in bold ("Row 1 (RS):"); roles choose the style.

    body: ordinary text; lead: the introduction under the title; step: one instruction, never
    split over pages; note: a remark; caution: a safety remark, set off; small: colophon and
    table notes; bullet: an item of a list (neighbouring bullets form one list). `keep`: never parted from the next block.
    """

    spans: tuple[Span, ...]
    role: Role = "body"
    label: str = ""
    keep: bool = False


@dataclass(frozen=True, slots=True)
class Table:
    """A table with one header row; the first cell of each row is a row header when `row_heads`.

    `align` has one entry per column. `note` is set small under the table and stays with it.
    The caption stands above and is never split from the table; the header repeats on new pages.
    """

    caption: str
    header: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    align: tuple[Align, ...]
    row_heads: bool = True
    note: str = ""


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing with its alternative text; the caption stands below and stays with it. `name` is its file's, alone.
    `keep`: never parted from the next block."""

    drawing: Drawing
    alt: str
    caption: str = ""
    name: str = ""
    keep: bool = False


Block = Heading | Paragraph | Table | Figure


@dataclass(frozen=True, slots=True)
class Document:
    """A pattern ready to be rendered: title data, the running head, and blocks in reading order.

    `running_head` is the line repeated at the head of every page but the first: the title and the
    size key. `language` is a BCP 47 tag. `date` is ISO 8601 or empty. `footer` is repeated at the
    foot beside the page number (workshop, version, edition).
    """

    title: str
    author: str
    language: str
    date: str
    running_head: str
    footer: str
    blocks: tuple[Block, ...]
    subject: str = ""
    keywords: tuple[str, ...] = field(default=())


def measure_columns(sizes: int, heads: int = 1) -> tuple[Align, ...]:
    """Columns of a table with a row a measure and a column a size.

    >>> measure_columns(2)
    ('left', 'right', 'right')
    """
    left: Align = "left"
    right: Align = "right"
    return (left,) * heads + (right,) * sizes


def blank(width: int) -> str:
    """A cell to write in, so many letters wide: empty on paper, a line of underscores in the text file.

    >>> is_blank(blank(8)), is_blank(""), is_blank("8 h")
    (True, False, False)
    """
    return "\u00a0" * width


def is_blank(cell: str) -> bool:
    """Whether a cell is one to write in."""
    return bool(cell) and not cell.strip("\u00a0")


def plain(text: str) -> tuple[Span, ...]:
    """One plain span."""
    return (Span(text),)


def spans_text(spans: tuple[Span, ...]) -> str:
    """The spans' text, joined as it stands."""
    return "".join(span.text for span in spans)
