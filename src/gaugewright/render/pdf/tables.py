"""Tables: columns fitted to the page, thin level rules only, the head repeated on new pages.

In: a `Table`. Out: `TableBox`. Numbers stand close and are set small before they are broken; words
wrap. A repeated head is an artifact, so that someone who listens hears it once.
"""

from dataclasses import dataclass, replace
from itertools import accumulate
from typing import NamedTuple

from gaugewright.instructions.nodes import Align, Table
from gaugewright.render.pdf.boxes import TextBox, first_baseline
from gaugewright.render.pdf.columns import Fit, Setting
from gaugewright.render.pdf.lines import Line
from gaugewright.render.pdf.pen import Pen, Placed
from gaugewright.render.pdf.style import Colours
from gaugewright.render.pdf.tags import Element

FEWEST_ROWS = 2  # at the foot or the head of a page
UNDIVIDED = 9  # a table of so many rows goes to the next page rather than be split
HEAD_RULE, ROW_RULE = 0.9, 0.35
CAPTION_GAP, NOTE_GAP = 4.0, 4.0


class Row(NamedTuple):
    """A row cut into lines: for each cell its element and its lines."""

    elements: tuple[Element, ...]
    cells: tuple[tuple[Line, ...], ...]
    height: float


@dataclass(frozen=True, slots=True)
class TableBox:
    """A table, or what is left of one; `repeat` means its head has been read out already."""

    caption: TextBox | None
    head: Row
    rows: tuple[Row, ...]
    note: TextBox | None
    fit: Fit
    align: tuple[Align, ...]
    colours: Colours
    ink: str
    repeat: bool = False
    before: float = 11.0
    after: float = 14.0
    keep: bool = False
    new_page: bool = False

    @property
    def height(self) -> float:
        return self._above + sum(row.height for row in self.rows) + self._below

    @property
    def _above(self) -> float:
        caption = self.caption.height + CAPTION_GAP if self.caption else 0.0
        return caption + self.head.height

    @property
    def _below(self) -> float:
        return self.note.height + NOTE_GAP if self.note else 0.0

    def split(self, room: float, force: bool) -> "tuple[TableBox, TableBox] | None":
        ends = accumulate((row.height for row in self.rows), initial=self._above)
        count = sum(1 for end in ends if end <= room) - 1
        least = 1 if force else FEWEST_ROWS
        count = min(count, len(self.rows) - least)
        if count < least or (len(self.rows) <= UNDIVIDED and not self.repeat and not force):
            return None
        head = replace(self, rows=self.rows[:count], note=None)
        return head, replace(self, rows=self.rows[count:], caption=None, repeat=True)

    def shrink(self, room: float) -> None:
        return None

    def at_head(self) -> "TableBox":
        return self

    def draw(self, pen: Pen, x: float, top: float) -> None:
        if self.caption:
            self.caption.draw(pen, x, top)
            top -= self.caption.height + CAPTION_GAP
        self._rule(pen, x, top, HEAD_RULE, self.colours.accent)
        self._draw_row(pen, self.head, x, top, artifact=self.repeat)
        top -= self.head.height
        self._rule(pen, x, top, HEAD_RULE, self.colours.accent)
        for number, row in enumerate(self.rows):
            self._draw_row(pen, row, x, top)
            top -= row.height
            last = number == len(self.rows) - 1
            self._rule(pen, x, top, *((HEAD_RULE, self.colours.accent) if last else (ROW_RULE, self.colours.rule)))
        if self.note:
            self.note.draw(pen, x, top - NOTE_GAP)

    def _rule(self, pen: Pen, x: float, y: float, width: float, colour: str) -> None:
        with pen.artifact():
            pen.rule(x, y, x + self.fit.total, y, width, colour)

    def _draw_row(self, pen: Pen, row: Row, x: float, top: float, artifact: bool = False) -> None:
        baseline = top - self.fit.padding - first_baseline(self.fit.size, self.fit.leading)
        for column, (element, lines) in enumerate(zip(row.elements, row.cells, strict=True)):
            if not lines:
                continue
            left = x + self.fit.left(column)
            width = self.fit.widths[column]
            placed = [
                Placed(left + _shift(self.align[column], width - line.width), baseline - n * self.fit.leading, line)
                for n, line in enumerate(lines)
            ]
            with pen.artifact() if artifact else pen.element(element):
                pen.text(placed, self.fit.size, self.ink)


def _shift(align: Align, spare: float) -> float:
    return {"left": 0.0, "center": spare / 2, "right": spare}[align]


def build_rows(table: Table, owner: Element, setting: Setting, fit: Fit) -> tuple[Row, tuple[Row, ...]]:
    """Head and rows with their structure elements, cut into lines."""
    group = owner.add("TR")
    head_elements = tuple(group.add("TH", "/O /Table /Scope /Column") for _ in table.header)
    head = _row(head_elements, setting.head_cells(table, fit), fit)
    rows = []
    for number in range(len(table.rows)):
        line = owner.add("TR")
        first = line.add("TH", "/O /Table /Scope /Row") if table.row_heads else line.add("TD")
        elements = (first, *(line.add("TD") for _ in table.header[1:]))
        rows.append(_row(elements, setting.row_cells(table, number, fit), fit))
    return head, tuple(rows)


def _row(elements: tuple[Element, ...], cells: tuple[tuple[Line, ...], ...], fit: Fit) -> Row:
    most = max(1, *(len(lines) for lines in cells)) if cells else 1
    return Row(elements, cells, most * fit.leading + 2 * fit.padding)
