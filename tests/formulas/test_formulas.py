"""Formulas: what they read as, what they come to, and where their faults are."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugewright.formulas import (
    Call,
    FormulaError,
    Name,
    Node,
    calls_in,
    evaluate,
    names_in,
    order_by_reference,
    parse_formula,
)
from gaugewright.units import Quantity

LENGTHS = {"around": 1000.0, "body.bust": 800.0, "ease.bust": 200.0, "band_depth": 40.0}


def value(text: str) -> Quantity:
    def call(made: Call, arguments: tuple[Node, ...]) -> Quantity:
        return Quantity(500.0, "length")

    return evaluate(parse_formula(text), lambda name: Quantity(LENGTHS[name.name], "length"), call)


@pytest.mark.parametrize(
    ("text", "amount", "dimension"),
    [
        ("20 cm", 200.0, "length"),
        ("16 1/2 in", 419.1, "length"),
        ("1/2 in + 1/2 in", 25.4, "length"),
        ("(around - finished(back.width)) / 2 - band_depth", 210.0, "length"),
        ("body.bust + ease.bust", 1000.0, "length"),
        ("around * 0.42", 420.0, "length"),
        ("30 % * around", 300.0, "length"),
        ("around / body.bust", 1.25, "number"),
        ("around / 1/2", 500.0, "length"),
        ("around * 2 1/2", 2500.0, "length"),
        ("-around + -(-5 cm)", -950.0, "length"),
        ("10 - 2 - 3", 5.0, "number"),
        ("60 / 4 / 5", 3.0, "number"),
        ("2 + 3 * 4", 14.0, "number"),
        ("min(around, 20 cm, body.bust)", 200.0, "length"),
        ("max(1,2)", 2.0, "number"),
        ("in_rows(4 cm, band)", 500.0, "length"),
    ],
)
def test_values(text: str, amount: float, dimension: str) -> None:
    found = value(text)
    assert (pytest.approx(found.amount), found.dimension) == (amount, dimension)


@pytest.mark.parametrize(
    ("text", "column"),
    [
        ("", 0),
        ("around +", 8),
        ("around around", 7),
        ("(around", 0),
        ("around)", 6),
        ("2 around", 2),
        ("20,5 cm", 2),
        ("9**9", 2),
        ("20 cmm", 3),
        ("a..b", 1),
        ("min(1 2)", 6),
        ("__import__('os')", 11),
        ("around.__class__()[0]", 18),
        ("1/0 in", 0),
        ("around; around", 6),
        ("(" * 60 + "1" + ")" * 60, 51),
        ("-" * 60 + "1", 51),
        ("1 + " * 200 + "1", 500),
    ],
)
def test_faults_of_reading_have_a_column_and_a_hint(text: str, column: int) -> None:
    with pytest.raises(FormulaError) as caught:
        parse_formula(text)
    assert caught.value.column == column
    assert caught.value.message and caught.value.hint


@pytest.mark.parametrize(
    ("text", "column"),
    [
        ("around + 5", 7),
        ("5 - around", 2),
        ("around * around", 7),
        ("2 / around", 2),
        ("around / 0", 7),
        ("around / (2 - 2)", 7),
        ("20 cm + 5 g", 6),
        ("min(around, 5)", 12),
        ("max()", 0),
        ("1000000000 * 1000000000" + " * 1000000000" * 36, 440),  # 35 factors of 1e9
    ],
)
def test_faults_of_value_have_a_column_and_a_hint(text: str, column: int) -> None:
    with pytest.raises(FormulaError) as caught:
        value(text)
    assert caught.value.column == column
    assert caught.value.hint


def test_an_infinite_value_from_outside_is_refused() -> None:
    with pytest.raises(FormulaError) as caught:
        evaluate(
            parse_formula("2 * a"),
            lambda name: Quantity(math.inf, "length"),
            lambda call, arguments: Quantity(1.0, "number"),
        )
    assert caught.value.column == 4


def test_names_and_calls_stand_at_their_columns() -> None:
    tree = parse_formula("min(a, edge(back.side)) + body.bust")
    assert names_in(tree) == (Name("a", 4), Name("back.side", 12), Name("body.bust", 26))
    assert [(call.function, call.column) for call in calls_in(tree)] == [("min", 0), ("edge", 7)]


def test_order_and_cycles() -> None:
    order, cycles = order_by_reference(
        {"c": ["b"], "b": ["a", "elsewhere"], "a": [], "x": ["y"], "y": ["x"], "z": ["z"], "w": ["x"]}
    )
    assert order == ("a", "b", "c", "w")
    assert [cycle.names for cycle in cycles] == [("x", "y"), ("z",)]


def test_a_long_chain_of_names_is_ordered() -> None:
    needs = {f"n{i}": [f"n{i + 1}"] for i in range(5000)}
    order, cycles = order_by_reference(needs)
    assert (order[0], order[-1], cycles) == ("n4999", "n0", ())


@settings(deadline=None)
@given(st.text(max_size=600))
def test_no_text_breaks_the_parser(text: str) -> None:
    try:
        parse_formula(text)
    except FormulaError as fault:
        assert 0 <= fault.column <= len(text)


_WORDS = [
    "a",
    "body.bust",
    "2",
    "1/2",
    "20 cm",
    "16 1/2 in",
    "30 %",
    "+",
    "-",
    "*",
    "/",
    "(",
    ")",
    ",",
    "min(",
    "edge(",
    " ",
    "½",
    ".",
    "1,5",
]


@settings(deadline=None)
@given(st.lists(st.sampled_from(_WORDS), max_size=30))
def test_no_likely_text_breaks_the_parser_or_the_arithmetic(words: list[str]) -> None:
    try:
        tree = parse_formula("".join(words))
        found = evaluate(tree, lambda name: Quantity(100.0, "length"), lambda call, arguments: Quantity(1.0, "number"))
    except FormulaError as fault:
        assert fault.hint
    else:
        assert math.isfinite(found.amount)


@st.composite
def sums(draw: st.DrawFn) -> tuple[str, float]:
    """A sum as text, with its value worked out alongside by Python's own arithmetic."""
    parts = draw(
        st.lists(
            st.tuples(st.sampled_from("+-"), st.integers(1, 99), st.integers(1, 9), st.booleans()),
            min_size=1,
            max_size=12,
        )
    )
    text, total = "0 mm", 0.0
    for sign, number, factor, bracket in parts:
        text += f" {sign} ({number} mm) * {factor}" if bracket else f" {sign} {factor}*{number} mm"
        total += (1 if sign == "+" else -1) * number * factor
    return text, total


@settings(deadline=None)
@given(sums())
def test_sums_come_to_what_arithmetic_says(case: tuple[str, float]) -> None:
    text, total = case
    assert evaluate(
        parse_formula(text), lambda name: Quantity(0.0, "number"), lambda call, arguments: Quantity(0.0, "number")
    ) == Quantity(total, "length")
