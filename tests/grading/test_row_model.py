"""The row model carries what the engine doesn't grade yet: pieces built by hand, counted by hand.

Each is worked as a maker would, and every row must use what the row before makes.
"""

from gaugewright.checks.rows import row_faults, worked_into
from gaugewright.grading.model import (
    ChainStart,
    EdgeStart,
    Operation,
    PickUp,
    Row,
    Run,
    SpanStart,
    Strip,
    chain,
    decrease,
    increase,
    leave,
    pick_up,
    skip,
    slip_over,
    turning_chain,
    work,
)
from gaugewright.vocabulary import Side

HDC = work("hdc")
TURN = turning_chain("hdc", counts=False)
INC = increase("hdc")
DEC = decrease("hdc")


def run(operation: Operation, times: int = 1, colour: str = "oat") -> Run:
    return Run(operation, times, colour, "body")


def row(side: Side, *runs: Run) -> Row:
    return Row(runs, side)


def even(side: Side, stitches: int) -> Row:
    return row(side, run(TURN), run(HDC, stitches))


def block(stitches: int, rows: int, name: str = "body") -> Strip:
    sides: tuple[Side, Side] = ("RS", "WS")
    return Strip(name, ChainStart(stitches, stitches + 2), "rows", tuple(even(sides[i % 2], stitches) for i in range(rows)))


def test_a_neck_divided_with_stitches_left_in_the_middle() -> None:
    body = block(40, 10)
    first = Strip("first shoulder", SpanStart("body", 0, 20), "rows", (
        row("RS", run(TURN), run(HDC, 12), run(leave(), 8)),
        row("WS", run(slip_over(), 2), run(TURN), run(HDC, 10)),
        row("RS", run(TURN), run(HDC, 8), run(DEC)),
    ))
    second = Strip("second shoulder", SpanStart("body", 20, 20), "rows", (
        row("RS", run(slip_over(), 8), run(TURN), run(HDC, 12)),
        row("WS", run(TURN), run(HDC, 10), run(leave(), 2)),
        row("RS", run(TURN), run(DEC), run(HDC, 8)),
    ))
    strips = (body, first, second)
    assert [row_faults(strip, strips) for strip in strips] == [(), (), ()]
    assert list(first.counts()) == list(second.counts()) == [12, 10, 9]
    assert [one.edge_changes() for one in first.rows] == [(0, -8), (-2, 0), (0, -1)]
    assert [one.edge_changes() for one in second.rows] == [(-8, 0), (0, -2), (-1, 0)]
    # Mirrored, neither shoulder has a row more, and the neck is the sixteen stitches nobody works into.
    assert len(first.rows) == len(second.rows)
    assert len(worked_into(first) | worked_into(second)) == 24 and not worked_into(first) & worked_into(second)


def test_a_shoulder_that_works_into_the_others_stitches_is_seen() -> None:
    body = block(40, 10)
    first = Strip("first", SpanStart("body", 0, 22), "rows", (even("RS", 22),))
    second = Strip("second", SpanStart("body", 20, 20), "rows", (even("RS", 20),))
    assert row_faults(second, (body, first, second)) != ()
    beyond = Strip("beyond", SpanStart("body", 30, 12), "rows", (even("RS", 12),))
    assert row_faults(beyond, (body, beyond)) != ()


BACK, SLEEVE = 14, 6  # stitches at the neck; the front has as many as the back


def raglan_round(back: int, sleeve: int) -> Row:
    """An increase on each side of four lines: front, sleeve, back, sleeve, two more on each."""
    part = (run(INC), run(HDC, back - 2), run(INC)), (run(INC), run(HDC, sleeve - 2), run(INC))
    return row("RS", run(TURN), *part[0], *part[1], *part[0], *part[1])


def raglan() -> tuple[Strip, ...]:
    neck = 2 * (BACK + SLEEVE)
    rounds = [row("RS", run(TURN), run(HDC, neck))]
    rounds += [raglan_round(BACK + 2 * n, SLEEVE + 2 * n) for n in range(5)]
    yoke = Strip("yoke", ChainStart(neck, neck, ring=True), "joined rounds", tuple(rounds))
    back, sleeve, under = BACK + 10, SLEEVE + 10, 4
    total = 2 * (back + sleeve)
    body = Strip("body", SpanStart("yoke", 0, total), "joined rounds", (
        row("RS", run(TURN), run(HDC, back), run(skip(), sleeve), run(chain(), under), run(HDC, back), run(skip(), sleeve), run(chain(), under)),
        row("RS", run(TURN), run(HDC, 2 * (back + under))),
    ))
    sleeves = tuple(
        Strip(name, SpanStart("yoke", first, sleeve), "joined rounds", (
            row("RS", run(TURN), run(HDC, sleeve), run(chain(), under)),
            row("RS", run(TURN), run(DEC), run(HDC, sleeve + under - 4), run(DEC)),
        ))
        for name, first in (("sleeve 1", back), ("sleeve 2", 2 * back + sleeve))
    )
    return (yoke, body, *sleeves)


