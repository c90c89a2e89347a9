"""The outline of a graded piece: where its row ends lie."""

from dataclasses import dataclass

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Outline:
    """Row ends from the bottom up: `starting[0]` and `far[0]` lie on the bottom edge, one more per row.

    x runs from the starting edge (0 at the bottom) to the far edge, y up from the bottom edge, in mm.
    `left` holds, for the starting and the far edge, the rows that leave stitches or slip over them: there
    the edge is a stair. A piece divided at the neck has the outlines of its two `sides`, the starting
    one first; its own edges then go on along their outer edges. `slant` is how far, at the starting and the far
    edge, the last row rises from the edge to its full height. Rows that lie in a V have their points on a `spine`:
    their ends lie along the bottom edge itself, and heights are those of the points.
    """

    starting: tuple[Point, ...]
    far: tuple[Point, ...]
    left: tuple[frozenset[int], frozenset[int]] = (frozenset(), frozenset())
    sides: "tuple[Outline, ...]" = ()
    slant: tuple[float, float] = (0.0, 0.0)
    spine: tuple[Point, ...] = ()

    @property
    def heights(self) -> tuple[float, ...]:
        """Height above the bottom edge after each row, 0 first."""
        return tuple(y for _, y in self.spine or self.starting)

    def polygon(self) -> tuple[Point, ...]:
        """The closed outline, from the bottom of the far edge up, along the neck, and down the starting edge."""
        if self.spine:
            return (self.starting[-1], self.far[-1], self.spine[-1])
        starting, far = _stairs(self.starting, self.left[0]), _stairs(self.far, self.left[1])
        (x, y), (far_x, far_y) = starting[-1], far[-1]
        top = (far_x - self.slant[1], far_y), *self.neck(), (x + self.slant[0], y)
        return (*far[:-1], *top, *reversed(starting[:-1]))

    def neck(self) -> tuple[Point, ...]:
        """The neck edge of a divided piece, from the far side's top to the starting side's."""
        if not self.sides:
            return ()
        starting, far = self.sides
        return (*reversed(_stairs(far.starting, far.left[0])), *_stairs(starting.far, starting.left[1]))


def row_nearest(heights: tuple[float, ...], height: float) -> int:
    """The row whose top lies nearest a height above the bottom edge, mm; 0 is the edge itself.

    >>> row_nearest((0.0, 12.0, 24.0, 40.0), 30.0)
    2
    """
    return min(range(len(heights)), key=lambda row: abs(heights[row] - height))


def _stairs(points: tuple[Point, ...], left: frozenset[int]) -> tuple[Point, ...]:
    """Row ends with the inner corner of each stair."""
    found: list[Point] = []
    for row, point in enumerate(points):
        found += [(point[0], points[row - 1][1])] if row in left else []
        found.append(point)
    return tuple(found)
