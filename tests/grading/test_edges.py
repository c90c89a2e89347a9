"""Edges and marks: every name has a true length, or a located problem; finished is worked less take-up."""

import math

import pytest
from tiny_specs import HEAD, ONE_SIZE, graded, one_piece, problems, told

BODY = """\
levels: {shoulder: 60 cm, neck: 50 cm, underarm: 40 cm}
pieces:
  piece:
    fabric: plain
    colours: oat
    start: {chain: 40 cm}
    sections:
      - even: {to: shoulder}
"""


def body(edges: str) -> str:
    return ONE_SIZE + BODY + f"    edges: {edges}\n"


def test_several_levels_divide_both_edges() -> None:
    text = body("{both: [side, underarm, armhole, neck, collar]}")
    edges = one_piece(text).edges
    assert [edges[name].rows for name in ("side", "armhole", "collar")] == [40, 10, 10]
    marks = graded(text).plans["piece"]["M"].marks
    assert [(m.level, m.row, m.below, m.above, m.side) for m in marks] == [
        ("underarm", 40, "side", "armhole", "starting"), ("neck", 50, "armhole", "collar", "starting"),
        ("underarm", 40, "side", "armhole", "far"), ("neck", 50, "armhole", "collar", "far"),
    ]


def test_each_side_may_have_its_own_levels() -> None:
    edges = one_piece(body("{starting: [side, underarm, armhole], far: [front, neck, lapel]}")).edges
    assert {name: edges[name].rows for name in ("side", "armhole", "front", "lapel")} == {"side": 40, "armhole": 20, "front": 50, "lapel": 10}


def test_every_piece_has_its_plain_edges() -> None:
    edges = one_piece(body("{both: [side], bottom: hem, top: rim}")).edges
    assert edges["bottom"] == edges["hem"] and edges["top"] == edges["rim"]
    assert edges["starting"] == edges["side"] == edges["far"]
    assert edges["starting"].rows == 60


def test_the_whole_top_above_shoulders_and_neck() -> None:
    edges = one_piece(body("{bottom: hem}").replace("even: {to: shoulder}", "even: {to: shoulder}\n      - shoulders: {neck: 16 cm}")).edges
    assert (edges["shoulder"].stitches, edges["neck"].stitches, edges["top"].stitches) == (12, 16, 40)


def test_levels_named_in_the_wrong_order_are_told() -> None:
    assert [p.name for p in problems(body("{both: [side, neck, armhole, underarm, collar]}"))] == ["levels-out-of-order"]


def test_a_level_above_the_top_is_told() -> None:
    text = body("{both: [side, high, armhole]}").replace("levels: {", "levels: {high: 70 cm, ")
    assert [p.name for p in problems(text)] == ["level-outside"]


def test_levels_of_a_piece_without_a_total_hang_from_its_own_top() -> None:
    text = body("{both: [side, underarm, armhole]}").replace("even: {to: shoulder}", "even: {length: 45.4 cm}")
    assert one_piece(text).edges["armhole"].rows == 5


def test_a_mark_lies_where_the_section_worked_up_to_it_ends() -> None:
    # The upper part in rows of 2 cm: 11 cm are six rows, and the level is still where they begin.
    text = body("{both: [side, underarm, armhole]}").replace("even: {to: shoulder}", "even: {to: underarm}\n      - even: {to: shoulder, fabric: tall}")
    for armhole in ("20 cm", "21 cm", "19.1 cm", "20.9 cm"):
        one = text.replace("underarm: 40 cm", f"underarm: shoulder - {armhole}")
        plan = graded(one).plans["piece"]["M"]
        assert plan.marks[0].row == plan.sections[0].rows


def test_one_name_for_two_lengths_is_told() -> None:
    text = body("{both: [side]}").replace("even: {to: shoulder}", "even: {to: underarm}\n      - taper: {to: shoulder, target: 4 cm, at: far}")
    assert told(text) == [("edge-twice", "piece:", "M")]
    assert one_piece(text.replace("both: [side]", "starting: [side], far: [front]")).edges["front"].length > 650


@pytest.mark.parametrize("edges", ["{both: [side, underarm, side]}", "{both: [side], bottom: side}", "{bottom: rim, top: rim}"])
def test_one_name_for_two_edges_is_told(edges: str) -> None:
    assert [p.name for p in problems(body(edges))] == ["edge-twice"]


