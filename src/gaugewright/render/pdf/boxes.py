"""Boxes: blocks of the document cut to the page's width, waiting for a place on a page.

In: broken lines and drawings with their structure elements. Out: things that know their height,
may be split where a reader doesn't mind, and draw themselves. `tables.py` has the one for tables.
"""

from dataclasses import dataclass, replace
from typing import NamedTuple, Protocol

from gaugewright.drawings.primitives import Drawing, Label
from gaugewright.render.pdf.drawing import draw_drawing
from gaugewright.render.pdf.lines import Line
from gaugewright.render.pdf.pen import Pen, Placed
from gaugewright.render.pdf.style import POINTS_PER_MM, Colours, TextStyle
from gaugewright.render.pdf.tags import Element

FEWEST_LINES = 2  # of a paragraph, at the foot or the head of a page
RULE_SPACE = 7.0
SMALLEST_SCALE = 0.8  # of a drawing that is made to fit what is left of a page
CAPTION_SPACE = 5.0


class Box(Protocol):
    """What a page can hold."""

    @property
    def before(self) -> float:
        """Space above, if the box isn't first on its page."""

    @property
    def after(self) -> float:
        """Space below."""

    @property
    def keep(self) -> bool:
        """Not to be parted from the next box."""

    @property
    def new_page(self) -> bool:
        """To be first on its page."""

    @property
    def height(self) -> float:
        """Height without the space before and after."""

    def split(self, room: float, force: bool) -> "tuple[Box, Box] | None":
        """Two boxes, the first no higher than `room`; None where that would be bad setting.

        With `force` the box is higher than a whole page, and anything is better than nothing.
        """

    def shrink(self, room: float) -> "Box | None":
        """The same box in less height, if it can be had without harm."""

    def at_head(self) -> "Box":
        """The same box as it looks first on a page."""

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw with the upper left corner at this point."""


class Bookmark(NamedTuple):
    """An entry of the outline."""

    level: int
    text: str


@dataclass(frozen=True, slots=True)
class TextBox:
    """A heading, a paragraph or an item of a list."""

    lines: tuple[Line, ...]
    style: TextStyle
    element: Element
    colours: Colours
    width: float
    whole: bool = False
    keep: bool = False
    new_page: bool = False
    marker: tuple[Element, Line] | None = None
    marker_width: float = 0.0
    bookmark: Bookmark | None = None
    begun: bool = False  # an earlier page has the beginning
    centred: bool = False

    @property
    def before(self) -> float:
        return self.style.before

    @property
    def after(self) -> float:
        return self.style.after

    @property
    def height(self) -> float:
        return len(self.lines) * self.style.leading + self._rule_space

    @property
    def _rule_space(self) -> float:
        return RULE_SPACE if self.style.rule == "above" else 0.0

    def split(self, room: float, force: bool) -> "tuple[TextBox, TextBox] | None":
        fitting = int((room - self._rule_space) / self.style.leading + 1e-6)
        least = 1 if force else FEWEST_LINES
        count = min(fitting, len(self.lines) - least)
        if (self.whole and not force) or count < least:
            return None
        head = replace(self, lines=self.lines[:count])
        return head, replace(self, lines=self.lines[count:], marker=None, bookmark=None, begun=True)

    def shrink(self, room: float) -> None:
        return None

    def at_head(self) -> "TextBox":
        """Without the rule above: the running head has one just there."""
        if self.style.rule != "above":
            return self
        return replace(self, style=replace(self.style, rule=""))

    def draw(self, pen: Pen, x: float, top: float) -> None:
        style = self.style
        if self.bookmark:
            pen.bookmark(self.bookmark.level, self.bookmark.text, x, top + style.before)
        self._draw_rule(pen, x, top)
        baseline = top - self._rule_space - first_baseline(style.size, style.leading)
        left = x + style.indent
        if self.marker:
            owner, line = self.marker
            with pen.element(owner):
                pen.text([Placed(left, baseline, line)], style.size, style.colour)
        placed = []
        for number, line in enumerate(self.lines):
            hang = style.hang if number or self.begun else 0.0
            spare = (self.width - line.width) / 2 if self.centred else 0.0
            placed.append(Placed(left + self.marker_width + hang + spare, baseline - number * style.leading, line))
        with pen.element(self.element):
            pen.text(placed, style.size, style.colour)

    def _draw_rule(self, pen: Pen, x: float, top: float) -> None:
        if self.style.rule == "above":
            with pen.artifact():
                pen.rule(x, top, x + self.width, top, 0.8, self.colours.accent)
        elif self.style.rule == "left":
            with pen.artifact():
                pen.rule(x + 1.2, top - 1, x + 1.2, top - self.height + 1, 2.4, self.colours.accent)


class RuleBox(NamedTuple):
    """A rule across the page, under the title."""

    width: float
    colour: str
    before: float = 0.0
    after: float = 10.0
    keep: bool = True
    new_page: bool = False
    height: float = 1.2

    def split(self, room: float, force: bool) -> None:
        return None

    def shrink(self, room: float) -> None:
        return None

    def at_head(self) -> "RuleBox":
        return self

    def draw(self, pen: Pen, x: float, top: float) -> None:
        with pen.artifact():
            pen.rule(x, top - 0.6, x + self.width, top - 0.6, self.height, self.colour)


@dataclass(frozen=True, slots=True)
class FigureBox:
    """A drawing with its caption below, never parted. `scale` is 1 where the drawing has its own size."""

    drawing: Drawing
    figure: Element
    caption: "TextBox | None"
    width: float
    scale: float
    before: float = 10.0
    after: float = 12.0
    keep: bool = False
    new_page: bool = False

    @property
    def height(self) -> float:
        caption = CAPTION_SPACE + self.caption.height if self.caption else 0.0
        return self._drawn_height + caption

    @property
    def _drawn_height(self) -> float:
        return self.drawing.height * self.scale * POINTS_PER_MM

    def split(self, room: float, force: bool) -> None:
        return None

    def shrink(self, room: float) -> "FigureBox | None":
        """Smaller, but never so small that its labels can't be read."""
        scale = self.scale * (self._drawn_height - (self.height - room)) / self._drawn_height
        least = max(self.scale * SMALLEST_SCALE, least_scale(self.drawing))
        return replace(self, scale=scale) if least <= scale <= self.scale else None

    def at_head(self) -> "FigureBox":
        return self

    def draw(self, pen: Pen, x: float, top: float) -> None:
        unit = self.scale * POINTS_PER_MM
        drawn = self.drawing.width * unit
        left, bottom = x + (self.width - drawn) / 2, top - self._drawn_height
        corners = (left, bottom, left + drawn, top)
        bbox = " ".join(f"{value:.2f}" for value in corners)
        self.figure.attributes = f"/O /Layout /Placement /Block /BBox [{bbox}]"
        with pen.element(self.figure):
            draw_drawing(pen, self.drawing, left, top, self.scale)
        if self.caption:
            self.caption.draw(pen, x, bottom - CAPTION_SPACE)


def least_scale(drawing: Drawing, smallest: float = 5.6) -> float:
    """The scale at which the smallest label is still `smallest` points."""
    sizes = [item.size for item in drawing.items if isinstance(item, Label)]
    return smallest / (min(sizes) * POINTS_PER_MM) if sizes else 0.0


def first_baseline(size: float, leading: float) -> float:
    """From a line's top to its baseline: capitals stand in the middle of the leading."""
    return leading / 2 + size * 0.33
