"""The outline of a strip from its rows: where every row end lies, in mm.

The one function that says where an edge runs; edge lengths, drawings and areas all use it.
"""

import math
from collections.abc import Mapping

from gaugewright.gauge.model import Gauge
from gaugewright.grading.model import Outline, Point, Strip
from gaugewright.tolerances import SAME_LENGTH


def outline_of(strip: Strip, gauges: Mapping[str, Gauge]) -> Outline:
    """Row ends of a strip worked in rows, or of a round laid flat (half its width).

    A row's width is its stitches at its fabric's gauge. Stitches changed at an edge move that edge;
    a change of gauge alone moves both alike.
    """
    flat = 1.0 if strip.worked == "rows" else 0.5
    first = strip.rows[0] if strip.rows else None
    width = strip.start.stitches * (gauges[first.fabric].stitch_width if first else 0.0) * flat
    left, right, y = 0.0, width, 0.0
    starting, far = [(left, y)], [(right, y)]
    for number, row in enumerate(strip.rows, start=1):
        gauge = gauges[row.fabric]
        wanted = row.makes * gauge.stitch_width * flat
        if strip.worked == "rows" and number > 1:
            first_edge, last_edge = row.edge_changes()
            at_start, at_far = (first_edge, last_edge) if number % 2 else (last_edge, first_edge)
        else:
            at_start = at_far = 0
        left -= at_start * gauge.stitch_width * flat
        right += at_far * gauge.stitch_width * flat
        spare = wanted - (right - left)
        left, right = left - spare / 2, right + spare / 2
        y += gauge.row_height
        starting.append((left, y))
        far.append((right, y))
    return Outline(tuple(starting), tuple(far))


def run_length(points: tuple[Point, ...], left: frozenset[int] = frozenset()) -> float:
    """Length of the line through row ends, from one shaping row to the next.

    An edge that loses a stitch every third row slopes evenly; it isn't level with a jog on each third
    row, which would be longer by a centimetre or more on a neck edge. A longer stretch before a slope
    stays upright but for the gap that the slope itself goes on with. A step of stitches left unworked
    (rows in `left`) is a stair: level, in full, then upright.

    >>> run_length(((0, 0), (0, 10), (0, 20), (0, 30), (-30, 70), (-60, 110)))
    130.0
    >>> run_length(((0, 0), (-30, 10), (-30, 20)), left=frozenset({1}))
    50.0
    """
    length, begin = 0.0, 0
    head: tuple[Point, ...] = ()
    for row in sorted(left):
        corner = (points[row][0], points[row - 1][1])
        before = (*head, *points[begin:row])
        length += _slope_length(before) + math.dist(before[-1], corner)
        head, begin = (corner,), row
    return length + _slope_length((*head, *points[begin:]))


def _slope_length(points: tuple[Point, ...]) -> float:
    turns = [row for row in range(1, len(points)) if abs(points[row][0] - points[row - 1][0]) > SAME_LENGTH]
    corners, reached = [0], 0
    for index, row in enumerate(turns):
        gap = turns[index + 1] - row if index + 1 < len(turns) else row - reached
        corners += [max(reached, row - gap), row]
        reached = row
    corners.append(len(points) - 1)
    return sum(math.dist(points[low], points[high]) for low, high in zip(corners, corners[1:], strict=False))
