"""The file is tagged throughout: every mark has an owner, every owner its marks."""

import re

from gaugewright.instructions.nodes import Document, Figure, Heading, Paragraph, Table
from render.pdf_reading import Node, TaggedPdf


def test_catalog_says_that_the_file_is_tagged(pdf: TaggedPdf) -> None:
    assert pdf.catalog["/MarkInfo"]["/Marked"] == True  # noqa: E712 (a pypdf boolean object)
    assert pdf.catalog["/Lang"] == "en"
    assert pdf.catalog["/ViewerPreferences"]["/DisplayDocTitle"] == True  # noqa: E712
    assert pdf.catalog["/StructTreeRoot"]["/Type"] == "/StructTreeRoot"
    assert pdf.reader.page_labels == [str(n + 1) for n in range(len(pdf.reader.pages))]


def test_metadata_claims_pdf_ua_and_agrees_with_the_information_dictionary(pdf: TaggedPdf) -> None:
    stream = pdf.catalog["/Metadata"]
    assert "/Filter" not in stream
    xmp = pdf.reader.xmp_metadata
    assert xmp is not None and xmp.dc_title == {"x-default": "Harbour Coat"}
    assert b"<pdfuaid:part>1</pdfuaid:part>" in stream.get_data()
    info = pdf.reader.metadata
    assert info is not None
    assert (info.title, info.author, info.subject) == ("Harbour Coat", "Ferry Lane Workshop", "A crochet pattern in nine sizes")
    assert info["/CreationDate"] == "D:20261125"


def test_pages_point_into_the_parent_tree_and_back(pdf: TaggedPdf) -> None:
    numbers = pdf.catalog["/StructTreeRoot"]["/ParentTree"]["/Nums"]
    owners = {int(numbers[i]): numbers[i + 1] for i in range(0, len(numbers), 2)}
    claimed = [kid for node in pdf.root.walk() for kid in node.kids if isinstance(kid, tuple)]
    assert len(claimed) == len(set(claimed)), "a mark has two owners"
    for number, (page, contents) in enumerate(zip(pdf.reader.pages, pdf.contents, strict=True)):
        assert page["/Tabs"] == "/S"
        assert page["/StructParents"] == number
        assert contents.marks == list(range(len(contents.marks)))
        assert sorted(mark for where, mark in claimed if where == number) == contents.marks
        assert len(owners[number]) == len(contents.marks)
        for mark, owner in enumerate(owners[number]):
            assert (number, mark) in _marks_of(pdf, owner.get_object())


def _marks_of(pdf: TaggedPdf, raw: object) -> list[tuple[int, int]]:
    node = next(node for node in pdf.root.walk() if node.raw == raw and node.raw is raw)
    return [kid for kid in node.kids if isinstance(kid, tuple)]


def test_nothing_is_drawn_outside_of_marks(pdf: TaggedPdf) -> None:
    assert [contents.loose for contents in pdf.contents] == [[]] * len(pdf.contents)


def test_marks_are_drawn_in_reading_order(pdf: TaggedPdf) -> None:
    order = [kid for node in pdf.root.walk() for kid in node.kids if isinstance(kid, tuple)]
    notes = [kid for kid in sorted(order) if kid not in order]
    assert not notes
    for page in range(len(pdf.contents)):
        marks = [mark for where, mark in order if where == page]
        assert marks == sorted(marks)


def test_elements_follow_the_document(pdf: TaggedPdf, coat: Document) -> None:
    headings = [(f"H{block.level}", block.text) for block in coat.blocks if isinstance(block, Heading)]
    found = [(node.tag, pdf.text(node)) for node in pdf.root.walk() if re.fullmatch(r"H\d", node.tag)]
    assert found == headings
    figures = [block.alt for block in coat.blocks if isinstance(block, Figure)]
    assert [node.alt for node in pdf.all("Figure")] == figures
    bullets = [block for block in coat.blocks if isinstance(block, Paragraph) and block.role == "bullet"]
    assert len(pdf.all("LI")) == len(pdf.all("Lbl")) == len(pdf.all("LBody")) == len(bullets)
    assert len(pdf.all("L")) == 3


def test_tables_are_grids_with_row_and_column_heads(pdf: TaggedPdf, coat: Document) -> None:
    tables = [block for block in coat.blocks if isinstance(block, Table)]
    found = pdf.all("Table")
    assert len(found) == len(tables) + 1, "the one with twenty sizes becomes two"
    for node in found:
        caption, head, *rows = [kid for kid in node.kids if isinstance(kid, Node)]
        assert caption.tag == "Caption"
        assert [scope_of(cell) for cell in head.kids] == ["/Column"] * len(head.kids)
        for row in rows:
            assert row.tag == "TR" and len(row.kids) == len(head.kids)
            assert [scope_of(cell) for cell in row.kids] == ["/Row"] + [""] * (len(row.kids) - 1)


def scope_of(cell: object) -> str:
    assert isinstance(cell, Node)
    assert cell.tag == ("TH" if cell.attributes else "TD")
    return str(cell.attributes.get("/Scope", ""))


def test_figures_have_their_box_on_the_page(pdf: TaggedPdf) -> None:
    for node in pdf.all("Figure"):
        x1, y1, x2, y2 = (float(v) for v in node.attributes["/BBox"])
        [(page, mark)] = [kid for kid in node.kids if isinstance(kid, tuple)]
        pieces = [piece for piece in pdf.contents[page].pieces if piece.owner == mark]
        assert pieces and all(x1 <= piece.x <= x2 and y1 <= piece.y <= y2 for piece in pieces)


def test_a_paragraph_over_a_page_break_is_one_element(pdf: TaggedPdf) -> None:
    split = [node for node in pdf.all("P") if len({kid[0] for kid in node.kids if isinstance(kid, tuple)}) == 2]
    tables = [node for node in pdf.all("Table") if len({page for n in node.walk() for page in _pages(n)}) > 1]
    assert split or tables
    for node in split:
        assert [kid[0] for kid in node.kids if isinstance(kid, tuple)] == sorted(_pages(node))


def _pages(node: Node) -> set[int]:
    return {kid[0] for kid in node.kids if isinstance(kid, tuple)}


def test_headings_are_bookmarked_where_they_stand(pdf: TaggedPdf) -> None:
    entries = list(_flat(pdf.reader.outline))
    headings = [node for node in pdf.root.walk() if re.fullmatch(r"H\d", node.tag)]
    assert [entry.title for entry in entries] == [pdf.text(node) for node in headings]
    for entry, node in zip(entries, headings, strict=True):
        page, mark = next(kid for kid in node.kids if isinstance(kid, tuple))
        assert pdf.reader.get_destination_page_number(entry) == page
        baseline = next(piece.y for piece in pdf.contents[page].pieces if piece.owner == mark)
        assert baseline < float(entry.top) < baseline + 70


def _flat(outline: list) -> list:  # type: ignore[type-arg]
    return [leaf for entry in outline for leaf in (_flat(entry) if isinstance(entry, list) else [entry])]


def test_no_words_are_hidden_in_the_file(pdf_bytes: bytes, pdf: TaggedPdf) -> None:
    assert b"/ActualText" not in pdf_bytes
    for contents in pdf.contents:
        text = "".join(piece.text for piece in contents.pieces)
        assert not re.search("[\u00ad\ufb00-\ufb06\u0000]", text)
