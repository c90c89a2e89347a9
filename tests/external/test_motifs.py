"""Motifs with corners against published rounds and geometry."""

import math

import pytest
from external.sources import source

from gaugewright.gauge.model import Gauge
from gaugewright.grading.crowns import flat_stitches
from gaugewright.grading.motifs import at_each_corner, flat_at_corner, increases


def of_aspect(height_to_width: float) -> Gauge:
    return Gauge(stitches=100, width=1000.0, rows=100, height=1000.0 * height_to_width)


@source("published", "'Sunday Sweater' crochet pattern (studylib 26975975): 3 sc in each of four corners, every round")
@pytest.mark.parametrize("aspect", [0.92, 0.875, 0.75])
def test_three_single_crochet_in_each_corner_of_a_square(aspect: float) -> None:
    """Two more at each corner, eight a round, at each published gauge of single crochet."""
    assert 4 * at_each_corner(4, of_aspect(aspect)) == 8


@source("common practice", "a solid square of double crochet: (2 dc, ch 2, 2 dc) in each corner; 3, 7, 11, 15 dc along a side")
@pytest.mark.parametrize("aspect", [2.0, 2.04, 2.125])
def test_a_solid_square_of_double_crochet(aspect: float) -> None:
    sides = increases(at_each_corner(4, of_aspect(aspect)), 4)
    assert [sum(sides[: number + 1]) - 1 for number in range(4)] == [3, 7, 11, 15]


@source("library", "the perimeter of a regular polygon round a circle, 2 n tan(pi / n) r, which comes to the circle's 2 pi r")
def test_many_corners_come_to_a_disc() -> None:
    gauge = of_aspect(1.3)
    assert 400 * flat_at_corner(400, gauge) == pytest.approx(flat_stitches(gauge), rel=1e-4)
    assert 4 * flat_at_corner(4, gauge) / flat_stitches(gauge) == pytest.approx(4 / math.pi)
