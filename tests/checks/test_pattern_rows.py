"""Rows in stitch patterns that go astray are found."""

from dataclasses import replace

from tiny_specs import one_piece

from gaugewright.checks.pattern_rows import pattern_faults_of
from gaugewright.grading.model import Operation, Strip

TEXT = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
sizes: {own: {M: {bust: 100 cm}}}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics: {lace: {pattern: arches, gauge: "10 sts, 10 rows / 10 cm"}}
pieces: {piece: {start: {chain: 21 cm}, sections: [even: {rows: 5}]}}
"""


def changed(strip: Strip, row: int, kind: str, to: Operation) -> Strip:
    """The strip with every operation of a kind in one row as another."""
    rows = list(strip.rows)
    runs = tuple(replace(run, operation=to) if run.operation.kind == kind else run for run in rows[row - 1].runs)
    rows[row - 1] = replace(rows[row - 1], runs=runs)
    return replace(strip, rows=tuple(rows))


def test_a_space_that_isn_t_there_is_found() -> None:
    strip = one_piece(TEXT).main
    assert list(pattern_faults_of(strip)) == []
    assert len(list(pattern_faults_of(changed(strip, 3, "space", Operation("space", "sc", 4, 1))))) == 5
    assert len(list(pattern_faults_of(changed(strip, 2, "chain", Operation("stitch", "sc", 0, 1))))) == 5


def test_a_post_stitch_round_a_chain_is_found() -> None:
    strip = one_piece(TEXT).main
    assert list(pattern_faults_of(changed(strip, 3, "space", Operation("stitch", "dc", 5, 1, "front post")))) != []
