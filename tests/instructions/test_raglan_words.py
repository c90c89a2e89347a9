"""A yoke's page read back: the rounds that its table gives make the stitches that it prints."""

import re

import pytest
from instructions.specs import document, graded

from gaugewright.grading.raglan_rows import RaglanPlan
from gaugewright.instructions.nodes import Block, Paragraph, Table, spans_text

KINDS = {"Inc rnds": (1, 1), "Body inc rnds": (1, 0), "Sleeve inc rnds": (0, 1)}


def blocks(name: str, size: str) -> tuple[Block, ...]:
    return document(name, (size,)).blocks


def steps(name: str, size: str) -> dict[str, str]:
    """The steps of the first yoke by their labels, the first of each."""
    found: dict[str, str] = {}
    for block in blocks(name, size):
        if isinstance(block, Paragraph) and block.label:
            found.setdefault(block.label, spans_text(block.spans))
    return found


@pytest.mark.parametrize(("name", "size"), [*(("yokes in three", size) for size in "SML"), ("yokes in one", "Ada")])
def test_the_table_of_one_size_worked_round_by_round(name: str, size: str) -> None:
    lines = steps(name, size)["Raglan lines:"]
    match = re.search(r"count (\d+)\u00a0sts for the back, (\d+) for a sleeve, (\d+) for the front and (\d+) for the other", lines)
    assert match
    parts = [int(figure) for figure in match.groups()]
    table = next(block for block in blocks(name, size) if isinstance(block, Table) and "Inc rnds fall on Rnd" in block.header)
    (row,) = table.rows
    printed = dict(zip(table.header, row, strict=True))
    assert sum(parts) == graded(name).grading.pieces["yoke"][size].main.rows[2].makes
    worked: dict[int, tuple[int, int]] = {}
    for title, (body, sleeve) in KINDS.items():
        for number in re.findall(r"\d+", printed.get(f"{title} fall on Rnd", "")):
            worked[int(number)] = (body, sleeve)
    strip = graded(name).grading.pieces["yoke"][size].main
    for number, real in enumerate(strip.rows, start=1):
        body, sleeve = worked.get(number, (0, 0))
        parts = [count + 2 * grows for count, grows in zip(parts, (body, sleeve, body, sleeve), strict=True)]
        if number > 3:
            assert sum(parts) == real.makes, f"round {number}"
    assert [printed["sts of back, of front"], printed["sts of each sleeve"], printed["sts after"]] == [str(parts[0]), str(parts[1]), str(sum(parts))]


@pytest.mark.parametrize("size", list("SML"))
def test_the_dividing_round_takes_the_yoke_whole(size: str) -> None:
    name = "yokes in three"
    section = graded(name).grading.plans["yoke"][size].sections[-1]
    assert isinstance(section, RaglanPlan)
    text = steps(name, size)["Rnd\u00a01 (dividing rnd, RS):"]
    back, sleeve, chain, front, other, chain2 = (int(n) for n in re.findall(r"(?:each of the|skip the|ch\u00a0)\s*(\d+)", text.partition(":")[2]))
    assert (back, sleeve, chain) == (front, other, chain2)
    assert back + sleeve + front + other == section.end
    assert f"{back + front + 2 * chain}\u00a0sts" in text.rpartition("\u2014")[2]
    arm = next(
        spans_text(block.spans) for block in blocks(name, size)
        if isinstance(block, Paragraph) and block.label == "Rnd\u00a01 (RS):" and "under the arm" in spans_text(block.spans)
    )
    before, own, after = (int(n) for n in re.findall(r"(\d+)\u00a0(?:hdc|sts left)", arm))
    assert own == sleeve and before + after == chain
    assert f"{before + own + after}\u00a0sts" in arm.rpartition("\u2014")[2]


def test_a_yoke_is_not_fastened_off_and_its_parts_follow_it() -> None:
    assert steps("yokes in three", "M")["End:"].startswith("Do not fasten off")
    text = [spans_text(block.spans) for block in blocks("yokes in three", "M") if isinstance(block, Paragraph)]
    order = [line for line in text if "on from the" in line and line.startswith("Work the")]
    assert [line.partition(" on from")[0] for line in order] == ["Work the Lower", "Work the Sleeve (make 2)", "Work the Full Sleeve"]
