"""A wedge's table and steps against its rows, size by size."""

import re

import pytest
from instructions.specs import document, graded, pieces_told
from gaugewright.instructions.nodes import Table

CASES = (("front-wedge", "front", True), ("half-front-wedge", "right_front", False))


def table_of(name: str, title: str) -> Table:
    return next(b for b in document(name).blocks if isinstance(b, Table) and b.caption == f"{title}: short rows of the wedge")


def numbers(text: str) -> list[int]:
    """ "1 and 2", "3 to 6": the numbers meant."""
    if found := re.fullmatch(r"(\d+) to (\d+)", text):
        return list(range(int(found[1]), int(found[2]) + 1))
    return [int(number) for number in re.findall(r"\d+", text)]


@pytest.mark.parametrize(("name", "key", "both"), CASES)
def test_the_table_worked_by_hand_gives_the_rows(name: str, key: str, both: bool) -> None:
    piece = graded(name).design.piece(key)
    worked = 0
    for size, after, short, leaves, last in table_of(name, piece.title).rows:
        groups = graded(name).grading.pieces[key][size].main.short
        if short == "–":
            assert (after, leaves, last, groups) == ("–", "–", "–", ())
            continue
        (group,) = groups
        assert (int(after), int(short)) == (group.after, len(group.rows))
        told = {}
        for one in leaves.replace("\u00a0", " ").split("; "):
            found = re.fullmatch(r"(\d+) sts? in (.*)", one)
            assert found
            told |= {number: int(found[1]) for number in numbers(found[2])}
        assert sorted(told) == [number for number in range(1, len(group.rows) + 1) if both or number % 2]
        available = graded(name).grading.pieces[key][size].main.start.stitches
        for number, row in enumerate(group.rows, start=1):
            available -= told.get(number, 0)
            assert sum(run.operation.makes * run.times for run in row.runs if run.operation.kind != "wait") == available
            worked += 1
        assert int(last) == available
    assert worked >= 6


@pytest.mark.parametrize(("name", "key", "both"), CASES)
def test_a_copy_for_sizes_without_a_wedge_tells_of_none(name: str, key: str, both: bool) -> None:
    assert not any("hort row" in one.text or "wedge" in f"{one.label} {one.text}".lower() for one in pieces_told(name, ("S",))[key])
