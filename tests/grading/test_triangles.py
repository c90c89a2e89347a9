"""Triangles from the middle of their long edge: the ratio, the counts, the rows; from a point; what can't be made."""

import math

import pytest
from shapely import Polygon
from tiny_specs import HEAD, graded, problems

from gaugewright.grading.gains import cycle_of, gain_ratio
from gaugewright.grading.model import GradedPiece
from gaugewright.grading.ratio import Ratio
from gaugewright.grading.triangle_rows import after_rows

SIZES = "sizes: {make: [S, L], dimensions: {S: {width: 60 cm}, L: {width: 98 cm}}}\n"
FABRICS = """\
  cloth: {stitch: hdc, gauge: "13 sts, 10 rows / 10 cm"}
  low: {stitch: sc, gauge: "15 sts, 18 rows / 10 cm"}
  lofty: {stitch: tr, gauge: "20 sts, 4 rows / 10 cm"}
  shells: {pattern: scallops, edge_stitches: 2, gauge: "13 sts, 10 rows / 10 cm"}
"""


def spec(fabric: str = "cloth", section: str = "triangle: {width: size.width}", start: str = "middle: flat", more: str = "") -> str:
    own = HEAD.replace("fabrics:\n", f"fabrics:\n{FABRICS}")
    return f"{own}{SIZES}pieces:\n  shawl:\n    fabric: {fabric}\n    colours: oat\n    start: {{{start}}}\n    sections: [{section}]\n{more}"


def shawl(text: str, size: str) -> GradedPiece:
    return graded(text).pieces["shawl"][size]


@pytest.mark.parametrize(
    ("exact", "ratio", "cycle"),
    [(1.3, (4, 3), (1, 1, 2)), (2.0, (2, 1), (2,)), (0.85, (5, 6), (1, 1, 0, 1, 1, 1)), (0.667, (2, 3), (1, 0, 1)), (1.0, (1, 1), (1,)), (1.5, (3, 2), (2, 1))],
)
def test_the_shortest_cycle_near_enough_to_flat(exact: float, ratio: tuple[int, int], cycle: tuple[int, ...]) -> None:
    found = gain_ratio(exact)
    assert (found.first, found.second) == ratio
    assert cycle_of(found) == cycle and sum(cycle) == ratio[0]


@pytest.mark.parametrize("first", range(1, 19))
@pytest.mark.parametrize("second", range(1, 7))
def test_no_cycle_more_than_doubles_a_row_or_strays_a_stitch(first: int, second: int) -> None:
    cycle = cycle_of(Ratio(first, second))
    counts = [after_rows(row, cycle) for row in range(1, 4 * second + 2)]
    assert all(low <= high <= 2 * low for low, high in zip(counts, counts[1:], strict=False))
    assert all(abs((count - 1) / 4 - row * first / second) < 1 for row, count in enumerate(counts, start=1))


def test_half_double_crochet_row_by_row() -> None:
    """13 stitches and 10 rows to 10 cm: 60 cm are 60 / (2 x 1.414 x 1) = 21.2 rows, 98 cm are 34.6."""
    text = spec()
    assert tuple(shawl(text, "S").main.counts())[:10] == (5, 9, 17, 21, 25, 33, 37, 41, 49, 53)
    assert [(len(shawl(text, size).main.rows), shawl(text, size).main.last_count) for size in "SL"] == [(21, 113), (35, 185)]


def test_a_row_gains_at_four_places_round_the_spine() -> None:
    """Row 3 goes over 9 stitches: 3 in the first, 2 plain, 3 in the 4th, the spine, 3 in the 6th, 2 plain, 3 in the last."""
    row = shawl(spec(), "S").main.rows[2]
    worked = [(run.operation.uses, run.operation.makes, run.times) for run in row.runs if run.operation.uses]
    assert worked == [(1, 3, 1), (1, 1, 2), (1, 3, 1), (1, 1, 1), (1, 3, 1), (1, 1, 2), (1, 3, 1)]