def test_rounds_have_no_row_ends() -> None:
    text = body("{both: [side]}").replace("chain: 40 cm", "ring: 40 cm")
    assert [p.name for p in problems(text)] == ["edges-in-rounds"]
    seam = body("{bottom: hem}").replace("chain: 40 cm", "ring: 40 cm") + "seams:\n  - {join: piece.starting, to: piece.far}\n"
    assert told(seam) == [("unknown-edge", "- {join: piece.starting, to: piece.far}", "")] * 2


def test_a_slanting_edge_is_as_long_as_its_line() -> None:
    text = ONE_SIZE + BODY.replace("even: {to: shoulder}", "even: {rows: 1}\n      - taper: {rows: 10, target: 20 cm}")
    assert one_piece(text).edges["far"].length == pytest.approx(10 + 10 * math.hypot(10, 10))


SEAMED = HEAD + """\
sizes: {own: {M: {bust: 100 cm}}}
levels: {top: 30 cm, middle: 20 cm}
pieces:
  piece:
    fabric: plain
    colours: oat
    start: {chain: 20 cm}
    sections:
      - even: {to: middle}
      - even: {to: top}
    edges: {both: [side, middle, armhole], bottom: hem}
  other: {like: piece}
seams:
  - {join: piece.side, to: other.side, take_up: whole stitch}
"""


def test_take_up_is_added_to_the_width_and_taken_off_again() -> None:
    piece = one_piece(SEAMED)
    assert piece.main.start.stitches == 22
    assert piece.finished["width"] == pytest.approx(200) and piece.worked["width"] == pytest.approx(220)


def test_a_width_loses_what_the_seam_at_its_own_row_takes() -> None:
    piece = one_piece(SEAMED)
    assert piece.finished["top_width"] == piece.finished["widest"] == pytest.approx(220)
    assert piece.finished["narrowest"] == pytest.approx(200)


def test_a_target_at_a_level_counts_the_seam_below_it() -> None:
    text = SEAMED.replace("- even: {to: middle}", "- taper: {to: middle, target: 30 cm}")
    piece = one_piece(text)
    assert piece.main.rows[19].makes == 32 and piece.main.last_count == 32
    assert piece.finished["narrowest"] == pytest.approx(200)


def test_seams_may_use_the_plain_names_of_edges() -> None:
    plain = SEAMED.replace("piece.side, to: other.side", "piece.far, to: other.starting")
    assert one_piece(plain).main.start.stitches == 21 and one_piece(plain, "other").main.start.stitches == 21
    assert one_piece(SEAMED.replace("piece.side, to: other.side", "piece.bottom, to: other.bottom")).finished["length"] == pytest.approx(290)


def test_finished_measures_of_named_edges() -> None:
    text = SEAMED + "finished:\n  armhole: {measure: finished(piece.armhole)}\n  hem: {measure: finished(piece.hem)}\n"
    from tiny_specs import designed

    grading, design = graded(text), designed(text)
    env = grading.environments["M"]
    assert [env.length(measure.measure) for measure in design.finished] == pytest.approx([100, 200])


@pytest.mark.parametrize(("sections", "name"), [
    ("shoulders: {neck: 5 cm}", "no-rows"),
    ("shoulders: {neck: 5 cm}\n      - even: {rows: 3}", "shoulders-not-last"),
    ("even: {rows: 3}\n      - shoulders: {neck: 39 cm}", "neck-too-wide"),
])
def test_shoulders_that_can_not_be(sections: str, name: str) -> None:
    assert [p.name for p in problems(ONE_SIZE + BODY.replace("even: {to: shoulder}", sections))] == [name]


def test_shoulders_of_a_round_are_told() -> None:
    text = ONE_SIZE + BODY.replace("even: {to: shoulder}", "even: {rows: 3}\n      - shoulders: {neck: 9 cm}").replace("chain:", "ring:")
    assert [p.name for p in problems(text)] == ["shoulders-in-rounds"]


def test_a_faulty_piece_does_not_hide_another() -> None:
    text = ONE_SIZE + BODY.replace("even: {to: shoulder}", "even: {length: 1 mm}") + """\
  second:
    fabric: plain
    colours: oat
    start: {chain: 30 cm}
    sections: [even: {length: 2 mm}]
  third:
    fabric: plain
    colours: oat
    start: {pick_up: [piece.top]}
    sections: [even: {length: 2 mm}]
"""
    assert told(text) == [("too-short", "- even: {length: 1 mm}", "M"), ("too-short", "sections: [even: {length: 2 mm}]", "M")]
