"""Where each row's ends lie, measured anew from the rows of all strips of a piece.

Written apart from the engine, so that the two can disagree.
"""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from gaugewright.gauge.model import Gauge
from gaugewright.grading.model import Row, SpanStart, Strip
from gaugewright.tolerances import SAME_LENGTH

Gauges = Mapping[str, Gauge]


class RowEnd(NamedTuple):
    """A row's height, how far it moves an edge (inwards is less), and whether it leaves stitches there."""

    height: float
    move: float
    stair: bool = False


class RowEnds(NamedTuple):
    """Both outer edges from the bottom to the top, and a divided neck's two edges from the division up."""

    starting: tuple[RowEnd, ...]
    far: tuple[RowEnd, ...]
    neck: tuple[tuple[RowEnd, ...], ...] = ()


def row_ends(strips: Sequence[Strip], gauges: Gauges) -> RowEnds:
    """Row ends of the whole piece: the outer edges go on along the sides of a divided top."""
    main = _of_strip(strips[0], gauges)
    sides = sorted((strip for strip in strips[1:] if isinstance(strip.start, SpanStart)), key=_first)
    if not sides:
        return main
    (left, neck_left), (neck_right, right) = (_of_strip(side, gauges)[:2] for side in sides)
    return RowEnds((*main.starting, *left), (*main.far, *right), (neck_left, neck_right))


def _first(strip: Strip) -> int:
    return strip.start.first if isinstance(strip.start, SpanStart) else 0


def _of_strip(strip: Strip, gauges: Gauges) -> RowEnds:
    """What a change of gauge alone adds to the width, both edges share."""
    found: tuple[list[RowEnd], list[RowEnd]] = ([], [])
    flat = 1.0 if strip.worked == "rows" else 0.5
    before, turned = None, 0
    for number, row in enumerate(strip.rows, start=1):
        gauge = gauges[row.fabric]
        stitch = gauge.width / gauge.stitches * flat
        turned += row.at_corners if strip.worked == "rows" else 0
        width = (row.across - turned) * stitch
        begun = number > 1 or isinstance(strip.start, SpanStart)
        shaped = strip.worked == "rows" and begun and any(run.operation.change for run in row.runs)
        in_order = row.edge_changes() if shaped else (0, 0)
        moved = [change * stitch for change in (in_order if row.side == "RS" else in_order[::-1])]
        widened = width - (strip.start.stitches * stitch if before is None else before)
        shared = (widened - sum(moved)) / 2
        stairs = _stairs(row)
        for edge, move in enumerate(moved):
            found[edge].append(RowEnd(gauge.height / gauge.rows * row.height, move + shared, stairs[edge if row.side == "RS" else 1 - edge]))
        before = width
    return RowEnds(tuple(found[0]), tuple(found[1]))


def _stairs(row: Row) -> tuple[bool, bool]:
    """Whether stitches stay unworked at the row's start and at its end."""
    kinds = {run.operation.kind for run in row.runs}
    return "slip over" in kinds, "leave" in kinds


def along(rows: Sequence[RowEnd]) -> float:
    """The line along row ends: upright to where a slope begins, then straight from shaping row to shaping row.

    Stitches left are gone along level, in full, and up the row that leaves them; what comes after begins anew.

    >>> along((RowEnd(10, 0), RowEnd(10, -30, True), RowEnd(10, 0)))
    60.0
    """
    length, begun = 0.0, 0
    for number, row in enumerate(rows):
        if row.stair:
            length += _sloped(rows[begun:number]) + abs(row.move) + row.height
            begun = number + 1
    return length + _sloped(rows[begun:])


def _sloped(rows: Sequence[RowEnd]) -> float:
    """A slope begins as many rows before its first shaping row as there are to its second; gaps a row longer are its own."""
    moving = [number for number, row in enumerate(rows) if abs(row.move) > SAME_LENGTH]
    length = sum(row.height for row in rows)
    for place, number in enumerate(moving):
        below = moving[place - 1] if place else -1
        gap = moving[place + 1] - number if place + 1 < len(moving) else number - below
        begins = below if place and number - below <= gap + 1 else max(below, number - gap)
        rise = sum(row.height for row in rows[begins + 1 : number + 1])
        length += (rise**2 + rows[number].move ** 2) ** 0.5 - rise
    return length
