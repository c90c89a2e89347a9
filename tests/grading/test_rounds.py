"""Tapers in rounds: in pairs, spread, so many each; spirals; turning chains that count."""

import pytest
from tiny_specs import ONE_SIZE, THREE_SIZES, counts, graded, one_piece, problems, told

from gaugewright.checks.rows import row_faults
from gaugewright.grading.plan import SpreadPlan, TaperPlan


def tube(start: str, *sections: str, fabric: str = "round") -> str:
    lines = "".join(f"      - {section}\n" for section in sections)
    return f"pieces:\n  piece:\n    fabric: {fabric}\n    colours: oat\n    start: {{ring: {start}}}\n    sections:\n{lines}"


def plan_of(text: str, index: int) -> object:
    return graded(text).plans["piece"]["M"].sections[index]


def test_a_sleeve_tapers_in_pairs_and_keeps_its_parity() -> None:
    text = ONE_SIZE + tube("21 cm", "even: {rounds: 2}", "taper: {rounds: 20, target: 30 cm}")
    plan = plan_of(text, 1)
    assert isinstance(plan, TaperPlan) and plan.edges == "pairs" and plan.end == 31


def test_a_balloon_is_spread() -> None:
    plan = plan_of(ONE_SIZE + tube("20 cm", "even: {rounds: 2}", "taper: {rounds: 2, target: 41 cm}"), 1)
    assert isinstance(plan, SpreadPlan) and plan.end == 41


@pytest.mark.parametrize("target", ["24 cm", "39 cm"])
def test_round_one_is_even_however_it_is_shaped(target: str) -> None:
    assert counts(ONE_SIZE + tube("20 cm", f"taper: {{rounds: 3, target: {target}}}"))[0] == 20


def test_only_one_round_has_no_round_to_shape() -> None:
    text = ONE_SIZE + tube("20 cm", "taper: {rounds: 1, target: 24 cm}")
    assert [problem.name for problem in problems(text)] == ["taper-too-steep"]


def test_a_spread_taper_goes_one_way_in_all_sizes() -> None:
    text = THREE_SIZES + tube("100 cm", "even: {rounds: 1}", "taper: {rounds: 2, target: body.bust}")
    assert told(text) == [("taper-both-ways", "- taper: {rounds: 2, target: body.bust}", "S, M, L")]


def test_so_many_each_round_with_a_partial_last_one() -> None:
    assert counts(ONE_SIZE + tube("6 cm", "taper: {target: 20 cm, each: 6}")) == (6, 12, 18, 20)


def test_so_many_each_round_over_rounds() -> None:
    assert counts(ONE_SIZE + tube("8 cm", "taper: {rounds: 4, each: 8}")) == (8, 16, 24, 32)


def test_two_each_are_a_pair_and_one_each_is_spread() -> None:
    assert isinstance(plan_of(ONE_SIZE + tube("20 cm", "taper: {rounds: 4, each: 2}"), 0), TaperPlan)
    text = ONE_SIZE + tube("20 cm", "taper: {rounds: 4, each: 1}")
    assert isinstance(plan_of(text, 0), SpreadPlan) and counts(text) == (20, 21, 22, 23)


def test_more_each_than_a_round_holds_is_told() -> None:
    text = ONE_SIZE + tube("6 cm", "taper: {rounds: 3, each: 9}")
    assert [problem.name for problem in problems(text)] == ["taper-too-steep"]


def test_pairs_give_way_where_the_fabric_forbids_their_parity() -> None:
    text = ONE_SIZE.replace("worked: joined rounds", "worked: joined rounds, parity: even").replace(
        "plain: {stitch: hdc", "plain: {stitch: sc"
    ) + tube("21 cm, fabric: plain", "even: {rounds: 2, fabric: plain}", "taper: {rounds: 20, target: 30 cm}")
    assert isinstance(plan_of(text, 1), SpreadPlan) and counts(text)[-1] == 30


def test_a_stated_odd_change_is_spread() -> None:
    text = ONE_SIZE + tube("20 cm", "even: {rounds: 2}", "taper: {rounds: 20, stitches: 25}")
    assert isinstance(plan_of(text, 1), SpreadPlan) and counts(text)[-1] == 25


@pytest.mark.parametrize("worked", ["joined rounds", "turned rounds", "spiral rounds"])
@pytest.mark.parametrize(("start", "end", "rounds"), [(20, 31, 3), (31, 20, 3), (10, 37, 2), (20, 24, 9), (2, 3, 1), (37, 10, 2)])
def test_rounds_follow_where_the_turning_chain_counts(worked: str, start: int, end: int, rounds: int) -> None:
    text = ONE_SIZE.replace("round: {stitch: hdc, worked: joined rounds", f"round: {{stitch: dc, worked: {worked}") + tube(
        f"{start} cm", "even: {rounds: 2}", f"taper: {{rounds: {rounds}, target: {end} cm}}", "even: {rounds: 1}"
    )
    strip = one_piece(text).main
    assert row_faults(strip, (strip,)) == () and strip.last_count == end
    chains = [run for row in strip.rows for run in row.runs if run.operation.kind == "turning chain"]
    assert len(chains) == (0 if worked == "spiral rounds" else len(strip.rows))


def test_a_counted_chain_doubles_less() -> None:
    text = ONE_SIZE.replace("round: {stitch: hdc", "round: {stitch: dc") + tube("10 cm", "even: {rounds: 2}", "taper: {rounds: 1, target: 20 cm}")
    assert [problem.name for problem in problems(text)] == ["taper-too-steep"]
    assert counts(text.replace("20 cm}", "19 cm}"))[-1] == 19


def test_sides_of_rounds() -> None:
    text = ONE_SIZE + tube("10 cm", "even: {rounds: 3}")
    assert [row.side for row in one_piece(text).main.rows] == ["RS", "RS", "RS"]
    turned = text.replace("joined rounds", "turned rounds")
    assert [row.side for row in one_piece(turned).main.rows] == ["RS", "WS", "RS"]


def test_changes_of_two_shaped_rounds_do_not_stack_over_an_even_one() -> None:
    plan = plan_of(ONE_SIZE + tube("10 cm", "taper: {rounds: 3, target: 40 cm, at: both}"), 0)
    assert isinstance(plan, SpreadPlan)
    spreads = [spread for spread in plan.spreads if spread is not None]
    assert plan.spreads[0] is None and len(spreads) == 2
