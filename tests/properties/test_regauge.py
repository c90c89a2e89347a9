"""There and back: whatever gauge a pattern is worked out for, its own gives it back."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from design.test_regauge import SLIPOVER
from gaugewright import pipeline
from gaugewright.changes import changes
from gaugewright.design.model import Design
from gaugewright.design.regauge import PRINTED_MM, regauged
from gaugewright.gauge.model import Gauge
from gaugewright.yarn.weighing import mass_per_stitch
from tiny_specs import designed

gauges = st.builds(Gauge, st.integers(6, 16), st.integers(60, 140).map(float), st.integers(5, 14), st.integers(60, 140).map(float))
DESIGN = designed(SLIPOVER)
OWN = {fabric.key: fabric.gauge for fabric in DESIGN.fabrics}


def near(design: Design) -> None:
    """Fabrics that were only scaled are back to what rounding to a printed figure, twice, leaves."""
    for fabric in DESIGN.fabrics:
        back = design.fabric(fabric.key).gauge
        assert (back.stitches, back.rows) == (fabric.gauge.stitches, fabric.gauge.rows)
        assert back.width == pytest.approx(fabric.gauge.width, abs=2 * PRINTED_MM) and back.height == pytest.approx(fabric.gauge.height, abs=2 * PRINTED_MM)


@settings(deadline=None, max_examples=60)
@given(gauges)
def test_back_at_the_main_gauge(gauge: Gauge) -> None:
    near(regauged(regauged(DESIGN, gauge), OWN["body"]))


@settings(deadline=None, max_examples=25)
@given(gauges, gauges)
def test_every_gauge_named_there_and_back_gives_the_same_pattern(body: Gauge, rib: Gauge) -> None:
    """Counts, rows, measurements, balls."""
    there = regauged(DESIGN, {"body": body, "rib": rib})
    back = regauged(there, OWN)
    for fabric in DESIGN.fabrics:
        assert back.fabric(fabric.key).gauge == fabric.gauge
        assert mass_per_stitch(back.fabric(fabric.key)) == pytest.approx(mass_per_stitch(fabric))
    own, again = pipeline.grade(DESIGN), pipeline.grade(back)
    assert again.grading.plans == own.grading.plans and again.grading.pieces == own.grading.pieces
    found = changes(pipeline.side(own), pipeline.side(again))
    assert all(one.old == one.new for one in (*found.counts, *found.measures, *found.balls))


@settings(deadline=None, max_examples=40)
@given(gauges)
def test_the_same_numbers_worked_at_another_gauge_stretch_as_the_stitch_does(gauge: Gauge) -> None:
    """Of a plain piece without seams: width with the stitch, length with the row, no row another."""
    own = pipeline.grade(DESIGN)
    worked = pipeline.worked_at(own, gauge)
    for size, piece in own.grading.pieces["panel"].items():
        other = worked.grading.pieces["panel"][size]
        assert other.strips == piece.strips
        assert other.finished["width"] == pytest.approx(piece.finished["width"] * gauge.stitch_width / OWN["body"].stitch_width)
        assert other.finished["length"] == pytest.approx(piece.finished["length"] * gauge.row_height / OWN["body"].row_height)
