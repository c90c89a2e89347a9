"""The garment seen from the front: parts in their places, in proportion, mirrored."""

from collections.abc import Iterable
from dataclasses import replace
from itertools import combinations
from pathlib import Path

import pytest
from drawings.figures import back, front, sleeve, v_neck
from drawings.inspection import drawn_lines, ground_under, labels, labels_overlap, touches_label

from gaugewright import pipeline
from gaugewright.drawings.garment import BUTTON, GarmentFigure, GarmentPart, draw_garment
from gaugewright.drawings.garment_layout import Edging, open_front, pullover, turned_over
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.primitives import Point, Polygon
from gaugewright.instructions.nodes import Figure

EDGING = Edging("Front and Neck Band", 40, "oat", "#d9c9a8")


def jacket() -> GarmentFigure:
    return open_front("Saltmarsh Jacket", back(), front(), turned_over(front()), sleeve(), EDGING)


def parts_named(garment: GarmentFigure, name: str) -> list[GarmentPart]:
    return [part for part in garment.parts if part.name == name]


def assert_same_points(found: Iterable[Point], expected: Iterable[Point]) -> None:
    assert [c for point in found for c in point] == pytest.approx([c for point in expected for c in point])


def xs(part: GarmentPart) -> list[float]:
    return [x for x, _ in part.placed(part.outline)]


def test_fronts_and_bands_meet_in_the_middle() -> None:
    garment = jacket()
    right, left = parts_named(garment, "Right Front")
    assert (min(xs(right)), max(xs(right))) == pytest.approx((-310, -40))
    assert (min(xs(left)), max(xs(left))) == pytest.approx((40, 310))
    _neck, right_band, left_band = parts_named(garment, "Front and Neck Band")
    assert max(xs(right_band)) == pytest.approx(0)
    assert min(xs(left_band)) == pytest.approx(0)


def test_the_band_follows_the_front_edge_and_stands_above_the_neck() -> None:
    garment = jacket()
    neck, right_band, _left = parts_named(garment, "Front and Neck Band")
    placed = right_band.placed(right_band.outline)
    for corner in ((-40, 0), (-40, 400), (-110, 640), (0, 0)):
        assert any(point == pytest.approx(corner) for point in placed)
    assert max(y for _, y in placed) == pytest.approx(680)
    assert_same_points(neck.placed(neck.outline), ((-110, 640), (110, 640), (110, 680), (-110, 680)))


def test_sleeves_hang_from_the_shoulder_tips_behind_the_body() -> None:
    garment = jacket()
    assert [part.name for part in garment.parts[:3]] == ["Sleeve", "Sleeve", "Back"]
    right, left = parts_named(garment, "Sleeve")
    assert any(point == pytest.approx((-310, 640)) for point in right.placed([right.pivot]))
    mirrored = [(-x, y) for x, y in right.placed(right.outline)]
    assert_same_points(left.placed(left.outline), mirrored)
    cuff = right.placed([(60, 0), (160, 0)])
    assert all(x < -310 and y < 640 for x, y in cuff)


def test_spread_at_a_right_angle_a_sleeve_lies_along_the_armhole() -> None:
    square = PieceFigure("s", "Sleeve", ("M",), "M", ((0, 0), (200, 0), (200, 400), (0, 400)))
    garment = open_front("J", back(), front(), turned_over(front()), square, EDGING, sleeve_turn=90)
    right, _ = parts_named(garment, "Sleeve")
    assert_same_points(
        right.placed(square.outline), [(-310 - 400, 640), (-310 - 400, 440), (-310, 440), (-310, 640)]
    )


def test_the_sleeve_of_a_pullover_starts_at_the_tip_not_at_the_neck() -> None:
    garment = pullover("Pullover", v_neck(), v_neck(), sleeve())
    right, _ = parts_named(garment, "Sleeve")
    assert_same_points(right.placed([right.pivot]), [(-210, 600)])


def test_a_vest_has_no_sleeves() -> None:
    assert [part.name for part in pullover("Vest", v_neck(), v_neck()).parts] == ["Pullover Front"] * 2


