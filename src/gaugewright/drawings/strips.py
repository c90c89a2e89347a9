"""Cuts a horizontal strip out of a polygon: where a band of colour lies in a piece.

The polygon may be tapered, stepped or hollowed out; the strip may then fall into several
parts (the two shoulders beside a neck). Each part is a polygon of its own, so a fill never
runs over the hollow.
"""

from collections.abc import Sequence

from gaugewright.drawings.geometry import area_of
from gaugewright.drawings.primitives import Point

Polygon = tuple[Point, ...]
_NO_AREA = 1e-6


def clip_strip(polygon: Sequence[Point], bottom: float, top: float) -> tuple[Polygon, ...]:
    """The parts of a polygon between two heights.

    >>> clip_strip([(0, 0), (4, 0), (4, 9), (0, 9)], 2, 3)
    (((0.0, 3), (0.0, 2), (4.0, 2), (4.0, 3)),)
    """
    above = _keep_above(tuple(polygon), bottom)
    upside_down = [tuple((x, -y) for x, y in part) for part in above]
    kept = [piece for part in upside_down for piece in _keep_above(part, -top)]
    return tuple(tuple((x, -y) for x, y in part) for part in kept)


def clip_block(
    polygon: Sequence[Point], heights: tuple[float, float], left: float | None, right: float | None
) -> tuple[Polygon, ...]:
    """The parts of a polygon between two heights and, where they are given, two upright lines.

    >>> clip_block([(0, 0), (4, 0), (4, 9), (0, 9)], (2, 3), 1, None)
    (((1, 3.0), (4.0, 3), (4.0, 2), (1, 2.0)),)
    """
    strips = clip_strip(polygon, *heights)
    if left is None and right is None:
        return strips
    low = min(x for x, _ in polygon) if left is None else left
    high = max(x for x, _ in polygon) if right is None else right
    found = [part for strip in strips for part in clip_strip([(y, x) for x, y in strip], low, high)]
    return tuple(tuple((x, y) for y, x in reversed(part)) for part in found)


def _keep_above(polygon: Polygon, level: float) -> list[Polygon]:
    """The parts of a polygon at or above a level.

    The outline is cut into the chains that run above the level. Sorted by place along it, the
    ends of the chains pair off as the two ends of each stretch of the cut that is inside; joining
    every chain's end to its partner gives the parts.
    """
    inside = [y >= level for _, y in polygon]
    if all(inside):
        return [polygon]
    chains = _chains_above(polygon, inside, level)
    places = sorted(
        [(chain[0][0], index, "start") for index, chain in enumerate(chains)]
        + [(chain[-1][0], index, "end") for index, chain in enumerate(chains)]
    )
    follower: dict[int, int] = {}
    for (_, one, role), (_, other, _other_role) in zip(places[::2], places[1::2], strict=True):
        ending, starting = (one, other) if role == "end" else (other, one)
        follower[ending] = starting
    return [part for part in _join(chains, follower) if abs(area_of(part)) > _NO_AREA]


def _chains_above(polygon: Polygon, inside: list[bool], level: float) -> list[list[Point]]:
    """The stretches of the outline above a level, each from its crossing up to its crossing down."""
    count = len(polygon)
    chains = []
    for index in range(count):
        if inside[index] or not inside[(index + 1) % count]:
            continue
        chain = [_crossing(polygon[index], polygon[(index + 1) % count], level)]
        here = (index + 1) % count
        while inside[here]:
            chain.append(polygon[here])
            here = (here + 1) % count
        chain.append(_crossing(polygon[here - 1], polygon[here], level))
        chains.append(chain)
    return chains


def _crossing(a: Point, b: Point, level: float) -> Point:
    share = (level - a[1]) / (b[1] - a[1])
    return a[0] + share * (b[0] - a[0]), level


def _join(chains: list[list[Point]], follower: dict[int, int]) -> list[Polygon]:
    parts, left = [], set(range(len(chains)))
    while left:
        first = here = min(left)
        points: list[Point] = []
        while here in left:
            left.discard(here)
            points += chains[here]
            here = follower.get(here, first)
        parts.append(_without_repeats(points))
    return parts


def _without_repeats(points: list[Point]) -> Polygon:
    return tuple(point for index, point in enumerate(points) if point != points[index - 1])
