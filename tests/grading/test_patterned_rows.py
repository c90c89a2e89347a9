"""Patterns laid over shaped rows: whole repeats, plain edges, nothing lost."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tiny_specs import graded

from gaugewright.checks.pattern_rows import pattern_faults_of
from gaugewright.checks.rows import row_faults
from gaugewright.grading.model import GradedPiece

HEAD = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
sizes: {own: {M: {bust: 100 cm}}}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics: {lace: {pattern: NAME, gauge: "10 sts, 10 rows / 10 cm", edge_stitches: as needed}, plain: {stitch: sc, gauge: "10 sts, 10 rows / 10 cm"}}
"""


def piece(name: str, sections: str, chain: int = 60, fabric: str = "lace") -> GradedPiece:
    text = HEAD.replace("NAME", name) + f"pieces: {{piece: {{fabric: {fabric}, start: {{chain: {chain} cm}}, sections: [{sections}]}}}}\n"
    return graded(text).pieces["piece"]["M"]


SHAPED = "even: {rows: 9}, armhole: {length: 20 cm, target: 40 cm, block: 3 cm}, neck: {shape: v, width: 16 cm, depth: 14 cm, slope: 3 cm}"
PATTERNS = ("moss", "seed", "fans", "arches", "tufts", "scallops", "basket", "ripple")


@pytest.mark.parametrize("name", PATTERNS)
def test_shaping_is_the_same_with_a_pattern_and_without(name: str) -> None:
    """Edge changes, sides and the count by which a row is measured are those of plain rows."""
    plain, patterned = piece(name, SHAPED, fabric="plain"), piece(name, SHAPED)
    for one, other in zip(plain.strips, patterned.strips, strict=True):
        assert [row.across for row in other.rows] == [row.makes for row in one.rows]
        assert [row.edge_changes() for row in other.rows] == [row.edge_changes() for row in one.rows]
    assert {key: edge.length for key, edge in patterned.edges.items()} == {key: edge.length for key, edge in plain.edges.items()}


@pytest.mark.parametrize("name", PATTERNS)
@pytest.mark.parametrize("sections", [SHAPED, "taper: {rows: 21, target: 90 cm}", "even: {rows: 4}, taper: {rows: 15, target: 20 cm}", "even: {rows: 8}, even: {rows: 3, fabric: plain}, even: {rows: 7}"])
def test_every_row_follows_stitch_by_stitch_and_sections_end_on_their_own_count(name: str, sections: str) -> None:
    found = piece(name, sections)
    assert [fault for strip in found.strips for fault in (*row_faults(strip, found.strips), *pattern_faults_of(strip))] == []
    for strip in found.strips:
        assert strip.rows[-1].makes == strip.rows[-1].across
    assert sum(row.placed is not None for row in found.main.rows) > len(found.main.rows) / 3


def test_a_repeat_is_given_up_before_its_stitches_are_needed_for_shaping() -> None:
    rows = [row for row in piece("fans", "even: {rows: 4}, taper: {rows: 15, target: 20 cm}").main.rows if row.placed]
    for row in rows:
        assert row.placed is not None
        head, tail = row.runs[1], row.runs[-1]
        if head.operation.kind == "decrease":
            assert row.placed.first >= 2 * head.times and row.placed.last >= 2 * tail.times


def test_where_no_repeat_fits_rows_are_plain() -> None:
    found = piece("ripple", "even: {rows: 5}", chain=9)
    assert [row.placed for row in found.main.rows] == [None] * 5


@given(st.sampled_from(PATTERNS), st.integers(20, 90), st.integers(8, 90), st.integers(3, 25), st.integers(0, 9))
@settings(max_examples=60, deadline=None)
def test_any_taper_keeps_its_counts(name: str, wide: int, target: int, rows: int, even: int) -> None:
    rows = max(rows, abs(wide - target) // 4 + 3)
    sections = f"even: {{rows: {even + 1}}}, taper: {{rows: {rows}, target: {wide + 2 * ((target - wide) // 2) or 2} cm}}"
    if 2 * ((target - wide) // 2) == 0:
        sections = f"even: {{rows: {rows}}}"
    plain, patterned = piece(name, sections, wide, "plain"), piece(name, sections, wide)
    assert [row.across for row in patterned.main.rows] == [row.makes for row in plain.main.rows]
    assert [*row_faults(patterned.main, patterned.strips), *pattern_faults_of(patterned.main)] == []
