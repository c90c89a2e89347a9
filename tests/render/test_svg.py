"""SVG files: well-formed, complete, and the same bytes for the same drawing."""

import math
import re
import subprocess
import sys
from xml.etree import ElementTree

import pytest
from drawings.figures import FIGURES, back, front, striped_gore

from gaugewright.drawings.primitives import Drawing, Label, Polygon, Polyline
from gaugewright.drawings.schematic import draw_schematic
from gaugewright.errors import InternalError
from gaugewright.render.svg import render_svg

SVG = "{http://www.w3.org/2000/svg}"


def tree_of(*items: object) -> ElementTree.Element:
    return ElementTree.fromstring(render_svg(Drawing(80.0, 50.5, items, "Back & Front <1>", "d")))


@pytest.mark.parametrize("figure", FIGURES, ids=lambda f: f"{f.name}-{len(f.sizes)}")
def test_texts_are_the_drawings_labels_in_order(figure) -> None:
    drawing = draw_schematic(figure, "in").drawing
    root = ElementTree.fromstring(render_svg(drawing))
    written = [element.text for element in root.iter(f"{SVG}text")]
    assert written == [item.text for item in drawing.items if isinstance(item, Label)]


def test_sizes_title_and_description() -> None:
    root = tree_of()
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("80mm", "50.5mm", "0 0 80 50.5")
    assert root.find(f"{SVG}title").text == "Back & Front <1>"
    assert root.find(f"{SVG}desc").text == "d"
    assert root.get("role") == "img"


def test_lines_and_labels_are_translated() -> None:
    root = tree_of(
        Polyline(((1, 2), (3.14159, 4)), 0.5, "#123456", "dashed"),
        Label(10, 20, "side", 2.5, "middle", 90, strong=True),
    )
    line, text = root.find(f"{SVG}polyline"), root.find(f"{SVG}text")
    assert line.get("points") == "1,2 3.142,4"
    assert (line.get("stroke"), line.get("stroke-width"), line.get("stroke-dasharray")) == ("#123456", "0.5", "2 1")
    assert text.get("transform") == "rotate(-90 10 20)"
    assert (text.get("text-anchor"), text.get("font-size"), text.get("font-weight")) == ("middle", "2.5", "600")
    assert text.get("font-family") == '"Source Sans 3", sans-serif'


def test_a_hatch_lies_over_its_fill_and_under_the_outline() -> None:
    root = tree_of(Polygon(((0, 0), (9, 0), (9, 9)), 0.4, "#1a1a1a", "#d9c9a8", "cross"))
    fill, hatch = root.findall(f"{SVG}polygon")
    assert (fill.get("fill"), fill.get("stroke")) == ("#d9c9a8", None)
    assert (hatch.get("fill"), hatch.get("stroke")) == ("url(#hatch-cross-1a1a1a)", "#1a1a1a")


@pytest.mark.parametrize("figure", [back(), front(1), striped_gore()], ids=lambda f: f.name)
def test_every_pattern_used_is_defined_once(figure) -> None:
    root = ElementTree.fromstring(render_svg(draw_schematic(figure, "cm").drawing))
    defined = [element.get("id") for element in root.iter(f"{SVG}pattern")]
    used = {e.get("fill")[5:-1] for e in root.iter(f"{SVG}polygon") if e.get("fill").startswith("url(#")}
    assert len(defined) == len(set(defined))
    assert set(defined) == used


def test_each_hatch_is_a_pattern_of_its_own() -> None:
    triangle = ((0, 0), (9, 0), (9, 9))
    hatches = ("diagonal", "back-diagonal", "horizontal", "vertical", "cross", "dots")
    root = tree_of(*(Polygon(triangle, 0.0, "#000000", "", hatch) for hatch in hatches))
    patterns = list(root.iter(f"{SVG}pattern"))
    looks = {(p.get("patternTransform"), tuple(tuple(sorted(c.items())) for c in p)) for p in patterns}
    assert len(looks) == 6


def test_the_same_drawing_gives_the_same_bytes() -> None:
    assert render_svg(draw_schematic(front(), "cm").drawing) == render_svg(draw_schematic(front(), "cm").drawing)


def test_numbers_have_at_most_three_decimals_and_no_exponent() -> None:
    text = render_svg(Drawing(10, 10, (Polyline(((1e-7, -1e-9), (2 / 3, 1e6))),), "t", "d"))
    assert 'points="0,0 0.667,1000000"' in text


def test_an_unknown_item_is_an_error() -> None:
    with pytest.raises(InternalError, match="no way to draw a str"):
        tree_of("circle")


def test_svgwrite_is_loaded_only_when_asked_for() -> None:
    code = "import sys, gaugewright.render.svg; print('svgwrite' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


@pytest.mark.parametrize("hatch", ["diagonal", "back-diagonal", "horizontal", "vertical", "cross"])
@pytest.mark.parametrize("size", [(160.0, 30.0), (23.5, 110.0)])
def test_one_tile_of_lines_covers_the_whole_drawing(hatch: str, size: tuple[float, float]) -> None:
    polygon = Polygon(((0, 0), (9, 0), (9, 9)), 0.0, hatch=hatch)
    root = ElementTree.fromstring(render_svg(Drawing(*size, (polygon,), "t", "d")))
    (pattern,) = root.iter(f"{SVG}pattern")
    side = float(pattern.get("width"))
    x, y, turn = map(float, re.findall(r"-?[\d.]+", pattern.get("patternTransform")))
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    for corner in ((0, 0), (size[0], 0), (0, size[1]), size):
        dx, dy = corner[0] - x, corner[1] - y
        assert 0 <= dx * cos + dy * sin <= side
        assert 0 <= dy * cos - dx * sin <= side
