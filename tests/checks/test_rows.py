"""Rows that follow and rows that don't, on strips made by hand: divided necks, raglans, bands."""

from dataclasses import replace

import pytest

from checks.specs import places, problems_of, pullover, with_piece, with_rows
from gaugewright.checks import row_faults
from gaugewright.checks.rows import check_rows_follow, worked_into
from gaugewright.grading.model import (
    CentreStart,
    ChainStart,
    EdgeStart,
    Operation,
    PickUp,
    Row,
    Run,
    Side,
    SpanStart,
    Strip,
    chain,
    decrease,
    increase,
    leave,
    slip_over,
    turning_chain,
    work,
)

HDC = work("hdc")


def row(side: Side, *parts: tuple[Operation, int]) -> Row:
    return Row(tuple(Run(operation, times, "oat", "body") for operation, times in parts), side)


def even(stitches: int, side: Side = "RS") -> Row:
    return row(side, (turning_chain("hdc", False), 1), (HDC, stitches))


BODY = Strip("body", ChainStart(20, 21), "rows", (even(20), even(20, "WS"), even(20), even(20, "WS")))
# A divided neck: six stitches of shoulder at each side, eight left between; one decrease at the neck.
FIRST_SHOULDER = Strip(
    "first", SpanStart("body", 0, 6), "rows", (row("RS", (HDC, 4), (decrease("hdc"), 1)), row("WS", (HDC, 5)))
)
SECOND_SHOULDER = Strip(
    "second", SpanStart("body", 14, 6), "rows", (row("RS", (decrease("hdc"), 1), (HDC, 4)), row("WS", (HDC, 5)))
)
NECK = (BODY, FIRST_SHOULDER, SECOND_SHOULDER)

# A raglan yoke in the round: 8 back, 5 sleeve, 8 front, 5 sleeve; each part gains two, then it divides.
YOKE = Strip(
    "yoke", ChainStart(26, 26, ring=True), "joined rounds",
    (row("RS", *((increase("hdc"), 1), (HDC, 6), (increase("hdc"), 1), (increase("hdc"), 1), (HDC, 3), (increase("hdc"), 1)) * 2),),
)
RAGLAN_BODY = Strip(
    "body", SpanStart("yoke", 0, 34), "joined rounds",
    (row("RS", (HDC, 10), (leave(), 7), (chain(), 3), (HDC, 10), (leave(), 7), (chain(), 3)), row("RS", (HDC, 26))),
)
SLEEVES = tuple(
    Strip(name, SpanStart("yoke", first, 7), "joined rounds", (row("RS", (HDC, 7), (chain(), 3)), row("RS", (HDC, 10))))
    for name, first in (("one sleeve", 10), ("other sleeve", 27))
)
RAGLAN = (YOKE, RAGLAN_BODY, *SLEEVES)

BAND = Strip(
    "band", EdgeStart((PickUp("back", "neck", 9, 0, 9), PickUp("back", "side", 6, 8, 0))), "rows",
    (row("RS", (Operation("picked up", "sc", 0, 1), 15)), even(15, "WS")),
)


@pytest.mark.parametrize("strips", [NECK, RAGLAN, (BAND,)], ids=["divided neck", "raglan", "band"])
def test_pieces_of_several_strips_follow(strips: tuple[Strip, ...]) -> None:
    assert [row_faults(strip, strips) for strip in strips] == [()] * len(strips)


def test_a_centre_and_a_counted_turning_chain_follow() -> None:
    disc = Strip("disc", CentreStart(6), "spiral rounds", (row("RS", (increase("sc"), 6)), row("RS", (HDC, 12))))
    flat = Strip("flat", ChainStart(9, 11), "rows", (row("RS", (turning_chain("dc", True), 1), (work("dc"), 8)),))
    assert row_faults(disc, (disc,)) == row_faults(flat, (flat,)) == ()


def test_crochet_casts_off_by_leaving_and_slipping_over() -> None:
    stepped = replace(BODY, rows=(even(20), row("WS", (slip_over(), 3), (HDC, 14), (leave(), 3)), even(14)))
    assert row_faults(stepped, (stepped,)) == ()


def faults(strip: Strip, *others: Strip) -> tuple[str, ...]:
    return row_faults(strip, (*others, strip))


