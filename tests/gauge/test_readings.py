"""Readings to a gauge: against a library's statistics, and by simulating what happens at a swatch."""

import math
import random

import pytest
from scipy import stats

from gaugewright.gauge.readings import NORMAL, Reading, estimate, outlier, sharing, width_needed


@pytest.mark.parametrize("number", [4, 5, 7, 10])
def test_where_rounding_is_small_the_range_is_the_t_range_of_the_mean(number: int) -> None:
    """Long stretches measured to the millimetre; the wider the fewer readings, by up to an eighth."""
    chance = random.Random(number)
    for _ in range(20):
        readings = [Reading(200, 2000 + round(chance.gauss(0, 8)) + 0.4) for _ in range(number)]
        found = estimate(readings)
        low, high = stats.t.interval(0.90, number - 1, loc=found.mean, scale=stats.sem([one.each for one in readings]))
        assert found.low == pytest.approx(low, abs=0.13 * (high - low)) and found.high == pytest.approx(high, abs=0.13 * (high - low))
        assert 0.85 <= (found.high - found.low) / (high - low) <= 1.25


def test_readings_that_agree_to_the_hair_may_all_be_rounded_alike() -> None:
    one, four = estimate([Reading(18, 205.0)]), estimate([Reading(18, 205.0)] * 4)
    assert four.share >= 0.008, "a tape read to 5 mm may hide 2.5 mm of 205 in every reading"
    assert one.share > 2 * four.share


def test_of_readings_that_share_stitches_as_many_stay_as_can() -> None:
    laid = [Reading(9, 100.0, 1, 10.0 * at) for at in (0, 5, 10, 15, 20)]
    assert sharing(laid) == (1, 3)
    assert sharing([*laid[:2], Reading(9, 100.0, 2, 50.0), Reading(9, 100.0)]) == (1,)
    assert estimate(laid).readings == 3 and estimate(laid).shared == (1, 3)
    assert (estimate(laid).low, estimate(laid).high) == (estimate(laid[::2]).low, estimate(laid[::2]).high)


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
