"""Puts all dimensions of a piece in their places round its outline.

Dimensions along sloping edges come first, close to their edge. The others go to a side of the
piece: the one their extension lines reach without crossing anything, and of those the nearest.
On each side the shortest lies nearest and longer ones farther out, so that no two dimension
lines cross; short ones side by side share a level.
"""

from collections.abc import Sequence
from typing import Literal, NamedTuple

from gaugewright.drawings.dimension_lines import DimensionLine, reach, shapes, text_places
from gaugewright.drawings.geometry import Box, box_around, direction, moved, nearest_edge, outward
from gaugewright.drawings.model import Along
from gaugewright.drawings.placing import write_first_free, write_with_leader
from gaugewright.drawings.primitives import Point, Polyline
from gaugewright.drawings.scene import Scene

Side = Literal["left", "right", "bottom", "top"]
FIRST, NEXT = 10.0, 7.0
"""Distance in mm of the nearest dimension line from the outline, and of each from the one before."""
_NORMALS: dict[Side, Point] = {
    "left": (-1.0, 0.0), "right": (1.0, 0.0), "bottom": (0.0, 1.0), "top": (0.0, -1.0),
}  # fmt: skip
_SLOPE_OFFSETS = (10.0, 8.0, 12.0, 14.0, 17.0, 20.0, 24.0, 6.0, 4.0)
_UPRIGHT_OR_LEVEL = 0.06
_CROSSING, _STRADDLING = 10.0, 5.0


class Wanted(NamedTuple):
    """A dimension still without a place: what it measures on the paper, and its text."""

    along: Along
    start: Point
    end: Point
    text: str


class _Sided(NamedTuple):
    wanted: Wanted
    side: Side

    @property
    def span(self) -> tuple[float, float]:
        axis = 0 if self.side in ("bottom", "top") else 1
        a, b = self.wanted.start[axis], self.wanted.end[axis]
        return min(a, b), max(a, b)


def add_dimensions(scene: Scene, outline: tuple[Point, ...], wanted: Sequence[Wanted]) -> Scene:
    """The scene with every dimension drawn and its text set."""
    sloping = [w for w in wanted if w.along == "edge" and _slopes(w)]
    straight = [w for w in wanted if w not in sloping]
    placed: list[DimensionLine] = []
    for item in sloping:
        line = _beside_slope(scene, outline, item)
        scene = scene.draw(*shapes(line))
        placed.append(line)
    sided: list[_Sided] = []
    for item in straight:
        sided.append(_Sided(item, _choose_side(scene, outline, item, sided)))
    for side in _NORMALS:
        lines = _stack(scene, outline, side, [s for s in sided if s.side == side])
        scene = scene.draw(*(shape for line in lines for shape in shapes(line)))
        placed += lines
    return _write_texts(scene, placed)


def _write_texts(scene: Scene, placed: Sequence[DimensionLine]) -> Scene:
    for line in placed:
        (ax, ay), (bx, by) = line.line_start, line.line_end
        middle = ((ax + bx) / 2, (ay + by) / 2)
        scene = (
            write_first_free(scene, text_places(line))
            or write_first_free(scene, text_places(line), plate=True)
            or write_with_leader(scene, middle, line.text, strong=True)
        )
    return scene


def _slopes(wanted: Wanted) -> bool:
    along = direction(wanted.start, wanted.end)
    return min(abs(along[0]), abs(along[1])) > _UPRIGHT_OR_LEVEL


def _beside_slope(scene: Scene, outline: tuple[Point, ...], wanted: Wanted) -> DimensionLine:
    """A dimension parallel to a sloping edge, outside if that is free, else inside."""
    (ax, ay), (bx, by) = wanted.start, wanted.end
    dx, dy = direction(wanted.start, wanted.end)
    away = outward(outline, nearest_edge(outline, ((ax + bx) / 2, (ay + by) / 2)))
    normal = (dy, -dx) if dy * away[0] - dx * away[1] >= 0 else (-dy, dx)
    choices = [
        _offset_line(wanted, (normal[0] * sign, normal[1] * sign), distance)
        for sign in (1, -1)
        for distance in _SLOPE_OFFSETS
    ]
    free = [line for line in choices if _is_free(scene, line)]
    return free[0] if free else choices[0]


