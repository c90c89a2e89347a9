"""What a careful printer would not let pass."""

import re
from collections import defaultdict

from gaugewright.instructions.nodes import Document, Paragraph
from gaugewright.render.pdf import Style
from render.pdf_reading import Contents, Node, Piece, TaggedPdf


def lines_of(contents: Contents) -> list[list[Piece]]:
    """Level pieces of the running text by line, top to bottom."""
    lines: dict[float, list[Piece]] = defaultdict(list)
    for piece in contents.pieces:
        if piece.level and piece.owner is not None and piece.text.strip():
            lines[piece.y].append(piece)
    return [lines[y] for y in sorted(lines, reverse=True)]


def test_all_text_is_inside_the_margins(pdf: TaggedPdf, style: Style) -> None:
    for page, contents in zip(pdf.reader.pages, pdf.contents, strict=True):
        width, height = float(page.mediabox.width), float(page.mediabox.height)
        assert contents.pieces
        for piece in contents.pieces:
            if piece.level and piece.text.strip():
                assert piece.x >= style.page.side - 0.01, piece
                assert piece.end <= width - style.page.side + 0.01, piece
            assert style.page.bottom < piece.y < height - style.page.top, piece


def test_no_text_is_too_small_and_numbers_in_nine_columns_are_readable(pdf: TaggedPdf) -> None:
    for contents in pdf.contents:
        for piece in contents.pieces:
            assert piece.size >= 5
    nine = pdf.all("Table")[0]
    cell = nine.walk()[-1]
    [(page, mark)] = [kid for kid in cell.kids if isinstance(kid, tuple)]
    sizes = {piece.size for piece in pdf.contents[page].pieces if piece.owner == mark}
    assert min(sizes) >= 8


def test_running_head_is_the_same_on_every_page_but_the_first(pdf: TaggedPdf, coat: Document) -> None:
    heads = []
    for contents in pdf.contents:
        top = [(p.text, p.x, p.y, p.size) for p in contents.pieces if p.owner is None and p.text == coat.running_head]
        heads.append(top)
    assert heads[0] == []
    assert len(heads[1]) == 1 and all(head == heads[1] for head in heads[1:])
    assert [contents.artifacts.count("/Header") for contents in pdf.contents] == [0] + [1] * (len(heads) - 1)


def test_every_page_is_numbered_at_the_same_height(pdf: TaggedPdf) -> None:
    count = len(pdf.contents)
    places = set()
    for number, contents in enumerate(pdf.contents, start=1):
        [foot] = [p for p in contents.pieces if p.text == f"{number} / {count}"]
        assert foot.owner is None
        places.add((foot.y, round(foot.end, 2)))
    assert len(places) == 1


def test_headings_are_never_last_on_a_page(pdf: TaggedPdf) -> None:
    for node in pdf.root.walk():
        if re.fullmatch(r"H\d", node.tag):
            page, mark = node.kids[-1]
            assert pdf.contents[page].marks[-1] > mark, pdf.text(node)
            assert max(pdf.contents[page].marks) > mark


def test_steps_are_never_split(pdf: TaggedPdf, coat: Document) -> None:
    labels = {block.label for block in coat.blocks if isinstance(block, Paragraph) and block.role == "step"}
    steps = [node for node in pdf.all("P") if any(pdf.text(node).startswith(label) for label in labels)]
    assert len(steps) == sum(1 for b in coat.blocks if isinstance(b, Paragraph) and b.role == "step")
    assert all(len(node.kids) == 1 for node in steps)


def test_split_paragraphs_leave_two_lines_on_either_page(pdf: TaggedPdf) -> None:
    for node in pdf.all("P"):
        if len(node.kids) > 1:
            for page, mark in node.kids:  # type: ignore[misc]
                lines = {piece.y for piece in pdf.contents[page].pieces if piece.owner == mark}
                assert len(lines) >= 2, pdf.text(node)


def test_no_line_breaks_inside_a_size_list(pdf: TaggedPdf) -> None:
    seen = 0
    for contents in pdf.contents:
        for line in lines_of(contents):
            text = "".join(piece.text for piece in line)
            if re.search(r"\d+ \(\d", text):
                seen += 1
                assert text.count("(") == text.count(")"), text
    assert seen > 30


def test_a_long_table_repeats_its_head_for_the_eye_only(pdf: TaggedPdf) -> None:
    table = next(node for node in pdf.all("Table") if "Row 60" in pdf.text(node))
    pages = sorted({kid[0] for node in table.walk() for kid in node.kids if isinstance(kid, tuple)})
    assert len(pages) > 1
    for page in pages[1:]:
        repeated = [piece.text for piece in pdf.contents[page].pieces if piece.owner is None]
        assert [text for text in repeated if text in ("XS", "S", "5X")] == ["XS", "S", "5X"]
    assert pdf.text(table).split().count("5X") == 1


def test_captions_and_notes_stay_with_their_table(pdf: TaggedPdf) -> None:
    for node in pdf.all("Table"):
        [caption, head, first, second, *_] = [kid for kid in node.kids if isinstance(kid, Node)]
        pages = {kid[0] for n in (caption, *head.walk(), *first.walk(), *second.walk()) for kid in n.kids if isinstance(kid, tuple)}
        assert len(pages) == 1
    children = [kid for kid in pdf.root.kids if isinstance(kid, Node)]
    for before, after in zip(children, children[1:], strict=False):
        if before.tag == "Table" and pdf.text(after).startswith(("Each length", "Measured flat")):
            last = before.walk()[-1].kids[-1]
            assert after.kids[0][0] == last[0]  # type: ignore[index]


def test_figures_and_captions_share_a_page(pdf: TaggedPdf) -> None:
    for group in pdf.all("Div"):
        assert len({kid[0] for node in group.walk() for kid in node.kids if isinstance(kid, tuple)}) == 1


def test_pages_are_filled(pdf: TaggedPdf) -> None:
    """No page but one before a forced break, and the last, leaves over a third of itself empty."""
    forced = {page - 1 for node in pdf.all("H2") if pdf.text(node) == "Right Front" for page, _ in node.kids}  # type: ignore[misc]
    for number, contents in enumerate(pdf.contents[:-1]):
        if number not in forced:
            lowest = min(piece.y for piece in contents.pieces if piece.owner is not None)
            assert lowest < float(pdf.reader.pages[number].mediabox.height) * 0.36, number
