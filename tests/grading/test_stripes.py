"""Stripes: the sequence in rows, where it stands, how it meets another piece's, and where its yarns go."""

import pytest
from tiny_specs import ONE_SIZE, THREE_SIZES, graded, one_piece, told

from gaugewright.grading.strands import ends_by_colour, strands_of

PIECE = """\
pieces:
  piece:
    fabric: plain
    start: {chain: 20 cm}
    sections: [even: {length: 20 cm}]
    colours: {stripes: [{oat: 4}, {kelp: 2}]}
"""
BODY_AND_SLEEVE = """\
levels: {shoulder: 20 cm, underarm: shoulder - body.bust / 10}
stripes: {tide: [{oat: 4}, {kelp: 2 cm}]}
pieces:
  sleeve:
    fabric: plain
    start: {chain: 10 cm}
    sections: [even: {length: 18 cm}]
    colours: {stripes: tide, match: {to: back, at: underarm, own: 15 cm}}
  back:
    fabric: plain
    start: {chain: body.bust / 4}
    sections: [even: {to: shoulder}]
    edges: {both: [side, underarm, armhole]}
    colours: {stripes: tide}
"""


def colours(text: str, key: str = "piece", size: str = "M") -> str:
    """Each row's colour by its first letter."""
    return "".join(row.runs[0].colour[0] for row in one_piece(text, key, size).main.rows)


def test_a_sequence_is_repeated_to_the_last_row() -> None:
    assert colours(ONE_SIZE + PIECE) == "ooookkooookkooookkoo"


def test_lengths_are_whole_rows_and_both_ways_may_be_mixed() -> None:
    text = ONE_SIZE + PIECE.replace("{kelp: 2}", "{kelp: 2.4 cm}").replace("{oat: 4}", "{oat: 36 mm}")
    assert colours(text) == "ooookkooookkooookkoo"


def test_a_sequence_may_begin_at_a_height_and_runs_on_below_it() -> None:
    assert colours(ONE_SIZE + PIECE.replace("{kelp: 2}]", "{kelp: 2}], begin: 3 cm")) == "okkooookkooookkooook"


def test_a_section_of_its_own_colour_hides_the_stripes_below_it() -> None:
    text = PIECE.replace("[even: {length: 20 cm}]", "[even: {length: 3 cm, colour: kelp}, even: {length: 17 cm}]")
    assert colours(ONE_SIZE + text.replace("{kelp: 2}]", "{kelp: 2}], begin: 3 cm")) == "kkkooookkooookkooook"


@pytest.mark.parametrize("size", ["S", "M", "L"])
def test_a_sleeve_has_the_bodys_colours_beside_the_underarm(size: str) -> None:
    text = THREE_SIZES + BODY_AND_SLEEVE
    plan = graded(text).plans["back"][size]
    underarm = plan.marks[0].row
    back, sleeve = colours(text, "back", size), colours(text, "sleeve", size)
    assert sleeve[:15][::-1][:underarm] == back[:underarm][::-1][:15]
    assert sleeve[15:] == back[underarm:][:3]


def test_without_heights_a_sequence_goes_on_from_another_pieces_end() -> None:
    text = BODY_AND_SLEEVE.replace(", at: underarm, own: 15 cm", "")
    assert colours(THREE_SIZES + text, "back") + colours(THREE_SIZES + text, "sleeve") == "ooookk" * 6 + "oo"


def test_a_chain_of_matched_pieces_is_graded_in_order() -> None:
    cuff = BODY_AND_SLEEVE.replace("pieces:\n", "pieces:\n  cuff:\n    fabric: plain\n    start: {chain: 10 cm}\n    sections: [even: {rows: 5}]\n    colours: {stripes: tide, match: {to: sleeve}}\n")
    sleeve, end = colours(THREE_SIZES + cuff, "sleeve"), colours(THREE_SIZES + cuff, "cuff")
    assert "".join((sleeve, end)) in "ooookk" * 6


MATCHED = "match: {to: back, at: underarm, own: 15 cm}"


