"""A border round joined motifs: its outline, its stitches, the grid counted with it, what can't be."""

from dataclasses import replace

import pytest
import shapely
from external.sources import source
from tiny_specs import designed, problems, told

from gaugewright import pipeline
from gaugewright.checks.model import CheckResult
from gaugewright.drawings.motif_figures import polygon
from gaugewright.gauge.model import Gauge
from gaugewright.grading.grade import Grading
from gaugewright.grading.layout_model import Layout
from gaugewright.grading.mitre import Corner, MitredPlan
from gaugewright.grading.rim import offset, pick_rim, rim_of

SPEC = """\
gaugewright: 1
pattern: {title: Squares, workshop: Ferry Lane Workshop}
sizes: {dimensions: {Small: {width: 46 cm, length: 60 cm}, Large: {width: 75 cm, length: 91 cm}}}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics:
  tall: {stitch: dc, worked: joined rounds, gauge: "15 sts, 7.5 rows / 10 cm"}
  edge: {stitch: sc, worked: joined rounds, gauge: "15 sts, 15 rows / 10 cm"}
  flat: {stitch: sc, gauge: "15 sts, 15 rows / 10 cm"}
  ribbed: {like: edge, multiple: {of: 2}}
pieces:
  square: {fabric: tall, start: {centre: flat}, sections: [motif: {sides: 4, target: 13 cm}], grid: {across: size.width, down: size.length}}
  border: {fabric: edge, start: {pick_up: square.rim}, sections: [even: {rounds: 6}]}
"""


def graded(text: str) -> Grading:
    return pipeline.grade(designed(text)).grading


def results(text: str) -> dict[str, CheckResult]:
    return {one.name: one for one in pipeline.check(pipeline.grade(designed(text)))}


def test_counts_by_hand() -> None:
    """Squares of 5 rounds 13.33 cm wide; the border is 4 cm, so 8 cm go of 46 and 60: 38 and 52 cm are 3 and 4 squares.
    Fourteen sides of 19 stitches, ten joins and four corners are 280; eight more each round."""
    grading = graded(SPEC)
    layout = grading.pieces["square"]["Small"].layout
    assert layout is not None and (layout.across, layout.down, layout.border) == (3, 4, pytest.approx(40))
    border = grading.pieces["border"]["Small"]
    assert [row.makes for row in border.main.rows] == [14 * 19 + 10 + 4, 288, 296, 304, 312, 320]
    assert border.finished["joined_width"] == pytest.approx(3 * 400 / 3 + 80)
    assert border.finished["joined_length"] == pytest.approx(4 * 400 / 3 + 80)
    assert grading.pieces["square"]["Small"].finished["joined_width"] == pytest.approx(400)


def test_without_its_border_a_grid_would_come_nearest_otherwise() -> None:
    """73 cm are 5 or 6 squares of 13.33 cm (66.7, 80): 5 alone is nearer by a hair, with 4 cm on each side 5 make 74.7."""
    text = SPEC.replace("75 cm", "74 cm")
    alone = graded(text[: text.index("  border:")]).pieces["square"]["Large"].layout
    with_border = graded(text).pieces["square"]["Large"].layout
    assert alone is not None and with_border is not None and (alone.across, with_border.across) == (6, 5)


@pytest.mark.parametrize("sides", [4, 6])
def test_the_rim_is_the_outline_of_the_motifs(sides: int) -> None:
    layout = Layout(sides, 4, 5, 90.0)
    union = shapely.union_all([shapely.Polygon(polygon(sides, 45.0, (place.x, place.y))).buffer(1e-4, join_style="mitre") for place in layout.places()])
    rim = rim_of(layout)
    outline = shapely.Polygon(rim.points)
    assert outline.is_valid and outline.symmetric_difference(union).area < 1
    assert rim.length == pytest.approx(union.exterior.length, abs=0.01) == pytest.approx(outline.length)
    grown = shapely.Polygon(offset(rim, 12.0))
    assert grown.symmetric_difference(outline.buffer(12.0, join_style="mitre")).area < 1e-3 * grown.area


def test_a_rim_begins_at_an_outer_corner_and_has_six_more_of_them_than_valleys() -> None:
    for down in range(1, 6):
        rim = rim_of(Layout(6, 3, down, 100.0))
        assert rim.outer[-1] and rim.corners - rim.joins == 6
        assert rim_of(Layout(4, 3, down, 100.0)).corners == 4


