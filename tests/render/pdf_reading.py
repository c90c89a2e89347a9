"""A small reader for tests: page operators, marks, structure, text with its place, through pypdf."""

import re
from dataclasses import dataclass, field
from functools import cached_property
from io import BytesIO
from typing import Any

from pypdf import PdfReader
from pypdf.generic import ContentStream, DictionaryObject

DRAWING = {b"Tj", b"TJ", b"S", b"s", b"f", b"f*", b"B", b"b", b"Do", b"sh"}


@dataclass
class Piece:
    """One shown string: where it stands, how large, and in which mark (None: an artifact)."""

    text: str
    x: float
    y: float
    end: float
    size: float
    font: str
    level: bool
    owner: int | None


@dataclass
class Contents:
    """A page's contents."""

    pieces: list[Piece] = field(default_factory=list)
    marks: list[int] = field(default_factory=list)
    loose: list[bytes] = field(default_factory=list)
    artifacts: list[str] = field(default_factory=list)

    def text_of(self, mark: int) -> str:
        """All text of a mark, in drawing order."""
        return "".join(piece.text for piece in self.pieces if piece.owner == mark)


@dataclass
class Node:
    """A structure element: marks as (page, number), children as nodes, in order."""

    tag: str
    alt: str
    attributes: dict[str, Any]
    kids: "list[Node | tuple[int, int]]"
    raw: DictionaryObject

    def walk(self) -> "list[Node]":
        """This node and all below it."""
        return [self] + [n for kid in self.kids if isinstance(kid, Node) for n in kid.walk()]


class TaggedPdf:
    """A PDF read for what it says, in what order and where."""

    def __init__(self, data: bytes) -> None:
        self.reader = PdfReader(BytesIO(data), strict=True)
        self.catalog: Any = self.reader.trailer["/Root"].get_object()

    @cached_property
    def contents(self) -> list[Contents]:
        """The contents of each page."""
        return [read_page(page, self.reader) for page in self.reader.pages]

    @cached_property
    def root(self) -> Node:
        """The Document element."""
        pages = {page.indirect_reference.idnum: n for n, page in enumerate(self.reader.pages)}
        kids = self.catalog["/StructTreeRoot"]["/K"]
        assert len(kids) == 1
        return _node(kids[0].get_object(), pages)

    def text(self, node: Node) -> str:
        """The text of a node and all below it; a figure says its alternative text."""
        if node.alt:
            return node.alt
        parts = [self.text(kid) if isinstance(kid, Node) else self.contents[kid[0]].text_of(kid[1]) for kid in node.kids]
        return "".join(parts) if any(isinstance(kid, tuple) for kid in node.kids) else " ".join(parts)

    def all(self, tag: str) -> list[Node]:
        """Every node of a kind, in reading order."""
        return [node for node in self.root.walk() if node.tag == tag]


def _node(raw: Any, pages: dict[int, int]) -> Node:
    kids: list[Node | tuple[int, int]] = []
    home = pages[raw.raw_get("/Pg").idnum] if "/Pg" in raw else None
    for kid in raw.get("/K", []):
        kid = kid.get_object()
        if isinstance(kid, int):
            assert home is not None
            kids.append((home, int(kid)))
        elif kid.get("/Type") == "/MCR":
            kids.append((pages[kid.raw_get("/Pg").idnum], int(kid["/MCID"])))
        else:
            assert kid["/P"].get_object() == raw
            kids.append(_node(kid, pages))
    return Node(str(raw["/S"])[1:], str(raw.get("/Alt", "")), dict(raw.get("/A", {})), kids, raw)


def to_unicode(font: Any) -> dict[int, str]:
    """Code to text, from the font's own map."""
    data = font["/ToUnicode"].get_object().get_data().decode("latin-1")
    pairs = re.findall(r"^<([0-9A-F]{2})> <([0-9A-F]{4,})>$", data, re.M)
    return {int(code, 16): bytes.fromhex(text).decode("utf-16-be") for code, text in pairs}


def read_page(page: Any, reader: PdfReader) -> Contents:
    """Walk the operators: the text state, the marks, and anything outside of them."""
    fonts = {name: font.get_object() for name, font in page["/Resources"]["/Font"].items()}
    maps = {name: to_unicode(font) for name, font in fonts.items()}
    found = Contents()
    owner: int | None = None
    inside = False
    font, size, x, y, level = "", 0.0, 0.0, 0.0, True
    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        if operator in (b"BDC", b"BMC"):
            assert not inside, "nested marks"
            inside, owner = True, None
            if operands[0] == "/Artifact":
                found.artifacts.append(str(operands[1].get("/Subtype", "")) if len(operands) > 1 else "")
            else:
                owner = int(operands[1]["/MCID"])
                found.marks.append(owner)
        elif operator == b"EMC":
            inside = False
        elif operator == b"Tf":
            font, size = operands[0], float(operands[1])
        elif operator == b"Tm":
            x, y, level = float(operands[4]), float(operands[5]), abs(float(operands[1])) < 1e-9
        elif operator == b"Tj":
            raw = operands[0].original_bytes
            text = "".join(maps[font][code] for code in raw)
            widths, first = fonts[font]["/Widths"], int(fonts[font]["/FirstChar"])
            width = sum(float(widths[code - first]) for code in raw) * size / 1000
            spaces = len(text) - len(text.rstrip(" "))
            blank = spaces * float(widths[32 - first]) * size / 1000
            name = str(fonts[font]["/BaseFont"])
            found.pieces.append(Piece(text, x, y, x + width - blank, size, name, level, owner))
            x += width
        if operator in DRAWING and not inside:
            found.loose.append(operator)
    return found
