"""Everything that leans on reportlab's private parts, in one file, each with a test of its own.

reportlab is held to `>=5.1,<6` for the sake of this file. What it needs beyond the public calls:
page keys for tagging, a ToUnicode map without U+0000, an information dictionary without the
clock, a file identifier from the contents, and an object that writes itself as bytes.
"""

import hashlib
import re
from collections.abc import Callable
from pathlib import Path

from reportlab.pdfbase import pdfdoc
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

PDF_VERSION = (1, 7)  # PDF/UA-1 is built on it
BLANK_ID = b"[<%b><%b>]" % (b"0" * 32, b"0" * 32)
ESCAPES = {code: f"\\{code:03o}" for code in (*range(32), *range(127, 256))} | {ord(c): f"\\{c}" for c in "\\()"}
NO_TEXT = re.compile(r"<[0-9A-F]{2}> <(?:0000|007F)>")


class ReadableFont(TTFont):  # type: ignore[misc]
    """A font whose ToUnicode map leaves out the codes that stand for no text.

    Why: unused codes of a subset are mapped to U+0000, which readers copy as a stray character
    and PDF/UA forbids.
    """

    def addObjects(self, doc: pdfdoc.PDFDocument) -> None:
        """Add the subset, then clean its map."""
        known = set(doc.idToObject)
        super().addObjects(doc)
        for name, stream in doc.idToObject.items():
            if name not in known and name.startswith("toUnicodeCMap:"):
                stream.content = clean_to_unicode(stream.content)


def strings(canvas: Canvas, font: ReadableFont, text: str) -> list[tuple[str, str]]:
    """The text as escaped strings, each with the name of the subset of the font that holds its letters."""
    document = canvas._doc
    return [
        (font.getSubsetInternalName(subset, document), codes.decode("latin-1").translate(ESCAPES))
        for subset, codes in font.splitString(text, document)
    ]


def clean_to_unicode(cmap: str) -> str:
    """The map without U+0000 and U+007F, and with the right counts (at most 100 to a block)."""
    head, rest = cmap.split("beginbfchar\n", 1)
    pairs, tail = rest.split("endbfchar", 1)
    kept = [line for line in pairs.splitlines() if line and not NO_TEXT.fullmatch(line)]
    head = head[: head.rindex("\n") + 1]
    blocks = [kept[i : i + 100] for i in range(0, len(kept), 100)]
    written = "\n".join(f"{len(b)} beginbfchar\n" + "\n".join(b) + "\nendbfchar" for b in blocks)
    return f"{head}{written}{tail}"


def load_font(name: str, path: Path) -> ReadableFont:
    """Read a TrueType file; reportlab says `TTFError` where it isn't one."""
    return ReadableFont(name, str(path))


class PlainInfo(pdfdoc.PDFInfo):  # type: ignore[misc]
    """The information dictionary without the clock: its date is the document's or none."""

    def __init__(self, entries: dict[str, str], date: str) -> None:
        super().__init__()
        self.entries, self.date = entries, date

    def format(self, document: pdfdoc.PDFDocument) -> bytes:
        """Only entries that say something."""
        words = {key: pdfdoc.PDFString(value) for key, value in self.entries.items() if value}
        if self.date:
            stamp = pdfdoc.PDFString("D:" + self.date.replace("-", ""))
            words |= {"CreationDate": stamp, "ModDate": stamp}
        return bytes(pdfdoc.PDFDictionary(words).format(document))


class Bytes(pdfdoc.PDFObject):  # type: ignore[misc]
    """An indirect object that writes itself, for the many small ones of the structure tree."""

    __RefOnly__ = 1

    def __init__(self, write: Callable[[], str]) -> None:
        self.write = write

    def format(self, document: pdfdoc.PDFDocument) -> bytes:
        """The object's own words; strings in them are escaped already."""
        return self.write().encode("latin-1")


def close_page(canvas: Canvas, index: int) -> None:
    """End the page, give it its tagging keys, and keep its contents readable bytes or flate only."""
    canvas.showPage()
    page = canvas._doc.Pages.pages[index]
    page.__NoDefault__ = [*page.__NoDefault__, "StructParents", "Tabs"]
    page.StructParents = index
    page.Tabs = "/S"
    page.Trans = None
    contents = pdfdoc.PDFStream(content=page.stream, filters=[pdfdoc.PDFZCompress])
    page.Contents = contents


def reference(canvas: Canvas, thing: pdfdoc.PDFObject) -> str:
    """Register an object and give the words that refer to it, such as "12 0 R"."""
    document = canvas._doc
    return str(document.Reference(thing).format(document).decode("ascii"))


def page_reference(canvas: Canvas, index: int) -> str:
    """The words that refer to a page."""
    return reference(canvas, canvas._doc.Pages.pages[index])


def text_string(canvas: Canvas, text: str) -> str:
    """A text string as it stands in a PDF object, escaped."""
    return bytes(pdfdoc.PDFString(text).format(canvas._doc)).decode("latin-1")


def set_catalog(canvas: Canvas, key: str, value: pdfdoc.PDFObject) -> None:
    """Put an object into the catalog."""
    setattr(canvas._doc.Catalog, key, value)


def finish(canvas: Canvas, info: PlainInfo) -> bytes:
    """The file's bytes. Its identifier is a digest of all that stands before it, the cross-reference table included."""
    document = canvas._doc
    document.info = info
    document._ID = BLANK_ID
    before, blank, after = bytes(canvas.getpdfdata()).rpartition(BLANK_ID)
    name = hashlib.sha256(before).hexdigest().encode("ascii")[:32]
    return before + blank.replace(b"0" * 32, name) + after
