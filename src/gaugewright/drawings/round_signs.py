"""The signs of stitch charts turned to stand round a centre.

In: a placed stitch and the size of a unit in mm. Out: primitives, y down.
"""

import math
from collections.abc import Iterator
from dataclasses import replace

from gaugewright.drawings.chart_layout import HEIGHTS, ChartStitch, Point
from gaugewright.drawings.chart_symbols import STROKE, oval, symbol
from gaugewright.drawings.geometry import direction, moved
from gaugewright.drawings.primitives import Item, Label, Polygon, Polyline
from gaugewright.drawings.round_layout import CHAIN_GAP, INSIDE, PlacedStitch

JOIN = 0.35
"""Room at the head of an opening chain for the dot that joins the round."""


def round_sign(one: PlacedStitch, shares: bool, unit: float) -> Iterator[Item]:
    """One stitch from its foot to its top; a low one that `shares` its foot with others has a leg down to it."""
    name = one.stitch.name
    if name == "ch":
        yield from _corner_chains(one, unit)
        return
    along, length = direction(one.foot, one.top), math.dist(one.foot, one.top)
    high = length if name not in ("sc", "sl st") else HEIGHTS[name]
    upright = ChartStitch(name, ((0.0, 0.0),), (0.0, high), (), one.stitch.hold)
    base = moved(one.top, along, -high)
    yield from (_turned(item, base, along, unit) for item in symbol(upright, unit))
    if shares and high < length:
        yield Polyline((_mm(one.foot, unit), _mm(moved(base, along, high / 2 if name == "sc" else high), unit)), STROKE)


def chain_sign(column: tuple[Point, Point], chains: int, unit: float) -> Iterator[Item]:
    """The chain that opens a round, a column up to the dot that joins it."""
    foot, head = column
    along, room = direction(foot, head), math.dist(foot, head) - JOIN
    size = unit * min(1.0, room / chains / 0.6)
    for index in range(chains):
        centre = moved(foot, along, room * (index + 0.5) / chains)
        yield _turned(oval((0.0, 0.0), size, upright=True), centre, along, unit)


def join_sign(column: tuple[Point, Point], unit: float) -> Item:
    """The slip stitch that joins a round."""
    foot, head = column
    return _turned(oval((0.0, 0.0), unit, filled=True), head, direction(foot, head), unit)


def _corner_chains(one: PlacedStitch, unit: float) -> Iterator[Item]:
    """The chains of a corner side by side across it."""
    count = one.stitch.chains
    middle = moved(one.top, one.up, -INSIDE) if count > 1 else one.top
    across = one.up[1], -one.up[0]
    for index in range(count):
        centre = moved(middle, across, (index - (count - 1) / 2) * CHAIN_GAP)
        yield _turned(oval((0.0, 0.0), unit), centre, one.up, unit)


def _mm(point: Point, unit: float) -> Point:
    return point[0] * unit, -point[1] * unit


def _turned(item: Item, origin: Point, up: Point, unit: float) -> Item:
    """A sign drawn upright at the origin, in mm with y down, stood at a point in the direction `up`."""
    assert not isinstance(item, Label)  # signs have no words
    x, y = _mm(origin, unit)
    right, down = (up[1], up[0]), (-up[0], up[1])
    points = tuple((x + a * right[0] + b * down[0], y + a * right[1] + b * down[1]) for a, b in item.points)
    return replace(item, points=points)
