"""A stitch pattern's chart: its symbols, row numbers where rows begin, the repeat marked, and a key.

In: a pattern, the terms and the hand of the maker. Out: a drawing. A left-handed maker's chart is the mirror image.
"""

from collections.abc import Iterator

from gaugewright.drawings.chart_key import draw_key, extent, key_entries, mirrored, moved
from gaugewright.drawings.chart_layout import Chart, chart_of
from gaugewright.drawings.chart_symbols import symbol
from gaugewright.drawings.primitives import Drawing, Item, Label, Polyline
from gaugewright.stitch_patterns.pattern import StitchPattern
from gaugewright.trade.stitches import Terms

UNIT = 4.2
"""Millimetres of a stitch in a chart."""
NUMBER = 2.5
MARGIN = 1.0


def draw_chart(pattern: StitchPattern, in_rounds: bool, terms: Terms, left_handed: bool = False) -> Drawing:
    """The chart with its key below it."""
    chart = chart_of(pattern, in_rounds)
    items = [*_symbols(chart), *_numbers(chart), *_repeat(chart)]
    if left_handed:
        items = [mirrored(item) for item in items]
    left, _, right, bottom = extent(items)
    entries = key_entries((one for row in chart.rows for one in row.stitches), terms, UNIT)
    placed = [*items, *draw_key(entries, left, bottom, right)]
    left, top, right, bottom = extent(placed)
    hand = " for left-handed makers" if left_handed else ""
    title = f"Chart of {pattern.title}{hand}"
    first, last = chart.again
    word = "rounds" if in_rounds else "rows"
    again = f"{word} {first} to {last} are repeated" if last > first else f"{word[:-1]} {first} is repeated"
    description = f"{title}: {len(chart.rows) - 1} {word if len(chart.rows) > 2 else word[:-1]} above a plain one; {again}. The words above say the same."
    return Drawing(right - left + 2 * MARGIN, bottom - top + 2 * MARGIN, tuple(moved(item, MARGIN - left, MARGIN - top) for item in placed), title, description)


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