def test_a_raglan_in_the_round_divides_into_body_and_sleeves() -> None:
    strips = raglan()
    assert [row_faults(strip, strips) for strip in strips] == [(), (), (), ()]
    yoke, body, *sleeves = strips
    assert list(yoke.counts()) == [40, 48, 56, 64, 72, 80]  # eight more on each of five rounds
    assert list(body.counts()) == [56, 56]  # 24 + 4 under the arm, twice
    assert [list(sleeve.counts()) for sleeve in sleeves] == [[20, 18], [20, 18]]
    assert sum(len(worked_into(strip)) for strip in (body, *sleeves)) == 80


def test_stitches_are_worked_into_the_chain_under_the_arm() -> None:
    yoke, body, *_ = raglan()
    first = row("RS", run(TURN), run(HDC, 16), run(pick_up("hdc"), 4))
    assert (first.uses, first.makes) == (16, 20)
    assert body.rows[0].uses == yoke.last_count and body.rows[0].makes == 56


def test_colours_in_blocks_within_a_row() -> None:
    rows = (
        row("RS", run(TURN, 1, "oat"), run(HDC, 8, "oat"), run(HDC, 6, "kelp"), run(HDC, 6, "slate")),
        row("WS", run(TURN, 1, "slate"), run(HDC, 7, "slate"), run(HDC, 6, "kelp"), run(HDC, 7, "oat")),
    )
    strip = Strip("block", ChainStart(20, 22), "rows", rows)
    assert row_faults(strip, (strip,)) == ()
    assert [one.colours for one in rows] == [("oat", "kelp", "slate"), ("slate", "kelp", "oat")]
    assert {colour: sum(r.times for r in rows[1].runs if r.colour == colour and r.operation.makes) for colour in rows[1].colours} == {
        "slate": 7, "kelp": 6, "oat": 7
    }


def test_a_band_picked_up_over_several_edges_with_buttonholes() -> None:
    start = EdgeStart((PickUp("front", "front", 30, rows=44), PickUp("back", "neck", 16, of=16), PickUp("other", "front", 30, rows=44)))
    strip = Strip("band", start, "rows", (
        row("RS", run(pick_up("hdc"), 76)),
        row("WS", run(TURN), run(HDC, 4), run(chain(), 2), run(skip(), 2), run(HDC, 10), run(chain(), 2), run(skip(), 2), run(HDC, 58)),
        even("RS", 76),
    ))
    assert row_faults(strip, (strip,)) == ()
    assert list(strip.counts()) == [76, 76, 76]


def test_a_slope_over_three_rows_leaves_four_groups() -> None:
    """Stitches left at a row's end stay for the shoulder seam: k rows make k + 1 groups."""
    strip = Strip("shoulder", ChainStart(20, 22), "rows", (
        even("RS", 20),
        row("WS", run(TURN), run(HDC, 15), run(leave(), 5)),
        row("RS", run(TURN), run(HDC, 15)),
        row("WS", run(TURN), run(HDC, 10), run(leave(), 5)),
        row("RS", run(TURN), run(HDC, 10)),
        row("WS", run(TURN), run(HDC, 5), run(leave(), 5)),
    ))
    assert row_faults(strip, (strip,)) == ()
    groups = [-one.edge_changes()[1] for one in strip.rows if one.edge_changes()[1]] + [strip.last_count]
    assert groups == [5, 5, 5, 5]


def test_changes_belong_to_the_nearer_edge() -> None:
    narrow = row("RS", run(turning_chain("dc", counts=True)), run(increase("dc")), run(work("dc"), 3))
    assert narrow.edge_changes() == (1, 0)
    steps = row("RS", run(DEC, 3), run(DEC, 3))
    assert steps.edge_changes() == (-3, -3)
    middle = row("RS", run(HDC, 4), run(INC), run(HDC, 4))
    assert middle.edge_changes() == (0, 1)
    gathered = row("RS", run(DEC, 10))
    assert gathered.edge_changes() == (-5, -5)
