"""Tapers in rows: which rows shape, by how much, at which edge; what can't be worked."""

import re

import pytest
from tiny_specs import ONE_SIZE, THREE_SIZES, counts, one_piece, problems, told

from gaugewright.checks.rows import row_faults
from gaugewright.grading.plan import TaperPlan


def piece(start: str, *sections: str, more: str = "") -> str:
    lines = "".join(f"      - {section}\n" for section in sections)
    return f"pieces:\n  piece:\n    fabric: plain\n    colours: oat\n    start: {{{start}}}\n    sections:\n{lines}{more}"


def test_row_one_of_a_first_taper_is_even() -> None:
    found = counts(ONE_SIZE + piece("chain: 20 cm", "taper: {rows: 5, target: 28 cm}"))
    assert found == (20, 22, 24, 26, 28)


def test_each_with_a_target_gives_the_rows() -> None:
    text = ONE_SIZE + piece("chain: 20 cm", "even: {rows: 2}", "taper: {target: 32 cm, each: 4}")
    assert counts(text) == (20, 20, 24, 28, 32)


def test_each_with_a_target_goes_down_too() -> None:
    text = ONE_SIZE + piece("chain: 32 cm", "even: {rows: 2}", "taper: {target: 20 cm, each: 4}")
    assert counts(text) == (32, 32, 28, 24, 20)


@pytest.mark.parametrize(("rule", "end"), [("nearest", 32), ("up", 36), ("down", 32)])
def test_a_target_between_two_steps_is_met_by_one_of_them(rule: str, end: int) -> None:
    text = ONE_SIZE + piece("chain: 20 cm", "even: {rows: 2}", f"taper: {{target: 33 cm, each: 4, round: {rule}}}")
    assert counts(text)[-1] == end
    steps = {after - before for before, after in zip(counts(text)[1:], counts(text)[2:], strict=False)}
    assert steps == {4}


def test_each_with_an_extent_gives_the_target_and_row_one_is_even() -> None:
    assert counts(ONE_SIZE + piece("chain: 10 cm", "taper: {rows: 4, each: 2}")) == (10, 12, 14, 16)


def test_each_below_nothing_takes_stitches_away() -> None:
    assert counts(ONE_SIZE + piece("chain: 20 cm", "even: {rows: 1}", "taper: {rows: 3, each: -4}")) == (20, 16, 12, 8)
    assert counts(ONE_SIZE + piece("chain: 20 cm", "even: {rows: 1}", "taper: {rows: 3, each: -3, at: far}")) == (20, 17, 14, 11)


def test_more_taken_away_than_there_is_is_told() -> None:
    text = ONE_SIZE + piece("chain: 20 cm", "even: {rows: 1}", "taper: {rows: 10, each: -2}")
    assert told(text) == [("nothing-left", "- taper: {rows: 10, each: -2}", "M")]


def test_each_at_one_edge_is_all_at_that_edge() -> None:
    text = ONE_SIZE + piece("chain: 20 cm", "even: {rows: 1}", "taper: {target: 32 cm, each: 3, at: starting}")
    outline = one_piece(text).outline
    assert counts(text) == (20, 23, 26, 29, 32)
    assert [round(x) for x, _ in outline.starting] == [0, 0, -30, -60, -90, -120] and {x for x, _ in outline.far} == {200.0}


def test_counts_after_a_taper_of_each_and_extent_are_known() -> None:
    text = ONE_SIZE + piece("chain: 21 cm", "taper: {length: 5 cm, each: 2}", "taper: {rows: 4, target: 20 cm}", "shoulders: {neck: 9 cm}")
    found = one_piece(text)
    assert tuple(found.main.counts())[4] == 29
    assert found.main.last_count == 21  # 20 is even, and both edges keep the parity of 29
    assert found.edges["neck"].stitches == 9


def test_each_up_to_a_level_takes_the_rows_that_are_left() -> None:
    text = ONE_SIZE + "levels: {top: 12 cm}\n" + piece("chain: 20 cm", "taper: {to: top, each: 2}", "even: {length: 4 cm}")
    assert counts(text) == (20, 22, 24, 26, 28, 30, 32, 34, 36, 38, 40, 42, 42, 42, 42, 42)


def test_rows_that_follow_from_themselves_are_told() -> None:
    text = (
        ONE_SIZE + "levels: {top: 40 cm}\n"
        + piece("chain: 20 cm", "taper: {length: rest, each: 2}", "taper: {target: 30 cm, each: 2}", more="    total: 30 cm\n")
    )
    # `rest` is no extent of a taper, so the reader speaks first; a level is.
    text = text.replace("length: rest", "to: top").replace("    total: 30 cm\n", "").replace(
        "taper: {target: 30 cm, each: 2}", "taper: {target: 30 cm, each: 2}\n      - even: {to: high}"
    ).replace("levels: {top: 40 cm}", "levels: {top: 40 cm, high: 60 cm}")
    assert [problem.name for problem in problems(text)] == ["each-undecided"]


def test_an_odd_number_each_is_not_shared_between_two_edges() -> None:
    text = ONE_SIZE + piece("chain: 20 cm", "even: {rows: 1}", "taper: {target: 32 cm, each: 3}")
    assert told(text) == [("each-odd", "- taper: {target: 32 cm, each: 3}", "")]


@pytest.mark.parametrize("each", [-1, -3, 1, 5])
def test_an_odd_number_each_is_made_even_as_the_hint_says(each: int) -> None:
    text = ONE_SIZE + piece("chain: 40 cm", "even: {rows: 1}", f"taper: {{rows: 6, each: {each}}}")
    [problem] = problems(text)
    assert problem.name == "each-odd" and "1 stitches" not in problem.message
    written = re.search(r"write `(each: .*?)`", problem.hint)
    assert written and problems(text.replace(f"each: {each}", written[1])) == []


