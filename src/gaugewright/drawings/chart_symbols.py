"""The symbols of stitch charts, as the trade draws them: chain an oval, slip stitch a dot, single crochet a cross,
taller stitches a T with a stroke across the stem for each yarn over above one.

In: a placed stitch and the size of a unit in mm. Out: primitives.
"""

import math
from collections.abc import Iterator

from gaugewright.drawings.chart_layout import HEIGHTS, ChartStitch, Point
from gaugewright.drawings.primitives import Item, Polygon, Polyline

STROKE = 0.22
STROKES = {"hdc": 0, "dc": 1, "tr": 2}


def symbol(one: ChartStitch, unit: float) -> Iterator[Item]:
    """One stitch; x to the right and y down, in mm."""
    top = _mm(one.top, unit)
    if one.turns:
        yield from _turning_chain(one, top, unit)
    elif one.name in ("ch", "sl st"):
        yield oval(top, unit, filled=one.name == "sl st")
    else:
        yield from _stems(one, top, unit)


def _mm(point: Point, unit: float) -> Point:
    return point[0] * unit, -point[1] * unit


def oval(centre: Point, unit: float, filled: bool = False, upright: bool = False) -> Polygon:
    """A chain, or a slip stitch where it is filled; upright in a column of chains."""
    wide, high = (0.16, 0.27) if upright else (0.27, 0.16)
    points = tuple(
        (centre[0] + wide * unit * math.cos(step * math.pi / 8), centre[1] + high * unit * math.sin(step * math.pi / 8)) for step in range(16)
    )
    return Polygon(points, STROKE, fill="#1a1a1a" if filled else "")


def _turning_chain(one: ChartStitch, top: Point, unit: float) -> Iterator[Item]:
    """A column of chains as high as the stitch."""
    height = HEIGHTS[one.name] * unit
    for index in range(one.turns):
        yield oval((top[0], top[1] + height * (1 - (index + 0.5) / one.turns)), unit * min(1.0, 1.6 * HEIGHTS[one.name] / one.turns), upright=True)


def _stems(one: ChartStitch, top: Point, unit: float) -> Iterator[Item]:
    """From each foot to the top; several in one place are drawn as a bundle, joined at both ends."""
    for index, foot in enumerate(one.feet):
        base = _lifted(_mm(foot, unit), top, 0.12 * unit)
        middle: tuple[Point, ...] = ()
        if one.in_one:
            aside = (index - (len(one.feet) - 1) / 2) * 0.34 * unit
            middle = (((base[0] + top[0]) / 2 + aside, (base[1] + top[1]) / 2),)
        if one.name == "sc" and len(one.feet) == 1:
            yield from _cross(base, top, unit)
        else:
            yield Polyline((base, *middle, top), STROKE)
            yield from _strokes(one, (middle or (base,))[-1] if middle else base, top, unit)
        yield from _foot(one, base, unit)
    if one.name != "sc":
        yield Polyline(((top[0] - 0.27 * unit, top[1]), (top[0] + 0.27 * unit, top[1])), STROKE)


def _lifted(base: Point, top: Point, by: float) -> Point:
    """The foot a little above the stitch it stands on."""
    length = math.dist(base, top) or 1.0
    return base[0] + (top[0] - base[0]) * by / length, base[1] + (top[1] - base[1]) * by / length


def _cross(base: Point, top: Point, unit: float) -> Iterator[Item]:
    x, y, arm = (base[0] + top[0]) / 2, (base[1] + top[1]) / 2, 0.24 * unit
    yield Polyline(((x - arm, y - arm), (x + arm, y + arm)), STROKE)
    yield Polyline(((x - arm, y + arm), (x + arm, y - arm)), STROKE)


def _strokes(one: ChartStitch, base: Point, top: Point, unit: float) -> Iterator[Item]:
    """Strokes across the stem, one for each yarn over above the first; a leg of single crochets has its cross's."""
    for index in range(STROKES.get(one.name, 0)):
        part = 0.42 + 0.16 * index
        x, y = top[0] + (base[0] - top[0]) * part, top[1] + (base[1] - top[1]) * part
        yield Polyline(((x - 0.2 * unit, y + 0.1 * unit), (x + 0.2 * unit, y - 0.1 * unit)), STROKE)


def _foot(one: ChartStitch, base: Point, unit: float) -> Iterator[Item]:
    """Loops and posts: an arc under the foot, or a hook, to the right round the front, to the left round the back."""
    r = 0.2 * unit
    x, y = base
    if one.hold in ("back", "front"):
        sign = -1.0 if one.hold == "back" else 1.0
        yield Polyline(tuple((x + r * math.cos(a), y + 0.5 * r + sign * -0.6 * r * math.sin(a)) for a in (math.pi * step / 6 for step in range(7))), STROKE)
    elif one.hold in ("front post", "back post"):
        way = 1.0 if one.hold == "front post" else -1.0
        yield Polyline(tuple((x + way * r * (1 - math.cos(a)), y + r * math.sin(a)) for a in (math.pi * step / 6 for step in range(8))), STROKE)
