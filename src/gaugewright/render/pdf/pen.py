"""What boxes draw with: a canvas that knows its page and tags everything it is given.

In: lines of text and rules, at points measured from the sheet's lower left. Out: page contents,
each stretch either owned by a structure element or marked as an artifact, never neither.
"""

from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass
from typing import NamedTuple

from reportlab.pdfgen.canvas import Canvas

from gaugewright.errors import InternalError
from gaugewright.render.pdf import hooks
from gaugewright.render.pdf.faces import Faces
from gaugewright.render.pdf.lines import Line
from gaugewright.render.pdf.operators import at, fill_in, show, stroke_in
from gaugewright.render.pdf.style import Face
from gaugewright.render.pdf.tags import Element, Structure


class Placed(NamedTuple):
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

    def element(self, owner: Element) -> AbstractContextManager[None]:
        """Contents that belong to a structure element."""
        number = self.structure.mark(self.page, owner)
        return self._marked(f"/{owner.tag} <</MCID {number}>> BDC")

    def artifact(self, kind: str = "") -> AbstractContextManager[None]:
        """Contents that say nothing: rules, running heads. `kind` is Header or Footer."""
        return self._marked(f"/Artifact <</Type /Pagination /Subtype /{kind}>> BDC" if kind else "/Artifact BMC")

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
        words = ["BT", fill_in(colour)]
        for x, baseline, line in lines:
            strings = [string for face, text in line.drawn for string in self.strings(face, text)]
            words.append(f"1 0 0 1 {at(x, baseline)} Tm {show(strings, size)}")
        self.literal(" ".join([*words, "ET"]))

    def literal(self, operators: str) -> None:
        """Operators as they stand."""
        self._check()
        self.canvas.addLiteral(operators)

    def strings(self, face: Face, text: str) -> list[tuple[str, str]]:
        """Text as strings of the face's subsets."""
        return hooks.strings(self.canvas, self.faces.fonts[face], text)

    def rule(self, x: float, y: float, to_x: float, to_y: float, width: float, colour: str) -> None:
        """A straight rule."""
        self.literal(f"{stroke_in(colour, width)} {at(x, y)} m {at(to_x, to_y)} l S")

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
