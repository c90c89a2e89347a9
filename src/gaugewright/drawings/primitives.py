"""Drawing primitives: what a drawing is, before any backend.

In: nothing (pure data). Out: `Drawing`, a canvas in millimetres with the origin at the top
left, x to the right and y *down*, and items painted in order. Backends (`render/svg.py`,
`render/pdf/`) only translate; they decide nothing. Text is placed by its baseline at an
anchor; `drawings/text_width.py` knows how wide text is, so no backend is ever asked.
"""

from dataclasses import dataclass
from typing import Literal

Anchor = Literal["start", "middle", "end"]
Hatch = Literal["none", "diagonal", "back-diagonal", "horizontal", "vertical", "cross", "dots"]
Dash = Literal["solid", "dashed", "dash-dot", "dotted"]
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Polyline:
    """Straight segments; `width` in mm."""

    points: tuple[Point, ...]
    width: float = 0.18
    colour: str = "#1a1a1a"
    dash: Dash = "solid"


@dataclass(frozen=True, slots=True)
class Polygon:
    """A closed outline with fill and hatch; `fill` "" means none, `width` 0 no outline.

    The hatch lies over the fill and is drawn in `colour`, as the outline is: a polygon without
    outline may so carry a white hatch on a dark fill.
    """

    points: tuple[Point, ...]
    width: float = 0.35
    colour: str = "#1a1a1a"
    fill: str = ""
    hatch: Hatch = "none"


@dataclass(frozen=True, slots=True)
class Label:
    """Text on its baseline at (x, y); `size` in mm (2.5 is the usual), `angle` in degrees, counter-clockwise."""

    x: float
    y: float
    text: str
    size: float = 2.5
    anchor: Anchor = "start"
    angle: float = 0.0
    strong: bool = False


Item = Polyline | Polygon | Label


@dataclass(frozen=True, slots=True)
class Drawing:
    """A canvas `width` x `height` mm with a title and a description for those who can't see it."""

    width: float
    height: float
    items: tuple[Item, ...]
    title: str
    description: str
