"""A gauge as text, the way labels give it: `8 sts, 6.5 rows / 10 cm`.

The count is made whole, since what is printed is what is graded: 6.5 rows over 10 cm are 13 rows
over 20 cm, the same gauge in whole rows.
"""

import re
from fractions import Fraction
from typing import NamedTuple

from gaugewright.units import NUMBER, UnitError, number_value, parse_length

_WORDS = {"stitches": "sts st stitch stitches", "rows": "row rows rnd rnds round rounds r"}
_OVER = re.compile(r"(?<![0-9])/|/(?![0-9])")  # not the line of a fraction


class WrittenGauge(NamedTuple):
    """Whole stitches over a width and whole rows over a height, mm, with the text as written and the length it was counted over, mm."""

    stitches: int
    width: float
    rows: int
    height: float
    text: str
    over: float


class GaugeError(Exception):
    """A gauge that can't be read: a problem's name, what, where (from 0) and what to write."""

    def __init__(self, name: str, message: str, column: int, hint: str) -> None:
        self.name, self.message, self.column, self.hint = name, message, column, hint
        super().__init__(message)


def parse_gauge(text: str) -> WrittenGauge:
    """Reads a gauge.

    >>> parse_gauge("8 sts, 6.5 rows / 10 cm")[:4]
    (8, 100.0, 13, 200.0)
    """
    over = list(_OVER.finditer(text))
    if not over:
        raise GaugeError("gauge-text", "a gauge names a length after a /", len(text.rstrip()), _with_slash(text))
    counts, length = text[: over[-1].start()], text[over[-1].end() :]
    measured = _measured(length, over[-1].end())
    found = _counts(counts)
    for kind in ("stitches", "rows"):
        if kind not in found:
            whole = counts.strip().rstrip(",")
            hint = (
                f"write {whole}, 7 rows / {length.strip()} with the rows you count"
                if kind == "rows"
                else f"write 8 sts, {whole} / {length.strip()} with the stitches you count"
            )
            name = "gauge-without-rows" if kind == "rows" else "gauge-without-stitches"
            raise GaugeError(name, f"this gauge has no {kind}", 0, hint)
    stitches, rows = found["stitches"], found["rows"]
    return WrittenGauge(
        stitches.numerator, measured * stitches.denominator, rows.numerator, measured * rows.denominator, text.strip(), measured
    )  # fmt: skip


def _with_slash(text: str) -> str:
    """What to write where a word stands for the /."""
    word = re.search(r"\b(?:over|to|in|per)\b", text)
    if not word:
        return "write it as 8 sts, 7 rows / 10 cm"
    return f"write {text[: word.start()].strip()} / {text[word.end() :].strip()}"


def _measured(length: str, at: int) -> float:
    try:
        measured = parse_length(length)
    except UnitError as fault:
        raise GaugeError("gauge-text", fault.message, at + fault.column, fault.hint) from None
    if measured <= 0:
        hint = "write the width you measured, such as 10 cm"
        raise GaugeError("not-positive", "a gauge is measured over more than nothing", at, hint)
    return measured


def _counts(text: str) -> dict[str, Fraction]:
    found: dict[str, Fraction] = {}
    column = 0
    for part in re.split(r"(,|\band\b|\bx\b)", text):
        at = column + len(part) - len(part.lstrip())
        column += len(part)
        if part.strip() and part.strip() not in (",", "and", "x"):
            kind, count = _count(part.strip(), at)
            found[kind] = count
    return found


def _count(part: str, at: int) -> tuple[str, Fraction]:
    negative = part.startswith("-")
    number = NUMBER.match(part, int(negative))
    word = part[number.end() :].strip() if number else ""
    kind = next((kind for kind, words in _WORDS.items() if word in words.split()), "")
    if not number or not kind:
        raise GaugeError(
            "gauge-text", f"{part!r} is neither stitches nor rows", at, "write it as 8 sts, 7 rows / 10 cm"
        )
    try:
        count = number_value(number, at)
    except UnitError as fault:
        raise GaugeError("gauge-text", fault.message, fault.column, fault.hint) from None
    if negative or count == 0:
        raise GaugeError(
            "not-positive", f"a gauge of {part} leaves nothing to count", at, f"write the {kind} you count, such as 8"
        )
    if count.denominator > 20:
        raise GaugeError(
            "gauge-text", f"{part} is finer than anybody counts", at, "count over a greater length, to the half stitch"
        )
    return kind, count
