"""A drawing's primitives as page contents: only translated, nothing decided.

In: a `Drawing` in millimetres, y downwards. Out: paths and text on a canvas in points, y upwards.
Labels are real text in the embedded face.
"""

import math

from reportlab.pdfgen.canvas import Canvas

from gaugewright.drawings.primitives import Drawing, Label, Point, Polygon, Polyline
from gaugewright.errors import InternalError
from gaugewright.render.pdf.faces import Faces
from gaugewright.render.pdf.hatch import hatch_dots, hatch_segments
from gaugewright.render.pdf.pen import channels
from gaugewright.render.pdf.style import POINTS_PER_MM, SMALLEST_TEXT

LABEL_COLOUR = "#1a1a1a"
HATCH_COLOUR = "#6b6b6b"
HATCH_WIDTH = 0.12
DOT_RADIUS = 0.22
DASHES = {"solid": (), "dashed": (1.6, 1.0), "dash-dot": (2.4, 0.8, 0.5, 0.8), "dotted": (0.1, 0.9)}


def draw_drawing(canvas: Canvas, faces: Faces, drawing: Drawing, left: float, top: float, scale: float) -> None:
    """Draw with the upper left corner at this point of the page."""
    painter = _Painter(canvas, faces, left, top, scale * POINTS_PER_MM)
    canvas.saveState()
    canvas.setLineCap(1)
    canvas.setLineJoin(1)
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

    def at(self, point: Point) -> Point:
        return self.left + point[0] * self.unit, self.top - point[1] * self.unit

    def polyline(self, item: Polyline) -> None:
        if len(item.points) < 2:
            return
        self._line_style(item.width, item.colour)
        self.canvas.setDash([part * self.unit for part in DASHES[item.dash]])
        self.canvas.drawPath(self._path(item.points), stroke=1, fill=0)
        self.canvas.setDash([])

    def polygon(self, item: Polygon) -> None:
        if item.fill:
            self.canvas.setFillColor(channels(item.fill))
        path = self._path(item.points)
        path.close()
        if item.fill:
            self.canvas.drawPath(path, stroke=0, fill=1)
        self._hatch(item)
        if item.width > 0:
            self._line_style(item.width, item.colour)
            self.canvas.drawPath(path, stroke=1, fill=0)

    def _hatch(self, item: Polygon) -> None:
        if item.hatch == "none":
            return
        if item.hatch == "dots":
            self.canvas.setFillColor(channels(HATCH_COLOUR))
            for dot in hatch_dots(item.points):
                self.canvas.circle(*self.at(dot), DOT_RADIUS * self.unit, stroke=0, fill=1)
            return
        self._line_style(HATCH_WIDTH, HATCH_COLOUR)
        lines = [(*self.at(a), *self.at(b)) for a, b in hatch_segments(item.points, item.hatch)]
        self.canvas.lines(lines)

    def label(self, item: Label) -> None:
        """The text ends in a space, so that labels read one after the other keep apart."""
        face = "semibold" if item.strong else "regular"
        size = max(item.size * self.unit, SMALLEST_TEXT)
        width = self.faces.width(face, size, item.text)
        shift = {"start": 0.0, "middle": -width / 2, "end": -width}[item.anchor]
        cos, sin = math.cos(math.radians(item.angle)), math.sin(math.radians(item.angle))
        x, y = self.at((item.x, item.y))
        text = self.canvas.beginText()
        text.setFillColor(channels(LABEL_COLOUR))
        text.setFont(self.faces.name(face), size, size)
        text.setTextTransform(cos, sin, -sin, cos, x + shift * cos, y + shift * sin)
        text.textOut(item.text + " ")
        self.canvas.drawText(text)

    def _line_style(self, width: float, colour: str) -> None:
        self.canvas.setStrokeColor(channels(colour))
        self.canvas.setLineWidth(width * self.unit)

    def _path(self, points: tuple[Point, ...]) -> object:
        path = self.canvas.beginPath()
        path.moveTo(*self.at(points[0]))
        for point in points[1:]:
            path.lineTo(*self.at(point))
        return path
