"""YAML's own grammar, through ruamel.yaml: events out, and its complaints in our words."""

import re
from collections.abc import Iterator
from typing import Any

from gaugewright.errors import Location, Origin, Problem, ProblemsFound


def file_problem(name: str, message: str, file: str, hint: str) -> ProblemsFound:
    """A problem with a file as a whole."""
    return ProblemsFound((Problem(name, message, Origin(Location(file, 1, 1)), hint),))


def placed_problem(
    name: str, message: str, hint: str, line: int, column: int, file: str, lines: tuple[str, ...]
) -> Problem:
    """A problem at a line and column counted from 0."""
    quoted = lines[line] if line < len(lines) else ""
    return Problem(name, message, Origin(Location(file, line + 1, column + 1), quoted), hint)


def read_events(text: str, file: str, lines: tuple[str, ...]) -> Iterator[Any]:
    """ruamel's events; what it raises becomes a problem in our words."""
    from ruamel.yaml import YAML
    from ruamel.yaml.error import MarkedYAMLError, YAMLError

    try:
        yield from YAML(typ="safe", pure=True).parse(text)
    except MarkedYAMLError as fault:
        raise _syntax_problem(fault, file, lines) from None
    except (
        YAMLError,
        ValueError,
        OverflowError,
        ArithmeticError,
        LookupError,
        TypeError,
        AttributeError,
        AssertionError,
        NotImplementedError,
    ):
        # The reader names no place: a character that text may not hold, or a broken escape.
        message = "this file holds a character or an escape that YAML doesn't allow"
        line = next(
            (
                i
                for i, content in enumerate(lines)
                if re.search(r"[^\t\x20-\x7e\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]|\\[uUx]", content)
            ),
            0,
        )
        origin = Origin(Location(file, line + 1, 1), lines[line])
        raise ProblemsFound(
            (Problem("yaml-syntax", message, origin, "take it out, or write it as itself rather than as an escape"),)
        ) from None


_SYNTAX: tuple[tuple[str, str, str], ...] = (
    ("'\\t'", "a tab stands where only spaces may", "indent with spaces"),
    (
        "mapping values are not allowed",
        "a colon stands where no value can begin",
        "check the indentation, or put quotes round the whole text",
    ),
    (
        "expected ',' or '}'",
        "a comma or a closing } is expected",
        "close the brace, or put a comma between the entries",
    ),
    (
        "expected ',' or ']'",
        "a comma or a closing ] is expected",
        "close the bracket, or put a comma between the entries",
    ),
    (
        "could not find expected ':'",
        "this is neither `key: value` nor an entry of a list",
        "write `key: value`, with a space after the colon",
    ),
    ("unexpected end of stream", "a quotation mark is opened and never closed", "close it"),
    (
        "expected <block end>",
        "this line's indentation fits nothing above it",
        "indent it like the lines it belongs with",
    ),
    (
        "expected '<document start>'",
        "something follows where the file's keys have ended",
        "check the brackets and the indentation of this line",
    ),
    ("cannot start any token", "a value can't begin with this character", "put quotes round the value"),
    ("unknown escape", "this escape means nothing to YAML", "use single quotes, or double the backslash"),
)


def _syntax_problem(fault: Any, file: str, lines: tuple[str, ...]) -> ProblemsFound:
    found = str(fault.problem or fault.context or "")
    message, hint = f"this can't be read as YAML ({found})", "check quotes, brackets and indentation near here"
    for part, plain, advice in _SYNTAX:
        if part in found:
            message, hint = plain, advice
            break
    mark = fault.problem_mark or fault.context_mark
    if fault.context_mark and ("end of stream" in found or "stream end" in found):
        mark = fault.context_mark
        message += "; it was opened here" if "expected" in found and "comma" in message else ""
    if mark is None:
        return file_problem("yaml-syntax", message, file, hint)
    return ProblemsFound((placed_problem("yaml-syntax", message, hint, mark.line, mark.column, file, lines),))
