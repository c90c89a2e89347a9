"""Raglans as they are drawn: the neck up, the yoke on the body, the sleeves at its corners."""

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
    sections: [raglan: {length: 12 cm, body: 80 cm, sleeve: 30 cm, underarm: 4 cm}]
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


def width_at(figure: PieceFigure, height: float) -> float:
    points = [x for x, y in figure.outline if abs(y - height) < 1e-6]
    return max(points) - min(points)


def test_a_yoke_hangs_from_its_neck(figures: dict[str, PieceFigure]) -> None:
    yoke = figures["yoke"]
    assert (width_at(yoke, 120.0), width_at(yoke, 0.0)) == (pytest.approx(200), pytest.approx(620))  # half of 40 and of 124 cm
    measures = {one.name: one.values for one in yoke.measures}
    assert measures["Around at the neck"] == (pytest.approx(400),) and measures["Around at the underarm"] == (pytest.approx(1240),)
    assert measures["From the neck to the underarm"] == (pytest.approx(120),)


def test_a_sleeve_hangs_from_its_underarm(figures: dict[str, PieceFigure]) -> None:
    arm = figures["arm"]
    assert (width_at(arm, 180.0), width_at(arm, 0.0)) == (pytest.approx(150), pytest.approx(110))
    assert {one.name for one in arm.measures} == {"Around at the underarm", "Around at the cuff", "From the underarm to the cuff"}


def test_the_cover_puts_the_parts_together(figures: dict[str, PieceFigure]) -> None:
    garment = raglan_garment(designed(ONE_SIZE + PIECES), figures)
    assert garment is not None
    left, right, body, yoke = (box_around(part.placed(part.outline)) for part in garment.parts)
    assert body == pytest.approx((-200, 0, 200, 200))  # 80 cm around, laid flat
    assert yoke == pytest.approx((-310, 200, 310, 320))
    assert left == pytest.approx((-310, 20, -160, 200)) and right == pytest.approx((160, 20, 310, 200))
    assert left[2] - body[0] == pytest.approx(40)  # they overlap by the underarm, which both have


def test_a_yoke_alone_is_no_garment(figures: dict[str, PieceFigure]) -> None:
    alone = designed(ONE_SIZE + PIECES.partition("  lower:")[0])
    assert raglan_garment(alone, figures) is None
