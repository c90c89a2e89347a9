"""Discs as circles, hats with rounded tops and their openings down, pointed crowns as points."""

import math

import pytest
from tiny_specs import HEAD, designed

from gaugewright import pipeline
from gaugewright.drawings.colour_bands import assign_hatches
from gaugewright.drawings.cover import draw_cover
from gaugewright.drawings.crown_figures import as_worn, upside_down
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.piece_figure import piece_figure
from gaugewright.drawings.primitives import Polygon
from gaugewright.drawings.schematic import draw_schematic

SIZES = "sizes: {own: {S: {bust: 80 cm, head: 50 cm}, L: {bust: 110 cm, head: 60 cm}}}\n"
YARNS = {"oat": ("Oat", "#d9c9a8"), "kelp": ("Kelp", "#3f5d4e")}


def figure(start: str, *sections: str, more: str = "", colours: str = "oat") -> PieceFigure:
    """The larger size of a round piece, as it is drawn."""
    lines = "".join(f"      - {section}\n" for section in sections)
    text = f"{HEAD}{SIZES}pieces:\n  hat:\n    fabric: round\n    colours: {colours}\n    start: {{{start}}}\n    sections:\n{lines}{more}"
    graded = pipeline.grade(designed(text))
    piece = graded.design.piece("hat")
    return as_worn(piece_figure(piece, graded.grading.plans["hat"], graded.grading.pieces["hat"], YARNS, "L"), piece, graded.design)


def widths(found: PieceFigure, *shares: float) -> list[float]:
    """The outline's width at shares of its height."""
    _, bottom, _, top = box_around(found.outline)
    return [_across(found, bottom + (top - bottom) * share) for share in shares]


def _across(found: PieceFigure, y: float) -> float:
    xs = []
    for (x0, y0), (x1, y1) in zip(found.outline, (*found.outline[1:], found.outline[0]), strict=True):
        if (y0 <= y) != (y1 <= y):
            xs.append(x0 + (x1 - x0) * (y - y0) / (y1 - y0))
    return max(xs) - min(xs)


WORN = "    total: 20 cm\n    edges: {top: brim}\nopenings: [{name: brim, around: [hat.brim], passes: head, stretch: 10 %}]\n"


def test_a_disc_is_a_circle_as_wide_as_two_radii() -> None:
    found = figure("centre: flat", "crown: {stitches: 60}")
    left, bottom, right, top = box_around(found.outline)
    assert (right - left, top - bottom) == pytest.approx((200.0, 200.0))
    assert {round(math.dist(point, (100.0, 100.0)), 6) for point in found.outline} == {100.0}
    [across] = found.measures
    assert (across.name, across.values) == ("Across", (200.0, 200.0)) and not found.in_rounds
    assert [(band.name, band.bottom, band.top) for band in found.bands] == [("Oat", 0.0, 200.0)]


def test_rings_of_several_colours_lie_between_their_distances_from_the_middle() -> None:
    found = figure("centre: flat", "crown: {stitches: 30}", "crown: {stitches: 60, colour: kelp}")
    assert found.bands == ()
    [inner, outer] = found.rings
    assert (inner.name, inner.bottom, outer.name) == ("Oat", 0.0, "Kelp") and inner.top == outer.bottom
    assert outer.top == pytest.approx(max(math.dist(point, (outer.top, outer.top)) for point in found.outline))
    drawn = draw_schematic(found, "cm")
    fills = [item for item in drawn.drawing.items if isinstance(item, Polygon) and item.fill in (inner.colour, outer.colour) and len(item.points) > 4]
    assert [item.fill for item in fills] == [outer.colour, inner.colour]  # the inner one over the outer one
    assert "Colours from the centre out: Oat, Kelp." in drawn.drawing.description


