"""Closed centres and crowns: how many stitches a round adds, where a crown ends, and what can't be worked."""

import pytest
from tiny_specs import ONE_SIZE, THREE_SIZES, counts, graded, one_piece, problems, told

from gaugewright.checks.rows import row_faults
from gaugewright.gauge.model import Gauge
from gaugewright.grading.crowns import crown_counts, drawn_together, flat_stitches
from gaugewright.grading.model import CentreStart
from gaugewright.grading.plan import SpreadPlan
from gaugewright.problem_names import PROBLEM_NAMES


def round_piece(start: str, *sections: str, fabric: str = "round", more: str = "") -> str:
    lines = "".join(f"      - {section}\n" for section in sections)
    return f"pieces:\n  piece:\n    fabric: {fabric}\n    colours: oat\n    start: {{{start}}}\n    sections:\n{lines}{more}"


def test_a_disc_of_square_stitches() -> None:
    piece = one_piece(ONE_SIZE + round_piece("centre: flat", "crown: {target: 40 cm}"))
    assert piece.main.start == CentreStart(6)
    assert tuple(piece.main.counts()) == (6, 12, 18, 24, 30, 36, 40)
    assert row_faults(piece.main, piece.strips) == ()


def test_a_piece_from_a_centre_is_as_wide_as_its_last_round_and_as_long_as_its_radius_and_sides() -> None:
    piece = one_piece(ONE_SIZE + round_piece("centre: flat", "crown: {target: 40 cm}", "even: {rounds: 5}"))
    assert (piece.finished["width"], piece.finished["centre"], piece.finished["length"]) == (400.0, 60.0, 120.0)
    assert piece.edges["edge"].stitches == 40


def test_the_rest_of_a_total_lies_after_the_crown() -> None:
    text = THREE_SIZES + round_piece("centre: flat", "crown: {target: body.bust / 2}", "even: {length: rest}", more="    total: body.bust * 0.3\n")
    made = {size: counts(text, size=size) for size in "SML"}
    assert {size: (len(rows), rows[-1]) for size, rows in made.items()} == {"S": (24, 40), "M": (30, 50), "L": (36, 60)}
    assert made["S"][6:8] == (40, 40) and made["L"][8:11] == (54, 60, 60)


def test_tall_stitches_take_more_to_a_round() -> None:
    assert counts(ONE_SIZE + round_piece("centre: flat", "crown: {stitches: 40}", fabric="tall"))[:3] == (13, 26, 39)


def test_rounds_add_what_the_centre_holds_where_that_lies_flat() -> None:
    assert counts(ONE_SIZE + round_piece("centre: 12", "crown: {stitches: 48}", fabric="tall")) == (12, 24, 36, 48)
    assert counts(ONE_SIZE + round_piece("centre: 3", "crown: {stitches: 24}"))[:4] == (3, 6, 12, 18)


def test_what_each_round_adds_can_be_stated_and_is_what_the_centre_holds() -> None:
    assert counts(ONE_SIZE + round_piece("centre: flat", "crown: {stitches: 20, each: 5}")) == (5, 10, 15, 20)
    assert counts(ONE_SIZE + round_piece("centre: 4", "crown: {stitches: 30, each: 10}")) == (4, 8, 16, 26, 30)


def test_a_crown_that_has_nothing_to_add_is_one_even_round() -> None:
    assert counts(ONE_SIZE + round_piece("ring: 20 cm", "even: {rounds: 2}", "crown: {stitches: 20}", "even: {rounds: 1}")) == (20,) * 4
    assert counts(ONE_SIZE + round_piece("centre: 6", "crown: {stitches: 6}")) == (6,)


def test_a_closed_end_takes_away_the_odd_stitches_first() -> None:
    made = counts(ONE_SIZE + round_piece("ring: 40 cm", "even: {rounds: 2}", "crown: {close: true}"))
    assert made == (40, 40, 36, 30, 24, 18, 12, 6)
    assert counts(ONE_SIZE + round_piece("ring: 40 cm", "crown: {close: true, each: 8, stitches: 4}")) == (40, 32, 24, 16, 8, 4)


