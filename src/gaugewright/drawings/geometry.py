"""Plane geometry of points, segments and polygons: the few facts a layout needs.

Polygons are tuples of points without the first repeated. The functions do not care whether
y points up or down, except where said.
"""

import math
from collections.abc import Iterable, Sequence

from gaugewright.drawings.primitives import Point

Segment = tuple[Point, Point]
Box = tuple[float, float, float, float]
"""Smallest x, smallest y, largest x, largest y."""

_TINY = 1e-9


def box_around(points: Iterable[Point]) -> Box:
    """The upright box around some points.

    >>> box_around([(1, 5), (3, 2)])
    (1, 2, 3, 5)
    """
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def edges_of(polygon: Sequence[Point]) -> tuple[Segment, ...]:
    """The sides of a polygon, the closing one last; repeated points make none."""
    following = [*polygon[1:], polygon[0]]
    return tuple((a, b) for a, b in zip(polygon, following, strict=True) if a != b)


def area_of(polygon: Sequence[Point]) -> float:
    """Signed area: positive where the points run counter-clockwise with y up.

    >>> area_of([(0, 0), (4, 0), (4, 3)])
    6.0
    """
    pairs = zip(polygon, [*polygon[1:], polygon[0]], strict=True)
    return sum(ax * by - bx * ay for (ax, ay), (bx, by) in pairs) / 2


def contains(polygon: Sequence[Point], point: Point) -> bool:
    """True where a point lies inside a polygon (on its edge: either answer)."""
    x, y = point
    inside = False
    for (ax, ay), (bx, by) in edges_of(polygon):
        if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            inside = not inside
    return inside


def convex_meet(one: Sequence[Point], other: Sequence[Point]) -> bool:
    """True where two convex shapes overlap; a segment counts as one. Touching is not overlapping.

    They are apart exactly when some side of one of them has the two on different hands.

    >>> convex_meet([(0, 0), (2, 0), (2, 2), (0, 2)], [(1, 1), (5, 1)])
    True
    """
    return not any(_apart(normal, one, other) for normal in _normals(one) + _normals(other))


def _normals(shape: Sequence[Point]) -> list[Point]:
    sides = [(bx - ax, by - ay) for (ax, ay), (bx, by) in edges_of(shape)]
    along = sides if len(shape) == 2 else []
    return [(-dy, dx) for dx, dy in sides] + along


def _apart(normal: Point, one: Sequence[Point], other: Sequence[Point]) -> bool:
    nx, ny = normal
    firsts = [x * nx + y * ny for x, y in one]
    seconds = [x * nx + y * ny for x, y in other]
    slack = _TINY * (abs(nx) + abs(ny))
    return max(firsts) <= min(seconds) + slack or max(seconds) <= min(firsts) + slack


def rectangle(centre: Point, width: float, height: float, angle: float = 0.0) -> tuple[Point, ...]:
    """Corners of a rectangle turned by `angle` degrees, counter-clockwise on a page with y down."""
    cos, sin = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    x, y = centre
    halves = ((-1, -1), (1, -1), (1, 1), (-1, 1))
    return tuple(
        (x + (h * width * cos + v * height * sin) / 2, y + (-h * width * sin + v * height * cos) / 2)
        for h, v in halves
    )


def direction(start: Point, end: Point) -> Point:
    """The unit vector from one point to another; to the right where they are the same."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = math.hypot(dx, dy)
    return (dx / length, dy / length) if length > _TINY else (1.0, 0.0)


def moved(point: Point, along: Point, distance: float) -> Point:
    """A point moved some way along a unit vector."""
    return point[0] + along[0] * distance, point[1] + along[1] * distance


def nearest_edge(polygon: Sequence[Point], point: Point) -> Segment:
    """The side of a polygon nearest to a point; of equals, the one whose middle is nearest."""

    def distance(edge: Segment) -> tuple[float, float]:
        (ax, ay), (bx, by) = edge
        along = (point[0] - ax) * (bx - ax) + (point[1] - ay) * (by - ay)
        share = min(1.0, max(0.0, along / ((bx - ax) ** 2 + (by - ay) ** 2)))
        foot = (ax + share * (bx - ax), ay + share * (by - ay))
        middle = ((ax + bx) / 2, (ay + by) / 2)
        return max(math.dist(point, foot), 1e-6), math.dist(point, middle)

    return min(edges_of(polygon), key=distance)


def outward(polygon: Sequence[Point], edge: Segment) -> Point:
    """The unit vector at right angles to a side of the polygon, away from the inside."""
    dx, dy = direction(*edge)
    return (dy, -dx) if area_of(polygon) > 0 else (-dy, dx)