@pytest.mark.parametrize("size", ["S", "L"])
@pytest.mark.parametrize("fabric", ["cloth", "low", "tall"])
def test_outline_edges_and_measures_are_those_of_the_triangle(fabric: str, size: str) -> None:
    one = shawl(spec(fabric), size)
    height = {"cloth": 10.0, "low": 100 / 18, "tall": 20.0}[fabric]
    rows = len(one.main.rows)
    area = Polygon(one.outline.polygon())
    assert area.is_valid and area.area == pytest.approx(2 * (rows * height) ** 2)
    sides = [math.dist(a, b) for a, b in zip(area.exterior.coords, area.exterior.coords[1:], strict=False)]
    assert sorted(sides) == pytest.approx([2 * rows * height, 2 * rows * height, one.edges["long_edge"].length])
    assert one.edges["starting"].length == one.edges["far"].length == pytest.approx(rows * height * math.sqrt(2))
    assert (one.edges["long_edge"].rows, one.edges["lower_edge"].stitches) == (2 * rows, one.main.last_count)
    assert one.finished["width"] == pytest.approx(2 * one.finished["length"])
    assert one.outline.heights[-1] == one.finished["length"]


def test_the_lower_edges_are_as_long_as_the_sides_within_a_stitch_and_what_the_ratio_is_off() -> None:
    one, rows = shawl(spec(), "L"), 35
    assert abs(one.edges["lower_edge"].length - 4 * rows * 10.0) <= 4 * rows * 10 * (4 / 3 / 1.3 - 1) + 5 * 100 / 13


def test_what_is_taken_up_along_the_long_edge_makes_it_smaller() -> None:
    more = "  border: {fabric: low, colours: kelp, start: {pick_up: shawl.long_edge, take_up: whole stitch}, sections: [even: {rows: 3}]}\n"
    taken, free = shawl(spec(more=more), "S"), shawl(spec(), "S")
    stitch = 100 / 13 / math.sqrt(2)
    assert free.finished["length"] - taken.finished["length"] == pytest.approx(stitch)
    assert free.finished["width"] - taken.finished["width"] == pytest.approx(2 * stitch)


@pytest.mark.parametrize(
    ("text", "name", "line"),
    [
        (spec(start="chain: 20 cm"), "triangle-start", "start: {chain"),
        (spec(section="even: {rows: 4}"), "triangle-start", "start: {middle"),
        (spec(section="triangle: {width: size.width}, even: {rows: 4}"), "triangle-alone", "triangle"),
        (spec(more="    total: 40 cm\n"), "triangle-alone", "total"),
        (spec(more="    edges: {starting: [wing], far: [other]}\n"), "triangle-alone", "shawl:"),
        (spec("shells"), "triangle-in-pattern", "triangle"),
        (spec("rib"), "triangle-in-pattern", "triangle"),
        (spec("lofty"), "triangle-too-tall", "triangle"),
        (spec(section="triangle: {width: size.width / 10}"), "triangle-too-small", "triangle"),
        (spec(section="taper: {rows: 9, each: -1, at: far, in_one: true}", start="chain: 20 cm"), "in-one-misplaced", "taper"),
        (spec("round", "taper: {rounds: 9, each: 2, in_one: true}", "ring: 20 cm"), "in-one-misplaced", "taper"),
    ],
)
def test_what_cannot_be_made_is_told_at_its_place(text: str, name: str, line: str) -> None:
    found = problems(text)
    assert [one.name for one in found] == [name], found
    assert found[0].origin is not None and line in found[0].origin.line_text and found[0].hint


def test_the_least_width_told_is_enough() -> None:
    [problem] = problems(spec(section="triangle: {width: size.width / 10}"))
    assert problem.size == "S, L" and "comes to fewer rows than its gains repeat over, 3 after row 1" in problem.message
    assert problem.hint == "make it at least 11.3 cm wide"
    assert len(shawl(spec(section="triangle: {width: 11.3 cm}"), "S").main.rows) == 4


def test_several_increases_go_into_the_edge_stitch() -> None:
    text = spec("tall", "taper: {rows: 5, each: 6, in_one: true}", "chain: 5 cm")
    row = shawl(text, "S").main.rows[1]
    assert [run.operation.makes for run in row.runs if run.operation.kind == "increase"] == [4, 4]
    assert tuple(shawl(text, "S").main.counts()) == (5, 11, 17, 23, 29)


def test_too_few_stitches_for_several_side_by_side_are_told_what_helps() -> None:
    narrow = "taper: {rows: 20, target: 70 cm}"
    [problem] = {one.name: one for one in problems(spec(section=narrow, start="chain: 2 cm"))}.values()
    assert problem.name == "taper-too-narrow" and "write `in_one: true`" in problem.hint
    assert shawl(spec(section=narrow.replace("}", ", in_one: true}"), start="chain: 2 cm"), "S").main.last_count == 91
