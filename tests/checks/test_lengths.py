"""Total lengths, necks, and sizes that come out alike."""

from dataclasses import replace

import pytest

from checks.specs import checked, damaged, places, problems_of, pullover, told_by, with_piece, with_plan, with_rows
from gaugewright.checks.lengths import check_necks, check_total_length
from gaugewright.grading.plan import PiecePlan, ShouldersPlan


def test_a_total_is_held_to_half_a_row() -> None:
    design, bodies, grading = pullover()
    assert problems_of(check_total_length, (design, bodies, grading)) == ()
    longer = with_piece(grading, "back", "B", lambda piece: with_rows(piece, lambda rows: (*rows, rows[-1])))
    problems = problems_of(check_total_length, (design, bodies, longer))
    assert places(problems) == [("total-off-target", "error", "B", "shoulder}")]
    assert "53.0 cm long where 52.0 cm is wanted" in problems[0].message
    assert "half a row, 0.5 cm" in problems[0].message


def test_half_a_row_itself_is_within() -> None:
    text = damaged("shoulder: 52 cm => shoulder: 52.5 cm")
    assert told_by("total-length", text) == ()
    assert next(result.figures for result in checked(text) if result.name == "total-length") == "back off by up to 0.5 cm (A); front off by up to 0.5 cm (A)"


def neck_of(plan: PiecePlan, **changes: int) -> PiecePlan:
    *sections, shoulders = plan.sections
    assert isinstance(shoulders, ShouldersPlan)
    return replace(plan, sections=(*sections, replace(shoulders, **changes)))


@pytest.mark.parametrize("changes", [{"neck": 23}, {"shoulder": 13}, {"shoulder": 0, "neck": 52}])
def test_shoulders_are_equal_and_there(changes: dict[str, int]) -> None:
    design, bodies, grading = pullover()
    assert problems_of(check_necks, (design, bodies, grading)) == ()
    off = with_plan(grading, "front", "A", lambda plan: neck_of(plan, **changes))
    problems = problems_of(check_necks, (design, bodies, off))
    assert ("neck-off-centre", "error", "A", "shoulders: {neck: 24 cm}") in [(*one[:3], one[3].removeprefix("- ")) for one in places(problems)]


def test_a_neck_that_its_parity_moves_is_noted_and_half_a_stitch_is_not() -> None:
    text = damaged("neck: 24 cm => neck: 23 cm")
    problems = told_by("neck-centred", text)
    assert places(problems, text) == [("neck-parity", "note", "A, B, C", "23 cm}")] * 2
    assert "24 stitches, 24.0 cm for 23.0 cm" in problems[0].message
    assert told_by("neck-centred", damaged("neck: 24 cm => neck: 24.5 cm")) == ()
    followed = text.replace("(body.bust + ease.bust) / 2", "(body.bust + ease.bust) / 2 + 1 cm")
    assert told_by("neck-centred", followed) == ()


def test_sizes_that_start_alike_though_they_are_meant_to_differ() -> None:
    assert told_by("equal-counts") == ()
    text = damaged("hand: 20 cm => hand: 18.4 cm")
    problems = told_by("equal-counts", text)
    assert places(problems, text) == [("equal-counts", "note", "A, B", "body.hand + 4 cm}")]
    assert "22 stitches in A and B (wanted 22.0 to 22.4 cm)" in problems[0].message


def test_a_start_that_no_size_changes_is_not_noted() -> None:
    assert told_by("equal-counts", damaged("ring: body.hand + 4 cm => ring: 24 cm")) == ()
