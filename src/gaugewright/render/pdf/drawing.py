"""A drawing's primitives as page contents: only translated, nothing decided.

In: a `Drawing` in millimetres, y downwards. Out: paths and text on a canvas in points, y upwards.
Labels are real text in the embedded face. Paths are written as operators, with two decimals (a
thirty-fifth of a hair's width): a hatch has hundreds of lines.
"""

import math
from collections.abc import Iterable

from reportlab.pdfgen.canvas import Canvas

from gaugewright.drawings.primitives import Dash, Drawing, Label, Point, Polygon, Polyline
from gaugewright.errors import InternalError
from gaugewright.render.pdf.faces import Faces
from gaugewright.render.pdf.hatch import hatch_dots, hatch_segments
from gaugewright.render.pdf.pen import channels
from gaugewright.render.pdf.style import POINTS_PER_MM, SMALLEST_TEXT, Face

LABEL_COLOUR = "#1a1a1a"
HATCH_WIDTH, DOT_WIDTH = 0.16, 0.56
DASHES: dict[Dash, tuple[float, ...]] = {
    "solid": (), "dashed": (2.0, 1.0), "dash-dot": (4.0, 1.0, 0.5, 1.0), "dotted": (0.3, 1.0),
}  # fmt: skip
BUTT, ROUND = 0, 1


def draw_drawing(canvas: Canvas, faces: Faces, drawing: Drawing, left: float, top: float, scale: float) -> None:
    """Draw with the upper left corner at this point of the page."""
    painter = _Painter(canvas, faces, left, top, scale * POINTS_PER_MM)
    canvas.saveState()
    canvas.setLineJoin(ROUND)
    for item in drawing.items:
        if isinstance(item, Polyline):
            painter.polyline(item)
        elif isinstance(item, Polygon):
            painter.polygon(item)
        elif isinstance(item, Label):
            painter.label(item)
        else:
            raise InternalError(f"no way to draw a {type(item).__name__} in {drawing.title!r}")
    canvas.restoreState()


class _Painter:
    """Carries where the drawing stands and how large a millimetre is."""

    def __init__(self, canvas: Canvas, faces: Faces, left: float, top: float, unit: float) -> None:
        self.canvas, self.faces = canvas, faces
        self.left, self.top, self.unit = left, top, unit

    def polyline(self, item: Polyline) -> None:
        if len(item.points) < 2:
            return
        self._line_style(item.width, item.colour)
        self.canvas.setDash([part * self.unit for part in DASHES[item.dash]])
        self.canvas.addLiteral(self._path(item.points) + " S")
        self.canvas.setDash([])

    def polygon(self, item: Polygon) -> None:
        outline = self._path(item.points) + " h"
        if item.fill:
            self.canvas.setFillColor(channels(item.fill))
            self.canvas.addLiteral(outline + " f")
        if item.hatch == "dots":
            self._segments(((dot, dot) for dot in hatch_dots(item.points)), DOT_WIDTH, item.colour, ROUND)
        elif item.hatch != "none":
            self._segments(hatch_segments(item.points, item.hatch), HATCH_WIDTH, item.colour, BUTT)
        if item.width > 0:
            self._line_style(item.width, item.colour)
            self.canvas.addLiteral(outline + " S")

    def label(self, item: Label) -> None:
        """The text ends in a space, so that labels read one after the other keep apart."""
        face: Face = "semibold" if item.strong else "regular"
        size = max(item.size * self.unit, SMALLEST_TEXT)
        width = self.faces.width(face, size, item.text)
        shift = {"start": 0.0, "middle": -width / 2, "end": -width}[item.anchor]
        cos, sin = math.cos(math.radians(item.angle)), math.sin(math.radians(item.angle))
        x, y = self._at((item.x, item.y))
        text = self.canvas.beginText()
        text.setFillColor(channels(LABEL_COLOUR))
        text.setFont(self.faces.name(face), size, size)
        text.setTextTransform(cos, sin, -sin, cos, x + shift * cos, y + shift * sin)
        text.textOut(item.text + " ")
        self.canvas.drawText(text)

    def _at(self, point: Point) -> Point:
        return self.left + point[0] * self.unit, self.top - point[1] * self.unit

    def _line_style(self, width: float, colour: str) -> None:
        self.canvas.setStrokeColor(channels(colour))
        self.canvas.setLineWidth(width * self.unit)

    def _segments(self, segments: Iterable[tuple[Point, Point]], width: float, colour: str, cap: int) -> None:
        """Many short lines in one path; a line of no length with a round cap is a dot."""
        paths = [self._path(segment) for segment in segments]
        if not paths:
            return
        self._line_style(width, colour)
        self.canvas.setLineCap(cap)
        self.canvas.addLiteral("\n".join(paths) + " S")
        self.canvas.setLineCap(BUTT)

    def _path(self, points: tuple[Point, ...]) -> str:
        places = [f"{x:.2f} {y:.2f}" for x, y in map(self._at, points)]
        return f"{places[0]} m " + " ".join(f"{place} l" for place in places[1:])
