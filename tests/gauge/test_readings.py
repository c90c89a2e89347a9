"""Readings to a gauge: against a library's statistics, and by simulating what happens at a swatch."""

import math
import random

import pytest
from scipy import stats

from gaugewright.gauge.readings import NORMAL, Reading, estimate, outlier, student_t, width_needed


@pytest.mark.parametrize("freedom", range(1, 31))
def test_the_table_of_t_is_the_library_s(freedom: int) -> None:
    assert student_t(freedom) == pytest.approx(stats.t.ppf(0.975, freedom), abs=0.0006)


@pytest.mark.parametrize("freedom", [31, 40, 60, 120, 1000])
def test_beyond_the_table_t_comes_down_to_the_normal_s(freedom: int) -> None:
    assert student_t(freedom) == pytest.approx(stats.t.ppf(0.975, freedom), abs=0.004)


def test_the_range_of_several_readings_is_the_t_range_of_their_mean() -> None:
    readings = [Reading(20, mm) for mm in (190.0, 210.0, 201.0, 205.0, 188.0)]
    found = estimate(readings)
    low, high = stats.t.interval(0.95, 4, loc=found.mean, scale=stats.sem([one.each for one in readings]))
    assert (found.low, found.high) == pytest.approx((low, high), rel=1e-3)


def test_readings_that_agree_to_the_hair_still_have_half_a_stitch_s_range() -> None:
    one, four = estimate([Reading(18, 205.0)]), estimate([Reading(18, 205.0)] * 4)
    assert one.share == pytest.approx(0.5 / 18) and four.share == pytest.approx(0.25 / 18)


def test_an_outlier_is_the_one_far_off_and_evenness_has_none() -> None:
    even = [Reading(18, mm) for mm in (204.0, 205.0, 206.0, 205.0)]
    assert outlier(even) is None and outlier(even[:3]) is None
    assert outlier([*even, Reading(20, 205.0)]) == 4
    assert outlier([Reading(18, mm) for mm in (190.0, 200.0, 210.0, 220.0, 230.0)]) is None


@pytest.mark.parametrize("readings", [[], [Reading(0, 100.0)], [Reading(18, 0.0)]])
def test_nothing_read_is_refused(readings: list[Reading]) -> None:
    with pytest.raises(ValueError, match="more than nothing"):
        estimate(readings)


def counted(width: float, stitch: float, uneven: float, chance: random.Random) -> float:
    """Stitches that a maker counts under a ruler: unequal stitches, the ruler laid anywhere, ends read to halves."""
    at, count = -chance.random() * stitch, 0.0
    while at < width:
        wide = max(0.2 * stitch, chance.gauss(stitch, uneven * stitch))
        inside = max(0.0, min(at + wide, width) - max(at, 0.0))
        count += inside / wide
        at += wide
    return round(2 * count) / 2


@pytest.mark.parametrize(("stitch", "width", "number"), [(11.4, 205.0, 5), (5.0, 100.0, 4), (25.0, 300.0, 6)])
def test_the_range_holds_the_true_stitch_about_as_often_as_it_says(stitch: float, width: float, number: int) -> None:
    """95 % by its name; readings to halves and ranges that are never too narrow make it a little more."""
    chance, inside, trials = random.Random(4), 0, 1500
    for _ in range(trials):
        found = estimate([Reading(counted(width, stitch, 0.10, chance), width) for _ in range(number)])
        inside += found.low <= stitch <= found.high
    assert 0.93 <= inside / trials <= 0.999


@pytest.mark.parametrize(("stitch", "allowed", "uneven"), [(25.0, 0.04, 0.10), (11.4, 0.03, 0.10), (5.0, 0.02, 0.06), (25.0, 0.08, 0.15)])
def test_a_swatch_as_wide_as_asked_for_knows_the_gauge_as_well_as_asked_for(stitch: float, allowed: float, uneven: float) -> None:
    chance, trials = random.Random(5), 1500
    width = width_needed(stitch, allowed, uneven)
    near = sum(abs(width / counted(width, stitch, uneven, chance) / stitch - 1) <= allowed for _ in range(trials))
    narrow = sum(abs(width / 4 / max(0.5, counted(width / 4, stitch, uneven, chance)) / stitch - 1) <= allowed for _ in range(trials))
    assert near / trials >= 0.92 and narrow / trials < 0.85


def test_thick_yarn_needs_a_far_wider_swatch() -> None:
    assert width_needed(25.0, 0.04) == pytest.approx(5 * width_needed(5.0, 0.04))
    assert width_needed(25.0, 0.04) > 400  # far more than ten centimetres
    with pytest.raises(ValueError, match="more than 0"):
        width_needed(10.0, 0.0)


def test_the_normal_s_share_is_the_library_s() -> None:
    assert pytest.approx(stats.norm.ppf(0.975), abs=0.0005) == NORMAL
    assert math.isfinite(NORMAL)