def _offset_line(wanted: Wanted, normal: Point, distance: float) -> DimensionLine:
    ends = moved(wanted.start, normal, distance), moved(wanted.end, normal, distance)
    return DimensionLine(wanted.start, wanted.end, *ends, wanted.text)


def _is_free(scene: Scene, line: DimensionLine) -> bool:
    segments = [(s.points[0], s.points[1]) for s in shapes(line) if isinstance(s, Polyline)]
    return not any(scene.crosses(segment) for segment in segments)


def _choose_side(
    scene: Scene, outline: tuple[Point, ...], wanted: Wanted, taken: Sequence[_Sided]
) -> Side:
    upright = abs(wanted.end[1] - wanted.start[1]) > abs(wanted.end[0] - wanted.start[0])
    sideways = wanted.along == "up" or (wanted.along == "edge" and upright)
    choices: tuple[Side, Side] = ("left", "right") if sideways else ("bottom", "top")
    return min(choices, key=lambda side: _cost(scene, box_around(outline), _Sided(wanted, side), taken))


def _cost(scene: Scene, piece: Box, sided: _Sided, taken: Sequence[_Sided]) -> float:
    """How badly a dimension stands on a side: crossings first, then how far it reaches."""
    normal = _NORMALS[sided.side]
    cost = 0.0
    for point in (sided.wanted.start, sided.wanted.end):
        distance = _distance_to(sided.side, piece, point)
        extent = max(piece[2] - piece[0], piece[3] - piece[1])
        segment = (moved(point, normal, 0.3), moved(point, normal, distance + FIRST))
        cost += distance / extent + _CROSSING * scene.crosses(segment)
    low, high = sided.span
    for other in taken:
        if other.side != sided.side:
            continue
        starts, ends = other.span
        cost += _STRADDLING * (low < starts < high < ends or starts < low < ends < high)
    return cost


def _distance_to(side: Side, piece: Box, point: Point) -> float:
    left, top, right, bottom = piece
    x, y = point
    return {"left": x - left, "right": right - x, "bottom": bottom - y, "top": y - top}[side]


def _stack(
    scene: Scene, outline: tuple[Point, ...], side: Side, sided: Sequence[_Sided]
) -> list[DimensionLine]:
    """The dimensions of one side, shortest nearest."""
    piece = box_around(outline)
    beyond = _beyond(side, piece, scene.extent())
    first = FIRST if beyond < FIRST - NEXT else beyond + NEXT
    lines: list[tuple[int, _Sided]] = []
    for item in sorted(sided, key=lambda s: s.span[1] - s.span[0]):
        below = [level for level, other in lines if _collide(item, other)]
        lines.append((max(below, default=-1) + 1, item))
    result = []
    for level, item in lines:
        offset, normal = first + NEXT * level, _NORMALS[side]
        start, end = (
            moved(p, normal, _distance_to(side, piece, p) + offset)
            for p in (item.wanted.start, item.wanted.end)
        )
        result.append(DimensionLine(item.wanted.start, item.wanted.end, start, end, item.wanted.text))
    return result


def _beyond(side: Side, piece: Box, scene: Box) -> float:
    """How far what is drawn already sticks out over a side of the piece."""
    over = {"left": piece[0] - scene[0], "right": scene[2] - piece[2]}
    upright = {"bottom": scene[3] - piece[3], "top": piece[1] - scene[1]}
    return (over | upright)[side]


def _collide(one: _Sided, other: _Sided) -> bool:
    """True where two dimensions of a side can't share a level."""
    (a, b), (c, d) = one.span, other.span
    slack = max(reach(b - a, one.wanted.text), reach(d - c, other.wanted.text))
    return a < d + slack - 1e-6 and c < b + slack - 1e-6