def test_a_hat_hangs_with_its_brim_down_and_its_top_rounded() -> None:
    found = figure("centre: flat", "crown: {target: body.head}", "even: {length: rest}", more=WORN)
    low, middle, high = widths(found, 0.01, 0.45, 0.9)
    assert low == pytest.approx(300.0) and middle == pytest.approx(300.0)
    # The crown is half of the height: at nine tenths an ellipse is sqrt(1 - 0.8^2) = 0.6 of its width.
    assert high == pytest.approx(0.6 * 300.0, abs=3.0)
    named = {measure.name: (measure.start[1], measure.end[1], measure.values) for measure in found.measures}
    assert named["Around at the brim"] == (0.0, 0.0, (500.0, 600.0))
    assert named["From the centre to the brim"] == (200.0, 0.0, (200.0, 200.0))
    assert named["From the centre to the last increase"] == (200.0, 100.0, (90.0, 100.0))
    assert set(named) == {"Around at the brim", "From the centre to the brim", "From the centre to the last increase"}


def test_a_bag_stands_on_its_centre() -> None:
    more = "    total: 30 cm\n    edges: {bottom: base, top: mouth}\n"
    found = figure("centre: flat", "crown: {target: 50 cm}", "even: {length: rest}", more=more)
    low, high = widths(found, 0.05, 0.95)
    assert low < high == pytest.approx(250.0)
    assert "From the base to the mouth" in [measure.name for measure in found.measures]


def test_a_closed_end_is_rounded_at_the_top_and_has_no_girth_there() -> None:
    found = figure("ring: 50 cm", "even: {length: rest}", "crown: {close: true}", more="    total: 20 cm\n    edges: {bottom: brim}\n")
    low, high = widths(found, 0.1, 0.97)
    assert high < low == pytest.approx(250.0)
    assert [measure.name for measure in found.measures] == ["Around at the brim", "Height below the first decrease", "Whole height"]


def test_a_pointed_crown_is_a_point() -> None:
    """Three stitches to a round: half as wide as it is deep, so it lies flat as it is."""
    found = figure("centre: 3", "crown: {stitches: 60, each: 3}")
    assert len(found.outline) > 60, "alone it is still a disc"
    hat = figure("centre: 3", "crown: {stitches: 60, each: 3}", "even: {rounds: 2}", more=WORN.replace("    total: 20 cm\n", ""))
    assert widths(hat, 0.95)[0] < 0.1 * 300.0
    assert len(hat.outline) < 10


def test_a_ball_is_rounded_at_both_ends() -> None:
    found = figure("centre: 6", "crown: {stitches: 36}", "even: {rounds: 6}", "crown: {close: true}")
    low, middle, high = widths(found, 0.05, 0.5, 0.95)
    assert low < middle == pytest.approx(180.0) and high < middle
    assert [measure.name for measure in found.measures] == [
        "Around at the widest", "From the centre to the last increase", "From the centre to the first decrease", "From the centre to the closed end",
    ]


def test_turning_a_figure_twice_gives_it_back() -> None:
    found = figure("centre: flat", "crown: {target: body.head}", "even: {length: rest}", more=WORN)
    assert upside_down(upside_down(found)) == found


def test_a_single_piece_with_a_crown_is_its_own_cover() -> None:
    text = f"{HEAD}{SIZES}pieces: {{hat: {{fabric: round, colours: oat, start: {{centre: flat}}, sections: [%s]}}}}\n"
    drawn = {}
    for sections in ("crown: {stitches: 40}", "even: {rounds: 4}"):
        graded = pipeline.grade(designed(text % sections))
        piece = graded.design.piece("hat")
        figures = {"hat": piece_figure(piece, graded.grading.plans["hat"], graded.grading.pieces["hat"], YARNS, "L")}
        drawn[sections] = draw_cover(graded.design, figures, {}, assign_hatches(["Oat"]))
    assert drawn["even: {rounds: 4}"] is None
    cover = drawn["crown: {stitches: 40}"]
    assert cover is not None and "Tiny" in cover.description
