"""Openings measured anew from the rows, pairs that fit two hands, opened tubes taken whole, slippers' cautions."""

from dataclasses import replace

import pytest
from tiny_specs import HEAD, designed

from gaugewright.checks.crowns import check_crowns
from gaugewright.checks.model import Subject
from gaugewright.checks.remeasure import subject_of
from gaugewright.checks.rows import check_rows_follow
from gaugewright.checks.slits import check_pairs, holes_in
from gaugewright.checks.wearing import check_openings
from gaugewright.grading.grade import Grading, grade
from gaugewright.grading.model import GradedPiece, Row, Run, bridge, work
from gaugewright.sizing.bodies import bodies, environments

SIZES = "sizes: {own: {S: {hand: 17 cm}, L: {hand: 22 cm}}}\n"
MITTEN = """\
pieces:
  hand:
    fabric: round
    colours: oat
    start: {ring: body.hand}
    sections: [even: {rounds: 5}, opening: {edge: thumb, width: 4 cm, at: start}, even: {rounds: 5}, taper: {rounds: 3, each: -4, at: sides}]
  twin: {like: hand, mirrored: true}
  thumb: {make: 2, fabric: round, colours: oat, start: {pick_up: hand.thumb}, sections: [even: {rounds: 4}]}
openings: [{name: cuff, around: [hand.bottom], passes: hand, stretch: 10 %}, {name: thumb, around: [hand.thumb], passes: hand, stretch: 10 %}]
"""
SHOE = """\
pieces:
  shoe: {fabric: round, colours: oat, start: {ring: body.hand}, sections: [even: {rounds: 5}, open: {leave: 7 cm}]}
  heel: {fabric: plain, colours: oat, start: {go_on: shoe.sole}, sections: [even: {rows: 6}]}
"""


def subject(pieces: str, of: str = "", damage: "object" = None) -> Subject:
    """The spec graded; one piece of every size damaged."""
    design = designed(HEAD + SIZES + pieces)
    of_bodies = bodies(design)
    grading = grade(design, environments(design, of_bodies))
    damaged = {key: sized.map(damage) if key == of else sized for key, sized in grading.pieces.items()}  # type: ignore[arg-type]
    return subject_of(design, of_bodies, Grading(grading.plans, damaged, grading.environments))


def test_the_edge_round_an_opening_is_the_same_measured_anew() -> None:
    found = subject(MITTEN)
    for size in found.sizes:
        assert found.remade["hand"][size].edges["thumb"] == pytest.approx(found.grading.pieces["hand"][size].edges["thumb"].length)


def test_stitches_passed_over_and_chains_are_read_from_the_row() -> None:
    row = Row((Run(work("sc"), 3, "oat", "round"), Run(bridge(), 5, "oat", "round"), Run(work("sc"), 4, "oat", "round")), "RS")
    assert holes_in(row) == [(3, 8)] and row.uses == row.makes


def test_an_opening_that_no_hand_passes_is_told() -> None:
    [problem] = check_openings(subject(MITTEN)).problems
    assert (problem.name, problem.size) == ("opening-tight", "S, L")
    assert problem.origin is not None and problem.message.startswith("thumb doesn't pass the hand")


def test_a_pair_made_alike_fits_one_hand_only() -> None:
    assert check_pairs(subject(MITTEN)).problems == ()
    [problem] = check_pairs(subject(MITTEN.replace("  hand:\n", "  hand:\n    make: 2\n").replace("  twin: {like: hand, mirrored: true}\n", ""))).problems
    assert (problem.name, problem.severity) == ("pair-alike", "warning")
    round_tip = MITTEN.replace("  hand:\n", "  hand:\n    make: 2\n").replace("taper: {rounds: 3, each: -4, at: sides}", "crown: {close: true}")
    assert check_pairs(subject(round_tip)).problems == ()


def test_a_tip_drawn_together_over_too_many_stitches_is_told() -> None:
    wide = MITTEN.replace("taper: {rounds: 3, each: -4, at: sides}", "taper: {rounds: 1, each: -4, at: sides, close: true}")
    assert [problem.name for problem in check_crowns(subject(wide)).problems] == ["crown-open", "crown-open"]
    assert check_crowns(subject(MITTEN.replace("taper: {rounds: 3, each: -4", "taper: {rounds: 3, each: -4, close: true"))).problems == ()


def test_a_heel_must_take_all_that_the_instep_leaves() -> None:
    def narrower(piece: GradedPiece) -> GradedPiece:
        start = replace(piece.main.start, left=piece.main.start.left + 1)  # type: ignore[union-attr,type-var]
        return replace(piece, strips=(replace(piece.main, start=start),))

    assert check_rows_follow(subject(SHOE)).problems == ()
    [problem] = check_rows_follow(subject(SHOE, "heel", narrower)).problems
    assert problem.name == "rows-do-not-follow" and "the instep take" in problem.message
