"""Formulas of one size: names worked out when asked for, faults at their place."""

import pytest
from tiny_specs import HEAD, ONE_SIZE, graded, problems, told

from gaugewright.errors import Location, Origin, ProblemsFound
from gaugewright.design.model import Formula
from gaugewright.formulas import parse_formula
from gaugewright.sizing.environment import Environment

PIECE = "pieces:\n  piece:\n    fabric: plain\n    colours: oat\n    start: {chain: WIDTH}\n    sections: [even: {rows: 3}]\n"


def formula(text: str) -> Formula:
    return Formula(parse_formula(text), text, Origin(Location("tiny.yaml", 1, 1), text))


def env(**formulas: str) -> Environment:
    return Environment("M", {"bust": 1000.0}, {"bust": 50.0}, {name: formula(text) for name, text in formulas.items()})


def test_names_are_worked_out_through_one_another() -> None:
    assert env(a="b + c", b="c * 2", c="body.bust + ease.bust").length(formula("a / 2")) == pytest.approx(1575)


def test_a_long_chain_of_names_does_not_nest() -> None:
    names = {f"n{i}": f"n{i + 1} + 1 mm" for i in range(3000)} | {"n3000": "1 mm"}
    assert env(**names).length(formula("n0")) == pytest.approx(3001)


def test_a_circle_is_told() -> None:
    with pytest.raises(ProblemsFound) as found:
        env(a="b", b="1 cm + a").length(formula("a"))
    assert [(p.name, p.origin.location.column if p.origin else 0) for p in found.value.problems] == [("formula-cycle", 8)]


def test_a_fabric_may_be_called_like_a_length() -> None:
    text = ONE_SIZE + "lengths: {plain: 'in_rows(4.3 cm, plain)'}\n" + PIECE.replace("WIDTH", "plain * 5")
    assert graded(text).pieces["piece"]["M"].main.start.stitches == 20


@pytest.mark.parametrize(("text", "name", "column"), [
    ("1 cm + body.wrist", "formula-fault", 8),
    ("ease.wrist", "formula-fault", 1),
    ("total / 2", "formula-fault", 1),
    ("body.bust / (2 cm - 20 mm)", "formula-fault", 11),
    ("body.bust / 2 cm", "not-a-length", 1),
])
def test_faults_stand_at_their_place(text: str, name: str, column: int) -> None:
    with pytest.raises(ProblemsFound) as found:
        env().length(formula(text))
    assert [(p.name, p.size, p.origin.location.column if p.origin else 0) for p in found.value.problems] == [(name, "M", column)]


def test_a_measure_missing_in_some_sizes_is_told_once_with_them() -> None:
    text = HEAD + "sizes: {table: child, make: ['2', Ann, '4'], own: {Ann: {chest: 60 cm, wrist: 13 cm}}}\n"
    text += "lengths: {across: '10 cm + body.wrist'}\n" + PIECE.replace("WIDTH", "across / 2")
    assert told(text) == [("formula-fault", "lengths: {across: '10 cm + body.wrist'}", "2, 4")]


def test_own_measures_that_do_not_do_are_told_at_the_sizes() -> None:
    text = HEAD + "sizes: {own: {Ann: {waist: 70 cm}, Bo: {bust: 90 cm, hat: 20 cm}}}\n" + PIECE.replace("WIDTH", "20 cm")
    assert told(text) == [("unknown-measure", "sizes: {own: {Ann: {waist: 70 cm}, Bo: {bust: 90 cm, hat: 20 cm}}}", "Bo")]


def test_own_measures_need_only_what_the_formulas_name() -> None:
    sizes = "sizes: {table: women, own: {Ann: {head: 55 cm}, Bo: {head: 58 cm}}, make: [Ann, Bo]}\n"
    assert problems(HEAD + sizes + PIECE.replace("WIDTH", "body.head / 2")) == []
    lacking = "sizes: {own: {Ann: {head: 55 cm}, Bo: {bust: 90 cm}}}\n" + PIECE.replace("WIDTH", "body.upper_arm")
    assert [(name, size) for name, _, size in told(HEAD + lacking)] == [("formula-fault", "Ann")]


def test_a_fault_in_a_quoted_formula_points_into_it() -> None:
    text = ONE_SIZE + "lengths: {across: '10 cm + body.bust / ((1 cm - 10 mm) / 1 cm)'}\n" + PIECE.replace("WIDTH", "across / 2")
    (problem,) = problems(text)
    assert problem.origin is not None
    assert problem.origin.line_text[problem.origin.location.column - 1] == "/"


def test_lengths_may_use_edges_of_pieces_graded_before() -> None:
    text = ONE_SIZE + "lengths: {around: 'edge(piece.top) * 2'}\n" + PIECE.replace("WIDTH", "20 cm")
    text += "  collar:\n    fabric: plain\n    colours: oat\n    start: {chain: around}\n    sections: [even: {rows: 3}]\n"
    ordered = graded(text.replace("pieces:\n", "pieces:\n  early: {like: collar}\n"))
    assert tuple(ordered.pieces) == ("piece", "early", "collar")
    assert ordered.pieces["early"]["M"].main.start.stitches == 40
