"""Sideways bands as they are told: the ratio is near the rows counted, and the table adds up to the edge."""

import re

import pytest
from instructions.specs import document, graded, told

from gaugewright.grading.model import ChainStart
from gaugewright.instructions.nodes import Table
from gaugewright.tolerances import SEAM_SHARE

NUMBER = {"a": 1}


def _number(text: str) -> int:
    return NUMBER.get(text) or int(text or 1)


@pytest.mark.parametrize("name", ["sideways-rib", "hooded vest"])
def test_the_ratio_told_is_that_of_the_rows(name: str) -> None:
    seen = 0
    for piece in graded(name).design.pieces:
        if not piece.start.joined:
            continue
        start = graded(name).grading.pieces[piece.key].values[0].main.start
        assert isinstance(start, ChainStart) and start.join is not None
        ratios = [found for one in told(document(name)) if one.chapter == piece.title and (found := re.search(r"makes (?:about )?(a|\d+) rows? to every (\d*) ?(?:sts?|row ends?)", one.text))]
        assert len(ratios) == len(start.join.runs)
        for found, run in zip(ratios, start.join.runs, strict=True):
            ratio = _number(found[1]) / _number(found[2])
            assert ratio == pytest.approx(run.ratio, rel=SEAM_SHARE + 0.01)
            assert abs(2 * run.pairs - run.places * ratio) <= 1 + (SEAM_SHARE + 0.01) * 2 * run.pairs
            seen += 1
    assert seen


@pytest.mark.parametrize("name", ["sideways-rib", "hooded vest"])
def test_the_joins_in_the_table_are_the_places_of_the_edge(name: str) -> None:
    tables = [block for block in document(name).blocks if isinstance(block, Table) and block.caption.endswith(": joins")]
    assert tables
    for table in tables:
        places = [0 if "last used" in head else int(found[1]) if (found := re.search(r"next (\d+)", head.replace("\u00a0", " "))) else 1 for head in table.header[3:]]
        edge = next(piece for piece in graded(name).design.pieces if table.caption.startswith(f"{piece.title}:"))
        for label, rows, joins, *counts in table.rows:
            known = [int(count) if count != "–" else 0 for count in counts]
            assert sum(known) == int(joins) == int(rows) / 2
            start = graded(name).grading.pieces[edge.key][label].main.start
            assert isinstance(start, ChainStart) and start.join is not None
            assert sum(count * each for count, each in zip(known, places, strict=True)) in [run.places for run in start.join.runs]
