"""A swatch of each colour with its name, to hold a ball against in the shop; hatched as in the pattern's drawings."""

from collections.abc import Sequence
from typing import NamedTuple

from gaugewright.drawings.colour import INK
from gaugewright.drawings.colour_bands import hatched
from gaugewright.drawings.primitives import Drawing, Hatch, Item, Label, Polygon
from gaugewright.drawings.text_width import text_width

WIDTH, BOX, HEIGHT, GAP, TEXT = 168.0, 16.0, 8.0, 4.0, 3.2


class Swatch(NamedTuple):
    """One colour as it is drawn."""

    name: str
    colour: str
    hatch: Hatch


def draw_swatches(swatches: Sequence[Swatch], title: str) -> Drawing:
    """Boxes with names beside them, in rows."""
    items: list[Item] = []
    x = y = 0.0
    for swatch in swatches:
        room = BOX + 1.5 + text_width(swatch.name, TEXT)
        if x and x + room > WIDTH:
            x, y = 0.0, y + HEIGHT + GAP
        corners = ((x, y), (x + BOX, y), (x + BOX, y + HEIGHT), (x, y + HEIGHT))
        items += [hatched(corners, swatch.colour, swatch.hatch), Polygon(corners, 0.18, INK), Label(x + BOX + 1.5, y + HEIGHT / 2 + TEXT * 0.35, swatch.name, TEXT)]
        x += room + GAP
    return Drawing(WIDTH, y + HEIGHT, tuple(items), title, f"{title}: {', '.join(swatch.name for swatch in swatches)}.")
