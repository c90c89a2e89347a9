"""A stitch pattern's chart: its symbols, row numbers where rows begin, the repeat marked, and a key.

In: a pattern, the terms and the hand of the maker. Out: a drawing. A left-handed maker's chart is the mirror image.
"""

from collections.abc import Iterator
from dataclasses import replace

from gaugewright.drawings.chart_layout import HEIGHTS, Chart, ChartStitch, chart_of
from gaugewright.drawings.chart_symbols import symbol
from gaugewright.drawings.primitives import Anchor, Drawing, Item, Label, Polyline
from gaugewright.drawings.text_width import text_width
from gaugewright.stitch_patterns.pattern import StitchPattern
from gaugewright.trade.stitches import Terms
from gaugewright.trade.terms import abbreviation

UNIT = 4.2
"""Millimetres of a stitch in a chart."""
NUMBER, KEY = 2.5, 2.4
MARGIN = 1.0


def draw_chart(pattern: StitchPattern, in_rounds: bool, terms: Terms, left_handed: bool = False) -> Drawing:
    """The chart with its key below it."""
    chart = chart_of(pattern, in_rounds)
    items = [*_symbols(chart), *_numbers(chart), *_repeat(chart)]
    if left_handed:
        items = [_mirrored(item) for item in items]
    left, top, right, bottom = _extent(items)
    key = list(_key(chart, terms, left, bottom, right))
    left, top, right, bottom = _extent([*items, *key])
    moved = tuple(_moved(item, MARGIN - left, MARGIN - top) for item in (*items, *key))
    hand = " for left-handed makers" if left_handed else ""
    title = f"Chart of {pattern.title}{hand}"
    first, last = chart.again
    word = "rounds" if in_rounds else "rows"
    again = f"{word} {first} to {last} are repeated" if last > first else f"{word[:-1]} {first} is repeated"
    description = f"{title}: {len(chart.rows) - 1} {word if len(chart.rows) > 2 else word[:-1]} above a plain one; {again}. The words above say the same."
    return Drawing(right - left + 2 * MARGIN, bottom - top + 2 * MARGIN, moved, title, description)


def _symbols(chart: Chart) -> Iterator[Item]:
    for row in chart.rows:
        for one in row.stitches:
            yield from symbol(one, UNIT)


def _numbers(chart: Chart) -> Iterator[Item]:
    """Each row's number at the end where it begins."""
    for row in chart.rows[1:]:
        xs = [one.top[0] for one in row.stitches]
        x = (max(xs) + 0.9 if row.leftward else min(xs) - 0.9) * UNIT
        y = -(row.foot + (row.head - row.foot) / 2) * UNIT + NUMBER / 3
        yield Label(x, y, str(row.number), NUMBER, "start" if row.leftward else "end")


def _repeat(chart: Chart) -> Iterator[Item]:
    """A bracket under one repeat."""
    low, high = (x * UNIT for x in chart.repeat)
    y = 0.5 * UNIT
    yield Polyline(((low + 0.4, y - 1.2), (low + 0.4, y), (high - 0.4, y), (high - 0.4, y - 1.2)), 0.25)
    count = round((high - low) / UNIT)
    yield Label((low + high) / 2, y + 3.2, f"{count} st{'s' if count > 1 else ''}", NUMBER, "middle")


def _key(chart: Chart, terms: Terms, left: float, top: float, right: float) -> Iterator[Item]:
    """Each symbol once, with its abbreviation, in lines as wide as the chart or a little more."""
    x, y = left, top
    for one in _kinds(chart):
        name = _name(one, terms)
        wide = 1.6 * UNIT + text_width(name, KEY) + 4.0
        if x > left and x + wide > max(right, left + 90.0):
            x, y = left, y + 2.9 * UNIT
        yield from (_moved(item, x + 0.7 * UNIT, y + 2.6 * UNIT) for item in symbol(_upright(one), UNIT * 0.85))
        yield Label(x + 1.5 * UNIT, y + 1.9 * UNIT, name, KEY)
        x += wide


def _kinds(chart: Chart) -> list[ChartStitch]:
    """One of each kind of symbol, in order of height."""
    found: dict[tuple[object, ...], ChartStitch] = {}
    for row in chart.rows:
        for one in row.stitches:
            kind = replace(one, name="ch", feet=(), turns=0, hold="both", in_one=False) if one.turns else one
            found.setdefault((kind.name, kind.hold, len(kind.feet), kind.in_one), kind)
    return sorted(found.values(), key=lambda one: (HEIGHTS[one.name], len(one.feet), one.hold))


def _upright(one: ChartStitch) -> ChartStitch:
    """The stitch by itself, standing straight."""
    height = HEIGHTS[one.name]
    count = len(one.feet)
    feet = tuple((0.0 if one.in_one else (index - (count - 1) / 2) * 0.7, 0.0) for index in range(count))
    return replace(one, feet=feet, top=(0.0, height if count else 0.5))


def _name(one: ChartStitch, terms: Terms) -> str:
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


def _moved(item: Item, dx: float, dy: float) -> Item:
    if isinstance(item, Label):
        return replace(item, x=item.x + dx, y=item.y + dy)
    return replace(item, points=tuple((x + dx, y + dy) for x, y in item.points))


def _mirrored(item: Item) -> Item:
    """The mirror image; words stay readable, and hooks and strokes turn with their stitches."""
    if isinstance(item, Label):
        other: dict[Anchor, Anchor] = {"start": "end", "end": "start", "middle": "middle"}
        return replace(item, x=-item.x, anchor=other[item.anchor])
    return replace(item, points=tuple((-x, y) for x, y in item.points))


def _extent(items: list[Item]) -> tuple[float, float, float, float]:
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
