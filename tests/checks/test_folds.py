"""Edges folded in half and sewn to themselves."""

from pathlib import Path

import pytest

from checks.specs import checked, damaged, places, told_by

CASE = (Path(__file__).parents[1] / "cases" / "folded-edges" / "spec.yaml").read_text(encoding="utf-8")



def figures(text: str) -> str:
    return next(result.figures for result in checked(text) if result.name == "folds")


def test_rows_of_stitches_and_even_row_ends_meet() -> None:
    assert told_by("folds", CASE) == ()
    for edge in ("hood.top", "slipper.heel", "strip.crown", "bag.base", "back.neck"):
        assert f"{edge}: halves up to 0.0 cm apart" in figures(CASE)


def test_without_a_fold_there_is_nothing_to_check() -> None:
    assert figures(damaged()) == "no edge is folded"


def test_two_sides_of_one_name_are_sewn_to_each_other_and_not_folded() -> None:
    text = CASE.replace("join: hood.top, to: hood.top", "join: hood.face, to: hood.face")
    assert "hood" not in figures(text) and told_by("seam-pairs", text) == ()


def test_row_ends_shaped_at_one_end_only_do_not_meet() -> None:
    sloped = "sections: [even: {length: 20 cm}, taper: {length: 14 cm, target: 4 cm}], edges: {starting: [face], far: [crown]}"
    text = CASE.replace("sections: [even: {length: body.bust / 2}], edges: {starting: [face], far: [crown]}", sloped)
    problems = told_by("folds", text)
    assert places(problems, CASE)[0][:3] == ("fold-uneven", "error", "S, L")
    assert "strip.crown is folded in half" in problems[0].message
    followed = text.replace("even: {length: 20 cm}, taper: {length: 14 cm, target: 4 cm}", "taper: {length: 17 cm, target: 10 cm}, taper: {length: 17 cm, target: 20 cm}")
    assert told_by("folds", followed) == ()


@pytest.mark.parametrize("edge", ["right_front.neck"])
def test_half_a_neck_is_not_alike_from_both_ends(edge: str) -> None:
    text = CASE.replace("join: back.neck, to: back.neck", f"join: {edge}, to: {edge}")
    assert [problem.name for problem in told_by("folds", text)] == ["fold-uneven"]
