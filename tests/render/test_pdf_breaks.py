"""Page breaks at every possible height: the same text pushed down line by line."""

from collections import defaultdict
from dataclasses import replace

import pytest

from gaugewright.instructions.nodes import Block, Document, Figure, Heading, Paragraph, plain
from gaugewright.render.pdf import Style, render_pdf
from gaugewright.render.pdf.boxes import FigureBox, least_scale
from gaugewright.render.pdf.tags import Element
from render.harbour_coat import piece_drawing, row, size_list
from render.pdf_reading import TaggedPdf

LONG = "Work to the marker, slip the marker, and go on in pattern until the edge measures as the table says. "


def pushed_down(coat: Document, lines: int) -> Document:
    """A page nearly full, then a heading, steps and paragraphs of several lines."""
    blocks: list[Block] = [Heading(1, "Pushed down"), *(Paragraph(plain("One line."), "small") for _ in range(lines))]
    for number in range(4):
        blocks += [
            Heading(3, f"Part {number}"),
            row(f"Row {number}:", f"{LONG * 2} Then ch {size_list(40, 3)}.", size_list(40, 3)),
            Paragraph(plain(f"Paragraph {number}. " + LONG * (2 + number))),
            Paragraph(plain(LONG * 2), "caution", f"Caution {number}."),
        ]
    return replace(coat, blocks=tuple(blocks))


@pytest.fixture(scope="module", params=range(14, 38))
def pushed(request: pytest.FixtureRequest, coat: Document, style: Style) -> TaggedPdf:
    return TaggedPdf(render_pdf(pushed_down(coat, request.param), "letter", style))


def lines_by_page(pdf: TaggedPdf, beginning: str) -> list[list[int]]:
    """For each element that begins so: how many lines it has on each of its pages."""
    found = []
    for node in pdf.all("P"):
        if pdf.text(node).startswith(beginning):
            pages: dict[int, set[float]] = defaultdict(set)
            for page, mark in node.kids:  # type: ignore[misc]
                pages[page] |= {piece.y for piece in pdf.contents[page].pieces if piece.owner == mark}
            found.append([len(lines) for lines in pages.values()])
    return found


def test_a_step_or_caution_is_on_one_page(pushed: TaggedPdf) -> None:
    for beginning in ("Row ", "Caution "):
        found = lines_by_page(pushed, beginning)
        assert len(found) == 4 and all(len(pages) == 1 and pages[0] >= 3 for pages in found)


def test_a_paragraph_leaves_at_least_two_lines_on_either_page(pushed: TaggedPdf) -> None:
    found = lines_by_page(pushed, "Paragraph ")
    assert len(found) == 4
    assert all(min(pages) >= 2 for pages in found)


def test_text_keeps_clear_of_the_foot(pushed: TaggedPdf) -> None:
    for contents in pushed.contents:
        foot = next(piece for piece in contents.pieces if " / " in piece.text and piece.owner is None)
        assert min(piece.y for piece in contents.pieces if piece.owner is not None) > foot.y + 28


def test_a_heading_stands_over_its_step(pushed: TaggedPdf) -> None:
    headings = [node.kids[0][0] for node in pushed.all("H3")]  # type: ignore[index]
    steps = [node.kids[0][0] for node in pushed.all("P") if pushed.text(node).startswith("Row ")]  # type: ignore[index]
    assert headings == steps


def test_breaks_of_paragraphs_were_really_tried(coat: Document, style: Style) -> None:
    split = 0
    for lines in range(14, 38):
        pdf = TaggedPdf(render_pdf(pushed_down(coat, lines), "letter", style))
        split += sum(1 for pages in lines_by_page(pdf, "Paragraph ") if len(pages) == 2)
    assert split >= 5


def test_a_step_longer_than_a_page_is_split_rather_than_lost(coat: Document, style: Style) -> None:
    blocks = (Heading(1, "Long"), Paragraph(plain(LONG * 60), "step", "Row 1:"))
    pdf = TaggedPdf(render_pdf(replace(coat, blocks=blocks), "a4", style))
    [pages] = lines_by_page(pdf, "Row 1:")
    assert len(pages) >= 2
    [node] = [node for node in pdf.all("P") if pdf.text(node).startswith("Row 1:")]
    assert pdf.text(node) == f"Row 1: {LONG * 60}".strip()


def test_a_drawing_is_made_to_fit_the_sheet(coat: Document, style: Style) -> None:
    figures = tuple(Figure(piece_drawing(*size, ("none",)), "A piece.", "Its caption") for size in ((400, 90), (90, 600)))
    pdf = TaggedPdf(render_pdf(replace(coat, blocks=(Heading(1, "Large"), *figures)), "a4", style))
    for node in pdf.all("Figure"):
        x1, y1, x2, y2 = (float(value) for value in node.attributes["/BBox"])
        assert style.page.side - 0.01 <= x1 < x2 <= 595.28 - style.page.side + 0.01
        assert style.page.bottom + 20 < y1 < y2 < 841.89 - style.page.top - 20


def test_a_drawing_gets_a_little_smaller_but_stays_readable() -> None:
    drawing = piece_drawing(150, 96, ("none",))
    box = FigureBox(drawing, Element("Figure"), None, 476, 1.0)
    smaller = box.shrink(box.height * 0.9)
    assert smaller is not None and smaller.height == pytest.approx(box.height * 0.9)
    assert box.shrink(box.height * 0.6) is None
    assert 0.7 < least_scale(drawing) < 0.9


@pytest.mark.parametrize("lines", range(20, 44))
def test_a_chapter_begins_where_its_drawing_is(coat: Document, style: Style, lines: int) -> None:
    drawing = Figure(piece_drawing(120, 70, ("none",)), "A piece.", "Its caption")
    blocks = (
        Heading(1, "Pages"), *(Paragraph(plain(f"Line {n}."), "body") for n in range(lines)),
        Heading(2, "Chapter"), Paragraph(plain(LONG * 5), "body"), drawing, Paragraph(plain("After."), "body"),
    )
    pdf = TaggedPdf(render_pdf(replace(coat, blocks=blocks), "a4", style))
    [heading] = [node for node in pdf.all("H2") if pdf.text(node) == "Chapter"]
    [caption] = [node for node in pdf.all("Caption") if pdf.text(node) == "Its caption"]
    assert heading.kids[0][0] == caption.kids[0][0]  # type: ignore[index]


@pytest.mark.parametrize("lines", range(14, 38))
def test_what_is_kept_is_on_the_page_of_what_follows_it(lines: int, coat: Document, style: Style) -> None:
    blocks: list[Block] = [Heading(1, "Pushed down"), *(Paragraph(plain("One line."), "small") for _ in range(lines))]
    blocks += [Heading(3, "Part"), *(Paragraph(plain(f"Kept {number}."), "step", keep=True) for number in range(4))]
    blocks += [Figure(piece_drawing(120, 60, ("none",)), "a chart", "First.", keep=True), Paragraph(plain("Kept last."))]
    pdf = TaggedPdf(render_pdf(replace(coat, blocks=tuple(blocks)), "letter", style))
    pages = {page for node in pdf.all("P") if pdf.text(node).startswith("Kept") for page, _ in node.kids}  # type: ignore[misc]
    assert len(pages) == 1
