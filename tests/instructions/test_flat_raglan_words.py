"""Raglan edges read back from the page: the rows that each size's table gives make the stitches that it prints."""

import re
from collections.abc import Iterator

import pytest
from instructions.specs import document, graded, told

from gaugewright.instructions.nodes import Table

CARDIGAN, CASE = "raglan cardigan", "flat-raglan"


def tables(name: str, *titles: str) -> Iterator[tuple[Table, str]]:
    """The tables of these titles and the piece each is of."""
    for block in document(name).blocks:
        if isinstance(block, Table) and any(title in block.caption for title in titles):
            yield block, block.caption.partition(":")[0].partition(",")[0]


def rows_of(text: str) -> dict[int, int]:
    """ "2 sts on Row 50; 1 st on Rows 51 to 53 and 55": how many stitches go on each row."""
    found: dict[int, int] = {}
    for group in text.replace("\u00a0", " ").split("; "):
        match = re.fullmatch(r"(\d+) sts? on Rows? (.+)", group)
        if match:
            for part in re.split(r", | and ", match[2]):
                low, _, high = part.partition(" to ")
                found |= {row: int(match[1]) for row in range(int(low), int(high or low) + 1)}
    return found


def cells(table: Table, size: str) -> dict[str, str]:
    """One size's line by the columns' heads."""
    row = next(row for row in table.rows if row[0] == size)
    return dict(zip(table.header, row, strict=True))


@pytest.mark.parametrize("name", [CARDIGAN, CASE])
def test_what_the_table_takes_is_what_goes(name: str) -> None:
    read = 0
    for table, title in tables(name, ": raglan edge"):
        for size in graded(name).grading.plans["back"].labels:
            line = cells(table, size)
            edges = 2 if "both edges alike" in table.caption else 1
            goes = sum(sum(rows_of(text).values()) for head, text in line.items() if head.startswith(("raglan edge:", "neck edge:")))
            assert int(line["sts before"]) - edges * goes == int(line["sts after"]), (title, size)
            read += 1
    assert read >= 9


@pytest.mark.parametrize("name", [CARDIGAN, CASE])
def test_how_often_and_the_rows_say_the_same(name: str) -> None:
    said = 0
    for table, title in tables(name, ": raglan edge"):
        for size in graded(name).grading.plans["back"].labels:
            line = cells(table, size)
            match = re.fullmatch(r"on each row but Rows? (.+)", line.get("how often", "").replace("\u00a0", " "))
            if match:
                plain = set(rows_of(f"1 st on Rows {match[1]}"))
                leaves, worked = rows_of(line["raglan edge: leave"]), set(rows_of(line["raglan edge: decrease"]))
                (first,) = leaves
                assert plain.isdisjoint(worked) and first not in plain | worked
                assert plain | worked == set(range(first + 1, max(plain | worked) + 1)), (title, size)
                said += 1
    assert said >= 6


def test_the_sides_of_a_front_end_with_the_stitches_printed() -> None:
    plans = graded(CASE).grading.plans["front"]
    for table, _ in tables(CASE, "Front, first side", "Front, second side"):
        for size, plan in plans.items():
            goes = sum(sum(rows_of(text).values()) for head, text in cells(table, size).items() if ":" in head)
            divided = plan.sections[-1]
            assert divided.side - goes == 2  # type: ignore[union-attr]


def test_raglans_are_sewn_row_for_row_before_the_sides_and_the_neck_band() -> None:
    steps = [one for one in told(document(CASE)) if one.chapter == "Making up" and one.label]
    assert [one.label for one in steps] == ["A.", "B.", "C.", "D."]
    assert all("to those of the other, st to st, then row for row" in one.text and "18 (21, 24) rows on each side" in one.text for one in steps[:2])
    assert "two seam edges of the Sleeve to each other, row to row" in steps[3].text
    order = [one.text for one in told(document(CASE)) if one.chapter == "Order of work"]
    assert order[1:] == [
        "Back, Front and Sleeve (make 2): work them in any order.", "Sew seams A and B.", "Work the Neck Band.", "Sew seams C and D.",
    ]


def test_a_front_says_that_its_raglans_go_on_and_where_its_last_stitches_belong() -> None:
    texts = [one.text for one in told(document(CASE)) if one.chapter == "Front"]
    assert any(text.endswith("The raglan edges go on at the outer edges of both sides.") for text in texts)
    assert any("The 2 sts left at the top of each side lie along the neck." in text for text in texts)
    assert any("The 2 sts of its last row lie along the neck." in one.text for one in told(document(CARDIGAN)))