@pytest.mark.parametrize(("old", "new", "name"), [
    ("own: 15 cm", "own: 40 cm", "level-outside"),
    ("at: underarm", "at: 0 cm - 3 cm", "level-outside"),
    ("{oat: 4}, {kelp: 2 cm}]", "{oat: 4}, {kelp: 2 mm}]", "stripe-of-no-row"),
    ("{oat: 4}, {kelp: 2 cm}]", "{oat: 4}, {oat: 2}, {kelp: 1}]", "neighbours-alike"),
    ("{oat: 4}, {kelp: 2 cm}]", "{oat: 4}, {kelp: 2}, {oat: 2}]", "neighbours-alike"),
    ("{oat: 4}, {kelp: 2 cm}]", "{oat: 4}]", "neighbours-alike"),
    (f"{{stripes: tide, {MATCHED}}}", f"{{stripes: [{{kelp: 2}}, {{oat: 3}}], {MATCHED}}}", "stripes-unlike"),
    ("    colours: {stripes: tide}\n", "    colours: oat\n", "stripes-unlike"),
    ("    colours: {stripes: tide}\n", "    colours: {stripes: tide, match: {to: sleeve}}\n", "piece-cycle"),
])
def test_stripes_that_cannot_be_are_told_at_their_place(old: str, new: str, name: str) -> None:
    assert old in BODY_AND_SLEEVE
    found = told(THREE_SIZES + BODY_AND_SLEEVE.replace(old, new))
    assert {one[0] for one in found} == {name}


def ends(text: str, key: str = "piece", size: str = "M", carry: int = 4) -> dict[str, int]:
    return ends_by_colour(one_piece(text, key, size).strips, carry)


def test_stripes_of_even_rows_are_two_strands_however_many_there_are() -> None:
    assert ends(ONE_SIZE + PIECE) == {"oat": 2, "kelp": 2}
    assert ends(ONE_SIZE + PIECE.replace("length: 20 cm", "length: 80 cm")) == {"oat": 2, "kelp": 2}


def test_a_yarn_is_not_carried_further_than_its_limit() -> None:
    assert ends(ONE_SIZE + PIECE, carry=3) == {"oat": 2, "kelp": 6}  # oat rests 2 rows, kelp 4
    assert ends(ONE_SIZE + PIECE, carry=0) == {"oat": 8, "kelp": 6}


def test_a_yarn_that_comes_again_at_the_other_edge_is_cut() -> None:
    """Common practice: an odd number of rows ends at the other edge, where the yarn isn't."""
    odd = PIECE.replace("{kelp: 2}", "{kelp: 1}")
    assert ends(ONE_SIZE + odd) == {"oat": 8, "kelp": 2}  # kelp rests over four rows, and finds itself where they end; oat over one
    strands = strands_of(one_piece(ONE_SIZE + odd).strips, 4)
    assert [one.rows for one in strands if one.colour == "kelp"] == [(5, 10, 15, 20)]


def test_rounds_all_begin_at_one_place_so_that_odd_stripes_are_carried_too() -> None:
    odd = PIECE.replace("{kelp: 2}", "{kelp: 1}").replace("fabric: plain", "fabric: round").replace("chain: 20", "ring: 20")
    assert ends(ONE_SIZE + odd) == {"oat": 2, "kelp": 2}


def test_a_yarn_cannot_climb_past_stitches_left_at_its_edge() -> None:
    text = ONE_SIZE + """\
levels: {shoulder: 40 cm, underarm: 14 cm}
pieces:
  piece:
    fabric: plain
    start: {chain: 40 cm}
    sections: [even: {to: underarm}, armhole: {to: shoulder, target: 28 cm, block: 3 cm}]
    colours: {stripes: [{oat: 4}, {kelp: 2}]}
"""
    piece = one_piece(text)
    assert [run.operation.kind for run in piece.main.rows[14].runs][0] == "slip over"
    kelp = [one.rows for one in strands_of(piece.strips, 4) if one.colour == "kelp"]
    assert kelp[0] == (5, 6, 11, 12) and kelp[1][0] == 17


def test_a_yarn_picked_up_again_may_slip_over_the_stitches_itself() -> None:
    text = ONE_SIZE + """\
levels: {shoulder: 40 cm, underarm: 18 cm}
pieces:
  piece:
    fabric: plain
    start: {chain: 40 cm}
    sections: [even: {to: underarm}, armhole: {to: shoulder, target: 28 cm, block: 3 cm, at: starting}]
    colours: {stripes: [{oat: 4}, {kelp: 2}]}
"""
    assert ends(text) == {"oat": 2, "kelp": 4}  # row 19 slips over with oat; kelp waits below and is cut


def test_the_side_worked_first_goes_on_with_the_yarns_of_the_piece_below() -> None:
    text = ONE_SIZE + """\
levels: {shoulder: 30 cm}
pieces:
  piece:
    fabric: plain
    start: {chain: 40 cm}
    sections: [even: {to: shoulder}, neck: {shape: square, width: 10 cm, depth: 8 cm}]
    colours: {stripes: [{oat: 4}, {kelp: 2}]}
"""
    assert ends(text) == {"oat": 4, "kelp": 4}  # one strand of each up to the first shoulder, one more of each for the second
