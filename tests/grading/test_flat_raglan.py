"""Raglan edges of flat pieces: what they come to in one size, and what they are told when they can't be worked."""

from typing import get_args

import pytest
from tiny_specs import ONE_SIZE, graded, one_piece, problems, told

from gaugewright.grading.flat_raglan import raglan_profile
from gaugewright.grading.plan import DividedPlan, ProfilePlan
from gaugewright.grading.shape_plans import gone
from gaugewright.tolerances import STRAY_STITCHES, UNSEEN_STITCHES
from gaugewright.vocabulary import Schedules

LEVELS = "levels: {top: 40 cm, underarm: 20 cm}\n"


def piece(sections: str, chain: str = "40 cm", fabric: str = "plain", edges: str = "{both: [side, underarm, raglan]}") -> str:
    """A piece of these sections, 1 cm to a stitch and a row."""
    return ONE_SIZE + LEVELS + (
        f"pieces:\n  piece:\n    fabric: {fabric}\n    colours: oat\n    start: {{chain: {chain}}}\n"
        f"    sections: [even: {{to: underarm}}, {sections}]\n    edges: {edges}\n"
    )


RAGLAN = "raglan_edge: {to: top, target: 12 cm, block: 3 cm}"


def test_the_block_goes_on_the_first_row_and_the_rest_in_one_line() -> None:
    plan = graded(piece(RAGLAN)).plans["piece"]["M"].sections[1]
    assert isinstance(plan, ProfilePlan) and plan.starting == plan.far
    ((name, profile),) = plan.starting
    assert (name, plan.rows, plan.end, gone(plan.starting)) == ("raglan", 20, 12, 14)
    assert profile.steps[0] == (1, 3, "leave")
    line = [abs(taken - 3 - 11 * (row - 1) / 19) for row, taken in enumerate(profile.after(), start=1)]
    assert max(line) <= STRAY_STITCHES + UNSEEN_STITCHES


def test_an_inch_is_left_at_the_underarm_unless_stated_and_nothing_where_it_is_none() -> None:
    for block, first in (("", (1, 3, "leave")), (", block: 0 cm", (2, 1, "decrease"))):
        plan = graded(piece(f"raglan_edge: {{to: top, target: 20 cm{block}}}")).plans["piece"]["M"].sections[1]
        assert isinstance(plan, ProfilePlan)
        assert plan.starting[0].profile.steps[0] == first
        assert plan.end == 20


def test_without_a_block_the_line_has_all_rows() -> None:
    assert [step.row for step in raglan_profile(5, 5, 0).steps] == [1, 2, 3, 4, 5]


def test_a_convention_of_which_gaps_come_first_is_kept() -> None:
    rows = {habit: [step.row for step in raglan_profile(4, 6, 0, habit).steps] for habit in get_args(Schedules)}
    assert rows == {"straightest": [1, 2, 4, 5], "shorter gap first": [1, 2, 4, 6], "longer gap first": [2, 4, 5, 6]}


def test_the_line_goes_on_beside_a_lower_neck_until_two_stitches_stay() -> None:
    found = graded(piece(f"{RAGLAN}, neck: {{shape: round, depth: 8 cm}}"))
    below, divided = found.plans["piece"]["M"].sections[1:]
    assert isinstance(below, ProfilePlan) and isinstance(divided, DividedPlan)
    whole = graded(piece(RAGLAN)).plans["piece"]["M"].sections[1]
    assert isinstance(whole, ProfilePlan)
    rows = [*(s.row for s in below.starting[0].profile.steps), *(s.row + below.rows for s in divided.outer[0].profile.steps)]
    assert rows == [step.row for step in whole.starting[0].profile.steps]
    assert (divided.side_end, divided.neck + 4) == (2, 12)
    made = found.pieces["piece"]["M"]
    assert made.edges["raglan"].rows == 20
    assert made.edges["raglan"].length == pytest.approx(one_piece(piece(RAGLAN)).edges["raglan"].length)
    assert "shoulder" not in made.edges
    assert (made.edges["neck"].rows, made.edges["neck"].above, made.edges["neck"].stitches) == (16, 2, divided.centre + 4)


def test_a_half_front_has_its_line_at_one_edge_and_its_neck_at_the_other() -> None:
    text = piece(
        "raglan_edge: {to: top, target: 6 cm, block: 3 cm, at: raglan}, neck_edge: {shape: v, depth: 12 cm, at: front}", "20 cm",
        edges="{starting: [side, underarm, raglan], far: [front]}",
    )
    made = one_piece(text)
    assert made.main.last_count == 2
    assert (made.edges["raglan"].rows, made.edges["front"].rows, made.edges["neck"].rows, made.edges["neck"].above) == (20, 28, 12, 2)
    assert made.edges["neck"].stitches == 2


