"""How wide a table's columns are, and in which size the table is set.

In: a `Table` and the room across. Out: a `Fit`. The usual size is tried first, then half a point
less at a time down to the style's least; numbers keep to one line as long as any size allows it.
"""

from collections.abc import Iterator
from typing import NamedTuple

from gaugewright.instructions.nodes import Table, is_blank
from gaugewright.render.pdf.faces import Faces
from gaugewright.render.pdf.lines import Line, Run, break_lines, longest_word
from gaugewright.render.pdf.style import Face, TableStyle

STEP = 0.5
LEAST_GAP = 0.62  # em; a reader takes anything closer for a space
FULL = 0.62  # a table that needs this share of the width is given all of it,
MANY = 5  # and so is one of so many columns, that the sizes stand apart
WIDEST_TEXT = 8.0  # em: a column of words may be wrapped down to this


class Fit(NamedTuple):
    """The size chosen and the columns' widths, in points. At `turns` columns that read to the right follow ones that
    end there: between them the gap is double."""

    size: float
    leading: float
    padding: float
    gap: float
    widths: tuple[float, ...]
    turns: tuple[int, ...] = ()

    @property
    def total(self) -> float:
        """Width of the whole table."""
        return sum(self.widths) + self.gap * (len(self.widths) - 1 + len(self.turns))

    def left(self, column: int) -> float:
        """Where a column begins."""
        return sum(self.widths[:column]) + self.gap * (column + sum(turn <= column for turn in self.turns))


class Setting(NamedTuple):
    """Faces and table style: what cutting cells into lines takes."""

    faces: Faces
    style: TableStyle

    def head_cells(self, table: Table, fit: Fit) -> tuple[tuple[Line, ...], ...]:
        """The header's cells as lines."""
        return self._cells([("semibold", cell) for cell in table.header], fit)

    def row_cells(self, table: Table, number: int, fit: Fit) -> tuple[tuple[Line, ...], ...]:
        """A row's cells as lines."""
        return self._cells([(_face(table, column), cell) for column, cell in enumerate(table.rows[number])], fit)

    def _cells(self, cells: list[Run], fit: Fit) -> tuple[tuple[Line, ...], ...]:
        return tuple(
            tuple(self._lines(face, cell, fit.size, width))
            for (face, cell), width in zip(cells, fit.widths, strict=True)
        )

    def _lines(self, face: Face, cell: str, size: float, width: float) -> Iterator[Line]:
        texts = [text for text in cell.split("\n") if text.strip()]
        for place, text in enumerate(texts):
            lines = break_lines(((face, text),), self.faces, size, width, width)
            yield from lines[:-1]
            end = lines[-1]
            yield end if place == len(texts) - 1 else Line(end.runs, end.width, " ")

    def fit(self, table: Table, room: float) -> Fit:
        """The largest size at which the columns fit, and how wide they become."""
        size = self.style.size
        while True:
            least = size <= self.style.least + 1e-6
            columns = [self._widths(table, column, size) for column in range(len(table.header))]
            if fit := self._try(table, columns, size, room, break_numbers=False):
                return fit
            if least:
                broken = [(word, word, natural) for word, _, natural in columns]
                return self._try(table, broken, size, room, break_numbers=True) or self._squeezed(columns, size, room)
            size = max(self.style.least, size - STEP)

    def _widths(self, table: Table, column: int, size: float) -> tuple[float, float, float]:
        """Of a column: its longest word, its least width kept in good setting, its natural width."""
        face = _face(table, column)
        head: list[Run] = [("semibold", line) for line in table.header[column].split("\n")]
        body: list[Run] = [(face, line) for row in table.rows for line in _measured(row[column]).split("\n")]
        word = max(longest_word(run, self.faces, size) for run in [*head, *body])
        natural_body = max((self.faces.width(face, size, line) for face, line in body), default=0.0)
        natural = max(natural_body, *(self.faces.width(face, size, line) for face, line in head))
        if table.align[column] == "left":
            return word, max(word, min(natural, WIDEST_TEXT * size)), natural
        return word, max(word, natural_body), natural

    def _try(
        self, table: Table, columns: list[tuple[float, float, float]], size: float, room: float, break_numbers: bool
    ) -> Fit | None:
        tight = size <= self.style.floor + 1e-6
        gap = size * (LEAST_GAP if tight else self.style.gap)
        turns = _turns(table)
        space = room - gap * (len(columns) - 1 + len(turns))
        least = [low for _, low, _ in columns]
        natural = [high for _, _, high in columns]
        if sum(least) > space + 1e-6:
            return None
        if sum(natural) <= space:
            full = len(natural) >= MANY or sum(natural) > FULL * space
            widths = _spread(table, natural, space) if full else natural
        else:
            share = (space - sum(least)) / (sum(natural) - sum(least))
            widths = [low + (high - low) * share for low, high in zip(least, natural, strict=True)]
        return self._fit(size, gap, widths, turns)

    def _squeezed(self, columns: list[tuple[float, float, float]], size: float, room: float) -> Fit:
        """Even words are too long: every column gives way in proportion."""
        gap = size * LEAST_GAP
        words = [word for word, _, _ in columns]
        factor = (room - gap * (len(columns) - 1)) / sum(words)
        return self._fit(size, gap, [word * factor for word in words])

    def _fit(self, size: float, gap: float, widths: list[float], turns: tuple[int, ...] = ()) -> Fit:
        return Fit(size, size * self.style.leading, self.style.padding, gap, tuple(widths), turns)


def _measured(cell: str) -> str:
    """What a cell is as wide as: one to write in as so many letters' line, since its spaces are far narrower."""
    return "_" * len(cell) if is_blank(cell) else cell


def _face(table: Table, column: int) -> Face:
    return "semibold" if table.row_heads and column == 0 else "regular"


def _turns(table: Table) -> tuple[int, ...]:
    """Columns that read from the left and follow one that stands at the right: numbers and words would meet."""
    return tuple(column for column in range(1, len(table.align)) if table.align[column - 1 : column + 1] == ("right", "left"))


def _spread(table: Table, natural: list[float], space: float) -> list[float]:
    """Spare width goes to the last column of words, or makes the columns of numbers alike."""
    spare = space - sum(natural)
    numbers = [column for column, align in enumerate(table.align) if align != "left"]
    if not numbers:
        return [*natural[:-1], natural[-1] + spare]
    alike = (space - sum(natural[c] for c in range(len(natural)) if c not in numbers)) / len(numbers)
    if alike >= max(natural[c] for c in numbers):
        return [alike if c in numbers else width for c, width in enumerate(natural)]
    return [width + spare / len(natural) for width in natural]
