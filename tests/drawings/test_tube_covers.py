"""Mittens and slippers as they are drawn: the opening on its face of the flat tube, the pair mirrored, the heel behind the foot."""

import pytest
from tiny_specs import ONE_SIZE, designed, graded

from gaugewright.drawings.cover import draw_cover
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.piece_figure import piece_figure
from gaugewright.drawings.schematic import draw_schematic
from gaugewright.drawings.tube_covers import mittens, slipper

HANDS = """\
pieces:
  hand:
    fabric: round
    colours: oat
    start: {ring: 20 cm}
    sections: [even: {rounds: 8}, opening: {edge: thumb, width: 4 cm, at: start}, even: {rounds: 6}, taper: {rounds: 3, each: -4, at: sides}]
  twin: {like: hand, mirrored: true}
  thumb: {make: 2, fabric: round, colours: oat, start: {pick_up: hand.thumb}, sections: [even: {rounds: 5}]}
"""
FEET = """\
pieces:
  foot: {fabric: round, colours: oat, start: {centre: flat}, sections: [crown: {target: 24 cm}, even: {rounds: 12}, open: {leave: 8 cm}]}
  heel: {fabric: plain, colours: oat, start: {go_on: foot.sole}, sections: [even: {rows: 10}], edges: {both: [side]}}
seams: [{join: heel.top, to: heel.top}]
"""


def figures_of(pieces: str) -> dict[str, PieceFigure]:
    design, grading = designed(ONE_SIZE + pieces), graded(ONE_SIZE + pieces)
    return {
        piece.key: piece_figure(piece, grading.plans[piece.key], grading.pieces[piece.key], {"oat": ("Oat", "#d9c9a8")}, "M")
        for piece in design.pieces
    }


def test_an_opening_is_marked_where_it_lies_on_the_flat_tube() -> None:
    figures = figures_of(HANDS)
    [(name, start, end)] = figures["hand"].slits
    [(_, other_start, other_end)] = figures["twin"].slits
    assert (name, start, end) == ("thumb opening", (pytest.approx(50), pytest.approx(80)), (pytest.approx(90), pytest.approx(80)))
    assert (other_start[0], other_end[0]) == (pytest.approx(10), pytest.approx(50))
    assert "Height to the thumb opening" in [measure.name for measure in figures["hand"].measures]


def test_the_schematic_names_it() -> None:
    drawing = draw_schematic(figures_of(HANDS)["hand"], "cm").drawing
    assert "A line marks the thumb opening." in drawing.description
    assert "thumb opening" in [getattr(item, "text", "") for item in drawing.items]


def test_in_the_middle_of_a_round_it_lies_at_the_fold() -> None:
    [(_, start, end)] = figures_of(HANDS.replace("at: start", "at: middle"))["hand"].slits
    assert (start[0], end[0]) == (pytest.approx(0), pytest.approx(20))


def test_a_pair_lies_mirrored_with_the_thumbs_outside() -> None:
    pair = mittens(designed(ONE_SIZE + HANDS), figures_of(HANDS))
    assert pair is not None and len(pair.parts) == 4
    boxes = [box_around(part.placed(part.outline)) for part in pair.parts]
    (hand_left, _, hand_right, _), (thumb_left, bottom, thumb_right, _) = boxes[2:]
    assert 0 < hand_left and thumb_right > hand_right and bottom < 80 < boxes[3][3]
    assert [(-right, low, -left, top) for left, low, right, top in boxes[2:]] == [pytest.approx(box) for box in boxes[:2]]


def test_one_hand_is_drawn_alone_and_one_without_a_thumb_not_so() -> None:
    alone = HANDS.replace("  twin: {like: hand, mirrored: true}\n", "")
    one = mittens(designed(ONE_SIZE + alone), figures_of(alone))
    assert one is not None and len(one.parts) == 2
    assert mittens(designed(ONE_SIZE + FEET), figures_of(FEET)) is None


def test_a_slipper_is_seen_from_the_side_its_heel_behind_the_foot() -> None:
    design, figures = designed(ONE_SIZE + FEET), figures_of(FEET)
    seen = slipper(design, figures)
    assert seen is not None and seen.seen_from == "side"
    foot, heel = (box_around(part.placed(part.outline)) for part in seen.parts)
    length = next(iter(graded(ONE_SIZE + FEET).pieces["foot"])).worked["length"]
    assert foot == (pytest.approx(0), pytest.approx(0), pytest.approx(length), pytest.approx(120))
    assert heel == (pytest.approx(length), pytest.approx(0), pytest.approx(length + 100), pytest.approx(80))
    cover = draw_cover(design, figures, {}, {"Oat": "none"})
    assert cover is not None and "seen from the side" in cover.description
