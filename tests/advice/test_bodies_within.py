"""Shares of bodies against scipy's normal distribution, by simulation, and on graded samples."""

import random
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from gaugewright import pipeline
from gaugewright.advice.bodies import bodies_within, share_of
from gaugewright.errors import UserError
from gaugewright.measurements.limits import Limits
from gaugewright.measurements.survey import Bodies, lines

SAMPLES = Path(__file__).parents[2] / "samples"
PULLOVER = SAMPLES / "breakwater-pullover" / "spec.yaml"


@given(st.floats(200, 600), st.floats(200, 600), st.floats(5, 60), st.floats(-100, 100), st.floats(1, 200))
def test_the_share_is_the_normal_distributions(finished: float, mean: float, spread: float, least: float, wide: float) -> None:
    one = share_of("upper_arm", "M", finished, Bodies(mean, spread), Limits(least, least + wide, ""))
    ease = stats.norm(finished - mean, spread)
    assert one.tight == pytest.approx(ease.cdf(least), abs=1e-9)
    assert one.loose == pytest.approx(ease.sf(least + wide), abs=1e-9)
    assert one.fits == pytest.approx(ease.cdf(least + wide) - ease.cdf(least), abs=1e-9)


def test_the_share_is_what_drawn_bodies_show() -> None:
    line, allowed = lines("women")["upper_arm"], Limits(20.0, 80.0, "")
    one = share_of("upper_arm", "M", 350.0, Bodies(line.at(920.0), line.spread * 10), allowed)
    drawn = random.Random(7)
    eases = [350.0 - drawn.gauss(line.at(920.0), line.spread * 10) for _ in range(40_000)]
    assert sum(ease < 20 for ease in eases) / len(eases) == pytest.approx(one.tight, abs=0.01)
    assert sum(20 <= ease <= 80 for ease in eases) / len(eases) == pytest.approx(one.fits, abs=0.01)


def test_a_sleeve_that_needs_more_ease_is_tight_on_more() -> None:
    graded = pipeline.grade(pipeline.load(PULLOVER))
    usual, more = (bodies_within(graded, wanted) for wanted in ({}, {"upper_arm": Limits(80.0, 120.0, "")}))
    arms = [[one for one in found.shares if one.measure == "upper_arm"] for found in (usual, more)]
    assert [one.size for one in arms[0]] == ["XS", "S", "M", "L", "1X"]
    assert all(a.tight < b.tight and a.loose == b.loose for a, b in zip(*arms, strict=True))
    assert usual.beyond == ("2X", "3X", "4X", "5X")


def test_the_finished_measurement_is_the_patterns() -> None:
    graded = pipeline.grade(pipeline.load(PULLOVER))
    upper = next(one for one in graded.design.finished if one.of == "upper_arm")
    for one in bodies_within(graded, {}).shares:
        if one.measure == "upper_arm":
            assert one.finished == graded.grading.environments[one.size].length(upper.measure)


def test_what_was_not_surveyed_is_not_guessed() -> None:
    throw = pipeline.grade(pipeline.load(SAMPLES / "quayside-throw" / "spec.yaml"))
    with pytest.raises(UserError, match="surveyed"):
        bodies_within(throw, {})
