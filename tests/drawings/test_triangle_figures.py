"""A shawl hangs with its long edge up, its rows shown, its sides measured."""

import math

import pytest
from tiny_specs import HEAD, designed

from gaugewright import pipeline
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.piece_figure import piece_figure
from gaugewright.drawings.schematic import draw_schematic

SIZES = "sizes: {make: [S, L], dimensions: {S: {width: 60 cm}, L: {width: 98 cm}}}\n"


def figure() -> PieceFigure:
    text = f"{HEAD}{SIZES}pieces: {{shawl: {{fabric: plain, colours: oat, start: {{middle: flat}}, sections: [triangle: {{width: size.width}}]}}}}\n"
    graded = pipeline.grade(designed(text))
    return piece_figure(graded.design.piece("shawl"), graded.grading.plans["shawl"], graded.grading.pieces["shawl"], {"oat": ("Oat", "#d9c9a8")}, "L")


def test_the_long_edge_lies_up_and_the_point_down() -> None:
    found = figure()
    left, bottom, right, top = box_around(found.outline)
    assert len(found.outline) == 3
    assert [y for _, y in found.outline].count(top) == 2 and right - left == pytest.approx(2 * (top - bottom))


def test_measures_lie_on_the_outline_they_measure() -> None:
    long, depth, lower = figure().measures
    for measure in (long, depth):
        assert math.dist(measure.start, measure.end) == pytest.approx(measure.values[1])
    assert math.dist(lower.start, lower.end) == pytest.approx(lower.values[1], abs=10.0)
    assert (long.name, lower.name) == ("Long edge", "Half of the lower edge")


def test_rows_run_along_the_lower_edges() -> None:
    found = figure()
    assert len(found.rows) == 5
    for one, spine, other in found.rows:
        assert one[1] == other[1] == max(y for _, y in found.outline)
        assert spine[0] - one[0] == pytest.approx(other[0] - spine[0]) == pytest.approx(one[1] - spine[1])
    assert "Thin lines show the direction of the rows." in draw_schematic(found, "cm").drawing.description
