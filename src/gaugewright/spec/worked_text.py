"""What is worked so far, as text: `12 rows, 14 sts, measures 46 cm wide, 24 cm high`."""

import re
from collections.abc import Iterator
from typing import NamedTuple

from gaugewright.errors import Location, Origin, Problem, ProblemsFound
from gaugewright.units import NUMBER, UnitError, parse_length

EXAMPLE = "12 rows, 14 sts, measures 46 cm wide, 24 cm high"
_COUNTED = {word: "rows" for word in "row rows rnd rnds round rounds".split()} | {word: "stitches" for word in "st sts stitch stitches".split()}
_MEASURED = {"wide": "width", "around": "width", "high": "height", "long": "height", "tall": "height"}
_NAMES = {"rows": "rows (12 rows)", "stitches": "stitches (14 sts)", "width": "a width (46 cm wide)", "height": "a height (24 cm high)"}
MOST = 100_000
"""More rows or stitches than anybody works."""


class WorkedText(NamedTuple):
    """Rows worked, stitches of the last one, and what the piece measures, mm, laid flat; in rounds the whole way round."""

    rows: int
    stitches: int
    width: float
    height: float


class _Fault(Exception):
    """A part that can't be read: its name, what, where (from 0) and what to write."""

    def __init__(self, name: str, message: str, column: int, hint: str) -> None:
        self.name, self.message, self.column, self.hint = name, message, column, hint
        super().__init__(message)


def parse_worked(text: str, option: str = "--worked") -> WorkedText:
    """Reads it; raises `ProblemsFound` with the place within the text.

    >>> parse_worked("12 rows, 14 sts, measures 46 cm wide, 24 cm high")
    WorkedText(rows=12, stitches=14, width=460.0, height=240.0)
    """
    try:
        return _parsed(text)
    except _Fault as fault:
        origin = Origin(Location(option, 1, fault.column + 1), text)
        raise ProblemsFound([Problem(fault.name, fault.message, origin, fault.hint)]) from None


def _parsed(text: str) -> WorkedText:
    found: dict[str, float] = {}
    for at, part in _parts(text):
        kind, value = _part(part, at)
        if kind in found:
            raise _Fault("worked-text", f"{_NAMES[kind]} is given twice", at, "leave one of them out")
        found[kind] = value
    missing = [name for name in _NAMES if name not in found]
    if missing:
        raise _Fault("worked-text", f"{' and '.join(_NAMES[name] for name in missing)} {'is' if len(missing) == 1 else 'are'} missing", len(text.rstrip()), f"write it all, as in {EXAMPLE}")
    return WorkedText(int(found["rows"]), int(found["stitches"]), found["width"], found["height"])


def _parts(text: str) -> Iterator[tuple[int, str]]:
    """Parts between commas with their places; a comma inside a number is no such comma."""
    comma = re.search(r"[0-9],[0-9]", text)
    if comma:
        written = comma.group()
        raise _Fault("decimal-comma", f"{written!r} has a comma inside a number", comma.start() + 1, f"write {written.replace(',', '.')} for a decimal, or a space after the comma")
    column = 0
    for part in text.split(","):
        at = column + len(part) - len(part.lstrip())
        column += len(part) + 1
        said = part.strip()
        if said.startswith("measures "):
            at += len("measures ")
            said = said.removeprefix("measures ").lstrip()
        yield at, said


def _part(part: str, at: int) -> tuple[str, float]:
    words = part.rsplit(None, 1)
    last = words[-1] if words else ""
    if last in _MEASURED:
        return _MEASURED[last], _length(part[: -len(last)].rstrip(), at)
    number = NUMBER.match(part)
    word = part[number.end() :].strip() if number else ""
    if number is None or word not in _COUNTED:
        raise _Fault("worked-text", f"{part!r} is neither rows, stitches, a width nor a height", at, f"write it as {EXAMPLE}")
    count = number.group()
    if not count.isdigit():
        raise _Fault("worked-text", f"{count} {word} isn't a whole number", at, "count the rows that are finished, and all stitches of the last one")
    if int(count) == 0 or int(count) > MOST:
        name = "not-positive" if int(count) == 0 else "out-of-range"
        raise _Fault(name, f"{count} {word} is {'nothing to judge by' if int(count) == 0 else 'more than anybody works'}", at, f"write what is worked, as in {EXAMPLE}")
    return _COUNTED[word], int(count)


def _length(text: str, at: int) -> float:
    try:
        length = parse_length(text)
    except UnitError as fault:
        name = "number-without-unit" if "has no unit" in fault.message else "wrong-unit"
        raise _Fault(name, fault.message, at + fault.column, fault.hint) from None
    if length <= 0:
        raise _Fault("not-positive", f"{text} is no length of a piece", at, "write what you measured, such as 46 cm")
    return length
