"""Corners of bands: which are shaped, what they lose or gain on which rows, and what can't be worked. A stitch and a row are 1 cm."""

import pytest
from tiny_specs import DROPPED_BACK, THREE_SIZES, graded, problems, row_text

from gaugewright.grading.mitre import Corner, Site, gaps, runs_out

PANEL = """\
pieces:
  panel: {{fabric: plain, colours: oat, start: {{chain: 20 cm}}, sections: [even: {{length: 30 cm}}], edges: {{starting: [front], far: [back]}}}}
  band: {{fabric: {fabric}, colours: kelp, start: {{pick_up: [panel.front, panel.top]{corners}}}, sections: [{section}]}}
"""


def panel(corners: str = "", section: str = "even: {rows: 3}", fabric: str = "plain") -> str:
    return THREE_SIZES + PANEL.format(corners=f", corners: {corners}" if corners else "", section=section, fabric=fabric)


def rows(text: str, key: str = "band") -> list[str]:
    return [row_text(row) for row in graded(text).pieces[key]["M"].main.rows]


def test_an_outer_corner_gains_two_a_row_where_stitches_are_as_wide_as_high() -> None:
    assert rows(panel()) == ["RS kelp: 50 pick = 50", "WS kelp: ch(0) 20 hdc corner inc 29 hdc = 52", "RS kelp: ch(0) 30 hdc corner inc 21 hdc = 54"]
    assert rows(panel("hem")) == rows(panel())


@pytest.mark.parametrize("text", [panel("none"), panel(section="even: {rows: 8}"), panel(fabric="rib"), panel(section="taper: {rows: 4, target: 47 cm, at: starting}")])
def test_unasked_only_narrow_even_bands_without_a_repeat_are_shaped(text: str) -> None:
    assert not graded(text).plans["band"]["M"].corners


def test_a_deep_band_is_shaped_where_it_is_asked_for() -> None:
    assert len(graded(panel("hem", "even: {rows: 8}")).plans["band"]["M"].corners) == 1


def test_corners_that_are_not_there_are_told_with_those_that_are() -> None:
    [found] = problems(panel("[point, hem]"))
    assert (found.name, found.hint) == ("no-such-corner", "write `corners: [hem]`")
    assert problems(panel("hem")) == []
    [none] = problems(THREE_SIZES + DROPPED_BACK + "  band: {fabric: plain, colours: oat, start: {pick_up: [back.neck], corners: point}, sections: [even: {rows: 3}]}\n")
    assert (none.name, none.hint) == ("no-such-corner", "take out `corners`")


def test_a_fabric_that_repeats_is_refused_where_corners_are_asked_for() -> None:
    [found] = problems(panel("hem", fabric="rib"))
    assert found.name == "corner-impossible" and "repeats over 4 stitches" in found.message and found.origin is not None
    assert problems(panel("none", fabric="rib")) == []


DEEP = """\
pieces:
  back:
    fabric: plain
    colours: oat
    start: {chain: 40 cm}
    sections: [even: {length: 40 cm}, neck: {shape: square, width: 20 cm, depth: 4 cm}]
    edges: {both: [side]}
  front: {like: back, sections: [even: {length: 40 cm}, neck: {shape: square, width: 20 cm, depth: 9 cm}]}
  band: {fabric: round, colours: kelp, start: {pick_up: [back.neck, front.neck]}, sections: [even: {length: DEPTH}]}
seams:
  - {join: back.shoulder, to: front.shoulder}
"""


def test_a_band_deeper_than_its_corners_allow_is_located_and_the_hint_works() -> None:
    text = THREE_SIZES + DEEP.replace("DEPTH", "6 cm")
    [found] = problems(text)
    assert (found.name, found.size) == ("corner-impossible", "S, M, L")
    assert found.origin is not None and "pick_up: [back.neck, front.neck]" in found.origin.line_text
    assert "make the band at most 4.0 cm deep" in found.hint
    assert problems(text.replace("length: 6 cm", "length: 4 cm")) == []
    assert problems(text.replace("front.neck]}, s", "front.neck], corners: none}, s")) == []


def test_four_corners_of_a_square_neck_lose_two_each_on_every_round() -> None:
    assert [row.makes for row in graded(THREE_SIZES + DEEP.replace("DEPTH", "4 cm")).pieces["band"]["M"].main.rows] == [66, 58, 50, 42]


def test_gaps_close_from_both_sides() -> None:
    corners = (Corner(Site("square", 0), 4, (-2, -2, -2)), Corner(Site("square", 0, True), 9, (-2, -2, -2)))
    assert [gaps(corners, 14, row) for row in (1, 2, 3)] == [(3, 4, 5), (2, 2, 4), (1, 0, 3)]
    assert runs_out(corners, 14, counted=False, turned=False) == (4, 2, 0)


def test_a_counted_turning_chain_keeps_the_first_stitch_of_each_row() -> None:
    near_start, near_end = (Corner(Site("square", 0), 2, (-2,)),), (Corner(Site("square", 0), 8, (-2,)),)
    assert runs_out(near_start, 9, counted=True, turned=False) == (2, 2, 1) == runs_out(near_end, 9, counted=True, turned=True)
    assert runs_out(near_start, 9, counted=True, turned=True) is None is runs_out(near_end, 9, counted=True, turned=False)
