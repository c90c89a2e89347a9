"""Shaping that doesn't balance, and gathers that pucker."""

from dataclasses import replace

from checks.specs import damaged, places, problems_of, pullover, told_by, with_piece, with_plan, with_rows
from tiny_specs import HEAD, designed

from gaugewright.checks.shaping import check_gathers, check_shaping_balances, gained_and_lost
from gaugewright.grading.grade import grade
from gaugewright.grading.model import Row, Run, decrease, increase, leave, work
from gaugewright.sizing.bodies import bodies, environments


def test_gains_and_losses_are_counted_apart() -> None:
    row = Row(tuple(Run(op, times, "oat", "body") for op, times in ((increase("hdc"), 2), (work("hdc"), 5), (decrease("hdc"), 1), (leave(), 3))), "RS")
    assert gained_and_lost(row) == (2, 4)


def test_a_section_whose_count_its_rows_do_not_reach() -> None:
    design, bodies, grading = pullover()
    assert problems_of(check_shaping_balances, (design, bodies, grading)) == ()
    unshaped = with_piece(grading, "sleeve", "C", lambda piece: with_rows(piece, lambda rows: (rows[0],) * len(rows)))
    problems = problems_of(check_shaping_balances, (design, bodies, unshaped))
    assert places(problems) == [("shaping-unbalanced", "error", "C", "taper: {target: edge(bac")]
    assert "0 gained less 0 lost don't lead from 26 to 42" in problems[0].message
    assert "ends with 26 stitches, not 42" in problems[0].message


def test_a_section_that_starts_with_another_count_than_the_last_ended() -> None:
    design, bodies, grading = pullover()
    jumped = with_plan(grading, "back", "A", lambda plan: replace(plan, sections=(replace(plan.sections[0], stitches=50), *plan.sections[1:])))
    problems = problems_of(check_shaping_balances, (design, bodies, jumped))
    assert [one[:3] for one in places(problems)] == [("shaping-unbalanced", "error", "A")] * 2
    assert "it starts with 50 stitches, and there are 52" in problems[0].message


PATTERNED = HEAD + """\
  shell: {pattern: scallops, worked: joined rounds, gauge: "10 sts, 10 rows / 10 cm"}
pieces: {tube: {fabric: shell, colours: oat, start: {ring: 36 cm}, sections: [even: {rounds: 4}, even: {rounds: 3}]}}
"""


def test_a_section_may_end_where_a_stitch_pattern_has_more_stitches_for_a_row() -> None:
    design = designed(PATTERNED)
    of_bodies = bodies(design)
    grading = grade(design, environments(design, of_bodies))
    row = next(iter(grading.pieces["tube"])).main.rows[3]
    assert row.makes > row.across
    assert problems_of(check_shaping_balances, (design, of_bodies, grading)) == ()


def gathered(first: str) -> tuple[tuple[str, str, str, str], ...]:
    """The sleeve's first round exchanged for one of another kind, in size A."""
    design, bodies, grading = pullover()
    operation, times = {"halved": (decrease("hdc"), 12), "in threes": (decrease("hdc", 3), 8), "doubled": (increase("hdc"), 24), "tripled": (increase("hdc", 3), 24)}[first]
    changed = with_piece(grading, "sleeve", "A", lambda piece: with_rows(piece, lambda rows: (Row((Run(operation, times, "kelp", "tube"),), "RS"), *rows[1:])))
    return tuple(places(problems_of(check_gathers, (design, bodies, changed))))


def test_a_round_may_halve_or_double_and_no_more() -> None:
    assert gathered("halved") == gathered("doubled") == ()
    assert gathered("in threes") == gathered("tripled") == (("gather-too-strong", "error", "A", "taper: {target: edge(bac"),)


def test_the_hint_for_a_gather_works() -> None:
    steep = damaged("length: 40 cm, round: up => rounds: 2")
    gentle = damaged("length: 40 cm, round: up => rounds: 4")
    assert told_by("gathers", steep) == told_by("gathers", gentle) == ()
