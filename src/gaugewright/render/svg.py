"""A drawing as SVG, through svgwrite: the only module that knows svgwrite.

In: a `Drawing`. Out: the text of an SVG file, the same bytes for the same drawing. Sizes are
in millimetres on the outside and plain numbers of millimetres inside.
"""

import math
from collections.abc import Iterable
from typing import Any

from gaugewright.drawings.primitives import Dash, Drawing, Hatch, Item, Label, Polygon, Polyline
from gaugewright.errors import InternalError

FONT_FAMILY = '"Source Sans 3", sans-serif'
_DASHES: dict[Dash, tuple[float, ...]] = {
    "solid": (), "dashed": (2.0, 1.0), "dash-dot": (4.0, 1.0, 0.5, 1.0), "dotted": (0.3, 1.0),
}  # fmt: skip
_SPACING, _HATCH_LINE, _DOT = 1.6, 0.16, 0.28
_TEXT_COLOUR = "#1a1a1a"


def number(value: float) -> str:
    """A coordinate with at most three decimals, never as -0 and never with an exponent.

    >>> number(12.5), number(-0.00004), number(1e-7), number(100)
    ('12.5', '0', '0', '100')
    """
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def render_svg(drawing: Drawing) -> str:
    """The drawing as one SVG document with title and description."""
    import svgwrite

    width, height = number(drawing.width), number(drawing.height)
    svg = svgwrite.Drawing(
        size=(f"{width}mm", f"{height}mm"), viewBox=f"0 0 {width} {height}", profile="full", debug=False
    )
    svg.attribs["role"] = "img"
    svg.set_desc(title=drawing.title, desc=drawing.description)
    for hatch, colour in _hatches(drawing.items):
        svg.defs.add(_pattern(svg, hatch, colour, drawing))
    for item in drawing.items:
        for element in _elements(svg, item):
            svg.add(element)
    return '<?xml version="1.0" encoding="utf-8"?>\n' + str(svg.tostring()) + "\n"


def _hatches(items: Iterable[Item]) -> list[tuple[Hatch, str]]:
    """Each hatch in each colour that is used, once, in the order of first use."""
    used = [(i.hatch, i.colour) for i in items if isinstance(i, Polygon) and i.hatch != "none"]
    return list(dict.fromkeys(used))


def _hatch_id(hatch: Hatch, colour: str) -> str:
    return f"hatch-{hatch}-{colour.lstrip('#')}"


def _elements(svg: Any, item: Item) -> list[Any]:
    match item:
        case Polyline():
            return [_polyline(svg, item)]
        case Polygon():
            return _polygon(svg, item)
        case Label():
            return [_text(svg, item)]
    raise InternalError(f"no way to draw a {type(item).__name__}")


def _points(item: Polyline | Polygon) -> list[tuple[str, str]]:
    return [(number(x), number(y)) for x, y in item.points]


def _polyline(svg: Any, item: Polyline) -> Any:
    line = svg.polyline(_points(item), fill="none", stroke=item.colour, stroke_width=number(item.width))
    if item.dash != "solid":
        line.attribs["stroke-dasharray"] = " ".join(number(part) for part in _DASHES[item.dash])
    return line


def _polygon(svg: Any, item: Polygon) -> list[Any]:
    """The fill, over it the hatch as a second polygon, and the outline on the last of them."""
    fills = [item.fill or "none"]
    if item.hatch != "none":
        fills.append(f"url(#{_hatch_id(item.hatch, item.colour)})")
    shapes = [svg.polygon(_points(item), fill=fill) for fill in fills]
    if item.width > 0:
        shapes[-1].attribs |= {"stroke": item.colour, "stroke-width": number(item.width)}
    return shapes


def _text(svg: Any, item: Label) -> Any:
    attributes = {"x": number(item.x), "y": number(item.y), "font-size": number(item.size)}
    attributes |= {"font-family": FONT_FAMILY, "fill": _TEXT_COLOUR, "text-anchor": item.anchor}
    if item.strong:
        attributes["font-weight"] = "600"
    if item.angle:
        place = f"{attributes['x']} {attributes['y']}"
        attributes["transform"] = f"rotate({number(-item.angle)} {place})"
    text = svg.text(item.text)
    text.attribs.clear()
    text.attribs |= attributes
    return text


def _pattern(svg: Any, hatch: Hatch, colour: str, drawing: Drawing) -> Any:
    """A hatch as a pattern: dots in small tiles, lines in one tile that holds the whole drawing.

    Where lines run over the seam of two tiles some viewers leave a gap, so they never do.
    """
    pattern = svg.pattern(id=_hatch_id(hatch, colour), patternUnits="userSpaceOnUse")
    if hatch == "dots":
        pattern.attribs |= {"width": number(_SPACING), "height": number(_SPACING)}
        middle = number(_SPACING / 2)
        pattern.add(svg.circle(center=(middle, middle), r=number(_DOT), fill=colour))
        return pattern
    reach = math.ceil(math.hypot(drawing.width, drawing.height))
    side = number(reach)
    pattern.attribs |= {"width": side, "height": side, "patternTransform": _over_all(drawing, hatch, reach)}
    places = [number(_SPACING * step) for step in range(1, int(reach / _SPACING) + 1)]
    runs = [] if hatch == "horizontal" else [f"M{place} 0v{side}" for place in places]
    runs += [f"M0 {place}h{side}" for place in places] if hatch in ("horizontal", "cross") else []
    pattern.add(svg.path("".join(runs), fill="none", stroke=colour, stroke_width=number(_HATCH_LINE)))
    return pattern


def _over_all(drawing: Drawing, hatch: Hatch, reach: float) -> str:
    """Turns a square tile and moves it so that its middle lies on the middle of the drawing."""
    turn = {"diagonal": 45, "cross": 45, "back-diagonal": -45}.get(hatch, 0)
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    x = drawing.width / 2 - (cos - sin) * reach / 2
    y = drawing.height / 2 - (sin + cos) * reach / 2
    return f"translate({number(x)} {number(y)}) rotate({turn})"
