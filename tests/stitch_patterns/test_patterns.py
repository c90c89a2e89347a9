"""Whole patterns: those that ship, and those whose rows don't follow one another."""

import pytest

from gaugewright.spec.pattern_shelf import shelf_pattern, shelved
from gaugewright.stitch_patterns.nodes import stitches_of
from gaugewright.stitch_patterns.parser import parse_row
from gaugewright.stitch_patterns.pattern import StitchPattern, pattern_faults

SHIPPED = shelved()


def pattern(of: int, plus: int, *rows: str, begun: tuple[str, ...] = (), rounds: tuple[str, ...] = (), plain: str = "sc") -> StitchPattern:
    read = [tuple(parse_row(text) for text in texts) for texts in (begun, rows, rounds)]
    return StitchPattern("one", "One", of, plus, plain, *read)


def test_eight_patterns_ship_and_each_follows() -> None:
    assert len(SHIPPED) >= 8
    for name in SHIPPED:
        assert list(pattern_faults(shelf_pattern(name))) == []


def test_what_the_patterns_that_ship_have_among_them() -> None:
    patterns = [shelf_pattern(name) for name in SHIPPED]
    assert sum(not all(one.level(False)) for one in patterns) >= 3  # their count changes within the repeat
    assert any("post" in stitch.hold for one in patterns for row in one.rows for part in row.repeat for stitch in stitches_of(part))
    assert max(one.of for one in patterns) >= 8


@pytest.mark.parametrize("name", SHIPPED)
def test_the_count_of_every_row_grows_by_the_same_with_each_repeat(name: str) -> None:
    one = shelf_pattern(name)
    counts = [one.counts(repeats, False) for repeats in (2, 3, 7)]
    for row, (two, three, seven) in enumerate(zip(*counts, strict=True)):
        assert seven - three == 4 * (three - two), row


@pytest.mark.parametrize(("broken", "group", "number", "column"), [
    (pattern(4, 1, "1 sc, *ch 5, sk 3, 1 sc*", "1 sc, *3 sc in ch 4, 1 sc*"), "rows", 1, 7),
    (pattern(4, 1, "1 sc, *ch 5, sk 2, 1 sc*", "1 sc, *3 sc in ch 5, 1 sc*"), "rows", 0, 7),
    (pattern(4, 0, "1 sc, *ch 5, sk 3, 1 sc*", "1 sc, *3 sc in ch 5, 1 sc*"), "rows", 0, 7),
    (pattern(2, 1, "1 sc, *ch 1, sk 1, 1 sc*", "1 sc, *1 fpdc, 1 sc*"), "rows", 1, 7),
    (pattern(2, 0, "*1 sc in ch 1, 1 sc*"), "rows", 0, 1),
    (pattern(2, 0, "*2 sc in 1, 1 sc*"), "rows", 0, 1),
    (pattern(3, 1, "1 sc, *ch 2, sk 2, 1 sc*", "1 sc, *1 sc in ch 1, 1 sc, 1 sc*"), "rows", 1, 7),
    (pattern(1, 0, "*ch 1, sk 1*"), "rows", 0, 0),
    (pattern(1, 0, "*1 sc*", begun=("*ch 1*",)), "set_up", 0, 0),
    (pattern(2, 0, "1 sc, *ch 2*, 1 sc"), "rows", 0, 7),
    (pattern(2, 0, rounds=("*1 sc, ch 2, sk 1*", "*1 sc, sk 2*")), "rounds", 0, 1),
])
def test_a_broken_pattern_is_told_at_its_row_and_column(broken: StitchPattern, group: str, number: int, column: int) -> None:
    found = list(pattern_faults(broken))
    assert [(fault.group, fault.number, fault.column) for fault in found][:1] == [(group, number, column)], found
    assert all(fault.message and fault.hint for fault in found)


def test_rows_are_met_from_their_other_end_and_rounds_are_not() -> None:
    """`1 sc, 1 dc` in turn: in rows the next begins over a dc, so round a post it may begin; a chain comes last there."""
    lace = "*1 dc, ch 1, sk 1*"
    in_rows, in_rounds = pattern(2, 0, lace, "*1 dc in ch 1, 1 dc*"), pattern(2, 0, rounds=(lace, "*1 dc, 1 dc in ch 1*"))
    assert list(pattern_faults(in_rows)) == [] and list(pattern_faults(in_rounds)) == []
    swapped = pattern(2, 0, lace, "*1 dc, 1 dc in ch 1*")
    assert [fault.number for fault in pattern_faults(swapped)] == [1]
