"""What is worked so far, in words: read, and refused with its place."""

import pytest

from gaugewright.errors import ProblemsFound
from gaugewright.spec.worked_text import WorkedText, parse_worked


@pytest.mark.parametrize("text", [
    "12 rows, 14 sts, measures 46 cm wide, 24 cm high",
    "14 stitches, 12 rounds, 460 mm around, measures 0.24 m long",
    "24 cm tall,46 cm wide,14 st,12 rnds",
])
def test_any_order_and_any_unit(text: str) -> None:
    assert parse_worked(text) == WorkedText(12, 14, 460.0, 240.0)


def test_inches_with_fractions() -> None:
    assert parse_worked("1 row, 9 sts, 16 1/2 in wide, 1/2 in high") == WorkedText(1, 9, 419.1, 12.7)


@pytest.mark.parametrize(("text", "name", "column"), [
    ("", "worked-text", 1),
    ("12 rows", "worked-text", 8),
    ("12 rows, 14 sts, 46 cm wide", "worked-text", 28),
    ("12 rows, 14 loops, 46 cm wide, 24 cm high", "worked-text", 10),
    ("12 rows, 14 sts, 46 wide, 24 cm high", "number-without-unit", 18),
    ("12 rows, 14 sts, 46 g wide, 24 cm high", "wrong-unit", 18),
    ("12 rows, 14 sts, 46,5 cm wide, 24 cm high", "decimal-comma", 20),
    ("12.5 rows, 14 sts, 46 cm wide, 24 cm high", "worked-text", 1),
    ("0 rows, 14 sts, 46 cm wide, 24 cm high", "not-positive", 1),
    ("12 rows, 14 sts, 0 cm wide, 24 cm high", "not-positive", 18),
    ("999999999999 rows, 14 sts, 46 cm wide, 24 cm high", "out-of-range", 1),
    ("12 rows, 12 rnds, 14 sts, 46 cm wide, 24 cm high", "worked-text", 10),
    ("12 rows, 14 sts, measures wide, 24 cm high", "wrong-unit", 27),
])
def test_a_refusal_names_its_place(text: str, name: str, column: int) -> None:
    with pytest.raises(ProblemsFound) as found:
        parse_worked(text)
    (problem,) = found.value.problems
    assert (problem.name, problem.origin and problem.origin.location.column) == (name, column)
    assert problem.hint
