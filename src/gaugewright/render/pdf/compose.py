"""The document's parts as boxes, with their structure elements in reading order.

In: parts (`reading_order`), faces and style. Out: boxes for the pages. Nothing is placed here.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from gaugewright.errors import InternalError
from gaugewright.instructions.nodes import Figure, Heading, Paragraph, SpanStyle, Table
from gaugewright.render.pdf.boxes import CAPTION_SPACE, Bookmark, Box, FigureBox, RuleBox, TextBox
from gaugewright.render.pdf.columns import Setting
from gaugewright.render.pdf.faces import Faces
from gaugewright.render.pdf.lines import Line, Run, break_lines
from gaugewright.render.pdf.style import POINTS_PER_MM, Face, Style, TextStyle
from gaugewright.render.pdf.tables import TableBox, build_rows
from gaugewright.render.pdf.tags import Element, Structure
from gaugewright.render.reading_order import NO_BREAK, Bullets, Byline, Part

HEADINGS = {1: "title", 2: "chapter", 3: "part"}
BULLET = "•"
SHORT, INTRODUCTION = 2, 6
HIGHEST_FIGURE = 0.8  # of the page: a drawing leaves room for the heading it belongs to


class Frame(NamedTuple):
    """The part of a sheet that text may fill, in points."""

    left: float
    top: float
    width: float
    height: float


def compose(parts: tuple[Part, ...], faces: Faces, style: Style, frame: Frame, structure: Structure) -> tuple[Box, ...]:
    """All boxes, in order; the structure gets an element for each."""
    composer = _Composer(faces, style, frame, structure.root)
    made = [list(composer.boxes(part)) for part in parts]
    for place in _before_last_of_run(parts, "caution"):
        made[place][-1] = replace(made[place][-1], keep=True)  # type: ignore[type-var]
    boxes = [box for some in made for box in some]
    return tuple(_kept(*three) for three in zip([None, *boxes], boxes, [*boxes[1:], None], strict=False))


def _before_last_of_run(parts: tuple[Part, ...], role: str) -> Iterator[int]:
    """The paragraphs of a role that the last of their run follows, which is not to stand alone on a page."""
    runs = [*(isinstance(part, Paragraph) and part.role == role for part in parts), False]
    for place in range(len(parts) - 1):
        if runs[place : place + 3] == [True, True, False]:
            yield place


def _kept(before: Box | None, box: Box, after: Box | None) -> Box:
    """A line or two under a heading go with what follows: alone at a page's foot they look lost. A few go with the
    drawing they introduce, so that a chapter begins where its drawing is."""
    if isinstance(before, TextBox) and before.bookmark and isinstance(box, TextBox):
        most = INTRODUCTION if isinstance(after, FigureBox) else SHORT
        return replace(box, keep=box.keep or len(box.lines) <= most)
    return box


class _Composer:
    def __init__(self, faces: Faces, style: Style, frame: Frame, root: Element) -> None:
        self.faces, self.style, self.frame, self.root = faces, style, frame, root
        self.setting = Setting(faces, style.table)
        self.outline = -1

    def boxes(self, part: Part) -> Iterator[Box]:
        if isinstance(part, Heading):
            yield self._heading(part)
        elif isinstance(part, Byline):
            style = self.style.text("author")
            yield replace(self._text(((style.face, part.text),), style, self.root.add("P"), True), keep=True)
            yield RuleBox(self.frame.width, self.style.colours.accent)
        elif isinstance(part, Paragraph):
            yield self._paragraph(part)
        elif isinstance(part, Bullets):
            yield from self._bullets(part)
        elif isinstance(part, Table):
            yield self._table(part)
        elif isinstance(part, Figure):
            yield self._figure(part)
        else:
            raise InternalError(f"no way to set a {type(part).__name__}")

    def _text(self, runs: tuple[Run, ...], style: TextStyle, element: Element, wide: bool = False) -> TextBox:
        width = self.frame.width if wide else min(self.style.page.measure, self.frame.width)
        room = width - style.indent
        lines = break_lines(runs, self.faces, style.size, room, room - style.hang)
        return TextBox(lines, style, element, self.style.colours, self.frame.width)

    def _heading(self, heading: Heading) -> TextBox:
        if heading.level not in HEADINGS:
            raise InternalError(f"the heading {heading.text!r} has level {heading.level}")
        style = self.style.text(HEADINGS[heading.level])
        self.outline = min(max(heading.level - 2, 0), self.outline + 1)
        box = self._text(((style.face, heading.text),), style, self.root.add(f"H{heading.level}"), True)
        words = heading.text.replace(NO_BREAK, " ")
        return replace(box, keep=True, whole=True, new_page=heading.new_page, bookmark=Bookmark(self.outline, words))

    def _paragraph(self, paragraph: Paragraph) -> TextBox:
        style = self.style.text(paragraph.role)
        box = self._text(_runs(paragraph, style), style, self.root.add("P"))
        leads_on = paragraph.spans[-1].text.rstrip().endswith(":") if paragraph.spans else False
        return replace(box, whole=paragraph.role in ("step", "caution"), keep=leads_on or paragraph.keep)

    def _bullets(self, bullets: Bullets) -> Iterator[TextBox]:
        style = self.style.text("bullet")
        owner = self.root.add("L", "/O /List /ListNumbering /Disc")
        width = self.faces.width(style.face, style.size, BULLET + " ")
        for place, item in enumerate(bullets.items):
            if place == len(bullets.items) - 1:
                style = replace(style, after=self.style.text("body").after)
            entry = owner.add("LI")
            label = entry.add("Lbl")
            room = min(self.style.page.measure, self.frame.width) - style.indent - width
            lines = break_lines(_runs(item, style), self.faces, style.size, room, room)
            mark = Line(((style.face, BULLET),), width, " ")
            yield TextBox(
                lines, style, entry.add("LBody"), self.style.colours, self.frame.width,
                marker=(label, mark), marker_width=width, keep=place == len(bullets.items) - 2,
            )  # fmt: skip

    def _table(self, table: Table) -> TableBox:
        owner = self.root.add("Table")
        caption = self._caption(table.caption, owner.add("Caption")) if table.caption else None
        fit = self.setting.fit(table, self.frame.width)
        head, rows = build_rows(table, owner, self.setting, fit)
        note = None
        if table.note:
            style = self.style.text("table_note")
            note = self._text(((style.face, table.note),), style, self.root.add("P"), True)
        colours = self.style.colours
        return TableBox(caption, head, rows, note, fit, table.align, colours, colours.ink)

    def _caption(self, text: str, element: Element) -> TextBox:
        style = self.style.text("caption")
        return self._text(((style.face, text),), style, element, True)

    def _figure(self, figure: Figure) -> FigureBox:
        group = self.root.add("Div")
        element = group.add("Figure", alt=figure.alt.replace(NO_BREAK, " "))
        caption = None
        if figure.caption:
            caption = replace(self._caption(figure.caption, group.add("Caption")), centred=True)
        below = caption.height + CAPTION_SPACE if caption else 0.0
        drawing = figure.drawing
        across = self.frame.width / (drawing.width * POINTS_PER_MM)
        down = (self.frame.height * HIGHEST_FIGURE - below) / (drawing.height * POINTS_PER_MM)
        return FigureBox(drawing, element, caption, self.frame.width, min(1.0, across, down), keep=figure.keep)


def _runs(paragraph: Paragraph, style: TextStyle) -> tuple[Run, ...]:
    """A paragraph's runs: the label in bold, counts and terms set apart by weight."""
    weights: dict[SpanStyle, Face] = {"plain": style.face, "strong": "bold", "count": "semibold", "term": "semibold"}
    label: tuple[Run, ...] = (("bold", paragraph.label), (style.face, " ")) if paragraph.label else ()
    return label + tuple((weights[span.style], span.text) for span in paragraph.spans)