def test_each_beyond_what_an_edge_takes_is_told() -> None:
    text = ONE_SIZE + piece("chain: 20 cm", "even: {rows: 1}", "taper: {target: 60 cm, each: 8}")
    assert [problem.name for problem in problems(text)] == ["taper-too-steep"]


def test_a_taper_to_where_it_begins_has_nothing_to_shape() -> None:
    text = ONE_SIZE + piece("chain: 20 cm", "even: {rows: 1}", "taper: {target: 20.4 cm, each: 2}")
    assert [problem.name for problem in problems(text)] == ["nothing-to-shape"]


def test_a_stated_count_must_be_reached_in_twos_at_both_edges() -> None:
    text = ONE_SIZE + piece("chain: 20 cm", "even: {rows: 1}", "taper: {rows: 10, stitches: 27}")
    (problem,) = problems(text)
    assert problem.name == "steps-miss-target" and "26 or 28" in problem.hint
    assert counts(text.replace("27", "28"))[-1] == 28
    at_one = text.replace("stitches: 27", "stitches: 27, at: far")
    assert counts(at_one)[-1] == 27


def test_a_taper_that_goes_both_ways_over_the_sizes_is_told() -> None:
    text = THREE_SIZES + piece("chain: 100 cm", "even: {rows: 1}", "taper: {rows: 40, target: body.bust}")
    assert [(p.name, p.size) for p in problems(text)] == [("taper-both-ways", "S, M, L")]


@pytest.mark.parametrize(("at", "edge"), [("starting", 0), ("far", 1)])
@pytest.mark.parametrize("target", ["14 cm", "26 cm"])
def test_one_edge_is_shaped_on_right_and_wrong_side_rows(at: str, edge: int, target: str) -> None:
    text = ONE_SIZE + piece("chain: 20 cm", "even: {rows: 2}", f"taper: {{rows: 9, target: {target}, at: {at}}}")
    outline = one_piece(text).outline
    moved = (outline.starting, outline.far)[edge]
    other = (outline.far, outline.starting)[edge]
    assert {x for x, _ in other} == {other[0][0]}
    assert abs(moved[-1][0] - moved[0][0]) == pytest.approx(60)


def test_an_edge_of_stitches_is_no_place_for_a_taper() -> None:
    text = ONE_SIZE + piece("chain: 20 cm", "even: {rows: 2}", "taper: {rows: 9, target: 14 cm, at: hem}", more="    edges: {bottom: hem}\n")
    assert told(text) == [("no-such-side", "- taper: {rows: 9, target: 14 cm, at: hem}", "")]


@pytest.mark.parametrize("at", ["both", "starting", "far"])
@pytest.mark.parametrize("end", [4, 6, 8, 12, 30])
def test_a_turning_chain_that_counts_leaves_room_at_both_edges(at: str, end: int) -> None:
    text = ONE_SIZE + piece("chain: 16 cm", "even: {rows: 2}", f"taper: {{rows: 14, stitches: {end}, at: {at}}}").replace("fabric: plain", "fabric: tall")
    strip = one_piece(text).main
    assert row_faults(strip, (strip,)) == () and strip.last_count == end
    for row in strip.rows[2:]:
        assert all(run.times > 0 for run in row.runs)
        if any(run.operation.change for run in row.runs):
            assert row.runs[0].operation.kind == "turning chain" and row.runs[-1].operation.kind == "stitch"


def test_a_piece_too_narrow_for_its_shaping_is_told() -> None:
    text = ONE_SIZE + piece("chain: 9 cm", "even: {rows: 2}", "taper: {rows: 4, stitches: 1}")
    tall = text.replace("fabric: plain", "fabric: tall")
    assert [problem.name for problem in problems(text)] == ["taper-too-narrow"]  # 3 stitches can't lose one at each edge
    assert [problem.name for problem in problems(tall)] == ["taper-too-narrow"]
    assert counts(text.replace("stitches: 1}", "stitches: 3}"))[-1] == 3
    assert [problem.name for problem in problems(tall.replace("stitches: 1}", "stitches: 3}"))] == ["taper-too-narrow"]
    assert counts(tall.replace("stitches: 1}", "stitches: 5}"))[-1] == 5


def test_slip_stitches_are_not_decreased() -> None:
    text = ONE_SIZE.replace("plain: {stitch: hdc", "plain: {stitch: sl st") + piece("chain: 20 cm", "even: {rows: 2}", "taper: {rows: 9, target: 14 cm}")
    (problem,) = problems(text)
    assert problem.name == "no-such-decrease" and problem.origin is not None and "taper" in problem.origin.line_text
    assert counts(text.replace("14 cm", "26 cm"))[-1] == 26


def test_slip_stitch_rows_have_no_turning_chain() -> None:
    text = ONE_SIZE.replace("plain: {stitch: hdc", "plain: {stitch: sl st") + piece("chain: 20 cm", "even: {rows: 2}")
    assert [run.operation.kind for run in one_piece(text).main.rows[1].runs] == ["stitch"]


def test_all_sizes_share_the_structure_of_a_taper() -> None:
    text = THREE_SIZES + piece("chain: body.bust / 4", "even: {rows: 2}", "taper: {rows: 31, target: body.bust / 2}")
    from tiny_specs import graded

    plans = graded(text).plans["piece"].map(lambda plan: plan.sections[1])
    assert all(isinstance(plan, TaperPlan) and plan.sign == 1 and plan.edges == "both" for plan in plans)
    assert [plan.end for plan in plans] == [40, 51, 60]  # 25 is odd, so 50 becomes 51
