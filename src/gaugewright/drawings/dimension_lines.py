"""One dimension: extension lines, dimension line, arrowheads, and where its text may stand.

The conventions are those of technical drawing (ISO 129-1): thin lines, extension lines at right
angles to what is measured and running a little past, filled arrowheads of 30 degrees, turned
round where there is no room between the extension lines, and the text above the line. Letters
stand upright; values run along their line, upright ones read from the right of the page.
"""

import math
from collections.abc import Iterator
from typing import NamedTuple

from gaugewright.drawings.geometry import direction, moved
from gaugewright.drawings.primitives import Label, Point, Polygon, Polyline
from gaugewright.drawings.scene import centred_label, text_room

THIN = 0.18
INK = "#1a1a1a"
PAST = 2.0
"""How far an extension line runs past the dimension line, in mm."""
ARROW = 2.5
TAIL = 5.0
"""Length of the line behind an arrowhead that stands outside, the head included, in mm."""
_HALF_WIDTH = ARROW * math.tan(math.radians(15))
_TEXT_GAP = 0.7
_SHARES = (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82)


class DimensionLine(NamedTuple):
    """A dimension put in its place: the two measured points, the two ends of its line, its text."""

    start: Point
    end: Point
    line_start: Point
    line_end: Point
    text: str

    @property
    def length(self) -> float:
        """Length of the line between the extension lines, on paper."""
        return math.dist(self.line_start, self.line_end)

    @property
    def arrows_inside(self) -> bool:
        """Two heads and a little line between them fit."""
        return self.length >= 2 * ARROW + 1


def reach(length: float, text: str) -> float:
    """How far a dimension line may stick out beyond its extension lines, text included."""
    width, _ = text_room(text, strong=True)
    if length >= max(2 * ARROW, width) + 1:
        return 0.0
    return TAIL + width + 2 * _TEXT_GAP


def shapes(dimension: DimensionLine) -> tuple[Polyline | Polygon, ...]:
    """The lines and arrowheads of a dimension."""
    first, last = dimension.line_start, dimension.line_end
    along = direction(first, last)
    back = (-along[0], -along[1])
    extensions = tuple(
        Polyline((point, moved(foot, direction(point, foot), PAST)), THIN, INK)
        for point, foot in ((dimension.start, first), (dimension.end, last))
    )
    if dimension.arrows_inside:
        line = Polyline((first, last), THIN, INK)
        return (*extensions, line, _head(first, along), _head(last, back))
    line = Polyline((moved(first, back, TAIL), moved(last, along, TAIL)), THIN, INK)
    return (*extensions, line, _head(first, back), _head(last, along))


def _head(tip: Point, towards: Point) -> Polygon:
    """A filled arrowhead whose body lies in the given direction from its tip."""
    base = moved(tip, towards, ARROW)
    across = (-towards[1], towards[0])
    corners = (tip, moved(base, across, _HALF_WIDTH), moved(base, across, -_HALF_WIDTH))
    return Polygon(corners, width=0.0, colour=INK, fill=INK)


def text_places(dimension: DimensionLine) -> Iterator[Label]:
    """Places for the text, best first: above the line near its middle, below it, beyond its ends."""
    along = direction(dimension.line_start, dimension.line_end)
    upward = _upward(along)
    angle = 0.0 if dimension.text.isalpha() else reading_angle(along)
    width, height = text_room(dimension.text, strong=True)
    across_room = height if angle or abs(along[1]) < 1e-6 else _room(upward, width, height)
    for towards in (upward, (-upward[0], -upward[1])):
        for share in _SHARES:
            on_line = moved(dimension.line_start, along, share * dimension.length)
            centre = moved(on_line, towards, _TEXT_GAP + across_room / 2)
            yield centred_label(centre, dimension.text, angle, strong=True)
    along_room = width if angle else _room(along, width, height)
    beyond = (0.0 if dimension.arrows_inside else TAIL) + _TEXT_GAP + along_room / 2
    for end, sign in ((dimension.line_end, 1), (dimension.line_start, -1)):
        yield centred_label(moved(end, along, sign * beyond), dimension.text, angle, strong=True)


def _upward(along: Point) -> Point:
    """The side of a line its text stands on: above it, or left of an upright line."""
    x, y = along[1], -along[0]
    level = abs(y) > 1e-6
    return (x, y) if (y < 0 if level else x < 0) else (-x, -y)


def reading_angle(along: Point) -> float:
    """Degrees of text along a line: counter-clockwise, over -90 and up to 90, so that no text stands on its head."""
    angle = math.degrees(math.atan2(-along[1], along[0])) + 0.0
    if angle > 90 + 1e-6:
        return angle - 180
    return angle + 180 if angle <= -90 + 1e-6 else angle


def _room(towards: Point, width: float, height: float) -> float:
    """Length of the shadow of level text on a direction."""
    return abs(towards[0]) * width + abs(towards[1]) * height
