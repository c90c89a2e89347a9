"""Openings within a piece, tips shaped at both sides, tubes opened at their end: their rows, and what can't be worked."""

import pytest
from tiny_specs import ONE_SIZE, THREE_SIZES, counts, graded, one_piece, problems, row_text, told

from gaugewright.grading.plan import TaperPlan

TUBE = """pieces:
  hand:
    fabric: round
    colours: oat
    start: {ring: 20 cm}
    sections: [even: {rounds: 4}, OPENING, even: {rounds: 5}, TIP]
  thumb: {fabric: round, colours: oat, start: {pick_up: hand.thumb}, sections: [even: {rounds: 3}]}
"""
OPENING, TIP = "opening: {edge: thumb, width: 5 cm, at: start}", "taper: {rounds: 3, each: -4, at: sides}"
HAND = TUBE.replace("OPENING", OPENING).replace("TIP", TIP)


@pytest.mark.parametrize(("place", "row"), [
    ("at: start", "RS oat: ch(0) 1 hdc 5 ch 14 hdc = 20"),
    ("at: start, inset: 3 cm", "RS oat: ch(0) 3 hdc 5 ch 12 hdc = 20"),
    ("at: end", "RS oat: ch(0) 14 hdc 5 ch 1 hdc = 20"),
    ("at: middle", "RS oat: ch(0) 7 hdc 5 ch 8 hdc = 20"),
])
def test_an_opening_lies_where_it_is_put(place: str, row: str) -> None:
    hand = one_piece(ONE_SIZE + TUBE.replace("OPENING", f"opening: {{edge: thumb, width: 5 cm, {place}}}").replace("TIP", TIP), "hand")
    assert row_text(hand.main.rows[4]) == row


def test_a_mirrored_twin_has_it_at_the_other_end() -> None:
    grading = graded(ONE_SIZE + HAND + "  twin: {like: hand, mirrored: true}\n")
    hand, twin = (next(iter(grading.pieces[key])).main for key in ("hand", "twin"))
    (chain, *runs), (other_chain, *mirrored) = hand.rows[4].runs, twin.rows[4].runs
    assert chain == other_chain and runs[::-1] == mirrored
    assert hand.rows[:4] + hand.rows[5:] == twin.rows[:4] + twin.rows[5:]


def test_its_edge_runs_along_both_sides_and_up_the_row_at_both_ends() -> None:
    edge = one_piece(ONE_SIZE + HAND, "hand").edges["thumb"]
    assert (edge.length, edge.stitches, edge.chains) == (2 * 50.0 + 2 * 10.0, 12, 5)


def test_a_thumb_has_a_stitch_in_each_of_both_sides_and_corners() -> None:
    assert counts(ONE_SIZE + HAND, "thumb") == (12, 12, 12)


def test_a_row_worked_back_comes_to_it_from_the_other_end() -> None:
    flat = "pieces:\n  piece: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {rows: ROWS}, opening: {edge: pocket, width: 6 cm, at: end, inset: 3 cm}, even: {rows: 4}]}\n"
    forth, back = (one_piece(ONE_SIZE + flat.replace("ROWS", str(rows))).main.rows[rows] for rows in (4, 5))
    plain = [[run.times for run in row.runs if run.operation.kind in ("stitch", "chain")] for row in (forth, back)]
    assert plain[0] == plain[1][::-1] and (forth.side, back.side) == ("RS", "WS")


def test_a_tip_loses_four_a_round_two_at_each_side() -> None:
    hand = one_piece(ONE_SIZE + HAND, "hand").main
    assert tuple(hand.counts())[-4:] == (20, 16, 12, 8)
    assert row_text(hand.rows[-3]) == "RS oat: ch(0) dec 6 hdc 2 dec 6 hdc dec = 16"


def test_an_odd_round_keeps_the_larger_half_on_one_side_of_turned_work() -> None:
    turned = '  turned: {stitch: hdc, worked: turned rounds, gauge: "10 sts, 10 rows / 10 cm"}\n  tall:'
    text = ONE_SIZE.replace("  tall:", turned) + "pieces:\n  piece: {fabric: turned, colours: oat, start: {ring: 21 cm}, sections: [even: {rounds: 3}, taper: {rounds: 2, each: -4, at: sides}]}\n"
    back, forth = (row_text(row) for row in one_piece(text).main.rows[3:])
    assert (back, forth) == ("WS oat: ch(0) dec 6 hdc 2 dec 7 hdc dec = 17", "RS oat: ch(0) dec 5 hdc 2 dec 4 hdc dec = 13")


def test_its_decreases_come_closer_towards_its_end() -> None:
    text = THREE_SIZES + "pieces:\n  piece: {fabric: round, colours: oat, start: {ring: body.bust / 3}, sections: [even: {rounds: 3}, taper: {length: body.bust * 0.1, target: 5 cm, at: sides}]}\n"
    for plan in graded(text).plans["piece"]:
        tip = plan.sections[-1]
        assert isinstance(tip, TaperPlan)
        rows = (0, *tip.shaping_rows())
        gaps = [after - before for before, after in zip(rows, rows[1:], strict=False)]
        assert gaps == sorted(gaps, reverse=True) and rows[-1] >= tip.rows - gaps[-1] + 1


