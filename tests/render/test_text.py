"""The text file: the pattern's words in order, readable in a hundred columns."""

import pytest

from gaugewright.drawings.primitives import Drawing
from gaugewright.errors import InternalError
from gaugewright.instructions.nodes import Block, Document, Figure, Heading, Paragraph, Span, Table, plain
from gaugewright.render.text import render_text


def text_of(*blocks: Block, author: str = "") -> str:
    return render_text(Document("Scarf", author, "en", "", "Scarf", "", (Heading(1, "Scarf"), *blocks)))


def test_title_author_and_headings() -> None:
    assert text_of(Heading(2, "Body"), Heading(3, "Hem"), author="Ferry Lane") == (
        "Scarf\n=====\n\nFerry Lane\n\nBody\n----\n\nHem\n...\n"
    )


def test_a_title_is_supplied_where_the_blocks_have_none() -> None:
    assert render_text(Document("Scarf", "Me", "en", "", "", "", ())) == "Scarf\n=====\n\nMe\n"


def test_labels_spans_and_lists() -> None:
    step = Paragraph((Span("Ch 1. – "), Span("40\u00a0sts", "count"), Span(".")), "step", "Row 1:")
    bullets = [Paragraph(plain(word), "bullet") for word in ("one", "two")]
    assert text_of(step, *bullets).endswith("\n\nRow 1: Ch 1. – 40 sts.\n\n• one\n• two\n")


def test_size_lists_are_never_broken() -> None:
    numbers = "40 (" + ",\u00a0".join(str(n) for n in range(43, 70, 3)) + ")"
    text = text_of(Paragraph(plain(f"Chain {numbers}. " * 12), "step"))
    lines = text.splitlines()[3:]
    assert len(lines) > 5
    assert all(len(line) <= 100 and line.count("(") == line.count(")") for line in lines)
    assert "\u00a0" not in text


def test_narrow_tables_are_aligned() -> None:
    table = Table("Counts", ("", "S", "M"), (("Row 1", "40", "43"), ("Row 10", "8", "103")), ("left", "right", "center"), note="Flat.")
    assert text_of(table).endswith("\n\nCounts\n         S   M\nRow 1   40   43\nRow 10   8  103\nFlat.\n")


def test_a_last_column_of_words_is_wrapped_under_itself() -> None:
    words = " ".join(f"word{n}" for n in range(30))
    lines = text_of(Table("", ("Short", "In full"), (("hdc", words), ("sc", "single")), ("left", "left"))).splitlines()[3:]
    assert lines[1].startswith("hdc    word0 ") and lines[2].startswith("       word")
    assert " ".join(" ".join(lines[1:-1]).split()) == f"hdc {words}"
    assert lines[-1] == "sc     single"


def test_wide_tables_become_rows_of_cells_that_stay_whole() -> None:
    cells = tuple(f"{100.5 + n} / {40 + n}⅝" for n in range(9))
    table = Table("Measures", ("Size", *"abcdefghi"), (("Bust", *cells), ("Hip", *cells)), ("left", *("right",) * 9))
    lines = text_of(table).splitlines()[3:]
    assert lines[1] == "Size | a | b | c | d | e | f | g | h | i"
    assert all(len(line) <= 100 for line in lines)
    assert all(any(cell in line for line in lines) for cell in cells)


def test_figures_give_their_alternative_text_and_caption() -> None:
    figure = Figure(Drawing(10, 10, (), "t", "d"), "An outline.", "The back")
    assert text_of(figure).endswith("\n\n[An outline.]\n[The back]\n")


def test_unknown_blocks_and_broken_grids_are_our_bug() -> None:
    with pytest.raises(InternalError, match="can't hold a str"):
        text_of("words")  # type: ignore[arg-type]
    with pytest.raises(InternalError, match="not a regular grid"):
        text_of(Table("Odd", ("a", "b"), (("1",),), ("left", "left")))