@source("common practice", "3 sc in each corner of a border, which gains eight stitches a round")
def test_round_squares_a_border_of_square_stitches_gains_eight_a_round() -> None:
    for piece in graded(SPEC).pieces["border"]:
        counts = list(piece.main.counts())
        assert {b - a for a, b in zip(counts, counts[1:], strict=False)} == {8}


@pytest.mark.parametrize("sides", [4, 6])
@pytest.mark.parametrize(("stitch", "gauge"), [("sc", "15 sts, 15 rows"), ("sc", "14 sts, 17 rows"), ("hdc", "13 sts, 10 rows"), ("dc", "15 sts, 7.5 rows")])
def test_the_grid_closes_with_its_border(sides: int, stitch: str, gauge: str) -> None:
    """The last round is as long as the motifs' outline set off by its depth, within a stitch and a half a corner; so is each on the way."""
    text = SPEC.replace("sides: 4", f"sides: {sides}").replace("edge: {stitch: sc, worked: joined rounds, gauge: \"15 sts, 15 rows", f"edge: {{stitch: {stitch}, worked: joined rounds, turning_chain: {{chains: 1}}, gauge: \"{gauge}").replace("rounds: 6", "rounds: 4")
    design, grading = designed(text), graded(text)
    cloth = design.fabric("edge").gauge
    for square, border in zip(grading.pieces["square"], grading.pieces["border"], strict=True):
        assert square.layout is not None
        motifs = [shapely.Polygon(polygon(sides, square.layout.width / 2, (place.x, place.y))).buffer(1e-4, join_style="mitre") for place in square.layout.places()]
        inner = shapely.union_all(motifs)
        corners = len(inner.simplify(0.01).exterior.coords) - 1
        first = border.main.rows[0].makes
        assert first * cloth.stitch_width == pytest.approx(inner.exterior.length, rel=0.03)
        for number, row in enumerate(border.main.rows[1:], start=1):
            frame = inner.buffer(number * cloth.row_height, join_style="mitre")
            assert (row.makes - first) * cloth.stitch_width == pytest.approx(frame.exterior.length - inner.exterior.length, abs=corners * 1.5 * cloth.stitch_width)
        whole = inner.buffer(border.outline.heights[-1], join_style="mitre").bounds
        assert border.finished["joined_width"] == pytest.approx(whole[2] - whole[0], abs=0.01)
        assert border.finished["joined_length"] == pytest.approx(whole[3] - whole[1], abs=0.01)
    assert pipeline.errors_of(pipeline.check(pipeline.grade(design))) == ()


def test_hexagon_corners_gain_and_valleys_lose_what_a_third_of_a_right_angle_and_a_half_takes() -> None:
    """A turn of 60 degrees at 15 stitches and 15 rows to 10 cm: 2 tan 30 = 1.155 stitches a round; in twos, 6 after five rounds."""
    plan = graded(SPEC.replace("sides: 4", "sides: 6")).plans["border"]["Small"]
    section = plan.sections[0]
    assert isinstance(section, MitredPlan)
    rates = {corner.site.kind: sum(corner.changes) for corner in section.corners}
    assert rates == {"outer": 6, "valley": -6}


def test_stitches_are_alike_along_the_sides_or_shared_out_over_the_whole() -> None:
    layout = Layout(4, 3, 4, 100.0)
    assert set(pick_rim(layout, 20, 100 / 20.5).along) == {20}  # stitch for stitch: 2.5 % off
    assert set(pick_rim(layout, 20, 100 / 23).along) == {23}
    shared = pick_rim(layout, 20, 100 / 7.4)
    assert sorted(set(shared.along)) == [7, 8] and sum(shared.along) == 104 == round(14 * 7.4)
    assert (shared.each, shared.more) == (6, 6)


def test_another_gauge_moves_what_is_joined_and_its_border() -> None:
    whole = pipeline.grade(designed(SPEC))
    wider = pipeline.worked_at(whole, {"tall": Gauge(15, 110, 7.5, 110)})
    assert [one.layout.width for one in wider.grading.pieces["square"] if one.layout] == pytest.approx([110 * 4 / 3] * 2)
    assert wider.grading.pieces["border"]["Small"].finished["joined_width"] == pytest.approx(1.1 * 480)  # other fabrics follow in proportion


