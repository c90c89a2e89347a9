"""What all renderers agree on."""

from gaugewright.instructions.nodes import Document, Heading, Paragraph, Table, plain
from gaugewright.render.reading_order import Bullets, Byline, reading_order, split_columns


def wide(columns: int, cell: str = "118.5 / 46⅝") -> Table:
    return Table(
        "Measures", ("Size", *(f"S{n}" for n in range(columns))),
        (("Finished bust", *(cell,) * columns),), ("left", *("right",) * columns), note="Flat.",
    )  # fmt: skip


def test_nine_sizes_stay_in_one_table() -> None:
    table = wide(9)
    assert split_columns(table) == (table,)


def test_many_columns_become_tables_with_the_head_column_repeated() -> None:
    table = wide(20)
    parts = split_columns(table)
    assert len(parts) > 1
    assert [part.header[0] for part in parts] == ["Size"] * len(parts)
    assert [part.caption for part in parts] == ["Measures"] * len(parts)
    assert [part.note for part in parts] == [""] * (len(parts) - 1) + ["Flat."]
    assert [head for part in parts for head in part.header[1:]] == list(table.header[1:])
    assert all(len(row) == len(part.header) == len(part.align) for part in parts for row in part.rows)


def test_a_column_wider_than_the_page_stands_alone() -> None:
    assert [len(part.header) for part in split_columns(wide(3, "1" * 300))] == [2, 2, 2]


def test_columns_of_words_may_wrap_and_do_not_split() -> None:
    table = Table("Care", ("Short", "In full"), (("wash", "cool water " * 40),), ("left", "left"))
    assert split_columns(table) == (table,)


def test_neighbouring_bullets_are_one_list() -> None:
    one, two, three = (Paragraph(plain(word), "bullet") for word in ("one", "two", "three"))
    body = Paragraph(plain("between"))
    document = Document("T", "Me", "en", "", "", "", (Heading(1, "T"), one, two, body, three))
    assert reading_order(document) == (
        Heading(1, "T"), Byline("Me"), Bullets((one, two)), body, Bullets((three,)),
    )  # fmt: skip