def test_a_count_that_does_not_follow_names_both_rows() -> None:
    broken = replace(BODY, rows=(even(20), even(19, "WS"), even(19)))
    assert faults(broken) == ("row 2 works over 19 stitches, and row 1 gives 20",)
    assert faults(replace(BODY, rows=(even(21),))) == ("row 1 works over 21 stitches, and the start gives 20",)


def test_each_row_is_held_to_the_row_before_and_to_no_other() -> None:
    broken = replace(BODY, rows=(even(20), even(18, "WS"), even(20), even(20, "WS")))
    assert len(faults(broken)) == 2


def test_faces_come_in_turn() -> None:
    assert faults(replace(BODY, rows=(even(20), even(20)))) == ("row 2 shows its RS, the wrong face after the row before",)
    flipped = replace(YOKE, rows=(replace(YOKE.rows[0], side="WS"),))
    assert faults(flipped) == ("row 1 shows its WS, the wrong face after the row before",)


@pytest.mark.parametrize(
    ("parts", "text"),
    [
        (((leave(), 2), (HDC, 18)), "leaves stitches before its end"),
        (((HDC, 18), (slip_over(), 2)), "slip-stitches over stitches after its start"),
        (((HDC, 20), (turning_chain("hdc", False), 1)), "has a turning chain after its first stitch"),
        (((HDC, 20), (chain(), 0)), "has a chain worked 0 times"),
        (((HDC, 20), (Operation("picked up", "sc", 0, 1), 3)), "picks up stitches within a piece"),
        (((leave(), 20),), "has no stitches"),
    ],
)
def test_operations_stand_where_they_can_be_worked(parts: tuple[tuple[Operation, int], ...], text: str) -> None:
    assert faults(replace(BODY, rows=(even(20), row("WS", *parts)))) == (f"row 2 {text}",)


def test_a_span_lies_within_the_row_it_starts_from() -> None:
    over = replace(SECOND_SHOULDER, start=SpanStart("body", 15, 6))
    assert faults(over, BODY) == ("the strip starts from stitches 16 to 21 of body, whose last row has 20",)
    lost = replace(SECOND_SHOULDER, start=SpanStart("bodice", 14, 6))
    assert faults(lost, BODY) == ("the strip starts from bodice, which is no other strip of the piece",)
    itself = replace(SECOND_SHOULDER, start=SpanStart("second", 0, 5))
    assert any("no other strip" in text for text in faults(itself, BODY))


def test_no_stitch_is_worked_into_by_two_strips() -> None:
    near = replace(SECOND_SHOULDER, start=SpanStart("body", 4, 6))
    assert faults(near, BODY, FIRST_SHOULDER) == ("row 1 works into 2 stitches of body that first works into too",)
    over_body = replace(SLEEVES[0], start=SpanStart("yoke", 8, 7))
    assert faults(over_body, YOKE, RAGLAN_BODY) == ("row 1 works into 2 stitches of yoke that body works into too",)


def test_stitches_are_counted_from_the_starting_edge_whichever_way_the_row_goes() -> None:
    start = SpanStart("body", 4, 10)
    there = Strip("part", start, "rows", (row("RS", (HDC, 6), (leave(), 4)),))
    back = replace(there, rows=(row("WS", (HDC, 6), (leave(), 4)),))
    assert worked_into(there) == frozenset(range(4, 10))
    assert worked_into(back) == frozenset(range(8, 14))


def test_a_band_picks_up_what_its_start_says() -> None:
    short = replace(BAND, rows=(row("RS", (Operation("picked up", "sc", 0, 1), 14)), even(14, "WS")))
    assert faults(short) == ("row 1 picks up 14 stitches, and the start gives 15",)
    worked = replace(BAND, rows=(even(15), even(15, "WS")))
    assert "row 1 has a stitch among stitches picked up" in faults(worked)


def test_a_row_of_a_graded_piece_that_does_not_follow_is_shown_at_its_section() -> None:
    design, bodies, grading = pullover()
    assert problems_of(check_rows_follow, (design, bodies, grading)) == ()
    broken = with_piece(grading, "sleeve", "B", lambda piece: with_rows(piece, lambda rows: (*rows[:-1], rows[0])))
    problems = problems_of(check_rows_follow, (design, bodies, broken))
    assert places(problems) == [("rows-do-not-follow", "error", "B", "taper: {target: edge(bac")]
    assert "row 40 works over 24 stitches, and row 39 gives 42" in problems[0].message
