"""Edges picked up in rounds: which close a ring, what waits for which seam, and how the rounds go on."""

import pytest
from tiny_specs import DROPPED_BACK, ONE_SIZE, designed, one_piece, told

from gaugewright.checks.rows import row_faults
from gaugewright.grading.waiting import bands_after, seams_before

SHOULDER, SIDE = "  - {join: back.shoulder, to: front.shoulder}\n", "  - {join: back.side, to: front.side}\n"
BODY = DROPPED_BACK + """\
  front: {like: back, sections: [even: {to: shoulder}, neck: {shape: round, width: 20 cm, depth: 7 cm}]}
"""


def body(edges: str, seams: str, fabric: str = "round", section: str = "even: {rounds: 3}", make: int = 1) -> str:
    picked = f"  picked: {{make: {make}, fabric: {fabric}, colours: oat, start: {{pick_up: {edges}}}, sections: [{section}]}}\n"
    return ONE_SIZE + BODY + picked + (f"seams:\n{seams}" if seams else "")


NECK, ARMHOLE, HEM = "[back.neck, front.neck]", "[back.armhole, front.armhole]", "[back.hem, front.hem]"


@pytest.mark.parametrize(
    ("edges", "seams", "before"),
    [(NECK, SHOULDER + SIDE, (0,)), (ARMHOLE, SHOULDER + SIDE, (0, 1)), (ARMHOLE, SIDE + SHOULDER, (0, 1)), (HEM, SHOULDER + SIDE, (1,))],
)
def test_a_ring_waits_for_the_seams_that_close_it(edges: str, seams: str, before: tuple[int, ...]) -> None:
    design = designed(body(edges, seams))
    assert seams_before(design, design.piece("picked")) == before
    assert [bands_after(design, index) for index in range(2)] == [("picked",) if index == before[-1] else () for index in range(2)]


@pytest.mark.parametrize(
    ("edges", "seams"), [(NECK, SIDE), (ARMHOLE, SHOULDER), (ARMHOLE, SIDE), (HEM, SHOULDER), (NECK, ""), ("[back.neck]", SHOULDER + SIDE)]
)
def test_edges_that_close_no_ring(edges: str, seams: str) -> None:
    [(name, line, _)] = told(body(edges, seams))
    assert name == "ring-open" and line.startswith("picked:")
    assert told(body(edges, seams, fabric="plain", section="even: {rows: 3}")) == []


def test_what_is_picked_up_on_a_ring_waits_with_it() -> None:
    text = body(ARMHOLE, SHOULDER + SIDE).replace(
        "seams:", "  cuff: {fabric: round, colours: oat, start: {pick_up: [picked.top]}, sections: [even: {rounds: 2}]}\nseams:"
    )
    design = designed(text)
    assert seams_before(design, design.piece("cuff")) == (0, 1)
    assert bands_after(design, 1) == ("picked", "cuff")


def test_the_second_of_two_waits_for_the_seams_of_the_other_side() -> None:
    fronts = (
        "  right: {fabric: plain, colours: oat, start: {chain: 25 cm}, sections: [even: {to: shoulder}],"
        " edges: {starting: [side, underarm, armhole], far: [front], top: shoulder}}\n  left: {like: right, mirrored: true}\n"
    )
    seams = "".join(f"  - {{join: back.{edge}, to: {front}.{edge}}}\n" for edge in ("shoulder", "side") for front in ("right", "left"))
    text = body("[back.armhole, right.armhole]", seams, make=2).replace("  picked:", f"{fronts}  picked:")
    design = designed(text)
    assert seams_before(design, design.piece("picked")) == (0, 1, 2, 3)
    assert told(text) == []


def test_a_sleeve_worked_down_tapers_in_pairs_to_its_wrist() -> None:
    sleeve = one_piece(body(ARMHOLE, SHOULDER + SIDE, section="taper: {length: 25 cm, target: 24 cm}"), "picked")
    counts = tuple(sleeve.main.counts())
    assert sleeve.main.worked == "joined rounds" and counts[0] == 40 and counts[-1] == 24 and len(counts) == 25
    assert {before - after for before, after in zip(counts, counts[1:], strict=False)} == {0, 2}
    assert row_faults(sleeve.main, sleeve.strips) == ()
    assert set(sleeve.edges) == {"bottom", "top"}


def test_rounds_are_joined_turned_or_spiral_as_the_fabric_says() -> None:
    for worked, sides in (("joined rounds", ["RS"] * 3), ("turned rounds", ["RS", "WS", "RS"]), ("spiral rounds", ["RS"] * 3)):
        text = body(NECK, SHOULDER).replace("worked: joined rounds", f"worked: {worked}")
        strip = one_piece(text, "picked").main
        assert strip.worked == worked and [row.side for row in strip.rows] == sides


def test_a_ring_has_no_row_ends_to_name() -> None:
    text = body(NECK, SHOULDER).replace("start: {pick_up", "edges: {both: [rim]}, start: {pick_up")
    assert [name for name, _, _ in told(text)] == ["edges-in-rounds"]


def test_two_bands_take_the_same_from_both_of_two_mirrored_fronts() -> None:
    """One spec of two armhole bands names one front; the other one's edge is taken up as well."""
    fronts = (
        "  right: {fabric: plain, colours: oat, start: {chain: 25 cm}, sections: [even: {to: underarm}, armhole: {to: shoulder, target: 20 cm, at: armhole}],"
        " edges: {starting: [side, underarm, armhole], far: [front], top: shoulder}}\n  left: {like: right, mirrored: true}\n"
    )
    seams = "".join(f"  - {{join: back.{edge}, to: {front}.{edge}}}\n" for edge in ("shoulder", "side") for front in ("right", "left"))
    text = body("[back.armhole, right.armhole], take_up: whole stitch", seams, make=2).replace("  picked:", f"{fronts}  picked:")
    right, left = one_piece(text, "right"), one_piece(text, "left")
    assert tuple(right.main.counts()) == tuple(left.main.counts()) and right.main.last_count == 21
    assert right.finished["top_width"] == left.finished["top_width"] == 200.0
