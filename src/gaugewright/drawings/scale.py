"""Finds the scale at which a drawing fits its room."""

from collections.abc import Callable

from gaugewright.drawings.geometry import Box

MARGIN = 1.0
"""White round the finished drawing, in mm."""
_TRIES, _SHRINK = 12, 0.93


def fit_scale(
    extent_at: Callable[[float], Box], piece: tuple[float, float], room: tuple[float, float]
) -> float:
    """The scale, at most life size, at which a drawing of a piece fits a room.

    What stands round the piece keeps its size at every scale, or nearly (a label may find
    another place): so each try takes the surroundings of the try before. Where the surroundings
    alone fill the room, the piece is halved until it is a tenth of the room, and no further.

    >>> fit_scale(lambda s: (-10.0, 0.0, 100 * s, 50 * s), (100, 50), (62, 500))
    0.5
    """
    least = min(room[i] / piece[i] for i in (0, 1)) / 10
    scale = min(1.0, *((room[i] - 2 * MARGIN) / piece[i] for i in (0, 1)))
    for attempt in range(_TRIES):
        left, top, right, bottom = extent_at(scale)
        drawn = right - left, bottom - top
        spare = [room[i] - 2 * MARGIN - drawn[i] for i in (0, 1)]
        if scale <= least or min(spare) >= 0:
            return scale
        better = min(scale + spare[i] / piece[i] for i in (0, 1))
        scale = max(least, better * _SHRINK ** (attempt // 3))
    return scale
