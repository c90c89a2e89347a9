"""Drawings arrive on the page where they belong: the right way up, in points, with real labels."""

import math
from io import BytesIO

import pytest
from pypdf.generic import ContentStream
from reportlab.pdfgen.canvas import Canvas
from shapely.geometry import LineString, Point, Polygon as Area

from gaugewright.drawings.primitives import Drawing, Hatch, Label, Polygon, Polyline
from gaugewright.errors import InternalError
from gaugewright.render.pdf import hooks, load_style
from gaugewright.render.pdf.drawing import draw_drawing
from gaugewright.render.pdf.faces import load_faces
from gaugewright.render.pdf.hatch import SPACING, hatch_dots, hatch_segments
from gaugewright.render.pdf.pen import Pen
from gaugewright.render.pdf.tags import Structure
from render.pdf_reading import TaggedPdf, read_page

FACES = load_faces(load_style())
MM = 72 / 25.4
ARROW = ((0.0, 0.0), (30.0, 5.0), (12.0, 8.0), (25.0, 30.0), (-5.0, 20.0))


def drawn(*items: Polygon | Polyline | Label, scale: float = 1.0) -> TaggedPdf:
    canvas = Canvas(BytesIO(), pagesize=(400, 400), invariant=1, initialFontName=FACES.name("regular"))
    pen = Pen(canvas, FACES, Structure(), 0)
    with pen.artifact():
        draw_drawing(pen, Drawing(100, 80, items, "t", "d"), 50, 350, scale)
    hooks.close_page(canvas, 0)
    return TaggedPdf(hooks.finish(canvas, hooks.PlainInfo({}, "")))


def operations(pdf: TaggedPdf) -> list[tuple[list[float], bytes]]:
    page = pdf.reader.pages[0]
    return [(list(a), b) for a, b in ContentStream(page.get_contents(), pdf.reader).operations]


def test_y_runs_down_from_the_upper_left_corner() -> None:
    found = operations(drawn(Polyline(((0, 0), (10, 20)), width=0.5)))
    [start] = [[float(v) for v in a] for a, b in found if b == b"m"]
    [end] = [[float(v) for v in a] for a, b in found if b == b"l"]
    assert start == [50, 350]
    assert end == pytest.approx([50 + 10 * MM, 350 - 20 * MM], abs=0.01)
    assert [float(a[0]) for a, b in found if b == b"w"] == pytest.approx([0.5 * MM], abs=0.001)


def test_a_polygon_is_filled_then_hatched_then_outlined() -> None:
    found = operations(drawn(Polygon(ARROW, fill="#e6e9e4", hatch="diagonal")))
    painted = [b for _, b in found if b in (b"f", b"S")]
    assert painted == [b"f", b"S", b"S"]
    assert not any(b in (b"W", b"W*", b"gs") for _, b in found), "nothing clipped, nothing transparent"


def test_no_fill_no_outline() -> None:
    assert not [b for _, b in operations(drawn(Polygon(ARROW, width=0))) if b in (b"f", b"S")]


@pytest.mark.parametrize(("anchor", "share"), [("start", 0.0), ("middle", 0.5), ("end", 1.0)])
def test_labels_hang_on_their_anchor(anchor: str, share: float) -> None:
    pdf = drawn(Label(40, 30, "61.5 cm", 3, anchor), scale=0.9)  # type: ignore[arg-type]
    [piece] = read_page(pdf.reader.pages[0], pdf.reader).pieces
    width = FACES.width("regular", 3 * MM * 0.9, "61.5 cm")
    assert piece.text == "61.5 cm "
    assert piece.x == pytest.approx(50 + 40 * MM * 0.9 - share * width, abs=0.01)
    assert piece.y == pytest.approx(350 - 30 * MM * 0.9, abs=0.01)
    assert piece.end - piece.x == pytest.approx(width, abs=0.01)


def test_a_label_turns_counter_clockwise_about_its_anchor() -> None:
    found = operations(drawn(Label(40, 30, "up", anchor="middle", angle=90)))
    [matrix] = [[float(v) for v in a] for a, b in found if b == b"Tm" and float(a[1])]
    width = FACES.width("regular", 2.5 * MM, "up")
    assert matrix == pytest.approx([0, 1, -1, 0, 50 + 40 * MM, 350 - 30 * MM - width / 2], abs=0.01)


def test_strong_labels_are_heavier_and_none_is_too_small() -> None:
    pdf = drawn(Label(1, 1, "A", 2.5, strong=True), Label(1, 9, "b", 2.5), scale=0.2)
    strong, usual = read_page(pdf.reader.pages[0], pdf.reader).pieces
    assert "SemiBold" in strong.font and "Regular" in usual.font
    assert strong.size == usual.size == 5


def test_something_else_is_our_bug() -> None:
    with pytest.raises(InternalError, match="no way to draw a str"):
        drawn("circle")  # type: ignore[arg-type]


@pytest.mark.parametrize("hatch", ["diagonal", "back-diagonal", "horizontal", "vertical", "cross"])
def test_hatches_fill_the_outline_and_stay_inside(hatch: Hatch) -> None:
    area = Area(ARROW)
    segments = [LineString(segment) for segment in hatch_segments(ARROW, hatch)]
    assert all(area.buffer(1e-6).contains(segment) for segment in segments)
    lines = 2 if hatch == "cross" else 1
    assert sum(segment.length for segment in segments) == pytest.approx(lines * area.area / SPACING, rel=0.08)


@pytest.mark.parametrize(("hatch", "slope"), [("diagonal", -1), ("back-diagonal", 1)])
def test_a_diagonal_rises_to_the_right(hatch: Hatch, slope: int) -> None:
    for (x1, y1), (x2, y2) in hatch_segments(ARROW, hatch):
        if math.dist((x1, y1), (x2, y2)) > 0.1:
            assert (y2 - y1) / (x2 - x1) == pytest.approx(slope)


def test_dots_are_inside() -> None:
    dots = hatch_dots(ARROW)
    assert len(dots) > 60 and len(set(dots)) == len(dots)
    assert all(Area(ARROW).contains(Point(dot)) for dot in dots)
