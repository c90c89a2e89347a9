"""The three kinds of failure, as plain data.

A `UserError` is one thing wrong with what was asked; `ProblemsFound` carries every
problem of a stage at once; an `InternalError` is our own bug. Only `cli/` turns them
into words and exit codes. This module imports nothing of the project.
"""

from dataclasses import dataclass
from typing import Literal, NamedTuple

Severity = Literal["error", "warning", "note"]


class Location(NamedTuple):
    """A place in a file of the user's: line and column count from 1."""

    file: str
    line: int
    column: int

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Origin:
    """Where something made from the spec stands, with the line as written there."""

    location: Location
    line_text: str = ""

    def shifted(self, columns: int) -> "Origin":
        """The same line, `columns` further right (for a fault inside a formula)."""
        file, line, column = self.location
        return Origin(Location(file, line, column + columns), self.line_text)


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing found wrong: a stable name, what was found and expected, where, for which size."""

    name: str
    message: str
    origin: Origin | None = None
    hint: str = ""
    size: str = ""
    severity: Severity = "error"


class ProblemsFound(Exception):
    """All problems of a stage, in the order they were found."""

    def __init__(self, problems: "tuple[Problem, ...] | list[Problem]") -> None:
        self.problems = tuple(problems)
        super().__init__("; ".join(f"{p.name}: {p.message}" for p in self.problems))


class UserError(Exception):
    """One thing wrong that has no place inside a spec (a folder that can't be written, say).

    `name` is one of the problem names listed in DEVELOPERS.md.
    """

    def __init__(self, name: str, message: str, hint: str = "") -> None:
        self.name, self.message, self.hint = name, message, hint
        super().__init__(message)


class InternalError(Exception):
    """Something that cannot happen did: our bug, never the user's."""
