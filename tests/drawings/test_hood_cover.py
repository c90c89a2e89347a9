"""A hooded vest on its cover: the fronts' band goes round the face and not round the neck."""

import pytest

from gaugewright.drawings.garment import GarmentFigure, GarmentPart
from gaugewright.drawings.garment_layout import Edging, open_front
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.hood_cover import with_hood
from gaugewright.drawings.model import PieceFigure

BACK = PieceFigure("back", "Back", ("S",), "S", ((0, 0), (40, 0), (40, 50), (0, 50)))
FRONT = PieceFigure("front", "Right Front", ("S",), "S", ((0, 0), (18, 0), (18, 40), (14, 50), (0, 50)))
LEFT = PieceFigure("left", "Left Front", ("S",), "S", ((0, 0), (18, 0), (18, 50), (4, 50), (0, 40)))
HOOD = PieceFigure("hood", "Hood", ("S",), "S", ((0, 0), (60, 0), (60, 30), (0, 30)))
BAND = Edging("Front Band", 2.0, "oat", "#d9c9a8")


def hooded(edging: Edging | None) -> GarmentFigure:
    garment = open_front("Vest", BACK, FRONT, LEFT, None, BAND)
    return with_hood(garment, HOOD, 50.0, "Right Front", edging)


def parts(garment: GarmentFigure, name: str) -> list[GarmentPart]:
    return [one for one in garment.parts if one.name == name]


def test_the_band_ends_where_the_neck_begins_and_goes_on_round_the_hood() -> None:
    """Two strips as long as the fronts' straight edges, 40 mm, and a rim over the hood's top at 80."""
    *strips, rim = parts(hooded(BAND), "Front Band")
    assert len(strips) == 2
    assert all(box_around(one.placed(one.outline))[3] == pytest.approx(40) for one in strips)
    left, bottom, right, top = box_around(rim.placed(rim.outline))
    assert (left, right, top) == (pytest.approx(-15), pytest.approx(15), pytest.approx(80))
    assert bottom == pytest.approx(40, abs=1.5)  # mitred at the chin


def test_the_hood_lies_behind_all_else_and_the_rim_before() -> None:
    names = [one.name for one in hooded(BAND).parts]
    assert (names[0], names[-1]) == ("Hood", "Front Band")


def test_a_band_that_does_not_go_round_the_hood_stays_at_the_neck() -> None:
    plain, found = open_front("Vest", BACK, FRONT, LEFT, None, BAND), hooded(None)
    assert found.parts[1:] == plain.parts
