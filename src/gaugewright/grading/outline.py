"""The outline of a strip from its rows: where every row end lies, in mm.

The one function that says where an edge runs; edge lengths, drawings and areas all use it.
"""

import math
from collections.abc import Mapping

from gaugewright.gauge.model import Gauge
from gaugewright.grading.model import CentreStart, Outline, Point, SpanStart, Strip
from gaugewright.tolerances import SAME_LENGTH
from gaugewright.vocabulary import RowEdge


def outline_of(strip: Strip, gauges: Mapping[str, Gauge]) -> Outline:
    """Row ends of a strip worked in rows, or of a round laid flat (half its width).

    A row's width is its stitches at its fabric's gauge. Stitches changed at an edge move that edge;
    a change of gauge alone moves both alike. A band is laid out straight: what its corners lose or gain are
    gaps or folds in it, so that its ends stay upright.
    """
    return _outline(strip, gauges, (0.0, 0.0))


def outline_of_all(strips: tuple[Strip, ...], gauges: Mapping[str, Gauge]) -> Outline:
    """The outline of a whole piece. Where it divides, its edges go on along the outer edges of both sides."""
    main, *others = strips
    if fans_out(main):
        return _fan(main, gauges)
    below = outline_of(main, gauges)
    if not others:
        return below
    starts = {strip.start.first: strip for strip in others if isinstance(strip.start, SpanStart)}
    (left, y), (right, _) = below.starting[-1], below.far[-1]
    stitch = (right - left) / main.last_count
    starting, far = (_outline(starts[first], gauges, (left + first * stitch, y)) for first in sorted(starts))
    rows = len(main.rows)
    return Outline(
        (*below.starting, *starting.starting[1:]), (*below.far, *far.far[1:]),
        tuple(low | {row + rows for row in high} for low, high in ((below.left[0], starting.left[0]), (below.left[1], far.left[1]))),  # type: ignore[arg-type]
        (starting, far),
    )


def fans_out(strip: Strip) -> bool:
    """Whether rows lie in a V round the middle of their first edge: worked in rows from a ring."""
    return isinstance(strip.start, CentreStart) and strip.worked == "rows"


def _fan(strip: Strip, gauges: Mapping[str, Gauge]) -> Outline:
    """Row ends along the long edge, which rows meet at 45 degrees, and their points along the spine."""
    reached, along = 0.0, [0.0]
    for row in strip.rows:
        reached += math.sqrt(2) * gauges[row.fabric].row_height
        along.append(reached)
    return Outline(tuple((-x, 0.0) for x in along), tuple((x, 0.0) for x in along), spine=tuple((0.0, y) for y in along))


def _outline(strip: Strip, gauges: Mapping[str, Gauge], corner: Point) -> Outline:
    """The outline of a strip whose starting edge begins at `corner`."""
    flat = 1.0 if strip.worked == "rows" else 0.5
    first = strip.rows[0] if strip.rows else None
    width = strip.start.stitches * (gauges[first.fabric].stitch_width if first else 0.0) * flat
    if isinstance(strip.start, CentreStart):
        width = 0.0  # a closed centre is a point, from which its first round opens
    left, y = corner
    right = left + width
    starting, far = [(left, y)], [(right, y)]
    stairs: tuple[set[int], set[int]] = (set(), set())
    turned = 0
    for number, row in enumerate(strip.rows, start=1):
        gauge = gauges[row.fabric]
        turned += row.at_corners if strip.worked == "rows" else 0
        wanted = (row.across - turned) * gauge.stitch_width * flat
        forward = row.side == "RS"
        if strip.worked == "rows" and (number > 1 or isinstance(strip.start, SpanStart)):
            first_edge, last_edge = row.edge_changes()
            at_start, at_far = (first_edge, last_edge) if forward else (last_edge, first_edge)
        else:
            at_start = at_far = 0
        for kind, edge in (("slip over", not forward), ("leave", forward)):
            if any(run.operation.kind == kind for run in row.runs):
                stairs[edge].add(number)
        left -= at_start * gauge.stitch_width * flat
        right += at_far * gauge.stitch_width * flat
        spare = wanted - (right - left)
        left, right = left - spare / 2, right + spare / 2
        y += gauge.height_of(row.height)
        starting.append((left, y))
        far.append((right, y))
    return Outline(tuple(starting), tuple(far), (frozenset(stairs[0]), frozenset(stairs[1])))


def run_length(points: tuple[Point, ...], left: frozenset[int] = frozenset()) -> float:
    """Length of the line through row ends, from one shaping row to the next.

    An edge that loses a stitch every third row slopes evenly; it isn't level with a jog on each third
    row, which would be longer by a centimetre or more on a neck edge. A longer stretch before a slope
    stays upright but for the gap that the slope itself goes on with; between two
    shaping rows a row more is the same slope, in whole rows. A step of stitches left unworked
    (rows in `left`) is a stair: level, in full, then upright.

    >>> run_length(((0, 0), (0, 10), (0, 20), (0, 30), (-30, 70), (-60, 110)))
    130.0
    >>> run_length(((0, 0), (-30, 10), (-30, 20)), left=frozenset({1}))
    50.0
    """
    length, begin = 0.0, 0
    for row in sorted(left):
        corner = (points[row][0], points[row - 1][1])
        length += _slope_length(points[begin:row]) + math.dist(points[row - 1], corner) + math.dist(corner, points[row])
        begin = row
    return length + _slope_length(points[begin:])


def _slope_length(points: tuple[Point, ...]) -> float:
    turns = [row for row in range(1, len(points)) if abs(points[row][0] - points[row - 1][0]) > SAME_LENGTH]
    corners, reached = [0], 0
    for index, row in enumerate(turns):
        gap = turns[index + 1] - row if index + 1 < len(turns) else row - reached
        same = index > 0 and row - reached <= gap + 1
        corners += [reached if same else max(reached, row - gap), row]
        reached = row
    corners.append(len(points) - 1)
    return sum(math.dist(points[low], points[high]) for low, high in zip(corners, corners[1:], strict=False))


def edge_length(outline: Outline, side: RowEdge, first: int, last: int) -> float:
    """Length of one edge from the end of row `first` to the end of row `last`."""
    points = (outline.starting if side == "starting" else outline.far)[first : last + 1]
    return run_length(points, frozenset(row - first for row in outline.left[side == "far"] if first < row <= last))
