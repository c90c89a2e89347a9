"""Small specs with their graded rows, each checked by hand once and held since.

`GAUGEWRIGHT_RENEW=1 pytest tests/test_cases.py` writes the rows anew; look at each difference before
it is kept. A case whose stored rows are stale fails.
"""

import os
from pathlib import Path

import pytest
from tiny_specs import graded, strip_text

from gaugewright.checks.rows import row_faults
from gaugewright.grading.grade import Grading

CASES = sorted(path.parent for path in (Path(__file__).parent / "cases").glob("*/spec.yaml"))
RENEW = os.environ.get("GAUGEWRIGHT_RENEW") == "1"


def rows_text(grading: Grading) -> str:
    """Every piece in every size: its start, its rows, where its levels fall, its edges and measures."""
    lines: list[str] = []
    for key, sized in grading.pieces.items():
        for label, piece in sized.items():
            plan = grading.plans[key][label]
            lines += [f"{key}, size {label}, in {plan.worked}", *strip_text(piece.main)]
            for side in piece.strips[1:]:
                lines += [f"{side.name}, from row {len(piece.main.rows) + 1}", *strip_text(side)]
            lines += [f"{mark.level} after row {mark.row}: {mark.below}, then {mark.above} ({mark.side} edge)" for mark in plan.marks]
            edges = [f"{name} {edge.length / 10:.1f} cm ({f'{edge.rows} rows' if edge.rows else f'{edge.stitches} sts'})" for name, edge in piece.edges.items()]
            lines += ["edges: " + ", ".join(edges), ""]
    return "\n".join(lines)


@pytest.mark.parametrize("case", CASES, ids=lambda path: path.name)
def test_the_rows_are_as_they_were_checked(case: Path) -> None:
    stored = case / "rows.txt"
    text = rows_text(graded((case / "spec.yaml").read_text(encoding="utf-8")))
    if RENEW:
        stored.write_text(text, encoding="utf-8")
    assert stored.exists(), f"write it with GAUGEWRIGHT_RENEW=1 pytest {Path(__file__).name}"
    assert text.splitlines() == stored.read_text(encoding="utf-8").splitlines()


@pytest.mark.parametrize("case", CASES, ids=lambda path: path.name)
def test_each_row_of_a_case_follows(case: Path) -> None:
    for sized in graded((case / "spec.yaml").read_text(encoding="utf-8")).pieces.values():
        assert [fault for piece in sized for strip in piece.strips for fault in row_faults(strip, piece.strips)] == []
