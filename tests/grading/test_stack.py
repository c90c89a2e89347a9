"""Rows: the total rounded once, depths from the top, one taker between two heights, problems where none fits."""

import pytest
from tiny_specs import ONE_SIZE, THREE_SIZES, graded, one_piece, problems, told


def piece(*sections: str, more: str = "", fabric: str = "plain") -> str:
    lines = "".join(f"      - {section}\n" for section in sections)
    return f"pieces:\n  piece:\n    fabric: {fabric}\n    colours: oat\n    start: {{chain: 20 cm}}\n    sections:\n{lines}{more}"


def rows(text: str, size: str = "M") -> list[int]:
    return [section.rows for section in graded(text).plans["piece"][size].sections]


def levels(**heights: str) -> str:
    return "levels:\n" + "".join(f"  {name}: {height}\n" for name, height in heights.items())


def test_the_total_comes_first_and_the_side_takes_what_is_left() -> None:
    text = THREE_SIZES + levels(shoulder="60.4 cm", underarm="shoulder - 20.4 cm") + piece("even: {to: underarm}", "even: {to: shoulder}")
    assert rows(text) == [40, 20]


def test_depths_are_rounded_from_the_top_down_over_three_levels() -> None:
    text = ONE_SIZE + levels(shoulder="60 cm", neck="52.6 cm", underarm="39.2 cm") + piece(
        "even: {to: underarm}", "even: {to: neck}", "even: {to: shoulder}"
    )
    # 7.4 below the top gives 7 rows; 20.8 gives 21 in all, so 14 of them here; the rest of 60.
    assert rows(text) == [39, 14, 7]


def test_sections_between_levels_are_taken_off() -> None:
    text = ONE_SIZE + levels(shoulder="60 cm", underarm="40 cm") + piece(
        "even: {rows: 4}", "even: {to: underarm}", "even: {length: 3.4 cm}", "even: {rows: 2}", "even: {to: shoulder}"
    )
    assert rows(text) == [4, 36, 3, 2, 15]


def test_sections_above_the_last_level_add_to_the_height() -> None:
    text = ONE_SIZE + levels(underarm="40 cm") + piece("even: {to: underarm}", "even: {length: 8.4 cm}")
    assert rows(text) == [40, 8]
    assert one_piece(text).finished["length"] == pytest.approx(480)


def test_a_rest_above_a_level_takes_what_the_total_leaves() -> None:
    text = ONE_SIZE + levels(underarm="40 cm") + piece("even: {to: underarm}", "even: {length: rest}", more="    total: 60 cm\n")
    assert rows(text) == [40, 20]


def test_mixed_fabrics_keep_the_total_within_half_a_row_of_the_taker() -> None:
    text = ONE_SIZE + levels(shoulder="61 cm", underarm="41 cm") + piece(
        "even: {rows: 3, fabric: plain}", "even: {to: underarm}", "even: {to: shoulder, fabric: plain}", fabric="tall"
    )
    assert rows(text) == [3, 19, 20]
    assert one_piece(text).finished["length"] == pytest.approx(610)


def test_a_level_below_an_earlier_one_is_told() -> None:
    text = ONE_SIZE + levels(shoulder="60 cm", underarm="40 cm") + piece("even: {to: shoulder}", "even: {to: underarm}")
    assert told(text) == [("levels-out-of-order", "- even: {to: underarm}", "M")]


def test_a_level_at_the_bottom_edge_is_told() -> None:
    text = ONE_SIZE + levels(low="0 cm") + piece("even: {to: low}")
    assert [problem.name for problem in problems(text)] == ["levels-out-of-order"]


def test_two_takers_below_one_height_are_told() -> None:
    text = ONE_SIZE + levels(shoulder="60 cm") + piece("even: {length: rest}", "even: {to: shoulder}", more="    total: 60 cm\n")
    assert [problem.name for problem in problems(text)] == ["rest-twice"]


def test_a_total_that_the_sections_do_not_come_to_is_told() -> None:
    text = ONE_SIZE + piece("even: {length: 30 cm}", more="    total: 40 cm\n")
    assert told(text) == [("total-not-met", "total: 40 cm", "M")]
    assert rows(text.replace("40 cm", "30.3 cm")) == [30]


def test_no_room_for_the_rest_is_told_for_each_size_at_once() -> None:
    text = THREE_SIZES + piece("even: {length: body.bust}", "even: {length: rest}", more="    total: 95 cm\n")
    assert told(text) == [("no-room", "- even: {length: rest}", "M, L")]


def test_sections_of_less_than_a_row_are_told_together() -> None:
    text = ONE_SIZE + piece("even: {length: 2 mm}", "even: {length: 3 cm}", "even: {length: 4 mm}")
    assert told(text) == [("too-short", "- even: {length: 2 mm}", "M"), ("too-short", "- even: {length: 4 mm}", "M")]


def test_a_length_of_too_many_rows_is_told() -> None:
    assert [problem.name for problem in problems(ONE_SIZE + piece("even: {length: 2000 m}"))] == ["too-many-rows"]


def test_a_total_may_be_used_by_the_piece_itself() -> None:
    text = ONE_SIZE + piece("even: {length: total / 4}", "even: {length: rest}", more="    total: 40 cm\n")
    assert rows(text) == [10, 30]
