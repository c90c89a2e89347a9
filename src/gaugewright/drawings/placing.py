"""Finds a free place for a piece of text."""

import math
from collections.abc import Iterable, Iterator

from gaugewright.drawings.dimension_lines import INK, THIN
from gaugewright.drawings.geometry import direction, moved
from gaugewright.drawings.primitives import Label, Point, Polyline
from gaugewright.drawings.scene import CLEAR, Scene, centred_label, text_room

_STEP = 3.0
_FIRST_RING, _PATIENCE = 2, 30
_DIRECTIONS = 16


def write_first_free(scene: Scene, places: Iterable[Label], plate: bool = False) -> Scene | None:
    """Writes text at the first place that has room; None where no place has."""
    for label in places:
        if scene.has_room(label, plate):
            return scene.write(label, plate)
    return None


def write_with_leader(scene: Scene, point: Point, text: str, strong: bool = False) -> Scene:
    """Writes text at the nearest free place round a point, with a thin line leading to it.

    The last resort, and it always succeeds: the paper is unbounded while a scene is made. From
    the thirtieth ring on the leader may run over other lines, and over text from the sixtieth, since a point
    that lies under text can't be led to otherwise.
    """
    for ring in range(_FIRST_RING, 10_000):
        for label, leader in _ring(point, text, strong, ring * _STEP):
            line = (leader.points[0], leader.points[1])
            blocked = (ring < 2 * _PATIENCE and scene.crosses_text(line)) or (ring < _PATIENCE and scene.crosses(line))
            if not blocked and scene.has_room(label):
                return scene.draw(leader).write(label)
    raise AssertionError("an unbounded paper has room for every text")


def _ring(point: Point, text: str, strong: bool, radius: float) -> Iterator[tuple[Label, Polyline]]:
    width, height = text_room(text, strong)
    for turn in range(_DIRECTIONS):
        angle = 2 * math.pi * turn / _DIRECTIONS
        ray = (math.cos(angle), -math.sin(angle))
        stop = min(
            (width / 2 + 2 * CLEAR) / max(abs(ray[0]), 1e-9),
            (height / 2 + 2 * CLEAR) / max(abs(ray[1]), 1e-9),
        )
        centre = moved(point, ray, radius + stop)
        start = moved(point, direction(point, centre), CLEAR)
        leader = Polyline((start, moved(point, ray, radius)), THIN, INK)
        yield centred_label(centre, text, strong=strong), leader
