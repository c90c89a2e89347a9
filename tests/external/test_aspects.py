"""How high a row is for the width of a stitch: published gauges against ours."""

import pytest
from external.sources import source

from gaugewright.gauge.model import Gauge

IN = 25.4


def aspect(gauge: Gauge) -> float:
    return gauge.row_height / gauge.stitch_width


@source("published", "gauges of Crochet Kitten, Velveteal, Lion Brand 70644AD, Kingbird and Marla cardigans, Niftynnifer, Square Dance Sewing, Happy Unraveler")
@pytest.mark.parametrize(
    ("stitches", "rows", "printed", "mean"),
    [
        (14, 16, 0.875, 0.85), (12, 16, 0.75, 0.85), (9, 7, 1.286, 1.32), (9, 8, 1.125, 1.32), (11, 8, 1.375, 1.32),
        (13, 9, 1.444, 1.32), (17, 8, 2.125, 2.04), (10, 5, 2.0, 2.04), (8, 4, 2.0, 2.04),
    ],
)
def test_the_aspect_of_a_gauge(stitches: int, rows: int, printed: float, mean: float) -> None:
    found = aspect(Gauge(stitches, 4 * IN, rows, 4 * IN))
    assert found == pytest.approx(printed, abs=0.0006)
    assert abs(found / mean - 1) <= 0.2


@source("published", "Interweave, swatches of 20 stitches by 20 rows on one hook: sc 6.25 by 5.75 in, hdc 6.75 by 9.25 in")
def test_two_swatches_of_one_yarn() -> None:
    sc, hdc = Gauge(20, 6.25 * IN, 20, 5.75 * IN), Gauge(20, 6.75 * IN, 20, 9.25 * IN)
    assert (sc.row_height / IN, sc.stitch_width / IN) == (pytest.approx(0.2875), pytest.approx(0.3125))
    assert (hdc.row_height / IN, hdc.stitch_width / IN) == (pytest.approx(0.4625), pytest.approx(0.3375))
    assert hdc.row_height / sc.row_height == pytest.approx(1.61, abs=0.005)
    assert (aspect(sc), aspect(hdc)) == (pytest.approx(0.92), pytest.approx(1.37, abs=0.001))


@source("published", "Carol's Crochet Page, 2009, and common yarn labels: knitting at 4 stitches and 6 rows to the inch is half as wide again as high")
def test_the_aspect_of_knitting() -> None:
    assert 1 / aspect(Gauge(4, IN, 6, IN)) == pytest.approx(1.5)
