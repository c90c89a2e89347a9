"""Names of edges and of marked points, set outside the outline wherever they fit."""

import math
from collections.abc import Iterator, Sequence

from gaugewright.drawings.dimension_lines import INK, reading_angle
from gaugewright.drawings.geometry import direction, moved, nearest_edge, outward
from gaugewright.drawings.placing import write_first_free, write_with_leader
from gaugewright.drawings.primitives import Label, Point, Polyline
from gaugewright.drawings.scene import Scene, centred_label, text_room

_GAPS = (1.2, 2.0, 3.0, 4.2, 5.4)
_SLIDES = (0.0, -2.5, 2.5, -5.0, 5.0, -8.0, 8.0, -12.0, 12.0, -17.0, 17.0, -24.0, 24.0)
_TICK, _TICK_WIDTH = 2.5, 0.35


def name_edge(scene: Scene, outline: Sequence[Point], name: str, point: Point) -> Scene:
    """Writes an edge's name along the edge, outside, near its point."""
    written = write_first_free(scene, _along_edge(outline, name, point))
    return written or write_with_leader(scene, point, name)


def _along_edge(outline: Sequence[Point], name: str, point: Point) -> Iterator[Label]:
    edge = nearest_edge(outline, point)
    along, away = direction(*edge), outward(outline, edge)
    angle = reading_angle(along)
    width, height = text_room(name)
    room = math.dist(*edge)
    for text_angle in (angle, 0.0):
        across = height if text_angle or abs(along[1]) < 1e-6 else abs(away[0]) * width + abs(away[1]) * height
        for gap in _GAPS:
            for slide in _SLIDES:
                if abs(slide) <= room / 2:
                    centre = moved(moved(point, away, gap + across / 2), along, slide)
                    yield centred_label(centre, name, text_angle)


def mark_point(scene: Scene, outline: Sequence[Point], name: str, point: Point) -> Scene:
    """A small tick at a point of the outline, with its name: outside, or inside, there on a plate.

    Where neither has room, the line that leads to the name serves as the tick.
    """
    away = outward(outline, nearest_edge(outline, point))
    inward = (-away[0], -away[1])
    for towards, plate in ((away, False), (inward, False), (inward, True)):
        tick = (point, moved(point, towards, _TICK))
        if scene.crosses_text(tick):
            continue
        ticked = scene.draw(Polyline(tick, _TICK_WIDTH, INK))
        written = write_first_free(ticked, _beside_tick(name, point, towards), plate)
        if written:
            return written
    return write_with_leader(scene, point, name)


def _beside_tick(name: str, point: Point, towards: Point) -> Iterator[Label]:
    width, height = text_room(name)
    across = (-towards[1], towards[0])
    reach = abs(towards[0]) * width / 2 + abs(towards[1]) * height / 2
    aside = abs(across[0]) * width / 2 + abs(across[1]) * height / 2
    yield centred_label(moved(point, towards, _TICK + 0.8 + reach), name)
    for sign in (-1, 1):
        for gap in (0.8, 1.6, 2.6):
            centre = moved(moved(point, towards, 0.8 + reach), across, sign * (aside + gap))
            yield centred_label(centre, name)
