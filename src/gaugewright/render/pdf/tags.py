"""The structure tree of a tagged PDF: what is a heading, a paragraph, a table's head.

In: elements in reading order, and marks as pages are drawn. Out: StructTreeRoot with its
ParentTree. An element may own marks on several pages, as a paragraph over a page break does.
"""

from dataclasses import dataclass, field
from typing import NamedTuple

from reportlab.pdfgen.canvas import Canvas

from gaugewright.render.pdf import hooks


class Mark(NamedTuple):
    """A marked stretch of a page's contents."""

    page: int
    number: int


@dataclass(slots=True, eq=False)
class Element:
    """One structure element; its children are elements or marks, in reading order.

    `attributes` are written as they stand: `/O /Table /Scope /Column`.
    """

    tag: str
    attributes: str = ""
    alt: str = ""
    children: "list[Element | Mark]" = field(default_factory=list)

    def add(self, tag: str, attributes: str = "", alt: str = "") -> "Element":
        """A new last child."""
        child = Element(tag, attributes, alt)
        self.children.append(child)
        return child


@dataclass(slots=True)
class Structure:
    """The whole tree, and for each page the owner of each of its marks."""

    root: Element = field(default_factory=lambda: Element("Document"))
    pages: list[list[Element]] = field(default_factory=list)

    def mark(self, page: int, element: Element) -> int:
        """The number of a new mark on a page, owned by an element."""
        while len(self.pages) <= page:
            self.pages.append([])
        owners = self.pages[page]
        number = len(owners)
        owners.append(element)
        element.children.append(Mark(page, number))
        return number

    def write(self, canvas: Canvas) -> None:
        """Put the tree into the canvas's document, after its last page."""
        _Writer(canvas, self).write()


class _Writer:
    """Numbers all elements first, since parents and children name each other."""

    def __init__(self, canvas: Canvas, structure: Structure) -> None:
        self.canvas, self.structure = canvas, structure
        self.names: dict[int, str] = {}
        self.page_names = [hooks.page_reference(canvas, i) for i in range(len(structure.pages))]

    def write(self) -> None:
        root = hooks.Bytes(self._root)
        parent = hooks.reference(self.canvas, root)
        self._register(self.structure.root, parent)
        hooks.set_catalog(self.canvas, "StructTreeRoot", root)
        hooks.set_catalog(self.canvas, "MarkInfo", hooks.Bytes(lambda: "<< /Marked true >>"))

    def _register(self, element: Element, parent: str) -> None:
        thing = hooks.Bytes(lambda: self._element(element, parent))
        name = self.names[id(element)] = hooks.reference(self.canvas, thing)
        for child in element.children:
            if isinstance(child, Element):
                self._register(child, name)

    def _root(self) -> str:
        pages = " ".join(
            f"{page} [{' '.join(self.names[id(owner)] for owner in owners)}]"
            for page, owners in enumerate(self.structure.pages)
        )
        return (
            f"<< /Type /StructTreeRoot /K [{self.names[id(self.structure.root)]}]"
            f" /ParentTree << /Nums [{pages}] >> /ParentTreeNextKey {len(self.structure.pages)} >>"
        )

    def _element(self, element: Element, parent: str) -> str:
        home = next((child.page for child in element.children if isinstance(child, Mark)), None)
        kids = " ".join(self._kid(child, home) for child in element.children)
        words = [f"<< /Type /StructElem /S /{element.tag} /P {parent}"]
        if home is not None:
            words.append(f"/Pg {self.page_names[home]}")
        if kids:
            words.append(f"/K [{kids}]")
        if element.attributes:
            words.append(f"/A << {element.attributes} >>")
        if element.alt:
            words.append(f"/Alt {hooks.text_string(self.canvas, element.alt)}")
        return " ".join(words) + " >>"

    def _kid(self, child: Element | Mark, home: int | None) -> str:
        if isinstance(child, Element):
            return self.names[id(child)]
        if child.page == home:
            return str(child.number)
        return f"<< /Type /MCR /Pg {self.page_names[child.page]} /MCID {child.number} >>"
