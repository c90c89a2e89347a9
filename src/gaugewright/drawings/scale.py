"""Lays a drawing out at the scale at which it fits its room."""

from collections.abc import Callable

from gaugewright.drawings.scene import Scene

MARGIN = 1.0
"""White round the finished drawing, in mm."""
_TRIES, _SHRINK = 12, 0.93


def fit_to_room(
    lay_out: Callable[[float], Scene], piece: tuple[float, float], room: tuple[float, float]
) -> Scene:
    """A piece laid out at the largest scale found, at most life size, at which it fits a room.

    What stands round the piece keeps its size at every scale, or nearly (a label may find
    another place): so each try takes the surroundings of the try before. Where the surroundings
    alone fill the room, the piece is halved until it is a tenth of the room, and no further.

    >>> from gaugewright.drawings.primitives import Polyline
    >>> fit_to_room(lambda s: Scene((Polyline(((-10, 0), (100 * s, 50 * s)), 0.0),)), (100, 50), (62, 500)).extent()
    (-10.0, 0.0, 50.0, 25.0)
    """
    least = min(room[i] / piece[i] for i in (0, 1)) / 10
    scale = min(1.0, *((room[i] - 2 * MARGIN) / piece[i] for i in (0, 1)))
    for attempt in range(_TRIES):
        scene = lay_out(scale)
        left, top, right, bottom = scene.extent()
        drawn = right - left, bottom - top
        spare = [room[i] - 2 * MARGIN - drawn[i] for i in (0, 1)]
        if scale <= least or min(spare) >= 0:
            return scene
        better = min(scale + spare[i] / piece[i] for i in (0, 1))
        scale = max(least, better * _SHRINK ** (attempt // 3))
    return lay_out(scale)
