"""The key of a chart: each kind of sign once, with its abbreviation beside it; and the frame round signs and words.

In: the signs used, the terms, the room. Out: primitives below the chart.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from gaugewright.drawings.chart_layout import HEIGHTS, ChartStitch
from gaugewright.drawings.chart_symbols import symbol
from gaugewright.drawings.geometry import Box
from gaugewright.drawings.primitives import Anchor, Item, Label
from gaugewright.drawings.text_width import text_width
from gaugewright.trade.stitches import Terms
from gaugewright.trade.terms import abbreviation

KEY = 2.4
"""Size of the key's words in mm."""
SIGN = 0.85
"""Of the size that signs have in the chart."""
BESIDE, APART = 1.0, 4.0
"""Millimetres between a sign and its word, and between entries."""
WIDE = 90.0
"""A line of the key is at least as wide as this before another begins, in mm."""

Entry = tuple[tuple[Item, ...], str]
"""A sign anywhere, and its word."""


def key_entries(stitches: Iterable[ChartStitch], terms: Terms, unit: float) -> list[Entry]:
    """One entry for each kind of stitch, in order of height."""
    found: dict[tuple[object, ...], ChartStitch] = {}
    for one in stitches:
        kind = replace(one, name="ch", feet=(), turns=0, hold="both", in_one=False) if one.turns else one
        found.setdefault((kind.name, kind.hold, len(kind.feet), kind.in_one), kind)
    kinds = sorted(found.values(), key=lambda one: (HEIGHTS[one.name], len(one.feet), one.hold))
    return [(tuple(symbol(_upright(one), unit * SIGN)), stitch_name(one, terms)) for one in kinds]


def draw_key(entries: Sequence[Entry], left: float, top: float, right: float) -> Iterator[Item]:
    """Lines of entries as wide as the chart or a little more; each word stands level with the middle of its sign."""
    for line, y, high in _lines(entries, left, top, right):
        for (sign, name), x in line:
            low_x, low_y, high_x, high_y = extent(sign)
            yield from (moved(item, x - low_x, y + (high - low_y - high_y) / 2) for item in sign)
            yield Label(x + high_x - low_x + BESIDE, y + high / 2 + KEY / 3, name, KEY)


def _lines(entries: Sequence[Entry], left: float, top: float, right: float) -> Iterator[tuple[list[tuple[Entry, float]], float, float]]:
    """Each line's entries with their left edge, its upper edge and its height."""
    line: list[tuple[Entry, float]] = []
    x, y, high = left, top + APART, KEY
    for entry in entries:
        low_x, low_y, high_x, high_y = extent(entry[0])
        wide = high_x - low_x + BESIDE + text_width(entry[1], KEY) + APART
        if line and x + wide > max(right, left + WIDE):
            yield line, y, high
            line, x, y, high = [], left, y + high + APART / 2, KEY
        line.append((entry, x))
        x, high = x + wide, max(high, high_y - low_y)
    yield line, y, high


def _upright(one: ChartStitch) -> ChartStitch:
    """The stitch by itself, standing straight."""
    height = HEIGHTS[one.name]
    count = len(one.feet)
    feet = tuple((0.0 if one.in_one else (index - (count - 1) / 2) * 0.7, 0.0) for index in range(count))
    return replace(one, feet=feet, top=(0.0, height if count else 0.5))


def stitch_name(one: ChartStitch, terms: Terms) -> str:
    """The abbreviation in the pattern's terms."""
    posts = {"front post": "FP", "back post": "BP"}
    count = len(one.feet)
    if one.hold in posts:
        return abbreviation(f"{posts[one.hold]}{one.name}", terms).abbr
    base = abbreviation(one.name, terms).abbr
    if count > 1:
        base = f"{base}{count}tog" + (" in one st" if one.in_one else "")
    loops = {"back": " in the back loop", "front": " in the front loop"}
    return base + loops.get(one.hold, "")


def moved(item: Item, dx: float, dy: float) -> Item:
    """An item elsewhere."""
    if isinstance(item, Label):
        return replace(item, x=item.x + dx, y=item.y + dy)
    return replace(item, points=tuple((x + dx, y + dy) for x, y in item.points))


def mirrored(item: Item) -> Item:
    """The mirror image; words stay readable, and hooks and strokes turn with their stitches."""
    if isinstance(item, Label):
        other: dict[Anchor, Anchor] = {"start": "end", "end": "start", "middle": "middle"}
        return replace(item, x=-item.x, anchor=other[item.anchor])
    return replace(item, points=tuple((-x, y) for x, y in item.points))


def extent(items: Iterable[Item]) -> Box:
    """The upright box round signs and words."""
    xs, ys = [], []
    for item in items:
        if isinstance(item, Label):
            wide = text_width(item.text, item.size)
            left = item.x - {"start": 0.0, "middle": wide / 2, "end": wide}[item.anchor]
            xs += [left, left + wide]
            ys += [item.y - item.size, item.y + item.size * 0.3]
        else:
            xs += [x for x, _ in item.points]
            ys += [y for _, y in item.points]
    return min(xs), min(ys), max(xs), max(ys)
