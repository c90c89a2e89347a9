"""`check`: every check with its figures and what it found."""

import json
from collections.abc import Sequence
from pathlib import Path

import typer

from gaugewright import pipeline
from gaugewright.checks.model import CheckResult
from gaugewright.checks.report import report_data, report_lines
from gaugewright.cli.gauge_option import parse_gauge_options
from gaugewright.cli.outcome import say
from gaugewright.errors import Problem, ProblemsFound, UserError


def check_spec(spec: Path, gauge: Sequence[str], templates: Path | None) -> None:
    """Lists all results; exit 1 where one of them is an error."""
    results = _results(spec, gauge, templates)
    for line in report_lines(results):
        say(line)
    _leave(results)


def check_spec_as_json(spec: Path, gauge: Sequence[str], templates: Path | None) -> None:
    """The same as JSON, with the problems of a spec that can't be graded at all, for editors and scripts."""
    try:
        results = _results(spec, gauge, templates)
    except ProblemsFound as found:
        results = _not_graded(found.problems)
    except UserError as fault:
        results = _not_graded((Problem(fault.name, fault.message, None, fault.hint),))
    say(json.dumps(report_data(results), indent=2, ensure_ascii=False))
    _leave(results)


def _results(spec: Path, gauge: Sequence[str], templates: Path | None) -> tuple[CheckResult, ...]:
    return pipeline.check(pipeline.grade(pipeline.load(spec, parse_gauge_options(gauge), templates)))


def _not_graded(problems: tuple[Problem, ...]) -> tuple[CheckResult, ...]:
    return (CheckResult("graded", "The spec can be read and graded", problems, ""),)


def _leave(results: tuple[CheckResult, ...]) -> None:
    if pipeline.errors_of(results):
        raise typer.Exit(1)
