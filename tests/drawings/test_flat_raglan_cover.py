"""Raglan pieces drawn: what is measured at their tops, and body and sleeves laid together along their lines."""

import math

import pytest
from tiny_specs import ONE_SIZE, designed, graded

from gaugewright.drawings.cover import folded
from gaugewright.drawings.flat_raglan_cover import raglan_pieces, with_raglan_sleeves
from gaugewright.drawings.garment_layout import pullover
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.piece_figure import piece_figure

SPEC = ONE_SIZE + """\
levels: {top: 40 cm, underarm: 20 cm, armpit: 30 cm}
pieces:
  back:
    fabric: plain
    colours: oat
    start: {chain: 50 cm}
    sections: [even: {to: underarm}, raglan_edge: {to: top, target: 20 cm, block: 3 cm}]
    edges: {both: [side, underarm, raglan]}
  front:
    like: back
    sections: [even: {to: underarm}, raglan_edge: {to: top, target: 20 cm, block: 3 cm}, neck: {shape: round, depth: 6 cm}]
  half:
    like: back
    start: {chain: 25 cm}
    sections: [even: {to: underarm}, raglan_edge: {to: top, target: 10 cm, block: 3 cm, at: raglan}, neck_edge: {shape: v, depth: 12 cm, at: front}]
    edges: {starting: [side, underarm, raglan], far: [front]}
  sleeve:
    like: back
    make: 2
    start: {chain: 36 cm}
    sections: [even: {to: armpit}, raglan_edge: {length: 20 cm, target: 8 cm, block: 3 cm}]
    edges: {both: [seam, armpit, raglan]}
"""


@pytest.fixture(scope="module")
def figures() -> dict[str, PieceFigure]:
    design, grading = designed(SPEC), graded(SPEC)
    yarns = {yarn.key: (yarn.label, yarn.colour) for yarn in design.yarns}
    return {p.key: piece_figure(p, grading.plans[p.key], grading.pieces[p.key], yarns, "M") for p in design.pieces}


@pytest.mark.parametrize(
    ("key", "neck", "deep"), [("back", 200, None), ("front", 200, 60), ("half", 100, 120), ("sleeve", 80, None)],
)
def test_neck_and_raglan_are_measured(figures: dict[str, PieceFigure], key: str, neck: float, deep: float | None) -> None:
    found = {one.name: one.values for one in figures[key].measures}
    assert found["Width at the neck"] == (pytest.approx(neck),) and found["Raglan depth"] == (pytest.approx(200),)
    assert found.get("Neck depth") == (None if deep is None else (pytest.approx(deep),))
    assert "Shoulder" not in found and "Armhole depth" not in found


def test_back_fronts_and_sleeve_are_told_apart() -> None:
    found = raglan_pieces(designed(SPEC))
    assert found is not None
    assert (found.sleeve.key, found.back.key, [piece.key for piece in found.fronts]) == ("sleeve", "back", ["front", "half"])
    assert raglan_pieces(designed(SPEC.replace("    make: 2\n", ""))) is None


def test_the_sleeves_lie_along_the_lines_of_the_body(figures: dict[str, PieceFigure]) -> None:
    sleeve = folded(figures["sleeve"])
    garment = with_raglan_sleeves(pullover("G", figures["back"], figures["front"]), figures["back"], sleeve)
    left, right, back, front = garment.parts
    assert [part.name for part in garment.parts] == ["Sleeve", "Sleeve", "Back", "Front"]
    (start,), (end,) = left.placed([(330.0, 300.0)]), left.placed([(220.0, 500.0)])
    assert start == pytest.approx((-220, 200))  # where the stitches left at the underarm end, on sleeve and body
    assert math.atan2(end[1] - start[1], end[0] - start[0]) == pytest.approx(math.atan2(200, 120))
    assert box_around(right.placed(right.outline))[2] == pytest.approx(-box_around(left.placed(left.outline))[0])
    assert box_around(left.placed(left.outline))[0] < box_around(back.placed(back.outline))[0]
    assert box_around(front.placed(front.outline)) == pytest.approx(box_around(back.placed(back.outline)))
