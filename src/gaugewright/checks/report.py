"""Check results as lines for a terminal and as plain data for JSON. Prints nothing."""

from collections.abc import Sequence
from typing import Any

from gaugewright.checks.model import CheckResult
from gaugewright.errors import Problem, Severity
from gaugewright.problem_text import problem_text

GRAVEST_FIRST: tuple[Severity, ...] = ("error", "warning", "note")


def outcome(result: CheckResult) -> str:
    """The gravest severity among a check's problems, or "ok".

    >>> outcome(CheckResult("hips", "Hips", (), "")), outcome(CheckResult("hips", "Hips", (Problem("hips-tight", "", severity="warning"),), ""))
    ('ok', 'warning')
    """
    found = {problem.severity for problem in result.problems}
    return next((severity for severity in GRAVEST_FIRST if severity in found), "ok")


def report_lines(results: Sequence[CheckResult], notes: bool = True) -> tuple[str, ...]:
    """One line for each check, then its problems in full, then a count; notes can be left out."""
    lines: list[str] = []
    width = max(len(severity) for severity in GRAVEST_FIRST)
    for result in results:
        lines.append(f"{outcome(result):<{width}}  {result.title}" + (f": {result.figures}" if result.figures else ""))
        for problem in result.problems:
            if notes or problem.severity != "note":
                lines += [f"  {line}" for line in problem_text(problem).split("\n")]
    counts = count_by_severity(results)
    lines.append(", ".join(f"{number} {severity if number == 1 else severity + 's'}" for severity, number in counts.items()))
    return tuple(lines)


def count_by_severity(results: Sequence[CheckResult]) -> dict[Severity, int]:
    """How many problems of each severity, the gravest first."""
    found = [problem.severity for result in results for problem in result.problems]
    return {severity: found.count(severity) for severity in GRAVEST_FIRST}


def report_data(results: Sequence[CheckResult]) -> dict[str, Any]:
    """The same as data that JSON can hold."""
    return {
        "counts": dict(count_by_severity(results)),
        "checks": [
            {
                "name": result.name, "title": result.title, "outcome": outcome(result), "figures": result.figures,
                "problems": [_problem_data(problem) for problem in result.problems],
            }
            for result in results
        ],
    }


def _problem_data(problem: Problem) -> dict[str, Any]:
    place = problem.origin.location if problem.origin else None
    return {
        "name": problem.name, "severity": problem.severity, "message": problem.message, "hint": problem.hint,
        "sizes": problem.size.split(", ") if problem.size else [],
        "file": place.file if place else None, "line": place.line if place else None, "column": place.column if place else None,
    }
