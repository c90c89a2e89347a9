"""What came of a command, in words and an exit code."""

import io
import sys
import traceback
from collections.abc import Callable

import typer

from gaugewright.errors import Problem, ProblemsFound, UserError
from gaugewright.problem_text import problem_text


def say(text: str) -> None:
    """A line for the user."""
    typer.echo(text)


def speak_any_terminal() -> None:
    """A sign that the terminal's encoding lacks comes out as a question mark rather than as a fault of ours."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def guarded(run: Callable[[], None]) -> None:
    """Runs a command; the user's problems become words on stderr and exit 1, never a traceback."""
    try:
        run()
    except ProblemsFound as found:
        complain(found.problems)
        raise typer.Exit(1) from None
    except UserError as fault:
        complain([Problem(fault.name, fault.message, None, fault.hint)])
        raise typer.Exit(1) from None


def complain(problems: "tuple[Problem, ...] | list[Problem]") -> None:
    """Problems on stderr, one after the other, and how many there are."""
    for problem in problems:
        typer.echo(problem_text(problem), err=True)
    typer.echo(f"{len(problems)} problem{'s' if len(problems) != 1 else ''}", err=True)


def own_fault(fault: Exception) -> None:
    """Says that the fault is ours, and what to send."""
    traceback.print_exception(fault, file=sys.stderr)
    typer.echo(
        "This is a bug in gaugewright, not in your file. Please send the lines above, your spec file and "
        "the command you gave to the project.", err=True,
    )