BORDER = "border: {fabric: edge, start: {pick_up: square.rim}, sections: [even: {rounds: 6}]}"


@pytest.mark.parametrize(
    ("new", "name", "follow"),
    [
        ("border: {fabric: flat, start: {pick_up: square.rim}, sections: [even: {rows: 6}]}", "rim-start", ""),
        ("border: {fabric: edge, make: 2, start: {pick_up: square.rim}, sections: [even: {rounds: 6}]}", "rim-start", ""),
        ("border: {fabric: edge, start: {pick_up: square.rim, take_up: half stitch}, sections: [even: {rounds: 6}]}", "rim-start", ""),
        ("border: {fabric: edge, start: {pick_up: [square.rim, square.edge]}, sections: [even: {rounds: 6}]}", "rim-start", ""),
        ("border: {fabric: flat, start: {chain: 3 cm, join: square.rim}}", "rim-start", ""),
        (f"{BORDER}\n  more: {{like: border}}", "rim-start", ""),
        ("border: {fabric: edge, start: {pick_up: square.rim}, sections: [taper: {rounds: 6, target: 200 cm}]}", "rim-shaped", ""),
        ("border: {fabric: ribbed, start: {pick_up: square.rim}, sections: [even: {rounds: 6}]}", "rim-in-pattern", ""),
        (f"{BORDER}\nseams: [{{join: square.rim, to: square.edge}}]", "rim-start", ""),
        ("border: {fabric: edge, start: {pick_up: square.rim, corners: [hem]}, sections: [even: {rounds: 6}]}", "no-such-corner", "corners: [outer]"),
        ("border: {fabric: edge, start: {pick_up: square.rim}, sections: [even: {length: edge(square.rim) / 50}]}", "piece-cycle", ""),
    ],
)
def test_what_cannot_be(new: str, name: str, follow: str) -> None:
    text = SPEC.replace(BORDER, new)
    found = told(text)
    assert {one[0] for one in found} == {name}, problems(text)
    if follow:
        assert any(follow in one.hint for one in problems(text))
        assert problems(text.replace("corners: [hem]", follow)) == []


def test_a_border_deeper_than_a_valley_has_stitches_for_is_refused_with_a_depth_that_does() -> None:
    text = SPEC.replace("sides: 4", "sides: 6").replace("even: {rounds: 6}", "even: {length: 12 cm}")
    deep = problems(text.replace("46 cm, length: 60 cm", "90 cm, length: 90 cm").replace("75 cm", "99 cm"))
    assert {one.name for one in deep} == {"corner-impossible"}
    most = min(float(one.hint.partition("at most ")[2].partition(" cm")[0]) for one in deep)
    assert problems(SPEC.replace("sides: 4", "sides: 6").replace("even: {rounds: 6}", f"even: {{length: {most} cm}}")) == []


def test_a_deep_border_is_shaped_too() -> None:
    """Unlike a sleeve or a collar it can't hang by itself: it lies flat beside what it goes round."""
    counts = list(graded(SPEC.replace("rounds: 6", "length: 8 cm")).pieces["border"]["Large"].main.counts())
    assert counts[-1] - counts[0] == 8 * (len(counts) - 1)


def test_a_border_that_asks_for_no_corners_has_none_and_is_noted() -> None:
    text = SPEC.replace("square.rim}", "square.rim, corners: none}")
    assert len({row.makes for row in graded(text).pieces["border"]["Small"].main.rows}) == 1
    assert [(one.name, one.severity) for one in results(text)["bands-flat"].problems] == [("band-not-flat", "note")]


def test_corners_that_gain_too_little_are_found() -> None:
    whole = pipeline.grade(designed(SPEC))
    pieces = whole.grading.pieces["border"]
    spoilt = pieces.map(lambda one: replace(one, strips=(replace(one.main, rows=(one.main.rows[0],) * 6),)))
    grading = replace(whole.grading, pieces={**whole.grading.pieces, "border": spoilt})
    found = {one.name: one for one in pipeline.check(replace(whole, grading=grading))}
    assert "band-not-flat" in [one.name for one in found["bands-flat"].problems]


def test_corner_sites_name_their_kind_once() -> None:
    plan = graded(SPEC).plans["border"]["Small"]
    kinds = [corner.site.kind for corner in plan.corners if isinstance(corner, Corner)]
    assert kinds == ["outer"] * 4
