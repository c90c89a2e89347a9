"""Yarns that are used, and body measures that can be relied on."""

from checks.specs import checked, damaged, places, told_by


def test_a_yarn_that_no_row_uses() -> None:
    assert told_by("yarns-used") == ()
    text = damaged('  kelp: {colour: "#3f5d4e"} =>   kelp: {colour: "#3f5d4e"}\n  slate: {like: kelp}')
    problems = told_by("yarns-used", text)
    assert places(problems, text) == [("yarn-unused", "note", "", "slate: {like: kelp}")]
    assert "slate" in problems[0].message


def test_own_measures_are_sure() -> None:
    assert told_by("unconfirmed-measures") == ()


def of_women() -> str:
    """The pullover in the women's chart instead of its own sizes."""
    lines = [line for line in damaged("make: [A, B, C] => make: [S, M, L]").split("\n") if not line.startswith("    ") or "bust: " not in line or "hand:" not in line]
    return "\n".join(line for line in lines if line != "  own:").replace("sizes:\n", "sizes:\n  table: women\n")


def test_measures_from_memory_and_from_a_survey_are_noted_once_each() -> None:
    text = of_women()
    found = places(told_by("unconfirmed-measures", text), text)
    assert sorted(found) == [
        ("measure-surveyed", "note", "S, M, L", "body.hand + 4 cm}"),
        ("measure-unconfirmed", "note", "S, M, L", "upper_arm: {measure: fin"),
    ]
    assert next(result.figures for result in checked(text) if result.name == "unconfirmed-measures") == "3 body measures used, 2 not from a chart seen in print"


def test_a_yarn_that_is_used_and_cannot_be_bought() -> None:
    """One yarn has a ball, the other that is used has none: how many to buy of it nobody can tell."""
    text = damaged('  oat: {colour: "#d9c9a8"} =>   oat: {colour: "#d9c9a8", ball: {mass: 100 g, length: 58 m}}')
    problems = told_by("yarns-used", text)
    assert [(problem.name, problem.severity) for problem in problems] == [("yarn-not-bought", "warning")]
    assert "kelp" in problems[0].message and problems[0].origin is not None
    both = text.replace('kelp: {colour: "#3f5d4e"}', 'kelp: {colour: "#3f5d4e", like: oat}')
    assert told_by("yarns-used", both) == ()