def test_the_drawing_is_in_proportion_and_fits() -> None:
    garment = pullover("Vest", v_neck(), v_neck())
    drawing = draw_garment(garment, 80, 60)
    assert drawing.width <= 80
    assert drawing.height <= 60 + 1e-9
    outlines = [item.points for item in drawing.items if isinstance(item, Polygon) and item.width == 0.3]
    wide = max(x for x, _ in outlines[0]) - min(x for x, _ in outlines[0])
    high = max(y for _, y in outlines[0]) - min(y for _, y in outlines[0])
    assert wide / high == pytest.approx(500 / 630, rel=0.005)


def test_the_key_names_each_colour_once_and_clear_of_all_else() -> None:
    drawing = draw_garment(jacket())
    texts = labels(drawing)
    assert sorted(label.text for label in texts) == ["kelp", "oat", "slate"]
    assert not [pair for pair in combinations(texts, 2) if labels_overlap(*pair)]
    lines = list(drawn_lines(drawing))
    assert not [label for label in texts if any(touches_label(label, line) for line in lines)]
    assert all(ground is None for label in texts for ground in ground_under(drawing, label))
    assert labels(draw_garment(jacket(), colour_key=False)) == []


def test_what_lies_behind_is_hidden() -> None:
    """Under each part lies paper, painted after all that is behind it."""
    garment = jacket()
    items = draw_garment(garment).items
    papers = [item.points for item in items if isinstance(item, Polygon) and item.fill == "#ffffff"]
    outlines = [item.points for item in items if isinstance(item, Polygon) and item.width == 0.3]
    assert papers == outlines
    assert len(papers) == len(garment.parts)


def test_the_description_names_each_pieces_colours_once() -> None:
    description = draw_garment(jacket()).description
    assert description.startswith("Saltmarsh Jacket seen from the front, drawn in true proportion in size XS.")
    assert description.count("Sleeve: slate, oat, kelp.") == 1
    plain = replace(jacket(), parts=tuple(replace(part, bands=()) for part in jacket().parts))
    assert "Colours" not in draw_garment(plain).description


def test_turned_over_flips_all_that_is_on_a_piece() -> None:
    flipped = turned_over(front())
    assert flipped.measures[4].start == (0, 0)
    assert flipped.edge_names[0] == ("front edge", (0, 200))
    assert flipped.marks == (("underarm", (270, 420)),)
    assert turned_over(flipped) == front()


def test_the_cover_shows_hood_and_ribbing_and_a_band_round_the_hood() -> None:
    graded = pipeline.grade(pipeline.load(Path(__file__).parents[2] / "samples" / "turnstone-vest" / "spec.yaml"))
    cover = next(block for block in pipeline.document(graded, pipeline.Edition()).blocks if isinstance(block, Figure))
    for part in ("Hood: Shingle", "Hem Rib: Shingle", "Front Band: Shingle"):
        assert part in cover.drawing.description


def test_a_buttoned_front_lies_over_the_other_by_the_depth_of_its_band() -> None:
    closed = EDGING._replace(buttons=(0.1, 0.5), button=20.0)
    garment = open_front("Saltmarsh Jacket", back(), front(), turned_over(front()), None, closed)
    right, left = parts_named(garment, "Right Front")
    assert (max(xs(right)), min(xs(left))) == pytest.approx((-closed.depth / 2, closed.depth / 2))
    _neck, under, over = parts_named(garment, "Front and Neck Band")
    assert (under.mirrored, over.mirrored) == (True, False)  # the right front's band is painted last
    for button, share in zip(parts_named(garment, BUTTON), closed.buttons, strict=True):
        assert button.placed([(0.0, 0.0)]) == ((0.0, pytest.approx(share * 400)),)
        assert max(xs(button)) - min(xs(button)) == pytest.approx(20.0)
    on_left = open_front("Saltmarsh Jacket", back(), front(), turned_over(front()), None, closed._replace(on_left=True))
    assert parts_named(on_left, "Front and Neck Band")[-1].mirrored
    assert draw_garment(garment).description.endswith("Closed with 2 buttons.")
