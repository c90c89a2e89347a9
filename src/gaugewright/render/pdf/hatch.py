"""Hatches as plain segments inside an outline, so that no page needs clipping or patterns.

In: a polygon in mm. Out: segments and dots in mm. A hatch tells fabrics apart on a
black-and-white print, where colours can't.
"""

import math
from collections.abc import Iterator

from gaugewright.drawings.primitives import Hatch, Point

SPACING = 1.6
DOT_SPACING = 1.8
# Turned as seen on a canvas whose y runs downwards: "diagonal" rises to the right.
ANGLES: dict[Hatch, tuple[float, ...]] = {
    "diagonal": (-45.0,),
    "back-diagonal": (45.0,),
    "horizontal": (0.0,),
    "vertical": (90.0,),
    "cross": (45.0, -45.0),
}

Segment = tuple[Point, Point]


def hatch_segments(points: tuple[Point, ...], hatch: Hatch) -> tuple[Segment, ...]:
    """The hatch's lines inside the outline, even-odd where it crosses itself.

    >>> hatch_segments(((0, 0), (6, 0), (6, 3), (0, 3)), "horizontal")
    (((0.0, 1.6), (6.0, 1.6)),)
    """
    return tuple(
        segment for angle in ANGLES.get(hatch, ()) for segment in _parallel(points, angle, SPACING)
    )


def hatch_dots(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """Centres of dots inside the outline, every other row moved by half a step."""
    dots: list[Point] = []
    for (x1, y), (x2, _) in _parallel(points, 0.0, DOT_SPACING):
        shift = DOT_SPACING / 2 if math.floor(y / DOT_SPACING + 0.5) % 2 else 0.0
        step = math.ceil((x1 + 0.4 - shift) / DOT_SPACING)
        while (x := step * DOT_SPACING + shift) <= x2 - 0.4:
            dots.append((x, y))
            step += 1
    return tuple(dots)


def _parallel(points: tuple[Point, ...], angle: float, spacing: float) -> Iterator[Segment]:
    """Segments of parallel lines within the outline: turned level, cut, and turned back.

    The lines lie on multiples of the spacing from the drawing's origin, so hatches of
    neighbouring pieces run on.
    """
    turn = math.radians(angle)
    cos, sin = math.cos(turn), math.sin(turn)
    level = [(x * cos + y * sin, y * cos - x * sin) for x, y in points]
    heights = [y for _, y in level]
    step = math.floor(min(heights) / spacing) + 1
    while (y := step * spacing) < max(heights) - 1e-9:
        crossings = sorted(_crossings(level, y))
        for x1, x2 in zip(crossings[::2], crossings[1::2], strict=False):
            yield (x1 * cos - y * sin, x1 * sin + y * cos), (x2 * cos - y * sin, x2 * sin + y * cos)
        step += 1


def _crossings(points: list[Point], y: float) -> Iterator[float]:
    for (x1, y1), (x2, y2) in zip(points, [*points[1:], points[0]], strict=True):
        if (y1 <= y) != (y2 <= y):
            yield x1 + (y - y1) / (y2 - y1) * (x2 - x1)
