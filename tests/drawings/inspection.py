"""Looks at a finished drawing with its own geometry and the font's own widths.

Nothing here is shared with the layout that is checked, save the primitives.
"""

import math
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from reportlab.pdfbase.ttfonts import TTFont

from gaugewright.drawings.primitives import Drawing, Label, Point, Polygon, Polyline

FONTS = Path(__file__).parents[2] / "templates" / "fonts"
Segment = tuple[Point, Point]


@cache
def face(strong: bool) -> TTFont:
    weight = "SemiBold" if strong else "Regular"
    return TTFont(f"Source-{weight}", str(FONTS / f"SourceSans3-{weight}.ttf"))


def frame(label: Label) -> tuple[float, float, float, float]:
    """A label's box in its own frame (along, above): left, bottom, right, top."""
    width = face(label.strong).stringWidth(label.text, label.size)
    left = {"start": 0.0, "middle": -width / 2, "end": -width}[label.anchor]
    return left, -0.2 * label.size, left + width, 0.7 * label.size


def to_frame(label: Label, point: Point) -> Point:
    """A point of the page (y down) in a label's own frame (along, above)."""
    dx, dy = point[0] - label.x, point[1] - label.y
    cos, sin = math.cos(math.radians(label.angle)), math.sin(math.radians(label.angle))
    return dx * cos - dy * sin, -dx * sin - dy * cos


def corners(label: Label) -> list[Point]:
    """The corners of a label's box on the page."""
    left, bottom, right, top = frame(label)
    cos, sin = math.cos(math.radians(label.angle)), math.sin(math.radians(label.angle))
    return [
        (label.x + along * cos - above * sin, label.y - along * sin - above * cos)
        for along, above in ((left, bottom), (right, bottom), (right, top), (left, top))
    ]


def touches_label(label: Label, segment: Segment) -> bool:
    """True where a segment enters a label's box (clipped side by side in the label's frame)."""
    (ax, ay), (bx, by) = (to_frame(label, point) for point in segment)
    left, bottom, right, top = frame(label)
    low, high = 0.0, 1.0
    for start, change, least, most in ((ax, bx - ax, left, right), (ay, by - ay, bottom, top)):
        if abs(change) < 1e-12:
            if not least < start < most:
                return False
            continue
        ends = sorted(((least - start) / change, (most - start) / change))
        low, high = max(low, ends[0]), min(high, ends[1])
    return low < high


def labels_overlap(one: Label, other: Label) -> bool:
    sides = corners(other)
    segments = list(zip(sides, sides[1:] + sides[:1], strict=True))
    segments.append((sides[0], sides[2]))
    mine = corners(one)
    return any(touches_label(one, segment) for segment in segments) or touches_label(other, (mine[0], mine[2]))


def labels(drawing: Drawing) -> list[Label]:
    return [item for item in drawing.items if isinstance(item, Label)]


def drawn_lines(drawing: Drawing) -> Iterator[Segment]:
    """Every line that is painted: polylines, outlines, arrowheads (not the edges of fills)."""
    for item in drawing.items:
        if isinstance(item, Polyline):
            yield from zip(item.points, item.points[1:], strict=False)
        elif isinstance(item, Polygon) and (item.width or is_arrowhead(item)):
            yield from zip(item.points, item.points[1:] + item.points[:1], strict=True)


def is_arrowhead(item: Polygon) -> bool:
    return len(item.points) == 3 and item.fill == "#1a1a1a" and not item.width


def arrowheads(drawing: Drawing) -> list[Polygon]:
    return [item for item in drawing.items if isinstance(item, Polygon) and is_arrowhead(item)]


def piece_outline(drawing: Drawing) -> Polygon:
    """The one polygon in the outline's weight."""
    (found,) = [i for i in drawing.items if isinstance(i, Polygon) and i.width > 0.3]
    return found


def dimension_lines(drawing: Drawing) -> list[Segment]:
    """The lines that run through an arrowhead's tip in the arrow's own direction."""
    heads = arrowheads(drawing)
    lines = [item.points for item in drawing.items if isinstance(item, Polyline)]
    return [(line[0], line[1]) for line in lines if any(_runs_through(line, head) for head in heads)]


def _runs_through(line: tuple[Point, ...], head: Polygon) -> bool:
    tip, one, other = head.points
    base = ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)
    return all(_distance(line[0], line[1], point) < 1e-6 for point in (tip, base))


def _distance(start: Point, end: Point, point: Point) -> float:
    length = math.dist(start, end)
    along = ((point[0] - start[0]) * (end[0] - start[0]) + (point[1] - start[1]) * (end[1] - start[1])) / length
    share = min(length, max(0.0, along)) / length
    return math.dist(point, (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])))


def cross(one: Segment, other: Segment) -> bool:
    """True where two segments cross between their ends."""

    def turn(a: Point, b: Point, c: Point) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    (a, b), (c, d) = one, other
    return turn(a, b, c) * turn(a, b, d) < -1e-9 and turn(c, d, a) * turn(c, d, b) < -1e-9


def inside(points: tuple[Point, ...], point: Point) -> bool:
    """Winding by angles: slow, and unlike the layout's own test."""
    total = 0.0
    for a, b in zip(points, points[1:] + points[:1], strict=True):
        first = math.atan2(a[1] - point[1], a[0] - point[0])
        turn = math.atan2(b[1] - point[1], b[0] - point[0]) - first
        total += (turn + math.pi) % (2 * math.pi) - math.pi
    return abs(total) > math.pi


def ground_under(drawing: Drawing, label: Label) -> list[Polygon | None]:
    """The topmost fill under the corners, the middle and the ends' middles of a label."""
    left, bottom, right, top = corners(label)
    points = [left, bottom, right, top]
    points += [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in ((left, right), (left, top), (bottom, right))]
    before = drawing.items[: drawing.items.index(label)]
    fills = [item for item in before if isinstance(item, Polygon) and item.fill]
    return [next((fill for fill in reversed(fills) if inside(fill.points, p)), None) for p in points]


def listing(drawing: Drawing) -> str:
    """A drawing as text, one item a line, for comparison by eye and by tests."""
    lines = [f"drawing {drawing.width:.2f} x {drawing.height:.2f} {drawing.title!r}"]
    for item in drawing.items:
        if isinstance(item, Label):
            style = "strong" if item.strong else "plain"
            place = f"{item.x:.2f},{item.y:.2f} {item.anchor} {item.angle:.0f}"
            lines.append(f"label {place} {item.size:.2f} {style} {item.text!r}")
            continue
        points = " ".join(f"{x:.2f},{y:.2f}" for x, y in item.points)
        if isinstance(item, Polyline):
            lines.append(f"line {item.width:.2f} {item.colour} {item.dash} {points}")
        else:
            lines.append(f"polygon {item.width:.2f} {item.colour} {item.fill or 'none'} {item.hatch} {points}")
    return "\n".join(lines) + "\n"
