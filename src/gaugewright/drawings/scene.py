"""A drawing in the making: what is painted so far, and where text may still go.

A `Scene` is never changed; each step of a layout returns a new one. Coordinates are
millimetres on the paper, y *down*, with the origin anywhere: the canvas is cut round the
finished scene. Two rules hold for all text: it lies over no line and no other text, and on
no hatched fill unless a white plate is put under it.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cache

from gaugewright.drawings.geometry import (
    Box,
    Segment,
    box_around,
    contains,
    convex_meet,
    edges_of,
    moved,
    rectangle,
)
from gaugewright.drawings.primitives import Anchor, Item, Label, Point, Polygon, Polyline
from gaugewright.drawings.text_width import ASCENT, DESCENT, text_width

Occupied = tuple[tuple[Point, ...], Box]
"""A convex shape (or a segment) with the box around it."""

TEXT = 2.8
"""Text size in mm (8 pt): the usual one. Nothing in a drawing is smaller."""
CLEAR = 0.5
"""Least clear space round text, in mm."""
WORDS_APART = 1.8
"""Least distance between two texts along the line (over 0.6 em), so that they never read as one."""
_ANCHOR_SHIFT = {"start": 0.5, "middle": 0.0, "end": -0.5}


@dataclass(frozen=True, slots=True)
class Scene:
    """Items in painting order; `lines` and `texts` keep others' text away, `fills` ask for a plate."""

    items: tuple[Item, ...] = ()
    lines: tuple[Occupied, ...] = ()
    fill_lines: tuple[Occupied, ...] = ()
    texts: tuple[Occupied, ...] = ()
    fills: tuple[tuple[Point, ...], ...] = ()

    def draw(self, *items: Polyline | Polygon) -> "Scene":
        """Adds shapes whose lines text must keep clear of."""
        segments = tuple((s, box_around(s)) for item in items for s in _segments(item))
        return replace(self, items=self.items + items, lines=self.lines + segments)

    def fill(self, *polygons: Polygon) -> "Scene":
        """Adds hatched fills, on which text stands only on a plate."""
        segments = tuple((s, box_around(s)) for item in polygons for s in edges_of(item.points))
        return replace(
            self,
            items=self.items + polygons,
            fill_lines=self.fill_lines + segments,
            fills=self.fills + tuple(polygon.points for polygon in polygons),
        )

    def write(self, label: Label, plate: bool = False) -> "Scene":
        """Adds text, on a white plate if wanted."""
        corners = label_corners(label)
        painted: tuple[Item, ...] = (label,)
        if plate:
            painted = (Polygon(label_corners(label, CLEAR), width=0.0, fill="#ffffff"), label)
        return replace(
            self, items=self.items + painted, texts=(*self.texts, (corners, box_around(corners)))
        )

    def has_room(self, label: Label, plate: bool = False) -> bool:
        """True where text would lie clear of everything; on a plate, fills do not count."""
        corners = label_corners(label, CLEAR)
        beyond = label_corners(label, CLEAR, WORDS_APART)
        if not (_apart(beyond, self.texts) and _apart(corners, self.lines)):
            return False
        if plate:
            return True
        centre = corners[0][0] / 2 + corners[2][0] / 2, corners[0][1] / 2 + corners[2][1] / 2
        on_fill = any(contains(fill, centre) for fill in self.fills)
        return not on_fill and _apart(corners, self.fill_lines)

    def crosses(self, segment: Segment) -> bool:
        """True where a new line would run over a line or a text already there."""
        return not (_apart(segment, self.texts) and _apart(segment, self.lines))

    def crosses_text(self, segment: Segment) -> bool:
        """True where a new line would run over text already there."""
        return not _apart(segment, self.texts)

    def extent(self) -> Box:
        """The box around all that is painted."""
        boxes = [_extent_of(item) for item in self.items]
        return box_around([(b[0], b[1]) for b in boxes] + [(b[2], b[3]) for b in boxes])


def _apart(corners: tuple[Point, ...], things: Iterable[Occupied]) -> bool:
    left, top, right, bottom = box_around(corners)
    for shape, (x1, y1, x2, y2) in things:
        if left <= x2 and x1 <= right and top <= y2 and y1 <= bottom and convex_meet(corners, shape):
            return False
    return True


def _segments(item: Polyline | Polygon) -> Iterable[Segment]:
    if isinstance(item, Polygon):
        return edges_of(item.points)
    return [(a, b) for a, b in zip(item.points, item.points[1:], strict=False) if a != b]


def _extent_of(item: Item) -> Box:
    if isinstance(item, Label):
        return box_around(label_corners(item))
    left, top, right, bottom = box_around(item.points)
    half = item.width / 2
    return left - half, top - half, right + half, bottom + half


def label_corners(label: Label, clear: float = 0.0, at_ends: float | None = None) -> tuple[Point, ...]:
    """The corners of the room text takes, with some clear space all round (another at its ends)."""
    width = text_width(label.text, label.size, label.strong)
    along = _ANCHOR_SHIFT[label.anchor] * width
    up = (ASCENT - DESCENT) / 2 * label.size
    right, above = _axes(label.angle)
    centre = moved(moved((label.x, label.y), right, along), above, up)
    height = (ASCENT + DESCENT) * label.size
    ends = clear if at_ends is None else at_ends
    return rectangle(centre, width + 2 * ends, height + 2 * clear, label.angle)


def centred_label(centre: Point, text: str, angle: float = 0.0, strong: bool = False) -> Label:
    """Text of the usual size whose room has its middle at a point."""
    _, above = _axes(angle)
    x, y = moved(centre, above, -(ASCENT - DESCENT) / 2 * TEXT)
    return Label(x, y, text, TEXT, "middle", angle, strong)


def level_label(x: float, middle: float, text: str, anchor: Anchor, strong: bool = False) -> Label:
    """Level text of the usual size, its room centred on a height."""
    return Label(x, middle + (ASCENT - DESCENT) / 2 * TEXT, text, TEXT, anchor, 0.0, strong)


def text_room(text: str, strong: bool = False) -> tuple[float, float]:
    """Width and height in mm of the room that text of the usual size takes."""
    return text_width(text, TEXT, strong), (ASCENT + DESCENT) * TEXT


@cache
def _axes(angle: float) -> tuple[Point, Point]:
    """Unit vectors along and above text turned by an angle (y down)."""
    (ax, ay), (bx, by), (cx, cy), _ = rectangle((0.0, 0.0), 1.0, 1.0, angle)
    return (bx - ax, by - ay), (bx - cx, by - cy)
