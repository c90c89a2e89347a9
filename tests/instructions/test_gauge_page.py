"""Rows at another row gauge: the table's are those of an edition for that gauge."""

import pytest

from cli.running import ROOT
from gaugewright import pipeline
from gaugewright.gauge.model import Gauge
from gaugewright.instructions.nodes import Document, Table
from gaugewright.rounding import half_up

HALF = 0.5


def table(graded: pipeline.Graded) -> dict[tuple[str, str], tuple[str, ...]]:
    """The table's lines by length and rows to 10 cm."""
    document: Document = pipeline.document(graded, pipeline.Edition())
    (found,) = (block for block in document.blocks if isinstance(block, Table) and block.caption.startswith("Rows for the lengths"))
    lines: dict[tuple[str, str], tuple[str, ...]] = {}
    name = ""
    for first, rate, *counts in found.rows:
        name = first or name
        lines[name, rate] = tuple(counts)
    return lines


@pytest.mark.parametrize("sample", ["saltmarsh-jacket", "breakwater-pullover", "groyne-vest", "shearwater-cardigan"])
def test_the_lines_for_other_rows_are_those_graded_anew(sample: str) -> None:
    """Half a row more to 10 cm and half a row fewer: the whole pattern graded at that row height has the rows that the table names."""
    spec = ROOT / "samples" / sample / "spec.yaml"
    graded = pipeline.grade(pipeline.load(spec))
    lines = table(graded)
    main = graded.design.fabric(graded.design.pieces[0].fabric).gauge
    own = half_up(main.rows_in(100) * 10) / 10
    compared = 0
    for rate in (own - HALF, own + HALF):
        anew = table(pipeline.grade(pipeline.load(spec, Gauge(main.stitches, main.width, half_up(rate * 10), 1000.0))))
        for name, printed in {key[0]: counts for key, counts in lines.items() if key[1] == f"{rate:.1f}"}.items():
            assert anew[name, f"{rate:.1f}"] == printed, (name, rate)
            compared += len(printed)
    assert compared > 15


def test_rows_in_proportion_would_be_rounded_twice() -> None:
    """The pullover in 4X is to be 62.99 cm long: 50.4 rows at 8 to 10 cm, 53.5 at 8.5. The 50 rows worked would be 53.1 in proportion, a row short."""
    lines = table(pipeline.grade(pipeline.load(ROOT / "samples/breakwater-pullover/spec.yaml")))
    own, more = (int(lines["Back, whole length", rate][-2]) for rate in ("8.0", "8.5"))
    assert (own, more) == (50, 54) and half_up(own * 8.5 / 8) == 53
