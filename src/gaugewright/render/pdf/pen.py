"""What boxes draw with: a canvas that knows its page and tags everything it is given.

In: lines of text and rules, at points measured from the sheet's lower left. Out: page contents,
each stretch either owned by a structure element or marked as an artifact, never neither.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from reportlab.pdfgen.canvas import Canvas

from gaugewright.errors import InternalError
from gaugewright.render.pdf.faces import Faces
from gaugewright.render.pdf.lines import Line
from gaugewright.render.pdf.tags import Element, Structure


def channels(colour: str) -> tuple[float, float, float]:
    """The three parts of #rrggbb, from 0 to 1."""
    red, green, blue = (int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))
    return (red, green, blue)


@dataclass(frozen=True, slots=True)
class Placed:
    """A line at its left end and baseline."""

    x: float
    baseline: float
    line: Line


@dataclass(slots=True)
class Pen:
    """Draws on one page."""

    canvas: Canvas
    faces: Faces
    structure: Structure
    page: int
    inside: bool = False

    @contextmanager
    def element(self, owner: Element) -> Iterator[None]:
        """Contents that belong to a structure element."""
        number = self.structure.mark(self.page, owner)
        with self._marked(f"/{owner.tag} <</MCID {number}>> BDC"):
            yield

    @contextmanager
    def artifact(self, kind: str = "") -> Iterator[None]:
        """Contents that say nothing: rules, running heads. `kind` is Header or Footer."""
        place = f"/Artifact <</Type /Pagination /Subtype /{kind}>> BDC" if kind else "/Artifact BMC"
        with self._marked(place):
            yield

    @contextmanager
    def _marked(self, opening: str) -> Iterator[None]:
        if self.inside:
            raise InternalError("marked contents can't be nested")
        self.canvas.addLiteral(opening)
        self.inside = True
        yield
        self.inside = False
        self.canvas.addLiteral("EMC")

    def text(self, lines: list[Placed], size: float, colour: str) -> None:
        """Lines in one size and colour; the space at a broken line's end is drawn too."""
        self._check()
        text = self.canvas.beginText()
        text.setFillColor(channels(colour))
        face_now = None
        for placed in lines:
            text.setTextOrigin(placed.x, placed.baseline)
            runs = placed.line.runs
            for place, (face, words) in enumerate(runs):
                if face != face_now:
                    text.setFont(self.faces.name(face), size, size)
                    face_now = face
                text.textOut(words + placed.line.glue if place == len(runs) - 1 else words)
        self.canvas.drawText(text)

    def rule(self, x: float, y: float, to_x: float, to_y: float, width: float, colour: str) -> None:
        """A straight rule."""
        self._check()
        self.canvas.setStrokeColor(channels(colour))
        self.canvas.setLineWidth(width)
        self.canvas.line(x, y, to_x, to_y)

    def _check(self) -> None:
        if not self.inside:
            raise InternalError("drawn outside of marked contents")

    def bookmark(self, level: int, text: str, x: float, top: float) -> None:
        """An entry of the outline that leads to this height of the page."""
        key = f"heading-{self.page}-{self.structure_size()}"
        self.canvas.bookmarkPage(key, fit="XYZ", left=x, top=top)
        self.canvas.addOutlineEntry(text, key, level)

    def structure_size(self) -> int:
        """How many marks the page has so far: names its bookmarks apart."""
        pages = self.structure.pages
        return len(pages[self.page]) if len(pages) > self.page else 0
