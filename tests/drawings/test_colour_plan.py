"""Blocks on a piece's drawing lie where their stitches do, are numbered as in the words, and can be told apart in black and white."""

import pytest
from tiny_specs import HEAD, designed

from gaugewright.drawings.colour_bands import assign_hatches
from gaugewright.drawings.garment_layout import turned_over
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.piece_figure import piece_figure
from gaugewright.drawings.primitives import Label, Polygon
from gaugewright.drawings.schematic import draw_schematic
from gaugewright.grading.grade import grade
from gaugewright.sizing.bodies import bodies, environments

SIZES = "sizes: {own: {M: {bust: 100 cm}}}\n"
PIECE = """\
pieces:
  piece:
    fabric: plain
    start: {chain: 20 cm}
    sections: [even: {length: 4 cm}, taper: {length: 6 cm, target: 14 cm}]
    colours: {blocks: [{to: 2 cm, across: kelp}, {to: 8 cm, across: [{oat: 5 cm}, {kelp: rest}, {oat: 30 %}]}, {across: kelp}]}
"""


def figure(text: str) -> PieceFigure:
    design = designed(text)
    grading = grade(design, environments(design, bodies(design)))
    yarns = {yarn.key: (yarn.label, yarn.colour) for yarn in design.yarns}
    return piece_figure(design.piece("piece"), grading.plans["piece"], grading.pieces["piece"], yarns, "M")


def test_blocks_lie_between_their_lines_and_heights() -> None:
    found = figure(HEAD + SIZES + PIECE).bands
    assert [(band.label, band.bottom, band.top, band.left, band.right) for band in found] == [
        ("Kelp", 0.0, 20.0, None, None), ("Kelp", 80.0, 100.0, None, None),
        ("1 Oat", 20.0, 80.0, None, 50.0), ("2 Kelp", 20.0, 80.0, 50.0, 140.0), ("3 Oat", 20.0, 80.0, 140.0, None),
    ]


def test_lines_stand_where_they_are_whatever_the_edge_does_before() -> None:
    text = PIECE.replace("{to: 8 cm, across:", "{to: 6 cm, across: oat}, {to: 9 cm, across:")
    lines = [band.right for band in figure(HEAD + SIZES + text).bands if band.number][:2]
    left = next(measure for measure in figure(HEAD + SIZES + text).measures if measure.name == "Width at the top")
    assert lines[0] is not None and left.start[0] < lines[0] < left.end[0]
    assert lines[0] % 10 == pytest.approx(0.0) or lines[0] % 10 == pytest.approx(10.0)


def test_a_round_in_blocks_is_drawn_cut_open() -> None:
    turned = HEAD.replace("worked: joined rounds", "worked: turned rounds")
    text = turned + SIZES + PIECE.replace("fabric: plain", "fabric: round").replace("chain:", "ring:").replace(", taper: {length: 6 cm, target: 14 cm}", ", even: {length: 6 cm}")
    found = figure(text)
    assert found.opened and not found.in_rounds
    assert max(x for x, _ in found.outline) - min(x for x, _ in found.outline) == pytest.approx(200.0)
    assert [band.right for band in found.bands if band.number] == [50.0, 140.0, None]
    assert "drawn cut open" in draw_schematic(found, "cm").drawing.description


def test_each_block_has_its_hatch_its_line_and_its_number() -> None:
    found = figure(HEAD + SIZES + PIECE)
    drawing = draw_schematic(found, "cm", hatches=assign_hatches(["Oat", "Kelp"])).drawing
    hatched = [item for item in drawing.items if isinstance(item, Polygon) and item.fill in ("#d9c9a8", "#3f5d4e")]
    assert {item.fill: item.hatch for item in hatched} == {"#d9c9a8": "diagonal", "#3f5d4e": "dots"}
    texts = [item.text for item in drawing.items if isinstance(item, Label)]
    assert {"1 Oat", "2 Kelp", "3 Oat"} <= set(texts) or {"1", "2", "3", "Oat", "Kelp"} <= set(texts)
    assert "1 Oat, 2 Kelp, 3 Oat" in drawing.description


def test_a_piece_turned_over_has_its_blocks_the_other_way_round() -> None:
    over = turned_over(figure(HEAD + SIZES + PIECE)).bands
    assert [(band.label, band.left, band.right) for band in over if band.number] == [
        ("1 Oat", 150.0, None), ("2 Kelp", 60.0, 150.0), ("3 Oat", None, 60.0),
    ]
