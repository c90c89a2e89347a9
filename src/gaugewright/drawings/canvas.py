"""Cuts the canvas round a finished scene."""

from dataclasses import replace

from gaugewright.drawings.primitives import Drawing, Item, Label
from gaugewright.drawings.scale import MARGIN
from gaugewright.drawings.scene import Scene


def cut_canvas(scene: Scene, title: str, description: str) -> Drawing:
    """The scene as a drawing whose top left corner is the origin, with a narrow margin."""
    left, top, right, bottom = scene.extent()
    dx, dy = MARGIN - left, MARGIN - top
    items = tuple(_shifted(item, dx, dy) for item in scene.items)
    return Drawing(right + dx + MARGIN, bottom + dy + MARGIN, items, title, description)


def _shifted(item: Item, dx: float, dy: float) -> Item:
    if isinstance(item, Label):
        return replace(item, x=item.x + dx, y=item.y + dy)
    return replace(item, points=tuple((x + dx, y + dy) for x, y in item.points))
