"""Shares of bodies against scipy's normal distribution, by simulation, and on graded samples."""

import math
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
    assert all(a.tight < b.tight and a.loose <= b.loose for a, b in zip(*arms, strict=True))
    assert usual.beyond == ("2X", "3X", "4X", "5X")


def test_wide_sleeves_are_loose_on_few_unless_limits_are_asked_for() -> None:
    """The jacket's sleeves are meant to have 28 cm of ease and more: loose is what is slimmer than its own bodies by two spreads."""
    graded = pipeline.grade(pipeline.load(SAMPLES / "saltmarsh-jacket" / "spec.yaml"))
    usual = [one for one in bodies_within(graded, {}).shares if one.measure == "upper_arm"]
    asked = [one for one in bodies_within(graded, {"upper_arm": Limits(0.0, 120.0, "")}).shares if one.measure == "upper_arm"]
    assert all(one.loose < 0.05 and one.most > 250 for one in usual)
    assert all(one.loose > 0.99 and one.most == 120 for one in asked)
    assert [one.tight for one in usual] == [one.tight for one in asked]


def test_an_ease_within_the_usual_limits_leaves_them() -> None:
    graded = pipeline.grade(pipeline.load(SAMPLES / "dunlin-yoke" / "spec.yaml"))
    assert {one.most for one in bodies_within(graded, {}).shares if one.measure == "upper_arm"} == {120.0}


def test_the_measure_that_costs_most_is_named() -> None:
    graded = pipeline.grade(pipeline.load(SAMPLES / "saltmarsh-jacket" / "spec.yaml"))
    found = bodies_within(graded, {"hip": Limits(120.0, 400.0, "")})
    assert all(one.dearest == "hip" and one.without["hip"] == one.bodies > one.fits for one in found.together if one.size in "SM")
    roomy = bodies_within(graded, {of: Limits(-900.0, 900.0, "") for of in ("hip", "upper_arm", "wrist", "bust")})
    assert all(one.dearest == "" and one.fits == one.bodies for one in roomy.together)
    assert (roomy.some.own, roomy.some.some) == (roomy.some.bodies, roomy.some.bodies)


def test_the_finished_measurement_is_the_patterns() -> None:
    graded = pipeline.grade(pipeline.load(PULLOVER))
    upper = next(one for one in graded.design.finished if one.of == "upper_arm")
    for one in bodies_within(graded, {}).shares:
        if one.measure == "upper_arm":
            assert one.worn == graded.grading.environments[one.size].length(upper.measure) - math.pi * 5


def test_what_was_not_surveyed_is_not_guessed() -> None:
    throw = pipeline.grade(pipeline.load(SAMPLES / "quayside-throw" / "spec.yaml"))
    with pytest.raises(UserError, match="surveyed"):
        bodies_within(throw, {})
