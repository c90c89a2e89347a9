"""Yarn by size and colour as bars: a group for each size, a bar for each colour, its balls over it.

In: labels, colours and grams. Out: a drawing, or none where a table says it as well. Of an estimate the bar is painted
up to the lower end and left open from there to the upper one.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from gaugewright.drawings.canvas import cut_canvas
from gaugewright.drawings.colour import INK
from gaugewright.drawings.colour_bands import hatched, write_colour_key
from gaugewright.drawings.primitives import Drawing, Hatch, Label, Polygon, Polyline
from gaugewright.drawings.scene import TEXT, Scene, level_label, text_room

WIDEST = 160.0
"""The plot's room across, mm."""
HEIGHT = 42.0
MOST_WIDE, LEAST_WIDE = 7.0, 3.4
"""A bar's width: wide enough for its hatch, narrow enough for its neighbours."""
BETWEEN = 0.6
"""Groups stand so many bars apart."""
STEPS = (1, 2, 5)


@dataclass(frozen=True, slots=True)
class Bar:
    """Grams of one colour in one size, from the lower end to the upper (the same where they are counted); `balls` in words."""

    low: float
    high: float
    balls: str


@dataclass(frozen=True, slots=True)
class ColourBars:
    """One colour: its name and paint, and a bar for each size (None where the size has none of it)."""

    name: str
    colour: str
    bars: tuple[Bar | None, ...]


def draw_amounts(sizes: Sequence[str], colours: Sequence[ColourBars], hatches: Mapping[str, Hatch]) -> Drawing | None:
    """The plot; none of a single size or colour, whose few figures are read in the table, nor of more than can be told apart."""
    width = min(MOST_WIDE, WIDEST / (len(sizes) * (len(colours) + BETWEEN)))
    bars = [bar for one in colours for bar in one.bars if bar is not None]
    if len(sizes) < 2 or len(colours) < 2 or width < LEAST_WIDE or not bars:
        return None
    step = grid_step(max(bar.high for bar in bars))
    top = math.ceil(max(bar.high for bar in bars) / step) * step
    group = width * (len(colours) + BETWEEN)
    upright = all(text_room(bar.balls)[0] <= width for bar in bars)
    scene = _grid(group * len(sizes), top, step)
    for index, size in enumerate(sizes):
        left = index * group + width * BETWEEN / 2
        for place, one in enumerate(colours):
            bar = one.bars[index]
            if bar is not None:
                scene = _draw_bar(scene, bar, one, left + place * width, width, HEIGHT / top, hatches[one.name], upright)
        scene = scene.write(level_label(index * group + group / 2, 3.0, size, "middle"))
    scene = write_colour_key(scene, {one.name: hatched((), one.colour, hatches[one.name]) for one in colours}, group * len(sizes))
    return cut_canvas(scene, _title(bars), _description(sizes, colours))


def grid_step(most: float) -> float:
    """Grams between the lines of the grid: 1, 2 or 5 times a power of ten, for three to six lines.

    >>> grid_step(712), grid_step(34), grid_step(0.8)
    (200.0, 10.0, 0.2)
    """
    power = 10.0 ** math.floor(math.log10(most / 6))
    return next(step * power for step in (*STEPS, 10) if step * power >= most / 6)


def _grid(across: float, top: float, step: float) -> Scene:
    scene = Scene()
    for number in range(math.floor(top / step + 0.5) + 1):
        y = -number * step * HEIGHT / top
        scene = scene.draw(Polyline(((0.0, y), (across, y)), 0.35 if number == 0 else 0.1))
        scene = scene.write(level_label(-1.5, y, f"{number * step:g} g", "end"))
    return scene


def _draw_bar(scene: Scene, bar: Bar, one: ColourBars, x: float, width: float, scale: float, hatch: Hatch, upright: bool) -> Scene:
    low, high = (-grams * scale for grams in (bar.low, bar.high))
    painted = ((x, 0.0), (x + width, 0.0), (x + width, low), (x, low))
    scene = scene.fill(Polygon(painted, 0.0, fill="#ffffff"), hatched(painted, one.colour, hatch)).draw(Polygon(painted, 0.25, INK))
    if high != low:
        scene = scene.fill(Polygon(((x, low), (x + width, low), (x + width, high), (x, high)), 0.25, INK, fill="#ffffff"))
    if not bar.balls:
        return scene
    if upright:
        return scene.write(level_label(x + width / 2, high - 2.0, bar.balls, "middle"), plate=True)
    return scene.write(Label(x + width / 2 + TEXT * 0.27, high - 1.0, bar.balls, TEXT, "start", 90.0), plate=True)


def _title(bars: Sequence[Bar]) -> str:
    open_bars = "; bars are filled up to the lower end of an estimate and open up to the upper one" if any(bar.low != bar.high for bar in bars) else ""
    over = "; over each bar, the balls to buy" if any(bar.balls for bar in bars) else ""
    return f"Yarn to buy in grams, by size and colour{over}{open_bars}."


def _description(sizes: Sequence[str], colours: Sequence[ColourBars]) -> str:
    """The figures in words, for those who can't see the bars."""
    return "Bars of the yarn to buy, in grams. " + " ".join(f"{one.name}: {', '.join(_told(sizes, one))}." for one in colours)


def _told(sizes: Sequence[str], one: ColourBars) -> Iterator[str]:
    for size, bar in zip(sizes, one.bars, strict=True):
        if bar is not None:
            low, high = f"{bar.low:.0f}", f"{bar.high:.0f}"
            yield f"{size} {low if low == high else f'{low} to {high}'}"
