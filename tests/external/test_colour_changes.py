"""Colour changes as makers work them: where a yarn can be carried, and how many ends there are."""

import pytest
from tiny_specs import ONE_SIZE, one_piece

from external.sources import source
from gaugewright.grading.strands import ends_by_colour

STRIPED = """\
pieces:
  piece:
    fabric: %s
    start: {%s: 20 cm}
    sections: [even: {rows: 24}]
    colours: {stripes: [{oat: %d}, {kelp: %d}]}
"""


def ends(cloth: str, start: str, first: int, second: int) -> dict[str, int]:
    return ends_by_colour(one_piece(ONE_SIZE + STRIPED % (cloth, start, first, second)).strips, 4)


@source("common practice", "in rows, stripes of an even number of rows keep both yarns at one edge, where they are carried up")
@pytest.mark.parametrize(("first", "second"), [(2, 2), (4, 2), (2, 4), (4, 4)])
def test_even_stripes_in_rows_leave_two_ends_of_each_yarn(first: int, second: int) -> None:
    assert ends("plain", "chain", first, second) == {"oat": 2, "kelp": 2}


@source("common practice", "in rows, a stripe of one row leaves its yarn at the far edge: two colours by turns, a row of each, must be cut")
def test_stripes_of_a_row_are_cut_each_time() -> None:
    assert ends("plain", "chain", 1, 1) == {"oat": 24, "kelp": 24}


@source("common practice", "in rows, three colours a row of each by turns come back to the edge where each one waits, and need not be cut")
def test_three_colours_by_single_rows_are_carried() -> None:
    text = ONE_SIZE.replace('kelp: {colour: "#3f5d4e"}', 'kelp: {colour: "#3f5d4e"}\n  slate: {colour: "#5b6b7a"}')
    text += STRIPED.replace("[{oat: %d}, {kelp: %d}]", "[{oat: 1}, {kelp: 1}, {slate: 1}]") % ("plain", "chain")
    assert ends_by_colour(one_piece(text).strips, 4) == {"oat": 2, "kelp": 2, "slate": 2}


@source("common practice", "in joined rounds every change is at the join, so stripes of any number of rounds are carried up inside")
@pytest.mark.parametrize(("first", "second"), [(1, 1), (3, 1), (3, 3), (4, 3)])
def test_stripes_in_rounds_leave_two_ends_of_each_yarn(first: int, second: int) -> None:
    assert ends("round", "ring", first, second) == {"oat": 2, "kelp": 2}
