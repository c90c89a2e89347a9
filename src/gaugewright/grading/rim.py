"""The outline of joined motifs: its sides one after the other, how it turns between them, and a border's stitches along it.

In: a layout. Out: its rim in mm, counter-clockwise, and whole stitches for each side. Motifs are laid on a lattice of
whole numbers, so that corners which meet are equal exactly: a corner of one motif turns outwards, a corner of two
lies between them, straight on along squares and a valley between hexagons.
"""

import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.grading.layout_model import Layout
from gaugewright.rounding import half_up
from gaugewright.tolerances import SEAM_SHARE

Vertex = tuple[int, int]
CORNERS_OF: dict[int, tuple[Vertex, ...]] = {
    4: ((-1, -1), (1, -1), (1, 1), (-1, 1)),
    6: ((0, -2), (1, -1), (1, 1), (0, 2), (-1, 1), (-1, -1)),
}
"""Corners of a motif from its middle, in halves of its width across and, of a hexagon, in halves of its side up."""

ROW_RISE = {4: 2, 6: 3}
"""From one row of motifs to the next, in the same steps."""


@dataclass(frozen=True, slots=True)
class Rim:
    """The outline of a layout: its corners in mm, of which each ends a side, the first side beginning at the last of them.

    `outer` says of each whether a single motif has it, so that the outline turns outwards there.
    """

    points: tuple[tuple[float, float], ...]
    outer: tuple[bool, ...]
    side: float

    @property
    def sides(self) -> int:
        """Sides of motifs that lie outside."""
        return len(self.points)

    @property
    def corners(self) -> int:
        """Corners at which it turns outwards."""
        return sum(self.outer)

    @property
    def joins(self) -> int:
        """Corners at which two motifs meet."""
        return self.sides - self.corners

    @property
    def length(self) -> float:
        """All the way round, mm."""
        return self.sides * self.side


def rim_of(layout: Layout) -> Rim:
    """The rim, beginning at a corner that turns outwards.

    >>> [(rim.sides, rim.corners, rim.joins) for rim in (rim_of(Layout(4, 3, 2, 100.0)), rim_of(Layout(6, 3, 2, 100.0)))]
    [(10, 4, 6), (16, 11, 5)]
    """
    lattice = CORNERS_OF[layout.sides]
    middles = [(2 * place.number + 1 + (place.row % 2 if layout.is_offset else 0), -ROW_RISE[layout.sides] * place.row) for place in layout.places()]
    motifs = [tuple((x + dx, y + dy) for dx, dy in lattice) for x, y in middles]
    touched = Counter(vertex for motif in motifs for vertex in motif)
    sides = {side for motif in motifs for side in zip(motif, (*motif[1:], motif[0]), strict=True)}
    following = {start: end for start, end in sides if (end, start) not in sides}
    walked = list(_walk(following, min(vertex for vertex in following if touched[vertex] == 1)))
    side = layout.width * math.tan(math.pi / layout.sides)
    step, top = (layout.width / 2 if layout.sides == 4 else side / 2), next(layout.places()).y
    points = tuple((x * layout.width / 2, top + y * step) for x, y in walked)
    return Rim(points, tuple(touched[vertex] == 1 for vertex in walked), side)


def _walk(following: dict[Vertex, Vertex], first: Vertex) -> Iterator[Vertex]:
    """The ends of all sides, in order."""
    at = following[first]
    while at != first:
        yield at
        at = following[at]
    yield first


def offset(rim: Rim, depth: float) -> tuple[tuple[float, float], ...]:
    """The outline so far outside the rim, its corners mitred: what a border so deep comes to."""
    found = []
    for before, here, after in zip((rim.points[-1], *rim.points), rim.points, (*rim.points[1:], rim.points[0]), strict=False):
        (ax, ay), (bx, by) = _outward(before, here), _outward(here, after)
        share = depth / (1 + ax * bx + ay * by)
        found.append((here[0] + share * (ax + bx), here[1] + share * (ay + by)))
    return tuple(found)


def _outward(start: tuple[float, float], end: tuple[float, float]) -> tuple[float, float]:
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = math.hypot(dx, dy)
    return dy / length, -dx / length


@dataclass(frozen=True, slots=True)
class RimPick:
    """Stitches picked up round a rim: `along` each side, with the one at the corner or join that ends it; `own` are the
    motif's stitches along a side, counted alike. `outer` tells corners from joins.
    """

    layout: Layout
    own: int
    along: tuple[int, ...]
    outer: tuple[bool, ...]

    @property
    def each(self) -> int:
        """Stitches along a side from corner to corner, those at both left out."""
        return min(self.along) - 1

    @property
    def more(self) -> int:
        """Sides along which there is one more."""
        return sum(count > min(self.along) for count in self.along)

    @property
    def corners(self) -> int:
        """Corners at which the rim turns outwards."""
        return sum(self.outer)

    @property
    def joins(self) -> int:
        """Corners at which two motifs meet."""
        return len(self.outer) - self.corners


def pick_rim(layout: Layout, own: int, stitch: float) -> RimPick:
    """A border's stitches of a width `stitch` (mm) round a rim whose motifs have `own` along a side.

    Stitch for stitch, or alike along each side, where that takes no more up than a seam does; else the sides of the
    whole rim share out what it is long.

    >>> pick_rim(Layout(4, 1, 1, 100.0), 20, 5.0).along, pick_rim(Layout(4, 1, 1, 100.0), 20, 9.5).along
    ((20, 20, 20, 20), (10, 11, 10, 11))
    """
    rim = rim_of(layout)
    exact = rim.side / stitch
    for alike in (own, max(FEWEST, half_up(exact))):
        if abs(alike - exact) <= SEAM_SHARE * exact:
            return RimPick(layout, own, (alike,) * rim.sides, rim.outer)
    each = max(FEWEST, int(exact))
    more = min(rim.sides - 1, max(1, half_up(rim.sides * (exact - each))))
    along = tuple(each + (number * more // rim.sides > (number - 1) * more // rim.sides) for number in range(1, rim.sides + 1))
    return RimPick(layout, own, along, rim.outer)


FEWEST = 2
"""A side has a stitch beside the one at its end, or nothing lies between two corners."""