def test_tall_stitches_are_halved_to_a_handful() -> None:
    assert drawn_together(13) == 7
    assert counts(ONE_SIZE + round_piece("ring: 39 cm", "crown: {close: true}", fabric="tall"))[-3:] == (27, 14, 7)


def test_a_disc_and_the_closed_end_that_mirrors_it_have_the_same_counts() -> None:
    assert crown_counts(6, 44, 6) == (12, 18, 24, 30, 36, 42, 44)
    assert crown_counts(44, 6, 6) == (42, 36, 30, 24, 18, 12, 6)


def test_in_a_piece_with_a_crown_no_turning_chain_is_a_stitch() -> None:
    """Twelve double crochet become twenty-four: the first is increased like the others."""
    plan = graded(ONE_SIZE + round_piece("centre: 12", "crown: {stitches: 24}", "even: {rounds: 1}", fabric="tall")).plans["piece"]["M"]
    assert [section.cloth.counts for section in plan.sections] == [False, False]
    disc = plan.sections[0]
    assert isinstance(disc, SpreadPlan) and disc.counts == (12, 24)
    assert graded(ONE_SIZE + round_piece("ring: 20 cm", "even: {rounds: 2}", fabric="tall")).plans["piece"]["M"].sections[0].cloth.counts


def test_changes_do_not_stack_in_neighbouring_rounds() -> None:
    plan = graded(ONE_SIZE + round_piece("centre: 6", "crown: {stitches: 60}")).plans["piece"]["M"].sections[0]
    assert isinstance(plan, SpreadPlan)
    shaped = [spread for spread in plan.spreads if spread is not None][2:]
    places = [{place / spread.stitches for place in spread.positions()} for spread in shaped]
    assert all(not here & before for here, before in zip(places[1:], places, strict=False))


@pytest.mark.parametrize(
    ("sections", "start", "name", "line"),
    [
        (("even: {rows: 2}", "crown: {stitches: 30}"), "chain: 20 cm", "crown-in-rows", "- crown: {stitches: 30}"),
        (("crown: {close: true}", "even: {rounds: 2}"), "ring: 40 cm", "close-not-last", "- crown: {close: true}"),
        (("crown: {target: 4 cm}",), "centre: 6", "crown-too-small", "- crown: {target: 4 cm}"),
        (("crown: {close: true}",), "centre: 6", "nothing-to-shape", "- crown: {close: true}"),
        (("taper: {to: 5 cm, each: -1}", "crown: {close: true}"), "ring: 40 cm", "each-undecided", "- crown: {close: true}"),
    ],
)
def test_what_cannot_be_worked_is_told_at_its_place(sections: tuple[str, ...], start: str, name: str, line: str) -> None:
    text = ONE_SIZE + round_piece(start, *sections)
    assert [(found, where) for found, where, _ in told(text)] == [(name, line)]
    assert name in PROBLEM_NAMES and all(problem.hint for problem in problems(text))


def test_the_hint_for_a_small_crown_works() -> None:
    [problem] = problems(ONE_SIZE + round_piece("centre: 6", "crown: {target: 4 cm}"))
    assert problem.hint == "make it at least 6.0 cm around, or start with fewer stitches"
    assert counts(ONE_SIZE + round_piece("centre: 6", "crown: {target: 6.0 cm}")) == (6,)
    assert counts(ONE_SIZE + round_piece("centre: 3", "crown: {target: 4 cm}")) == (3, 4)


def test_a_crown_keeps_to_its_fabrics_counts() -> None:
    text = ONE_SIZE.replace("worked: joined rounds, gauge", "worked: joined rounds, multiple: {of: 4}, gauge")
    assert counts(text + round_piece("centre: 6", "crown: {target: 41 cm}", "even: {rounds: 1}"))[-1] == 40


def test_the_gauge_of_a_stitch_says_what_lies_flat() -> None:
    assert f"{flat_stitches(Gauge(18, 205.0, 14, 195.0)):.2f}" == "7.68"
