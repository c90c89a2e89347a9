"""What waits for what: chapters, and seams that can't be sewn yet."""

from pathlib import Path

from checks.specs import checked, told_by
from tiny_specs import designed

from gaugewright.grading.waiting import in_working_order, seams_too_early

CASE = (Path(__file__).parents[1] / "cases" / "hooded-cardigan" / "spec.yaml").read_text(encoding="utf-8")
FOLD = "  - {join: hood.top, to: hood.top, method: whip}\n"


def test_a_piece_is_told_after_those_it_is_made_on() -> None:
    first = "  hem_rib: {fabric: rib, start: {chain: 6 cm, join: late.hem}}\n"
    late = "  late: {fabric: body, start: {chain: 40 cm}, sections: [even: {length: 20 cm}], edges: {bottom: hem}}\n"
    text = CASE.replace("pieces:\n", "pieces:\n" + first).replace("seams:\n", late + "seams:\n")
    order = in_working_order(designed(text))
    assert order[:2] == ("late", "hem_rib") and order.index("hood") > order.index("left_front") > order.index("back")
    assert in_working_order(designed(CASE))[-3:] == ("front_band", "stand_collar", "folded_collar")


def test_a_seam_before_its_piece_can_be_made_is_told_and_the_hint_works() -> None:
    assert seams_too_early(designed(CASE)) == ()
    assert next(result.figures for result in checked(CASE) if result.name == "seam-order") == "6 seams in the order they are sewn"
    text = CASE.replace(FOLD, "").replace("seams:\n", "seams:\n" + FOLD)
    [problem] = told_by("seam-order", text)
    assert (problem.name, problem.severity) == ("seam-too-early", "error")
    assert problem.origin is not None and "hood.top" in problem.origin.line_text
    assert "put this seam after that of jacket_back.shoulder" in problem.hint
    after = "  - {join: jacket_back.shoulder, to: left_front.shoulder}\n"
    assert told_by("seam-order", text.replace(FOLD, "").replace(after, after + FOLD)) == ()


def test_a_seam_that_its_own_piece_waits_for_is_told() -> None:
    text = CASE.replace("{join: jacket_back.shoulder, to: left_front.shoulder}", "{join: jacket_back.shoulder, to: [left_front.shoulder, hood.top]}")
    assert [problem.name for problem in told_by("seam-order", text)] == ["seam-too-early"]
