"""The whole file: boxes on pages, running head and foot, tags, outline, metadata.

In: a `Document`, a paper and a `Style`. Out: the PDF's bytes. The same document gives the same
bytes on every run: no clock, no names of folders, no order of a hash.
"""

from collections.abc import Iterator
from io import BytesIO
from typing import Literal, NamedTuple

from reportlab.pdfbase.pdfdoc import PDFDictionary, PDFStream
from reportlab.pdfgen.canvas import Canvas

from gaugewright.instructions.nodes import Document, Figure, Heading, Paragraph, Table, spans_text
from gaugewright.drawings.primitives import Label
from gaugewright.render.pdf import hooks
from gaugewright.render.pdf.boxes import first_baseline
from gaugewright.render.pdf.compose import BULLET, Frame, compose
from gaugewright.render.pdf.faces import Faces, check_glyphs, load_faces
from gaugewright.render.pdf.lines import Line, break_lines
from gaugewright.render.pdf.metadata import info_entries, xmp_packet
from gaugewright.render.pdf.pages import Page, paginate
from gaugewright.render.pdf.pen import Pen, Placed
from gaugewright.render.pdf.style import Style
from gaugewright.render.pdf.tags import Structure
from gaugewright.render.reading_order import reading_order

Paper = Literal["a4", "letter"]
PAPERS: dict[Paper, tuple[float, float]] = {"a4": (595.276, 841.89), "letter": (612.0, 792.0)}
HEAD_GAP, FOOT_GAP = 18.0, 18.0


def render_pdf(document: Document, paper: Paper, style: Style) -> bytes:
    """A tagged, reproducible PDF of the document on one size of paper."""
    faces = load_faces(style)
    check_glyphs(faces, _texts(document))
    sheet = _Sheet(document, style, faces, PAPERS[paper])
    structure = Structure()
    pages = _pages(sheet, structure)
    canvas = _open_canvas(document, faces, PAPERS[paper])
    for number, page in enumerate(pages):
        pen = Pen(canvas, faces, structure, number)
        sheet.draw_head(pen)
        _draw_boxes(pen, page, sheet.frame)
        sheet.draw_foot(pen, number + 1, len(pages))
        hooks.close_page(canvas, number)
    structure.write(canvas)
    _write_metadata(canvas, document)
    return hooks.finish(canvas, hooks.PlainInfo(info_entries(document), document.date))


def _pages(sheet: "_Sheet", structure: Structure) -> tuple[Page, ...]:
    boxes = compose(reading_order(sheet.document), sheet.faces, sheet.style, sheet.frame, structure)
    return paginate(boxes, sheet.frame.height)


LEAST_PADDING, PADDING_STEP = 1.6, 0.2


def one_page(document: Document, paper: Paper, style: Style) -> Style:
    """The style with as much room in the rows of tables as leaves the document on one page, no more than it states.

    What doesn't go on one page even so has the least room, and goes on.
    """
    faces = load_faces(style)
    while True:
        if len(_pages(_Sheet(document, style, faces, PAPERS[paper]), Structure())) == 1 or style.table.padding <= LEAST_PADDING:
            return style
        style = style._replace(table=style.table._replace(padding=max(LEAST_PADDING, style.table.padding - PADDING_STEP)))


class _Sheet(NamedTuple):
    """One sheet's furniture: where the frame is, and the lines that every page repeats."""

    document: Document
    style: Style
    faces: Faces
    size: tuple[float, float]

    @property
    def head(self) -> tuple[Line, ...]:
        running, width = self.style.text("running"), self._width
        return break_lines(((running.face, self.document.running_head),), self.faces, running.size, width, width)

    @property
    def _width(self) -> float:
        return self.size[0] - 2 * self.style.page.side

    @property
    def frame(self) -> Frame:
        page, leading = self.style.page, self.style.text("running").leading
        top = self.size[1] - page.top - len(self.head) * leading - HEAD_GAP
        bottom = page.bottom + leading + FOOT_GAP
        return Frame(page.side, top, self._width, top - bottom)

    def draw_head(self, pen: Pen) -> None:
        """The running head, from the second page on, with a thin rule below."""
        if pen.page == 0 or not self.head:
            return
        running = self.style.text("running")
        left, top = self.style.page.side, self.size[1] - self.style.page.top
        first = top - first_baseline(running.size, running.leading)
        placed = [Placed(left, first - n * running.leading, line) for n, line in enumerate(self.head)]
        under = top - len(self.head) * running.leading - 4
        with pen.artifact("Header"):
            pen.text(placed, running.size, running.colour)
            pen.rule(left, under, left + self._width, under, 0.35, self.style.colours.rule)

    def draw_foot(self, pen: Pen, number: int, count: int) -> None:
        """The foot: workshop and edition at the left, the page at the right, without words to translate."""
        running, left = self.style.text("running"), self.style.page.side
        baseline = self.style.page.bottom + running.leading - first_baseline(running.size, running.leading)
        page = self._one_line(f"{number} / {count}")
        placed = [Placed(left + self._width - page.width, baseline, page)]
        if self.document.footer:
            placed.insert(0, Placed(left, baseline, self._one_line(self.document.footer)))
        with pen.artifact("Footer"):
            pen.text(placed, running.size, running.colour)

    def _one_line(self, text: str) -> Line:
        running = self.style.text("running")
        return Line(((running.face, text),), self.faces.width(running.face, running.size, text))


def _draw_boxes(pen: Pen, page: Page, frame: Frame) -> None:
    for box, distance in page.boxes:
        box.draw(pen, frame.left, frame.top - distance)


def _open_canvas(document: Document, faces: Faces, size: tuple[float, float]) -> Canvas:
    """A canvas whose first font is ours: reportlab would else name one it can't embed."""
    canvas = Canvas(
        BytesIO(), pagesize=size, pageCompression=1, invariant=1, pdfVersion=hooks.PDF_VERSION,
        initialFontName=faces.name("regular"), lang=document.language,
    )  # fmt: skip
    canvas.setViewerPreference("DisplayDocTitle", "true")
    canvas.addPageLabel(0, style="ARABIC")
    canvas.showOutline()
    return canvas


def _write_metadata(canvas: Canvas, document: Document) -> None:
    keys = PDFDictionary({"Type": "/Metadata", "Subtype": "/XML"})
    hooks.set_catalog(canvas, "Metadata", PDFStream(keys, xmp_packet(document).encode("utf-8")))


def _texts(document: Document) -> Iterator[str]:
    """Every text that will be drawn."""
    yield from (document.title, document.author, document.running_head, document.footer, BULLET, "0123456789 /")
    for block in document.blocks:
        if isinstance(block, Heading):
            yield block.text
        elif isinstance(block, Paragraph):
            yield from (block.label, spans_text(block.spans))
        elif isinstance(block, Table):
            yield from (block.caption, block.note, *block.header, *(cell for row in block.rows for cell in row))
        elif isinstance(block, Figure):
            yield block.caption
            yield from (item.text for item in block.drawing.items if isinstance(item, Label))
