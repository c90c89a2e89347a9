"""The PDF holds the words of the text file, in the same order."""

import re
import shutil
import subprocess
from pathlib import Path

from gaugewright.instructions.nodes import Document
from gaugewright.render.text import render_text
from render.pdf_reading import TaggedPdf


def words(text: str) -> list[str]:
    """Words without what the text file adds: brackets, bars, and lines under headings."""
    text = re.sub(r"^(=+|-+|\.+)$", "", text, flags=re.M).replace("|", " ")
    return re.sub(r"[\[\]]", " ", text).split()


def test_structure_says_what_the_text_file_says(pdf: TaggedPdf, coat: Document) -> None:
    said = " ".join(pdf.text(node) for node in pdf.root.kids if not isinstance(node, tuple))
    assert words(said) == words(render_text(coat))


def said_by_poppler(file: Path, pdf: TaggedPdf) -> str:
    """What poppler's reader of the structure says; our own walk of it where poppler isn't installed."""
    tool = shutil.which("pdfinfo")
    if tool is None:
        return " ".join(pdf.text(node) for node in pdf.root.kids if not isinstance(node, tuple))
    run = subprocess.run([tool, "-struct-text", str(file)], capture_output=True, check=True, encoding="utf-8")
    said: list[str] = []
    alternatives = iter(node.alt for node in pdf.all("Figure"))
    in_figure = False
    for line in run.stdout.splitlines():
        text = re.fullmatch(r'\s*"(.*)"', line)
        if re.match(r"\s*Figure", line):
            in_figure = True
            said.append(next(alternatives))
        elif text is None and not line.lstrip().startswith("/"):
            in_figure = False
        elif text and not in_figure:
            said.append(text[1])
    return " ".join(said)


def test_poppler_reads_the_same_words(pdf_bytes: bytes, pdf: TaggedPdf, coat: Document, tmp_path: Path) -> None:
    file = tmp_path / "coat.pdf"
    file.write_bytes(pdf_bytes)
    assert words(said_by_poppler(file, pdf)) == words(render_text(coat))


def test_the_published_jacket_says_what_its_text_file_says() -> None:
    folder = Path(__file__).parents[2] / "samples" / "saltmarsh-jacket"
    file = folder / "saltmarsh-jacket.pdf"
    said = said_by_poppler(file, TaggedPdf(file.read_bytes()))
    assert words(said) == words((folder / "saltmarsh-jacket.txt").read_text("utf-8"))


def test_drawing_order_gives_the_text_too(pdf: TaggedPdf, coat: Document) -> None:
    drawn = " ".join(
        "".join(p.text for p in contents.pieces if p.owner == mark)
        for contents in pdf.contents
        for mark in contents.marks
    )
    figures = [pdf.contents[kid[0]].text_of(kid[1]) for n in pdf.all("Figure") for kid in n.kids if isinstance(kid, tuple)]
    for node, labels in zip(pdf.all("Figure"), figures, strict=True):
        assert labels in drawn
        drawn = drawn.replace(labels, node.alt, 1)
    assert words(drawn) == words(render_text(coat))
