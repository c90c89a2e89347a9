"""`check`: every check with its figures and what it found."""

import json
from pathlib import Path

import typer

from gaugewright import pipeline
from gaugewright.cli.outcome import say
from gaugewright.cli.publishing import parse_gauge_option


def check_spec(spec: Path, gauge: str, as_json: bool) -> None:
    """Lists all results; exit 1 where one of them is an error."""
    from gaugewright.checks.report import report_data, report_lines

    results = pipeline.check(pipeline.grade(pipeline.load(spec, parse_gauge_option(gauge))))
    if as_json:
        say(json.dumps(report_data(results), indent=2, ensure_ascii=False))
    else:
        for line in report_lines(results):
            say(line)
    if pipeline.errors_of(results):
        raise typer.Exit(1)
