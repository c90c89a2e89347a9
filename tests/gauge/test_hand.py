"""Hand by category, and a category's stitches as a gauge."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugewright.gauge.hand import FOUR_INCHES, at_stitches, hand_of, usual_stitches
from gaugewright.gauge.hanging import growth_between, hung
from gaugewright.gauge.model import Gauge

ORDER = ("drapey", "usual", "stiff")


def of(stitches: float) -> Gauge:
    return Gauge(10, 10 * FOUR_INCHES / stitches, 10, 100.0)


def test_both_ends_of_a_range_are_usual_and_half_a_stitch_beyond_is() -> None:
    low, high = usual_stitches(5)
    assert (low, high) == (8, 11)
    assert [hand_of(5, of(count)) for count in (7.4, 7.6, 8, 11, 11.4, 11.6)] == ["drapey", "usual", "usual", "usual", "usual", "stiff"]


def test_jumbo_has_no_gauge_too_loose() -> None:
    assert [hand_of(7, of(count)) for count in (2, 6, 7)] == ["usual", "usual", "stiff"]


@given(st.integers(0, 7), st.floats(2, 60), st.floats(2, 60))
def test_more_stitches_are_never_a_looser_hand(category: int, one: float, other: float) -> None:
    few, many = sorted((one, other))
    assert ORDER.index(hand_of(category, of(few))) <= ORDER.index(hand_of(category, of(many)))


@given(st.floats(3, 40))
def test_a_gauge_of_so_many_stitches_keeps_the_shape_of_a_stitch(stitches: float) -> None:
    pattern = Gauge(18, 205.0, 14, 195.0)
    found = at_stitches(pattern, stitches)
    assert found.stitches_in(FOUR_INCHES) == pytest.approx(stitches, rel=2e-3)
    assert found.row_height / found.stitch_width == pytest.approx(pattern.row_height / pattern.stitch_width, rel=3e-3)


def test_without_growth_a_gauge_is_the_very_same() -> None:
    lying = Gauge(18, 205.0, 14, 195.03)
    assert hung(lying, 0.0) is lying
    assert growth_between(lying, hung(lying, 0.1)) == pytest.approx(0.1, abs=3e-4)
