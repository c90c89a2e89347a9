"""All checks together, and their report."""

import json

from checks.specs import checked, damaged, pullover
from gaugewright.checks import CHECKS, run_checks
from gaugewright.checks.report import count_by_severity, outcome, report_data, report_lines
from gaugewright.problem_names import PROBLEM_NAMES


def test_a_sound_design_passes_every_check() -> None:
    results = checked()
    assert [result.name for result in results] == [name for name, _, _ in CHECKS]
    assert [(result.name, result.problems) for result in results if result.problems] == []
    assert all(result.figures for result in results)


def test_checks_change_nothing() -> None:
    design, bodies, grading = pullover()
    before = repr((design, bodies, grading.plans, grading.pieces))
    first = run_checks(design, bodies, grading)
    assert repr((design, bodies, grading.plans, grading.pieces)) == before
    assert run_checks(design, bodies, grading) == first


def test_one_size_alone_can_be_checked() -> None:
    results = checked(damaged("make: [A, B, C] => make: [B]"))
    assert [problem for result in results for problem in result.problems] == []


TIGHT = damaged("hip: 106 cm => hip: 117 cm", "neck: 24 cm => neck: 23 cm", "ring: body.hand + 4 cm => ring: 16 cm")


def test_the_report_in_lines() -> None:
    results = checked(TIGHT)
    lines = report_lines(results)
    assert lines[-1] == "1 error, 1 warning, 2 notes"
    assert "error    Hands and heads pass their openings: cuff 16.0 cm around, hand 18.0 to 22.0 cm" in lines
    assert any(line.startswith("  pullover.yaml:46:12: opening-tight, size A, B, C:") for line in lines)
    assert not any("neck-parity" in line for line in report_lines(results, notes=False))


def test_the_report_as_data_says_the_same() -> None:
    results = checked(TIGHT)
    data = json.loads(json.dumps(report_data(results)))
    assert data["counts"] == {"error": 1, "warning": 1, "note": 2} == count_by_severity(results)
    openings = next(one for one in data["checks"] if one["name"] == "openings")
    assert openings["outcome"] == outcome(next(result for result in results if result.name == "openings")) == "error"
    assert openings["problems"][0]["sizes"] == ["A", "B", "C"]
    assert (openings["problems"][0]["file"], openings["problems"][0]["line"]) == ("pullover.yaml", 46)


def test_every_problem_of_a_check_has_a_listed_name() -> None:
    assert {problem.name for result in checked(TIGHT) for problem in result.problems} <= set(PROBLEM_NAMES)
