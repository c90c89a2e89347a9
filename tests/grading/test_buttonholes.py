"""Buttonholes: where they stand, how their rows are worked, and what would fit where they don't."""

import pytest
from tiny_specs import THREE_SIZES, graded, problems, row_text, told

from gaugewright.checks.rows import row_faults
from gaugewright.grading.buttonholes import spaced_evenly

# Of every fabric here 1 cm is a stitch or a row.
PIECES = """\
pieces:
  panel: {{fabric: plain, colours: oat, start: {{chain: 20 cm}}, sections: [even: {{length: {length}}}], edges: {{starting: [front], far: [back]}}}}
  band:
    fabric: {fabric}
    colours: kelp
    start: {{pick_up: {edges}, corners: {corners}}}
    sections: [{section}]
    buttonholes: {{count: {count}, size: {size}, edge: {edge}, first: {first}, last: {last}}}
"""
USUAL = {
    "corners": "none",
    "length": "40 cm", "fabric": "plain", "edges": "[panel.front, panel.top]", "section": "even: {rows: 5}",
    "count": "4", "size": "2 cm", "edge": "panel.front", "first": "4 cm", "last": "3 cm",
}  # fmt: skip


def spec(**changed: str) -> str:
    return THREE_SIZES + PIECES.format(**(USUAL | changed))


def band_rows(text: str, size: str = "M") -> list[str]:
    piece = graded(text).pieces["band"][size]
    assert row_faults(piece.main, piece.strips) == ()
    return [row_text(row) for row in piece.main.rows]


def test_a_row_of_chains_over_skipped_stitches_and_plain_rows_about_it() -> None:
    rows = band_rows(spec())
    holes = "3 hdc 2 ch 9 hdc 2 ch 9 hdc 2 ch 9 hdc 2 ch 22 hdc"
    assert rows == ["RS kelp: 60 pick = 60", "WS kelp: ch(0) 60 hdc = 60", f"RS kelp: ch(0) {holes} = 60", *(f"{side} kelp: ch(0) 60 hdc = 60" for side in ("WS", "RS"))]


def test_a_row_that_begins_at_the_other_end_meets_the_last_one_first() -> None:
    assert band_rows(spec(section="even: {rows: 4}"))[1] == "WS kelp: ch(0) 22 hdc 2 ch 9 hdc 2 ch 9 hdc 2 ch 9 hdc 2 ch 3 hdc = 60"


def test_on_the_edge_where_the_band_ends_they_are_counted_from_its_end() -> None:
    assert band_rows(spec(edges="[panel.top, panel.front]"))[2] == "RS kelp: ch(0) 22 hdc 2 ch 9 hdc 2 ch 9 hdc 2 ch 9 hdc 2 ch 3 hdc = 60"


def test_only_the_edge_with_the_holes_has_them() -> None:
    plan = graded(spec()).plans["band"]["M"].holes
    assert plan is not None and plan.along == 40 and all(1 < first and first + plan.each <= 40 for first in plan.firsts)


def test_number_and_width_are_the_same_in_all_sizes_and_the_places_follow_the_edge() -> None:
    plans = graded(spec(length="body.bust / 2")).plans["band"]
    assert [plan.holes and (len(plan.holes.firsts), plan.holes.each, plan.holes.along) for plan in plans] == [(4, 2, 40), (4, 2, 50), (4, 2, 60)]
    assert plans["S"].holes != plans["L"].holes


def test_a_chain_that_counts_is_the_first_stitch() -> None:
    text = spec(fabric="tall", section="even: {rows: 5}", size="1 cm")
    assert band_rows(text)[2].startswith("RS kelp: ch(1) 3 dc ch 10 dc ch")


def test_one_buttonhole_stands_at_its_first_place() -> None:
    assert spaced_evenly(40, 1, 2, 5, 3) == (5,)


@pytest.mark.parametrize(("along", "count", "each", "first", "last"), [(61, 7, 3, 4.3, 2.9), (90, 9, 1, 2.0, 2.0), (35, 4, 2, 3.5, 3.5)])
def test_gaps_differ_by_a_stitch_at_most(along: int, count: int, each: int, first: float, last: float) -> None:
    places = spaced_evenly(along, count, each, first, last)
    gaps = [after - before for before, after in zip(places, places[1:], strict=False)]
    assert max(gaps) - min(gaps) <= 1
    assert abs(places[0] - 1 + each / 2 - first) <= 0.5 and abs(along - (places[-1] - 1 + each / 2) - last) <= 0.5


def only_problem(text: str) -> tuple[str, str]:
    [problem] = problems(text)
    assert problem.origin is not None and problem.origin.line_text.strip().startswith("buttonholes:")
    return problem.name, problem.hint


@pytest.mark.parametrize(
    ("changed", "hint", "followed"),
    [
        ({"count": "12"}, "write `count: 9`, or a smaller `size`, `first` or `last`", {"count": "9"}),
        ({"first": "1 cm"}, "make `first` at least 2.0 cm", {"first": "2 cm"}),
        ({"last": "5 mm"}, "make `last` at least 2.0 cm", {"last": "2 cm"}),
        ({"section": "even: {rows: 2}"}, "make the band at least 3.0 cm deep", {"section": "even: {length: 3 cm}"}),
        ({"count": "1", "first": "40 cm"}, "make `first` smaller", {"count": "1", "first": "20 cm"}),
    ],
)
def test_what_does_not_fit_is_told_with_what_would(changed: dict[str, str], hint: str, followed: dict[str, str]) -> None:
    assert only_problem(spec(**changed)) == ("buttonholes-do-not-fit", hint)
    assert told(spec(**followed)) == []


@pytest.mark.parametrize(
    "changed",
    [
        {"edges": "[panel.front, panel.top, panel.back]", "edge": "panel.top"},
        {"section": "taper: {rows: 5, target: 50 cm}"},
        {"edge": "panel.back"},
    ],
)
def test_buttonholes_out_of_place(changed: dict[str, str]) -> None:
    assert only_problem(spec(**changed))[0] == "buttonholes-misplaced"


def test_a_piece_from_a_chain_has_no_edge_for_buttonholes() -> None:
    text = spec().replace("start: {pick_up: [panel.front, panel.top], corners: none}", "start: {chain: 60 cm}")
    assert only_problem(text)[0] == "buttonholes-misplaced"


def test_a_place_that_follows_another_piece_waits_for_it() -> None:
    ruler = "  ruler: {fabric: plain, colours: oat, start: {chain: 6 cm}, sections: [even: {length: 5 cm}]}\n"
    plan = graded(spec(first="finished(ruler.width)") + ruler).plans["band"]["M"].holes
    assert plan is not None and plan.firsts[0] == 6


def test_a_row_of_buttonholes_may_turn_a_corner_beyond_them() -> None:
    rows = band_rows(spec(corners="hem"))
    assert rows[1:3] == ["WS kelp: ch(0) 20 hdc corner inc 39 hdc = 62", "RS kelp: ch(0) 3 hdc 2 ch 9 hdc 2 ch 9 hdc 2 ch 9 hdc 2 ch 2 hdc corner inc 21 hdc = 64"]


def test_a_buttonhole_in_a_corner_is_refused_with_what_would_do() -> None:
    assert [(p.name, p.size, p.hint) for p in problems(spec(corners="hem", last="1 cm"))] == [("buttonholes-do-not-fit", "S, M, L", "make `last` at least 2.0 cm")]
    assert problems(spec(corners="hem", last="2 cm")) == []
