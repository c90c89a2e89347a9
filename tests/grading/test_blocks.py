"""Blocks of colour within a row: whole stitches that add up, straight lines between them, shaping in the outer ones."""

import pytest
from tiny_specs import HEAD, ONE_SIZE, THREE_SIZES, graded, one_piece, row_text, told

from gaugewright.grading.blocks import shared_out
from gaugewright.grading.strands import ends_by_colour, segments, strands_of

PIECE = """\
pieces:
  piece:
    fabric: plain
    start: {chain: body.bust / 5}
    sections: [even: {length: 10 cm}]
    colours: {blocks: [{to: 3 cm, across: kelp}, {to: 8 cm, across: [{oat: 5 cm}, {kelp: rest}, {oat: 30 %}]}, {across: [{kelp: 50 %}, {oat: 50 %}]}]}
"""


def rows(text: str, size: str = "M", key: str = "piece") -> list[str]:
    return [row_text(row) for row in one_piece(text, key, size).main.rows]


def test_blocks_stand_in_their_rows_and_turn_with_the_work() -> None:
    found = rows(ONE_SIZE + PIECE)
    assert found[2] == "RS kelp: ch(0) 20 hdc = 20"
    assert found[3] == "WS oat: ch(0) 6 hdc kelp: 9 hdc oat: 5 hdc = 20"
    assert found[4] == "RS oat: ch(0) 5 hdc kelp: 9 hdc oat: 6 hdc = 20"
    assert found[8] == "RS kelp: ch(0) 10 hdc oat: 10 hdc = 20"


@pytest.mark.parametrize(("size", "counts"), [("S", (5, 6, 5)), ("M", (5, 9, 6)), ("L", (5, 12, 7))])
def test_stitches_of_blocks_are_graded_and_add_up(size: str, counts: tuple[int, ...]) -> None:
    _, lines = segments(one_piece(THREE_SIZES + PIECE, size=size).main.rows[4], 5)
    ends = (0, *lines, sum(counts))
    assert tuple(after - before for before, after in zip(ends, ends[1:], strict=False)) == counts


def test_outer_blocks_take_the_shaping_at_their_edges() -> None:
    narrow = PIECE.replace("even: {length: 10 cm}", "taper: {length: 10 cm, target: 12 cm}")
    found = rows(ONE_SIZE + narrow.replace("{to: 3 cm, across: kelp}, ", "").replace("{to: 8 cm, across:", "{across:").replace(", {across: [{kelp: 50 %}, {oat: 50 %}]}", ""))
    assert found[0] == "RS oat: ch(0) 5 hdc kelp: 9 hdc oat: 6 hdc = 20"
    assert found[-1].endswith("= 12") and all("kelp: 9 hdc oat" in one for one in found)


def test_a_chain_that_counts_is_the_first_stitch_of_its_block() -> None:
    tall = HEAD.replace("tall: {stitch: dc,", "tall: {stitch: dc, turning_chain: {chains: 3, counts: as a stitch},")
    text = tall + "sizes: {own: {M: {bust: 100 cm}}}\n" + PIECE.replace("fabric: plain", "fabric: tall")
    assert rows(text)[2] == "RS oat: ch(1) 4 hdc kelp: 9 dc oat: 6 dc = 20".replace("hdc", "dc")


def test_stitches_picked_up_may_be_in_blocks() -> None:
    text = PIECE.replace("pieces:\n", "pieces:\n  below: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {rows: 2}]}\n")
    text = text.replace("{chain: body.bust / 5}", "{pick_up: [below.top]}").replace("{to: 3 cm, across: kelp}, ", "")
    assert rows(ONE_SIZE + text)[0] == "RS oat: 5 pick kelp: 9 pick oat: 6 pick = 20"


def test_rounds_that_are_turned_may_have_blocks() -> None:
    turned = HEAD.replace("worked: joined rounds", "worked: turned rounds") + "sizes: {own: {M: {bust: 100 cm}}}\n"
    text = turned + PIECE.replace("fabric: plain", "fabric: round").replace("chain:", "ring:")
    assert rows(text)[3] == "WS oat: ch(0) 6 hdc kelp: 9 hdc oat: 5 hdc = 20"


