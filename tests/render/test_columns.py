"""Columns: numbers stay on one line, tables stay inside the page, sizes go down only if they must."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugewright.instructions.nodes import Align, Table, blank
from gaugewright.render.pdf import load_style
from gaugewright.render.pdf.columns import LEAST_GAP, Setting
from gaugewright.render.pdf.faces import load_faces

STYLE = load_style()
SETTING = Setting(load_faces(STYLE), STYLE.table)
A4_WIDTH = 595.276 - 2 * STYLE.page.side


def table(head: str, cells: list[str], align: Align = "right") -> Table:
    return Table("", ("Size", *(f"{n}X" for n in range(len(cells)))), ((head, *cells),), ("left", *(align,) * len(cells)))


def test_nine_pairs_of_measures_fit_at_eight_points_on_one_line() -> None:
    nine = table("Length from the shoulder to the hem", ["118.5 / 46⅝"] * 9)
    fit = SETTING.fit(nine, A4_WIDTH)
    assert fit.size >= 8 and fit.total <= A4_WIDTH + 0.01
    cells = SETTING.row_cells(nine, 0, fit)
    assert [len(lines) for lines in cells[1:]] == [1] * 9


def test_few_numbers_are_set_in_the_usual_size() -> None:
    assert SETTING.fit(table("Bust", ["40", "43"]), A4_WIDTH).size == STYLE.table.size


def test_columns_of_numbers_are_alike() -> None:
    fit = SETTING.fit(table("Row 1", ["8", "10", "100", "9", "12"]), A4_WIDTH)
    assert len(set(fit.widths[1:])) == 1 and fit.total == pytest.approx(A4_WIDTH)


def test_a_blank_is_as_wide_as_a_line_of_so_many_letters() -> None:
    blanks, lines = (table("Back", [cell]) for cell in (blank(20), "_" * 20))
    assert SETTING.fit(blanks, A4_WIDTH).widths == SETTING.fit(lines, A4_WIDTH).widths
    assert SETTING.row_cells(blanks, 0, SETTING.fit(blanks, A4_WIDTH))[1] == (), "and nothing is drawn in it"


def test_two_lines_in_a_cell_are_two_lines() -> None:
    two = table("Bust", ["118.5\n46⅝"] * 3)
    cells = SETTING.row_cells(two, 0, SETTING.fit(two, A4_WIDTH))
    assert [line.text + line.glue for line in cells[1]] == ["118.5 ", "46⅝"]


@given(st.lists(st.text("0123456789 /.abc", max_size=60), min_size=1, max_size=12), st.text("abc ", max_size=80))
def test_no_table_leaves_the_page(cells: list[str], head: str) -> None:
    any_table = table(head, cells)
    fit = SETTING.fit(any_table, A4_WIDTH)
    assert STYLE.table.least <= fit.size <= STYLE.table.size
    assert fit.total <= A4_WIDTH + 0.01
    assert fit.gap >= LEAST_GAP * fit.size - 1e-9
    for lines, width in zip(SETTING.row_cells(any_table, 0, fit), fit.widths, strict=True):
        assert all(line.width <= width + 0.01 for line in lines)


def test_words_stand_apart_from_numbers_that_end_beside_them() -> None:
    rows = (("Slate", "27 to 29", "30 to 32", "carry"),)
    fit = SETTING.fit(Table("", ("Colour", "Small", "Large", "its yarn then"), rows, ("left", "right", "right", "left")), A4_WIDTH)
    assert fit.left(3) - (fit.left(2) + fit.widths[2]) == pytest.approx(2 * fit.gap)
    assert fit.left(2) - (fit.left(1) + fit.widths[1]) == pytest.approx(fit.gap)
    assert fit.total == pytest.approx(fit.left(3) + fit.widths[3])
