"""Shaping schedules against published sleeves, caps and armholes."""

import pytest
from external.sources import source

from gaugewright.grading.schedule import (
    Block,
    Schedule,
    ScheduleImpossible,
    schedule,
    stitches_per_change,
    two_rates,
)


def _rates(made: Schedule) -> dict[int, int]:
    return {block.gaps[0]: block.times for block in made.blocks}


@source("published", "Design Your Own Sweater (blog), 'Sleeve', 2007: 72 to 156 sts in 176 rows")
def test_every_4_rows_34_times_every_5_rows_8_times() -> None:
    made = two_rates((156 - 72) // 2, 176)
    assert (_rates(made), made.even, made.positions()[-1]) == ({4: 34, 5: 8}, 0, 176)


@source("published", "Design Your Own Sweater (blog), 'Sleeve', 2007: the printed sleeve is as straight as two rates go")
def test_the_search_finds_the_printed_sleeve() -> None:
    assert schedule(42, 176) == two_rates(42, 176)


@source("published", "Kristen TenDyke, 'How to increase evenly along a set number of rows', 2006 and 2014")
def test_eleven_increases_in_108_rows() -> None:
    assert 108 // 11 == 9
    assert _rates(two_rates(11, 108)) == {9: 2, 10: 9}


@source("published", "Kristen TenDyke, same lesson: right side rows only")
def test_eleven_increases_on_right_side_rows() -> None:
    made = two_rates(11, 108, step=2)
    assert _rates(made) == {8: 1, 10: 10}
    assert all(row % 2 == 0 for row in made.positions())


@source("published", "Design Your Own Sweater (blog), 'Set-in sleeves', 2007: quotient 2, remainder 12")
def test_26_decreases_in_64_rows() -> None:
    assert divmod(64, 26) == (2, 12)
    assert _rates(two_rates(26, 64)) == {2: 14, 3: 12}


@source("published", "Superneedle Knits, 'Taking the magic out of the Magic Formula', 2008: even rows need two rows a change")
def test_even_rows_only_need_two_rows_a_change() -> None:
    assert _rates(two_rates(6, 12, step=2)) == {2: 6}
    with pytest.raises(ScheduleImpossible):
        two_rates(6, 11, step=2)


@source("published", "Superneedle Knits, 'Taking the magic out of the Magic Formula', 2008: the sum itself")
@pytest.mark.parametrize(("changes", "rows"), [(3, 7), (7, 40), (13, 90), (42, 176), (5, 5)])
def test_the_sum_of_the_magic_formula(changes: int, rows: int) -> None:
    q, r = divmod(rows, changes)
    printed = {gap: times for gap, times in ((q, changes - r), (q + 1, r)) if times}
    assert _rates(two_rates(changes, rows)) == printed


@source("published", "Papermoon Knits, 'Math Monday: increasing along the length': first increase on round 1")
def test_ten_increases_from_round_one_leave_nine_gaps() -> None:
    made = schedule(10, 88, first="on first row")
    assert made.positions()[0] == 1
    assert sum(block.times for block in made.blocks[1:]) == 9
    assert {gap for block in made.blocks[1:] for gap in block.gaps} <= {8, 9, 10}
    assert 40 + 2 * made.changes == 60


@source("published", "Jack Frost vol. 40, pattern 4029 'Extra Heavy Crew Neck Sweater'")
def test_every_fourth_row_to_64_then_every_sixth_to_54() -> None:
    made = Schedule((Block((4,), (70 - 64) // 2), Block((6,), (64 - 54) // 2)), 0)
    assert (made.changes, 70 - 2 * made.changes) == (8, 54)
    assert made.positions() == (4, 8, 12, 18, 24, 30, 36, 42)


@source("published", "knitting manual, 'Sleeves' (knittingmagic.biz guide 8), 3 sizes")
@pytest.mark.parametrize(
    ("cast_on", "every", "target", "last"), [(45, 11, 67, 115), (47, 10, 71, 115), (49, 9, 77, 122)]
)
def test_first_increase_on_row_5(cast_on: int, every: int, target: int, last: int) -> None:
    changes = (target - cast_on) // 2
    made = Schedule((Block((5,), 1), Block((every,), changes - 1)), 0)
    assert (made.changes, made.positions()[-1]) == (changes, last)


@source("published", "Stitch Whisper Designs, 'Designing sleeves' (crochet or knit), 2017")
def test_every_sixth_round_ten_times() -> None:
    made = schedule(10, 60)
    assert 2 * made.changes == 20
    assert two_rates(10, 60) == Schedule((Block((6,), 10),), 0)
    assert made.deviation() <= two_rates(10, 60).deviation()


@source("published", "Slipped Stitches, 'Baby sweater design': 30 stitches in 30 rows, on every right side row")
def test_every_right_side_row() -> None:
    assert schedule((40 - 6 - 2 - 2) // 2, 30, step=2) == Schedule((Block((2,), 15),), 0)


@source("published", "30 Day Sweater (course), day 20: every rows / (stitches / 2) rows; day 22 differs by four")
def test_the_right_one_of_two_contradicting_rates() -> None:
    stitches, rows = 84, 176
    gaps = set(_rates(two_rates(stitches // 2, rows)))
    day_20, day_22 = rows / (stitches / 2), (rows / 2) / stitches
    assert min(gaps) <= day_20 <= max(gaps)
    assert not min(gaps) <= day_22 <= max(gaps)


@source("published", "Oz Lorna (blog), armhole tutorial, 2012: the printed decreases are 27 a side, not 29")
def test_printed_decreases_that_do_not_balance() -> None:
    printed = Schedule((Block((1,), 9), Block((2,), 9)), 0)
    assert (9 + printed.changes, printed.rows) == (27, 27)
    balanced = two_rates(29 - 9, 30)
    assert (9 + balanced.changes, balanced.rows) == (29, 30)


@source("published", "Spud & Chloe blog, 2010: 148 printed for 120 and six rounds of four increases")
def test_a_printed_raglan_that_gains_a_round() -> None:
    assert two_rates(6, 12) == schedule(6, 12, step=2) == Schedule((Block((2,), 6),), 0)
    assert 120 + 4 * schedule(6, 12).changes == 144


@source("published", "Lion Brand Yarn, 70644AD: 20 stitches at each side at once are chains, no taper")
def test_stitches_that_one_row_would_have_to_take() -> None:
    assert stitches_per_change(20, 1) == 20
    assert stitches_per_change(20, 7) == 3
