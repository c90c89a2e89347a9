"""Triangles that ruffle or draw in, and their measures made anew from their rows."""

from dataclasses import replace

import pytest
from tiny_specs import designed

from gaugewright.checks import run_checks
from gaugewright.checks.model import CheckResult
from gaugewright.grading.grade import Grading, grade
from gaugewright.grading.plan import TrianglePlan
from gaugewright.sized import Sized
from gaugewright.sizing.bodies import bodies, environments

TEXT = """\
gaugewright: 1
pattern: {{title: Shawl, workshop: Ferry Lane Workshop}}
sizes: {{make: [S, L], dimensions: {{S: {{width: 80 cm}}, L: {{width: 160 cm}}}}}}
yarns: {{oat: {{colour: "#d9c9a8"}}}}
fabrics: {{cloth: {{stitch: hdc, gauge: "{gauge} / 10 cm"}}}}
pieces:
  shawl: {{start: {{middle: flat}}, sections: [triangle: {{width: size.width}}]}}
finished: {{wide: {{measure: finished(shawl.width), wanted: size.width}}, deep: {{measure: finished(shawl.length), wanted: size.width / 2}}}}
"""


def results(gauge: str, cycle: tuple[int, ...] | None = None) -> dict[str, CheckResult]:
    """All checks; with a `cycle` the rows are those of a plan that gains by it instead."""
    design = designed(TEXT.format(gauge=gauge))
    of_bodies = bodies(design)
    grading = grade(design, environments(design, of_bodies))
    return {one.name: one for one in run_checks(design, of_bodies, _gaining(grading, cycle) if cycle else grading)}


def _gaining(grading: Grading, cycle: tuple[int, ...]) -> Grading:
    from gaugewright.grading.expand import expand_all

    plans, pieces = grading.plans["shawl"], grading.pieces["shawl"]
    made = []
    for plan in plans:
        [section] = plan.sections
        assert isinstance(section, TrianglePlan)
        made.append(replace(plan, sections=(replace(section, cycle=cycle),)))
    sized = Sized(plans.labels, tuple(made))
    remade = Sized(pieces.labels, tuple(replace(one, strips=expand_all(plan)) for one, plan in zip(pieces, made, strict=True)))
    return Grading({"shawl": sized}, {"shawl": remade}, grading.environments)


def test_gains_near_flat_are_told_with_their_figures() -> None:
    found = results("13 sts, 10 rows")["triangles"]
    assert found.problems == ()
    assert found.figures == "shawl: gained at each place 37 in 28 rows, +0.6 in S; 76 in 57 rows, +1.9 in L from flat"


@pytest.mark.parametrize(
    ("cycle", "name", "words"),
    [((2,), "triangle-ruffles", "ruffles along its lower edges: 2.00 stitches a row gained at each place, and 1.30 lie flat"),
     ((1,), "triangle-cups", "draws in along its lower edges: 1.00 stitches a row gained at each place, and 1.30 lie flat")],
)
def test_too_much_ruffles_and_too_little_draws_in(cycle: tuple[int, ...], name: str, words: str) -> None:
    [problem] = results("13 sts, 10 rows", cycle)["triangles"].problems
    assert (problem.name, problem.severity, problem.size) == (name, "warning", "S, L")
    assert words in problem.message and problem.origin is not None and "triangle" in problem.origin.line_text


def test_a_gauge_between_two_cycles_is_warned_of() -> None:
    """1.09 stitches a row: neither 1 nor 7 in 6 is within a twentieth."""
    [problem] = results("12 sts, 11 rows")["triangles"].problems
    assert (problem.name, problem.size) == ("triangle-ruffles", "S, L")


@pytest.mark.parametrize("gauge", ["13 sts, 10 rows", "12 sts, 6 rows", "15 sts, 18 rows"])
def test_widths_and_depths_measured_anew_agree_and_are_as_wanted(gauge: str) -> None:
    found = results(gauge)["finished-measures"]
    assert found.problems == () and "wide" in found.figures and "deep" in found.figures
