"""Shawls' pages read back: the rows that they tell, worked in their order, make the stitches that they print."""

import re
from itertools import cycle

import pytest
from instructions.specs import document, graded, told

KINDS = {"plain row": 0, "inc row": 1, "single inc row": 1, "double inc row": 2, "triple inc row": 3}
"""Sts gained at a place by name; a plain "inc row" gains what its own step says."""


def steps(name: str, piece: str, size: str) -> dict[str, str]:
    """The steps of a piece by their labels."""
    return {one.label: one.text for one in told(document(name, (size,))) if one.chapter == piece and one.label}


def reworked(found: dict[str, str], rows: int) -> list[int]:
    """Stitches after each row, from the words alone."""
    first = re.search(r"(\d+) [a-z ]+ in the ring", found["Row 1 (RS):"])
    assert first
    gains = {}
    for label, text in found.items():
        if label.lower().rstrip(":") in KINDS and "inc" in label.lower():
            into, more = (int(n) for n in re.findall(r"(\d+) [a-z ]+ in each of these four|It has (\d+)", text) for n in n if n)
            assert more == 4 * (into - 1)
            gains[label.lower().rstrip(":")] = into - 1
    order = next((text for label, text in found.items() if re.fullmatch(r"Rows 2 to \d+:", label)), "")
    named = re.findall(r"Row \d+: ([a-z ]+)", order) or ["inc row"]
    counts = [int(first[1])]
    for _, kind in zip(range(rows - 1), cycle(named), strict=False):
        counts.append(counts[-1] + 4 * gains.get(kind, 0))
    return counts


@pytest.mark.parametrize("size", ["S", "M", "L"])
@pytest.mark.parametrize(("piece", "title"), [("shawl", "Shawl"), ("striped", "Striped"), ("small", "Small"), ("open", "Open"), ("coaster", "Coaster")])
def test_the_words_worked_row_by_row(piece: str, title: str, size: str) -> None:
    found, made = steps("triangle-shawl", title, size), graded("triangle-shawl").grading.pieces[piece][size].main
    [(label, end)] = [(label, text) for label, text in found.items() if label.startswith("To the end of Row")]
    rows = int(re.findall(r"\d+", label)[0])
    assert rows == len(made.rows)
    assert reworked(found, rows) == list(made.counts())
    assert end.endswith(f"— {made.last_count} sts.")


@pytest.mark.parametrize("size", ["Kerchief", "Shawl", "Wrap"])
def test_the_sample_shawl_worked_row_by_row(size: str) -> None:
    found, made = steps("shawl", "Shawl", size), graded("shawl").grading.pieces["shawl"][size].main
    assert reworked(found, len(made.rows)) == list(made.counts())
    check = re.search(r"After Row (\d+) there are (\d+) sts, (\d+) on each side", found["Check:"])
    assert check and list(made.counts())[int(check[1]) - 1] == int(check[2]) == 2 * int(check[3]) + 1


def test_a_crescent_and_a_point_are_told_by_their_shape() -> None:
    assert any("It is a crescent: its side edges spread fast at first" in one.text for one in told(document("crescent")))
    assert any("It is a triangle from its point" in one.text for one in told(document("corner-triangle")))
