"""Crowns that ruffle or cup, closed ends that don't close, and hats that pass the head."""

import pytest
from tiny_specs import HEAD, designed

from gaugewright.checks import run_checks
from gaugewright.checks.model import CheckResult
from gaugewright.errors import Problem
from gaugewright.grading.grade import grade
from gaugewright.sizing.bodies import bodies, environments

SIZES = "sizes: {own: {S: {bust: 80 cm, head: 50 cm}, L: {bust: 110 cm, head: 60 cm}}}\n"


def results(pieces: str) -> dict[str, CheckResult]:
    design = designed(HEAD + SIZES + pieces)
    of_bodies = bodies(design)
    return {one.name: one for one in run_checks(design, of_bodies, grade(design, environments(design, of_bodies)))}


def disc(section: str, start: str = "centre: flat", more: str = "") -> str:
    return f"pieces:\n  hat:\n    fabric: round\n    colours: oat\n    start: {{{start}}}\n    sections:\n      - {section}\n{more}"


def crowns(pieces: str) -> tuple[Problem, ...]:
    return results(pieces)["crowns"].problems


def test_a_flat_crown_is_told_with_its_figures() -> None:
    found = results(disc("crown: {target: body.head}"))["crowns"]
    assert (found.problems, found.figures) == ((), "hat: 6 to a round, 6.3 lie flat")


@pytest.mark.parametrize(
    ("each", "name", "words"),
    [(8, "crown-ruffles", "ruffles: 8 stitches to a round, and 6.3 lie flat"), (4, "crown-cups", "draws into a cup: 4 stitches to a round, and 6.3 lie flat")],
)
def test_too_many_ruffle_and_too_few_cup(each: int, name: str, words: str) -> None:
    problems = crowns(disc(f"crown: {{target: body.head, each: {each}}}"))
    assert [(one.name, one.severity, one.size) for one in problems] == [(name, "warning", "S, L")]
    assert problems[0].origin is not None and problems[0].origin.line_text.strip().startswith("- crown:")
    assert words in problems[0].message
    assert problems[0].hint == "write `each: 6`, or leave `each` out"
    assert crowns(disc("crown: {target: body.head, each: 6}")) == crowns(disc("crown: {target: body.head}")) == ()


def test_a_closing_crown_is_held_to_the_same_figures() -> None:
    flat, steep = (crowns(disc(f"crown: {{close: true, each: {each}}}", "ring: body.head")) for each in (7, 10))
    assert flat == () and [problem.name for problem in steep] == ["crown-ruffles"]


def test_a_single_shaped_round_says_nothing_of_flatness() -> None:
    assert results(disc("crown: {stitches: 22}", "ring: 20 cm"))["crowns"].figures == "no crowns"


def test_a_hole_is_not_drawn_shut() -> None:
    [problem] = crowns(disc("crown: {close: true, stitches: 14}", "ring: body.head"))
    assert (problem.name, problem.severity, problem.size) == ("crown-open", "warning", "S, L")
    assert "14 stitches" in problem.message
    assert crowns(disc("crown: {close: true, stitches: 12}", "ring: body.head")) == ()


def test_a_spec_without_crowns_has_none() -> None:
    assert results(disc("even: {rounds: 3}", "ring: 20 cm"))["crowns"].figures == "no crowns"


def test_the_head_passes_the_brim_of_a_hat_from_its_centre() -> None:
    hat = disc("crown: {target: %s}", more="      - even: {length: 10 cm}\n    edges: {top: brim}\nopenings:\n  - {name: brim, around: [hat.brim], passes: head, stretch: 10 %%}\n")
    assert results(hat % "body.head - 4 cm")["openings"].problems == ()
    [problem] = results(hat % "body.head - 8 cm")["openings"].problems
    assert (problem.name, problem.size) == ("opening-tight", "S, L")


def test_girth_and_height_are_measured_anew_alike() -> None:
    finished = (
        "      - even: {length: rest}\n    total: body.head * 0.4\nfinished:\n  around: {measure: finished(hat.width), wanted: body.head, of: head}\n"
        "  height: {measure: finished(hat.length), wanted: body.head * 0.4}\n"
    )
    found = results(disc("crown: {target: body.head}", more=finished))["finished-measures"]
    assert found.problems == () and "around 50.0 to 60.0 cm" in found.figures and "height 20.0 to 24.0 cm" in found.figures
