"""Circular yokes that lie over the shoulders, and some that would stand in waves."""

import re

import pytest
from tiny_specs import HEAD, designed

from gaugewright.checks import run_checks
from gaugewright.checks.model import CheckResult
from gaugewright.grading.grade import grade
from gaugewright.sizing.bodies import bodies, environments

SIZES = "sizes: {own: {S: {bust: 80 cm}, L: {bust: 120 cm}}}\n"


def yokes(yoke: str) -> CheckResult:
    """The check's result for a yoke of 40 cm at the neck."""
    text = f"pieces:\n  yoke: {{fabric: round, colours: oat, start: {{ring: 40 cm}}, sections: [even: {{rounds: 2}}, round_yoke: {{{yoke}, underarm: 8 cm}}]}}\n"
    design = designed(HEAD + SIZES + text)
    of_bodies = bodies(design)
    return next(one for one in run_checks(design, of_bodies, grade(design, environments(design, of_bodies))) if one.name == "round-yokes")


def test_a_yoke_lies_as_it_is_by_default() -> None:
    """In L 148 cm grow from 40: two thirds of 22 cm would take them 1.3 times as fast as a disc, so they go on further down."""
    found = yokes("length: 22 cm, body: body.bust + 4 cm, sleeve: 28 cm")
    low, high = (float(figure) for figure in re.findall(r"\d\.\d\d", found.figures))
    assert found.problems == () and 0.5 < low < high < 1.1


def test_the_published_shares_lie_within_the_slack_of_a_disc() -> None:
    """Percentages of K = 100: 40 at the neck, 134 below, 25 cm deep, the last increases at half of it to a whole round."""
    found = yokes("length: 25 cm, body: 100 cm, sleeve: 33 cm, at: [0 %, 25 %, 50 %]")
    assert found.problems == () and re.findall(r"1\.\d\d", found.figures) == ["1.25", "1.25"]


@pytest.mark.parametrize("yoke", ["length: 16 cm, body: body.bust + 4 cm, sleeve: 40 cm", "length: 22 cm, body: body.bust + 4 cm, sleeve: 34 cm, at: [0 %, 10 %, 20 %, 40 %]"])
def test_a_yoke_that_widens_too_fast_ruffles(yoke: str) -> None:
    (problem,) = yokes(yoke).problems
    assert (problem.name, problem.severity) == ("yoke-ruffles", "warning") and problem.size.endswith("L")
    assert problem.origin is not None and "round_yoke" in problem.origin.line_text
    deeper = re.sub("length: [0-9]+", "length: 60", yoke)
    assert "make the yoke deeper" in problem.hint and yokes(deeper).problems == ()


def test_other_pieces_have_no_yoke() -> None:
    raglan = "pieces:\n  yoke: {fabric: round, colours: oat, start: {ring: 40 cm}, sections: [raglan: {length: 60 cm, body: 90 cm, sleeve: 30 cm, underarm: 4 cm}]}\n"
    design = designed(HEAD + SIZES + raglan)
    of_bodies = bodies(design)
    found = {one.name: one for one in run_checks(design, of_bodies, grade(design, environments(design, of_bodies)))}
    assert found["round-yokes"].figures == "no circular yokes"