SHOE = """pieces:
  shoe: {fabric: round, colours: oat, start: {centre: flat}, sections: [crown: {target: 24 cm}, even: {rounds: 5}, open: {leave: 9 cm}]}
  heel: {fabric: plain, colours: oat, start: {go_on: shoe.sole}, sections: [even: {rows: 6}], edges: {both: [side]}}
  edging: {fabric: round, colours: oat, start: {pick_up: [heel.side, shoe.instep, heel.side]}, sections: [even: {rounds: 2}]}
seams: [{join: heel.top, to: heel.top}]
"""


def test_an_opened_tube_shares_its_last_round() -> None:
    pieces = graded(ONE_SIZE + SHOE).pieces
    shoe, heel = next(iter(pieces["shoe"])), next(iter(pieces["heel"]))
    assert (shoe.edges["instep"].stitches, shoe.edges["sole"].stitches) == (9, 15)
    assert heel.main.rows[0].uses == 15 and heel.main.worked == "rows"


@pytest.mark.parametrize(("old", "new", "name"), [
    (OPENING, "opening: {edge: thumb, width: 19 cm, at: start}", "opening-does-not-fit"),
    (OPENING, "opening: {edge: thumb, width: 14 cm, at: middle, inset: 4 cm}", "opening-does-not-fit"),
    (OPENING, "opening: {edge: thumb, width: 1 cm}", "opening-does-not-fit"),
    ("even: {rounds: 4}, ", "", "opening-misplaced"),
    (f", even: {{rounds: 5}}, {TIP}", "", "opening-misplaced"),
    ("even: {rounds: 5}", "opening: {edge: other, width: 4 cm}", "opening-misplaced"),
    ("each: -4, at: sides}]", "each: -4, at: sides}]\n    edges: {top: thumb}", "edge-twice"),
    ("pick_up: hand.thumb", "pick_up: [hand.thumb, hand.top]", "ring-open"),
    ("sections: [even: {rounds: 3}]", "sections: [even: {rounds: 3}, crown: {close: true, stitches: 12}]", "nothing-to-shape"),
    ("each: -4", "each: -3", "each-odd"),
    ("rounds: 3, each: -4", "rounds: 3, stitches: 7", "steps-miss-target"),
    ("rounds: 3, each: -4", "rounds: 1, stitches: 4", "taper-too-steep"),
    ("each: -4, at: sides}", "each: -4, at: sides, close: true}, even: {rounds: 2}", "close-not-last"),
])
def test_what_can_not_be_worked_is_told_at_its_place(old: str, new: str, name: str) -> None:
    assert old in HAND
    text = ONE_SIZE + HAND.replace(old, new)
    found = problems(text)
    assert name in [problem.name for problem in found]
    assert all(problem.origin is not None and problem.hint for problem in found)


@pytest.mark.parametrize(("old", "new", "name"), [
    ("leave: 9 cm", "leave: 30 cm", "opening-does-not-fit"),
    ("leave: 9 cm", "leave: 1 cm", "opening-does-not-fit"),
    ("open: {leave: 9 cm}", "open: {leave: 9 cm}, even: {rounds: 2}", "opened-not-last"),
    ("{fabric: round, colours: oat, start: {centre: flat}, sections: [crown: {target: 24 cm}, even", "{fabric: plain, colours: oat, start: {chain: 24 cm}, sections: [even", "opened-in-rows"),
    ("go_on: shoe.sole", "go_on: shoe.instep", "nothing-to-go-on"),
    ("open: {leave: 9 cm}]", "open: {leave: 9 cm}], edges: {top: instep}", "edge-twice"),
    ("seams: [{join: heel.top, to: heel.top}]\n", "", "ring-open"),
    ("even: {rows: 6}", "taper: {rows: 6, target: 10 cm, at: sides}", "no-such-side"),
    ("even: {rows: 6}", "taper: {rows: 6, target: 10 cm, close: true}", "close-in-rows"),
])
def test_an_opened_tube_that_can_not_be_worked(old: str, new: str, name: str) -> None:
    assert old in SHOE
    found = told(ONE_SIZE + SHOE.replace(old, new))
    assert name in [one for one, _, _ in found]
    assert all(line for _, line, _ in found)


def test_an_opening_is_not_cut_into_a_stitch_pattern() -> None:
    text = ONE_SIZE.replace("  tall:", '  mossy: {pattern: moss, gauge: "10 sts, 10 rows / 10 cm"}\n  tall:')
    text += "pieces:\n  piece: {fabric: mossy, colours: oat, start: {chain: 21 cm}, sections: [even: {rows: 4}, opening: {edge: pocket, width: 6 cm}, even: {rows: 4}]}\n"
    assert "opening-in-pattern" in [problem.name for problem in problems(text)]
