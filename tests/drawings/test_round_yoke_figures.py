"""Circular yokes as they are drawn: a slope through their increase rounds instead of a stair, the neck up."""

import pytest
from tiny_specs import ONE_SIZE, designed, graded

from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.piece_figure import piece_figure
from gaugewright.drawings.raglan_cover import raglan_garment

PIECES = """\
pieces:
  yoke:
    fabric: round
    colours: oat
    start: {ring: 40 cm}
    sections: [even: {rounds: 3}, round_yoke: {length: 22 cm, body: 90 cm, sleeve: 32 cm, underarm: 6 cm}]
    edges: {bottom: neck, top: underarm}
  lower: {fabric: round, colours: oat, start: {divide: yoke.body}, sections: [even: {rounds: 20}], edges: {bottom: underarm, top: hem}}
  arm: {fabric: round, colours: oat, make: 2, start: {divide: yoke.sleeve}, sections: [taper: {rounds: 18, target: 22 cm}], edges: {bottom: underarm, top: cuff}}
"""


@pytest.fixture(scope="module")
def figures() -> dict[str, PieceFigure]:
    design, grading = designed(ONE_SIZE + PIECES), graded(ONE_SIZE + PIECES)
    return {
        piece.key: piece_figure(piece, grading.plans[piece.key], grading.pieces[piece.key], {"oat": ("Oat", "#d9c9a8")}, "M")
        for piece in design.pieces
    }


def test_a_yoke_slopes_from_its_neck_to_its_underarm(figures: dict[str, PieceFigure]) -> None:
    yoke = figures["yoke"]
    left, right = (sorted((y, x) for x, y in yoke.outline if (x < 200) == on_left) for on_left in (True, False))
    assert len(left) == len(right) >= 6
    middle = (box_around(yoke.outline)[0] + box_around(yoke.outline)[2]) / 2
    for (y, x), (other_y, other_x) in zip(left, right, strict=True):
        assert y == pytest.approx(other_y) and middle - x == pytest.approx(other_x - middle)
    widths = [other_x - x for (_, x), (_, other_x) in zip(left, right, strict=True)]
    assert widths == sorted(widths, reverse=True)  # from the underarm up, nowhere wider
    assert (widths[0], widths[-1]) == (pytest.approx(650), pytest.approx(200))  # half of 130 and of 40 cm
    measures = {one.name: one.values for one in yoke.measures}
    assert measures["Around at the underarm"] == (pytest.approx(1300),) and measures["From the neck to the underarm"] == (pytest.approx(250),)


def test_between_increase_rounds_the_cloth_spreads_by_itself(figures: dict[str, PieceFigure]) -> None:
    """Rounds 4, 9, 13 and 18 of the piece increase: halfway between two counts the outline has its corners there."""
    heights = {round(250 - y, 6): 0.0 for _, y in figures["yoke"].outline}
    assert {40.0, 90.0, 130.0, 180.0} <= set(heights)


def test_the_cover_puts_the_parts_together(figures: dict[str, PieceFigure]) -> None:
    garment = raglan_garment(designed(ONE_SIZE + PIECES), figures)
    assert garment is not None
    left, right, body, yoke = (box_around(part.placed(part.outline)) for part in garment.parts)
    assert body == pytest.approx((-225, 0, 225, 200)) and yoke == pytest.approx((-325, 200, 325, 450))
    assert left == pytest.approx((-325, 20, -165, 200)) and right == pytest.approx((165, 20, 325, 200))
