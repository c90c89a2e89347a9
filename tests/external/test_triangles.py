"""Triangular shawls against common practice and geometry."""

import math

import pytest
from external.sources import source
from shapely import Polygon
from tiny_specs import HEAD, graded

from gaugewright.gauge.model import Gauge
from gaugewright.grading.gains import cycle_of, exact_gain, gain_ratio

SIZES = "sizes: {make: [M], dimensions: {M: {width: 150 cm}}}\n"


def gains(aspect: float) -> tuple[int, ...]:
    """The cycle of a fabric whose stitch is so many times as high as it is wide."""
    return cycle_of(gain_ratio(exact_gain(Gauge(stitches=100, width=1000.0, rows=100, height=1000.0 * aspect))))


@source("common practice", "a top-down triangle in double crochet gains eight stitches a row: three in one at both ends, and twice at the spine")
def test_double_crochet_gains_eight_a_row() -> None:
    assert gains(2.0) == (2,) and 4 * gains(2.0)[0] == 8


@source("common practice", "a square stitch gains at four places on every row, one stitch each")
def test_square_stitches_gain_four_a_row() -> None:
    assert gains(1.0) == (1,)


@source("library", "shapely: the union of one right-angled strip for each row, as high as the row, cut off along the long edge")
@pytest.mark.parametrize(("fabric", "height"), [("plain", 10.0), ("tall", 20.0)])
def test_strips_laid_in_a_v_make_the_triangle(fabric: str, height: float) -> None:
    text = f"{HEAD}{SIZES}pieces: {{shawl: {{fabric: {fabric}, colours: oat, start: {{middle: flat}}, sections: [triangle: {{width: size.width}}]}}}}\n"
    one = graded(text).pieces["shawl"]["M"]
    laid = Polygon()
    for row in range(len(one.main.rows)):
        inner, outer = row * height * math.sqrt(2), (row + 1) * height * math.sqrt(2)
        laid = laid.union(Polygon([(-outer, 0), (0, outer), (outer, 0), (inner, 0), (0, inner), (-inner, 0)]))
    assert laid.symmetric_difference(Polygon(one.outline.polygon())).area == pytest.approx(0, abs=1e-3)