@pytest.mark.parametrize(
    ("sections", "chain", "name"),
    [
        ("raglan_edge: {to: top, target: 40 cm}", "40 cm", "raglan-takes-nothing"),
        ("raglan_edge: {to: top, target: 30 cm, block: 5 cm}", "40 cm", "raglan-block-too-wide"),
        ("raglan_edge: {to: top, target: 10 cm, block: 2 cm}", "100 cm", "raglan-too-steep"),
        ("raglan_edge: {to: top, target: 4 cm, block: 3 cm}, neck: {shape: round, depth: 6 cm}", "40 cm", "raglan-neck-narrow"),
        (f"{RAGLAN}, neck: {{shape: round, width: 8 cm, depth: 6 cm}}", "40 cm", "raglan-shoulder"),
        (f"{RAGLAN}, neck: {{shape: round, depth: 6 cm, slope: 2 cm}}", "40 cm", "raglan-shoulder"),
        (f"{RAGLAN}, shoulders: {{neck: 8 cm}}", "40 cm", "raglan-shoulder"),
        (f"{RAGLAN}, even: {{length: 8 cm}}", "40 cm", "shoulders-not-last"),
        (f"{RAGLAN}, neck: {{shape: round, depth: 20 cm}}", "40 cm", "neck-too-deep"),
        ("even: {to: top}, neck: {shape: round, depth: 6 cm}", "40 cm", "missing-key"),
        ("raglan_edge: {length: 0.2 cm, target: 30 cm}", "40 cm", "too-short"),
    ],
)
def test_what_cannot_be_worked_is_told_where_it_stands(sections: str, chain: str, name: str) -> None:
    found = problems(piece(sections, chain))
    assert [problem.name for problem in found] == [name]
    assert all(problem.origin is not None and problem.origin.line_text.strip().startswith("sections:") for problem in found)


@pytest.mark.parametrize(
    ("asked", "chain", "followed"),
    [
        ("to: top, target: 10 cm, block: 2 cm", "100 cm", ("at least 23.0 cm deep", "length: 23.0 cm, target: 10 cm, block: 2 cm")),
        ("to: top, target: 10 cm, block: 2 cm", "100 cm", ("`target` at least 20.0 cm", "to: top, target: 20.0 cm, block: 2 cm")),
        ("to: top, target: 30 cm, block: 5 cm", "40 cm", ("`block` at most 4.0 cm", "to: top, target: 30 cm, block: 4.0 cm")),
        ("to: top, target: 40 cm, block: 3 cm", "40 cm", ("`target` at most 32.0 cm", "to: top, target: 32.0 cm, block: 3 cm")),
    ],
)
def test_the_hint_works_when_it_is_followed(asked: str, chain: str, followed: tuple[str, str]) -> None:
    (problem,) = problems(piece(f"raglan_edge: {{{asked}}}", chain))
    hint, instead = followed
    assert hint in problem.hint
    assert problems(piece(f"raglan_edge: {{{instead}}}", chain)) == []


def test_a_neck_too_narrow_says_the_width_that_leaves_one() -> None:
    (problem,) = problems(piece("raglan_edge: {to: top, target: 4 cm, block: 3 cm}, neck: {shape: round, depth: 6 cm}"))
    assert problem.hint == "make `target` at least 6.0 cm"
    assert problems(piece("raglan_edge: {to: top, target: 6 cm, block: 3 cm}, neck: {shape: round, depth: 6 cm}")) == []


def test_a_raglan_edge_of_a_tube_or_at_one_edge_below_a_neck_is_refused() -> None:
    tube = piece(RAGLAN, fabric="round").replace("chain", "ring").replace("    edges: {both: [side, underarm, raglan]}\n", "")
    assert [name for name, _, _ in told(tube)] == ["edges-in-rounds"]
    one = piece("raglan_edge: {to: top, target: 12 cm, at: raglan}, neck: {shape: round, depth: 6 cm}", edges="{starting: [side, underarm, raglan], far: [front]}")
    assert [name for name, _, _ in told(one)] == ["no-such-side"]
    edge = piece("raglan_edge: {to: top, target: 12 cm}, neck_edge: {shape: round, depth: 6 cm, at: starting}")
    assert [name for name, _, _ in told(edge)] == ["no-such-side"]


def test_thick_yarn_that_takes_two_at_a_time_leaves_more_at_the_neck() -> None:
    plan = graded(piece("raglan_edge: {to: top, target: 24 cm, block: 0 cm}, neck: {shape: round, depth: 6 cm}", "60 cm", "tall")).plans["piece"]["M"]
    divided = plan.sections[-1]
    assert isinstance(divided, DividedPlan)
    assert max(step.stitches for step in divided.outer[0].profile.steps) == 2
    assert divided.side_end == 7  # a decrease of two needs nine where a turning chain counts