def test_a_section_of_its_own_colour_has_no_blocks() -> None:
    text = PIECE.replace("even: {length: 10 cm}", "even: {length: 5 cm, colour: kelp}, even: {length: 5 cm}")
    found = rows(ONE_SIZE + text)
    assert found[4] == "RS kelp: ch(0) 20 hdc = 20" and found[6] == "RS oat: ch(0) 5 hdc kelp: 9 hdc oat: 6 hdc = 20"


@pytest.mark.parametrize(("old", "new", "name"), [
    ("{oat: 5 cm}, {kelp: rest}", "{oat: 15 cm}, {kelp: rest}", "blocks-off-width"),
    ("{oat: 5 cm}, {kelp: rest}", "{oat: 5 cm}, {kelp: 5 cm}", "blocks-off-width"),
    ("{oat: 5 cm}, {kelp: rest}", "{oat: 3 mm}, {kelp: rest}", "block-of-no-stitch"),
    ("{oat: 5 cm}, {kelp: rest}", "{oat: 14 cm}, {kelp: rest}", "block-of-no-stitch"),
    ("{kelp: rest}, {oat: 30 %}", "{oat: rest}, {kelp: 30 %}", "neighbours-alike"),
    ("to: 8 cm", "to: 2 cm", "band-too-low"),
    ("fabric: plain", "fabric: round", "blocks-in-rounds"),
    ("even: {length: 10 cm}", "taper: {rows: 10, target: 4 cm}", "blocks-shaped"),
    ("even: {length: 10 cm}", "even: {length: 10 cm}, neck: {shape: square, width: 6 cm, depth: 3 cm}", "blocks-divided"),
    ("even: {length: 10 cm}", "even: {length: 4 cm}, wedge: {depth: 2 cm, point: 4 cm}, even: {length: 6 cm}", "blocks-shaped"),
])
def test_blocks_that_cannot_be_are_told_at_their_place(old: str, new: str, name: str) -> None:
    assert old in PIECE
    text = PIECE.replace(old, new)
    text = text.replace("chain:", "ring:") if "round" in new else text
    found = told(ONE_SIZE + text)
    assert {one[0] for one in found} == {name} and all(line.startswith("colours:") for _, line, _ in found)


def test_shaping_all_round_is_not_in_the_outer_blocks_alone() -> None:
    turned = HEAD.replace("worked: joined rounds", "worked: turned rounds") + "sizes: {own: {M: {bust: 100 cm}}}\n"
    text = turned + PIECE.replace("fabric: plain", "fabric: round").replace("chain:", "ring:").replace("even: {length: 10 cm}", "even: {rounds: 4}, taper: {rounds: 2, target: 30 cm}, even: {rounds: 4}")
    assert {one[0] for one in told(text)} == {"blocks-shaped"}


def test_one_yarn_may_go_on_above_a_division() -> None:
    text = PIECE.replace("even: {length: 10 cm}", "even: {length: 14 cm}, neck: {shape: square, width: 6 cm, depth: 3 cm}")
    text = text.replace("{across: [{kelp: 50 %}, {oat: 50 %}]}", "{across: kelp}")
    piece = one_piece(ONE_SIZE + text)
    assert len(piece.strips) == 3 and {row.colours for strip in piece.strips[1:] for row in strip.rows} == {("kelp",)}


def test_each_block_is_a_strand_with_two_ends() -> None:
    piece = one_piece(ONE_SIZE + PIECE)
    assert [(one.colour, one.first, one.last) for one in strands_of(piece.strips, 0)] == [
        ("kelp", 1, 3), ("oat", 4, 8), ("kelp", 4, 8), ("oat", 4, 8), ("kelp", 9, 10), ("oat", 9, 10),
    ]
    assert ends_by_colour(piece.strips, 0) == {"kelp": 6, "oat": 6}


def test_a_remainder_is_shared_alike_from_the_outside_in() -> None:
    assert shared_out([1, 2, 1], 10) == [3, 4, 3]
    assert shared_out([1, 1], 7) == [4, 3]
    assert shared_out([1, 1, 1, 1], 10) == [3, 2, 2, 3]


def test_plans_hold_what_the_words_need() -> None:
    plan = graded(ONE_SIZE + PIECE).plans["piece"]["M"]
    assert [(one.first, one.last, one.blocks) for one in plan.blocks] == [
        (1, 3, (("kelp", 20),)), (4, 8, (("oat", 5), ("kelp", 9), ("oat", 6))), (9, 10, (("kelp", 10), ("oat", 10))),
    ]
