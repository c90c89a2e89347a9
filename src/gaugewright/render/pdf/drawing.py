"""A drawing's primitives as page contents: only translated, nothing decided.

In: a `Drawing` in millimetres, y downwards. Out: paths and text on a page in points, y upwards.
Labels are real text in the embedded face.
"""

import math
from collections.abc import Iterable

from gaugewright.drawings.primitives import Dash, Drawing, Label, Point, Polygon, Polyline
from gaugewright.errors import InternalError
from gaugewright.render.pdf.hatch import hatch_dots, hatch_segments
from gaugewright.render.pdf.operators import BUTT, ROUND, at, dashed, fill_in, path, show, stroke_in
from gaugewright.render.pdf.pen import Pen
from gaugewright.render.pdf.style import POINTS_PER_MM, SMALLEST_TEXT, Face

LABEL_COLOUR = "#1a1a1a"
HATCH_WIDTH, DOT_WIDTH = 0.16, 0.56
DASHES: dict[Dash, tuple[float, ...]] = {
    "solid": (), "dashed": (2.0, 1.0), "dash-dot": (4.0, 1.0, 0.5, 1.0), "dotted": (0.3, 1.0),
}  # fmt: skip


def draw_drawing(pen: Pen, drawing: Drawing, left: float, top: float, scale: float) -> None:
    """Draw with the upper left corner at this point of the page."""
    painter = _Painter(pen, left, top, scale * POINTS_PER_MM)
    pen.literal(f"q {ROUND} j")
    for item in drawing.items:
        if isinstance(item, Polyline):
            painter.polyline(item)
        elif isinstance(item, Polygon):
            painter.polygon(item)
        elif isinstance(item, Label):
            painter.label(item)
        else:
            raise InternalError(f"no way to draw a {type(item).__name__} in {drawing.title!r}")
    pen.literal("Q")


class _Painter:
    """Carries where the drawing stands and how large a millimetre is."""

    def __init__(self, pen: Pen, left: float, top: float, unit: float) -> None:
        self.pen, self.left, self.top, self.unit = pen, left, top, unit

    def polyline(self, item: Polyline) -> None:
        if len(item.points) < 2:
            return
        dashes = dashed(part * self.unit for part in DASHES[item.dash])
        self.pen.literal(f"{self._lines(item)} {dashes} {self._path(item.points)} S {dashed(())}")

    def polygon(self, item: Polygon) -> None:
        outline = self._path(item.points) + " h"
        if item.fill:
            self.pen.literal(f"{fill_in(item.fill)} {outline} f")
        if item.hatch == "dots":
            self._segments(((dot, dot) for dot in hatch_dots(item.points)), DOT_WIDTH, item.colour, ROUND)
        elif item.hatch != "none":
            self._segments(hatch_segments(item.points, item.hatch), HATCH_WIDTH, item.colour, BUTT)
        if item.width > 0:
            self.pen.literal(f"{self._lines(item)} {outline} S")

    def label(self, item: Label) -> None:
        """The text ends in a space, so that labels read one after the other keep apart."""
        face: Face = "semibold" if item.strong else "regular"
        size = max(item.size * self.unit, SMALLEST_TEXT)
        width = self.pen.faces.width(face, size, item.text)
        shift = {"start": 0.0, "middle": -width / 2, "end": -width}[item.anchor]
        cos, sin = math.cos(math.radians(item.angle)), math.sin(math.radians(item.angle))
        x, y = self._at(item.x, item.y)
        turn = " ".join(f"{part:.5f}" for part in (cos, sin, -sin, cos))
        place = f"{turn} {at(x + shift * cos, y + shift * sin)} Tm"
        words = show(self.pen.strings(face, item.text + " "), size)
        self.pen.literal(f"BT {fill_in(LABEL_COLOUR)} {place} {words} ET")

    def _at(self, x: float, y: float) -> Point:
        return self.left + x * self.unit, self.top - y * self.unit

    def _lines(self, item: Polyline | Polygon) -> str:
        return stroke_in(item.colour, item.width * self.unit)

    def _segments(self, segments: Iterable[tuple[Point, Point]], width: float, colour: str, cap: int) -> None:
        """Many short lines in one path; a line of no length with a round cap is a dot."""
        paths = "\n".join(map(self._path, segments))
        if paths:
            self.pen.literal(f"{stroke_in(colour, width * self.unit)} {cap} J {paths} S {BUTT} J")

    def _path(self, points: Iterable[Point]) -> str:
        return path(self._at(x, y) for x, y in points)
