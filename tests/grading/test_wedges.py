"""Wedges of short rows: their rows, what they add where, and what doesn't fit."""

from dataclasses import replace

import pytest
from tiny_specs import THREE_SIZES, designed, graded, one_piece, problems, row_text, told

from gaugewright.checks.rows import row_faults
from gaugewright.grading.model import GradedPiece, Row, ShortRows, Strip
from gaugewright.yarn.counted import stitches_worked


def front(wedge: str, above: str = "even: {rows: 10}", below: int = 20, sizes: str = THREE_SIZES) -> str:
    return sizes + (
        "pieces:\n  piece:\n    fabric: plain\n    colours: oat\n    start: {chain: body.bust / 2}\n"
        f"    sections: [even: {{rows: {below}}}, wedge: {{{wedge}}}, {above}]\n"
        "    edges: {starting: [side], far: [front], bottom: hem}\n"
    )


def wedge_of(piece: GradedPiece) -> tuple[str, ...]:
    return tuple(row_text(row) for group in piece.main.short for row in group.rows)


def test_a_wedge_in_the_middle_begins_where_the_work_is() -> None:
    piece = one_piece(front("depth: 4 cm, point: 5 cm, shortest: 20 cm"))
    assert wedge_of(piece) == (
        "RS oat: ch(0) 45 hdc anchor 5 wait = 50", "WS oat: 5 wait 40 hdc anchor 5 wait = 50",
        "RS oat: 5 wait 30 hdc anchor 15 wait = 50", "WS oat: 15 wait 20 hdc anchor 15 wait = 50",
    )
    assert row_text(piece.main.rows[20]) == "RS oat: 15 wait 35 hdc = 50"
    assert row_text(piece.main.rows[21]) == "WS oat: ch(0) 50 hdc = 50"


def test_its_side_edges_gain_nothing_and_its_middle_all() -> None:
    piece = one_piece(front("depth: 4 cm, point: 5 cm"))
    assert [(piece.edges[name].rows, piece.edges[name].length) for name in ("side", "front")] == [(30, 300.0), (30, 300.0)]
    assert (piece.finished["length"], piece.finished["longest"]) == (300.0, 340.0)


@pytest.mark.parametrize(("at", "below", "after"), [("front", 20, 21), ("front", 21, 21), ("side", 20, 20), ("side", 21, 22)])
def test_a_wedge_at_an_edge_begins_on_a_row_that_ends_there(at: str, below: int, after: int) -> None:
    piece = one_piece(front(f"depth: 4 cm, point: 5 cm, at: {at}", below=below))
    assert [group.after for group in piece.main.short] == [after]
    other = "side" if at == "front" else "front"
    assert piece.edges[at].rows - piece.edges[other].rows == 4
    assert piece.edges[at].length - piece.edges[other].length == pytest.approx(40.0)
    assert piece.main.rows[after] == piece.main.rows[after - 2]


def test_sizes_without_depth_have_no_wedge() -> None:
    grading = graded(front('depth: "max(0 cm, (body.bust - 100 cm) * 0.2)", point: 5 cm'))
    assert {size: len(wedge_of(piece)) for size, piece in grading.pieces["piece"].items()} == {"S": 0, "M": 0, "L": 4}


def test_a_wedge_takes_the_yarn_of_the_stitches_it_works() -> None:
    piece = one_piece(front("depth: 2 cm, point: 5 cm"))
    runs = [run for row in piece.main.all_rows() for run in row.runs]
    assert sum(map(stitches_worked, runs)) == pytest.approx(29 * 50 + 45 + 40 + 45 + 2 * 0.3)


def without(strip: Strip, *numbers: int) -> Strip:
    """A strip with short rows left out."""
    group = strip.short[0]
    return replace(strip, short=(ShortRows(group.after, tuple(row for number, row in enumerate(group.rows) if number not in numbers)),))


