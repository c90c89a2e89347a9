"""A border round all four edges of a blanket: it goes round, and its corners gain what lies flat."""

import pytest
from external.sources import source
from shapely import box
from tiny_specs import designed, problems, told

from gaugewright import pipeline
from gaugewright.design.model import Design
from gaugewright.grading.grade import Grading

SPEC = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
sizes: {dimensions: {Lap: {width: 60 cm, length: 80 cm}, Bed: {width: 121 cm, length: 160 cm}}}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics:
  plain: {stitch: hdc, gauge: "10 sts, 8 rows / 10 cm"}
  edge: {stitch: STITCH, worked: joined rounds, turning_chain: {chains: 1}, gauge: "GAUGE / 10 cm"}
pieces:
  blanket: {fabric: plain, start: {chain: size.width}, sections: [even: {length: size.length}], edges: {starting: [near], far: [off], bottom: foot, top: head}}
  border: {fabric: edge, start: {pick_up: [EDGES]}, sections: [even: {length: 4 cm}]}
"""
ROUND = "blanket.head, blanket.off, blanket.foot, blanket.near"


def made(stitch: str, gauge: str, edges: str = ROUND) -> tuple[Design, Grading]:
    design = designed(SPEC.replace("STITCH", stitch).replace("GAUGE", gauge).replace("EDGES", edges))
    return design, pipeline.grade(design).grading


@source("common practice", "3 sc in each corner of a border, which gains eight stitches a round")
def test_a_border_in_a_square_fabric_gains_eight_a_round() -> None:
    _, grading = made("sc", "12 sts, 12 rows")
    for piece in grading.pieces["border"]:
        counts = list(piece.main.counts())
        assert {b - a for a, b in zip(counts, counts[1:], strict=False)} == {8}


@pytest.mark.parametrize(("stitch", "gauge"), [("sc", "12 sts, 12 rows"), ("sc", "11 sts, 13 rows"), ("hdc", "11 sts, 8 rows"), ("dc", "12 sts, 6 rows"), ("tr", "12 sts, 4 rows")])
def test_its_outer_edge_is_as_long_as_a_frame_so_wide(stitch: str, gauge: str) -> None:
    """Held to a rectangle offset by the border's depth, with mitred corners, within a stitch and a half a corner."""
    design, grading = made(stitch, gauge)
    cloth = design.fabric("edge").gauge
    for blanket, border in zip(grading.pieces["blanket"], grading.pieces["border"], strict=True):
        first, last = border.main.rows[0].makes, border.main.rows[-1].makes
        inner = box(0, 0, blanket.worked["width"], blanket.worked["length"])
        depth = (len(border.main.rows) - 1) * cloth.row_height
        frame = inner.buffer(depth, join_style="mitre")
        assert (last - first) * cloth.stitch_width == pytest.approx(frame.length - inner.length, abs=4 * 1.5 * cloth.stitch_width)
    assert pipeline.errors_of(pipeline.check(pipeline.grade(design))) == ()


@pytest.mark.parametrize("edges", ["blanket.foot, blanket.near, blanket.head, blanket.off", "blanket.off, blanket.head, blanket.near, blanket.foot"])
def test_it_may_begin_at_any_corner_and_go_either_way(edges: str) -> None:
    _, grading = made("sc", "12 sts, 12 rows", edges)
    assert all(piece.main.rows[-1].makes > piece.main.rows[0].makes for piece in grading.pieces["border"])


@pytest.mark.parametrize("edges", ["blanket.head, blanket.foot, blanket.off, blanket.near", "blanket.head, blanket.off, blanket.foot"])
def test_edges_that_do_not_follow_one_another_close_no_ring(edges: str) -> None:
    text = SPEC.replace("STITCH", "sc").replace("GAUGE", "12 sts, 12 rows").replace("EDGES", edges)
    assert [name for name, _, _ in told(text)] == ["ring-open"]


def test_a_counted_turning_chain_in_the_way_of_a_corner_is_named_with_what_would_do() -> None:
    text = SPEC.replace("STITCH", "dc").replace("joined rounds, turning_chain: {chains: 1}", "turned rounds").replace("GAUGE", "12 sts, 6 rows").replace("EDGES", ROUND)
    [problem] = dict.fromkeys((found.name, found.hint) for found in problems(text))
    assert problem == ("corner-impossible", "don't count the turning chain of edge: `turning_chain: {chains: 3}`")
    assert problems(text.replace("worked: turned rounds", "worked: turned rounds, turning_chain: {chains: 3}")) == []
