"""A band that lies flat against offsets of the edge it is on, drawn by a geometry library."""

import math

import pytest
from external.sources import source
from shapely import LineString, Polygon
from tiny_specs import ONE_SIZE, graded

from gaugewright.grading.grade import Grading

BODY = """\
fabrics:
  plain: {stitch: hdc, gauge: "14 sts, 11 rows / 10 cm"}
  band: {stitch: sc, worked: turned rounds, gauge: "15 sts, 17 rows / 10 cm"}
levels: {shoulder: 50 cm, underarm: 28 cm}
pieces:
  back:
    fabric: plain
    colours: oat
    start: {chain: 50 cm}
    sections: [even: {to: underarm}, armhole: {to: shoulder, target: ABOVE, block: BLOCK}, neck: BACK]
    edges: {both: [side, underarm, armhole]}
  front: {like: back, sections: [even: {to: underarm}, armhole: {to: shoulder, target: ABOVE, block: BLOCK}, neck: FRONT]}
  neck_band: {fabric: band, colours: oat, start: {pick_up: [back.neck, front.neck]}, sections: [even: {length: 3 cm}]}
  armband: {make: 2, fabric: band, colours: oat, start: {pick_up: [back.armhole, front.armhole]}, sections: [even: {length: 3 cm}]}
seams:
  - {join: back.shoulder, to: front.shoulder}
  - {join: back.side, to: front.side}
"""
STITCH, ROW = 100 / 15, 100 / 17
HEAD = ONE_SIZE.partition("fabrics:")[0] + "sizes: {own: {M: {bust: 100 cm}}}\n"


def made(back: str, front: str, above: str = "36 cm", block: str = "4 cm") -> Grading:
    return graded(HEAD + BODY.replace("BACK", back).replace("FRONT", front).replace("ABOVE", above).replace("BLOCK", block))


def losses(grading: Grading, key: str) -> list[float]:
    """What each row after the first is shorter than the first, mm."""
    rows = grading.pieces[key]["M"].main.rows
    return [(rows[0].makes - row.makes) * STITCH for row in rows[1:]]


def held(found: list[float], flat: list[float], corners: int) -> None:
    """Corners change in twos: a row may be a stitch off at each; half a stitch more for steps taken for a line."""
    for row, (lost, expected) in enumerate(zip(found, flat, strict=True), start=2):
        assert lost == pytest.approx(expected, abs=1.5 * corners * STITCH), f"row {row}"


@source("library", "shapely, parallel offset of a line with mitred joins")
@pytest.mark.parametrize("depth", [12, 14, 17, 20])
def test_a_v_point(depth: int) -> None:
    grading = made("{shape: round, width: 18 cm, depth: 3 cm}", f"{{shape: v, width: 18 cm, depth: {depth} cm}}")
    side = grading.pieces["front"]["M"].outline.sides[0].far
    half, deep = abs(side[-1][0] - side[0][0]), side[-1][1] - side[0][1]
    path = LineString([(-half, deep), (0, 0), (half, deep)])
    depths = [ROW * row for row in range(1, 5)]
    held(losses(grading, "neck_band"), [path.length - path.offset_curve(d, join_style="mitre", mitre_limit=50).length for d in depths], 1)


@source("library", "shapely, polygon shrunk with mitred joins")
def test_four_corners_of_a_square_neck() -> None:
    grading = made("{shape: square, width: 18 cm, depth: 8 cm}", "{shape: square, width: 18 cm, depth: 14 cm}")
    opening = Polygon([(0, 0), (180, 0), (180, 220), (0, 220)])  # laid open at the shoulders
    depths = [ROW * row for row in range(1, 5)]
    held(losses(grading, "neck_band"), [opening.length - opening.buffer(-d, join_style="mitre").length for d in depths], 4)


@source("library", "shapely, parallel offset of a line with mitred joins: blocks and quarter ellipses in many short chords")
def test_the_underarm_of_an_armhole() -> None:
    grading = made("{shape: round, width: 18 cm, depth: 3 cm}", "{shape: round, width: 18 cm, depth: 8 cm}")
    wide, high, block, top = 30.0, 105.0, 40.0, 220.0
    curve = [(block + wide * math.sin(turn), high - high * math.cos(turn)) for turn in (math.pi / 2 * step / 400 for step in range(401))]
    path = LineString([(-x, y) for x, y in [(block + wide, top), *curve[::-1]]] + [*curve, (block + wide, top)])
    depths = [ROW * row for row in range(1, 5)]
    flat = [path.length - path.offset_curve(d, join_style="mitre", mitre_limit=50).length for d in depths]
    assert flat == pytest.approx([math.pi * d for d in depths], rel=0.03)
    held(losses(grading, "armband"), flat, 2)


@source("library", "shapely, parallel offset of a line with mitred joins: a block that takes all turns sharply")
def test_the_sharp_underarm_of_a_modified_drop() -> None:
    grading = made("{shape: round, width: 18 cm, depth: 3 cm}", "{shape: round, width: 18 cm, depth: 8 cm}", "36 cm", "7 cm")
    path = LineString([(-70, 220), (-70, 0), (70, 0), (70, 220)])
    depths = [ROW * row for row in range(1, 5)]
    held(losses(grading, "armband"), [path.length - path.offset_curve(d, join_style="mitre").length for d in depths], 2)


@source("common practice", "crochet borders: three stitches worked into each corner of an edge, in single crochet")
def test_three_stitches_into_a_corner_of_single_crochet_as_wide_as_high() -> None:
    text = HEAD + """\
fabrics: {square: {stitch: sc, gauge: "10 sts, 10 rows / 10 cm"}}
pieces:
  mat: {fabric: square, colours: oat, start: {chain: 20 cm}, sections: [even: {length: 20 cm}], edges: {starting: [front], far: [back]}}
  border: {fabric: square, colours: kelp, start: {pick_up: [mat.front, mat.top, mat.back]}, sections: [even: {rows: 4}]}
"""
    rows = graded(text).pieces["border"]["M"].main.rows
    for row in rows[1:]:
        corners = [run.operation for run in row.runs if run.operation.kind == "corner increase"]
        assert [(one.uses, one.makes) for one in corners] == [(1, 3), (1, 3)]
