"""Hoods against the heads that go into them."""

from dataclasses import replace
from pathlib import Path

from checks.specs import checked, damaged, places, problems_of, pullover, told_by
from gaugewright.checks.hoods import check_hoods
from gaugewright.sized import Sized

CASE = (Path(__file__).parents[1] / "cases" / "hooded-cardigan" / "spec.yaml").read_text(encoding="utf-8")


def figures(text: str) -> str:
    return next(result.figures for result in checked(text) if result.name == "hoods")


def test_hoods_picked_up_and_sewn_on_are_found() -> None:
    assert told_by("hoods", CASE) == ()
    assert figures(CASE) == "hood 51.3 cm round the face, 32.9 to 35.7 cm high; flat_hood 50.0 cm round the face, 35.7 cm high"
    assert figures(damaged()) == "no hood"


def test_a_low_hood_is_told_and_the_hint_works() -> None:
    text = CASE.replace("body.head / 2 + 6 cm", "28 cm")
    problems = told_by("hoods", text)
    assert [one[:3] for one in places(problems, text)] == [("hood-tight", "warning", "S, L")]
    assert "28.6 cm from the neck to the fold, for a head of 55.0 cm in S" in problems[0].message
    assert "at least 31.0 cm high in L" in problems[0].hint
    assert told_by("hoods", text.replace("length: 28 cm", "length: 31.4 cm")) == ()


def test_a_narrow_hood_is_told() -> None:
    text = CASE.replace("[even: {length: body.head / 2 + 6 cm}]", "[taper: {length: 34 cm, target: 42 cm}]")
    assert [(one.name, one.size) for one in told_by("hoods", text)] == [("hood-tight", "S, L")]
    assert "46.4 cm wide in L" in told_by("hoods", text)[0].hint


def test_a_head_nobody_knows_is_noted() -> None:
    design, bodies, grading = pullover(CASE)
    headless = tuple(replace(body, values={name: value for name, value in body.values.items() if name != "head"}) if body.label == "L" else body for body in bodies)
    problems = problems_of(check_hoods, (design, Sized(bodies.labels, headless), grading))
    assert [(one.name, one.severity, one.size) for one in problems] == [("opening-unchecked", "note", "L")] * 2