def test_a_row_that_does_not_begin_at_the_turn_is_found() -> None:
    strip = one_piece(front("depth: 4 cm, point: 5 cm, shortest: 20 cm")).main
    assert row_faults(strip, (strip,)) == ()
    assert "short row 1 after row 20 begins 5 stitches in, and the row before it turned 0 from there" in row_faults(without(strip, 0, 1), (strip,))
    assert any("turned" in text for text in row_faults(without(strip, 2, 3), (strip,)))
    assert any("wrong face" in text for text in row_faults(without(strip, 3), (strip,)))


def test_stitches_that_nobody_takes_up_are_found() -> None:
    strip = one_piece(front("depth: 4 cm, point: 5 cm, shortest: 20 cm")).main
    cut = replace(strip, rows=strip.rows[:21])
    assert row_faults(cut, (cut,)) == ("no row takes up the stitches that wait at the start of row 21",)
    lost = replace(strip, rows=strip.rows[:20])
    assert any("is the last of its strip" in text for text in row_faults(lost, (lost,)))
    plain = replace(strip, short=())
    assert any("follows no short row" in text for text in row_faults(plain, (plain,)))
    turned = Row(strip.rows[20].runs[::-1], "RS")
    left = replace(strip, rows=(*strip.rows[:10], turned, *strip.rows[11:]))
    assert any("is no short row" in text for text in row_faults(left, (left,)))


@pytest.mark.parametrize(
    ("wedge", "name"),
    [
        ("depth: 0 cm - 2 cm, point: 5 cm", "wedge-negative"), ("depth: 4 cm, point: 0.2 cm", "wedge-at-edge"),
        ("depth: 4 cm, point: 30 cm", "wedge-point-beyond"), ("depth: 90 cm, point: 5 cm", "wedge-too-deep"),
        ("depth: 4 cm, point: 5 cm, shortest: 90 cm", "wedge-point-beyond"),
    ],
)
def test_what_does_not_fit_is_told_with_its_place(wedge: str, name: str) -> None:
    found = told(front(wedge))
    assert {each[0] for each in found} == {name}
    assert {size for each in found for size in each[2].split(", ")} == {"S", "M", "L"}
    assert all("wedge" in each[1] for each in found)


def hints(text: str) -> list[str]:
    """What the problems advise."""
    return [each.hint for each in problems(text)]


def test_the_hints_work_when_they_are_followed() -> None:
    assert "make `depth` at most 18.0 cm" in hints(front("depth: 90 cm, point: 5 cm"))[0]
    assert told(front("depth: 18 cm, point: 5 cm")) == []
    assert "make `point` at most 13.0 cm" in hints(front("depth: 2 cm, point: 30 cm"))[0]
    assert told(front("depth: 2 cm, point: 13 cm")) == []
    assert hints(front("depth: 0 cm - 2 cm, point: 5 cm"))[0] == "write max(0 cm, 0 cm - 2 cm)"


@pytest.mark.parametrize(
    ("above", "below"), [("taper: {rows: 6, target: 30 cm}", 20), ("even: {rows: 1}", 20), ("even: {rows: 9, colour: kelp}", 20), ("wedge: {depth: 2 cm, point: 3 cm}, even: {rows: 9}", 20)],
)
def test_a_wedge_lies_between_even_rows(above: str, below: int) -> None:
    assert {each[0] for each in told(front("depth: 4 cm, point: 5 cm", above, below))} == {"wedge-out-of-place"}


def test_a_wedge_is_worked_in_rows() -> None:
    text = THREE_SIZES + "pieces:\n  piece:\n    fabric: round\n    colours: oat\n    start: {ring: 60 cm}\n    sections: [even: {rounds: 9}, wedge: {depth: 4 cm, point: 5 cm}, even: {rounds: 9}]\n"
    assert {each[0] for each in told(text)} == {"edges-in-rounds"}


def test_the_reader_knows_its_edges_and_measures() -> None:
    assert designed(front("depth: 4 cm, point: 5 cm, at: front")).piece("piece").sections[1].at == "far"  # type: ignore[union-attr]
