"""Schedules of one size and of all sizes."""

import pytest

from gaugewright.grading.schedule import (
    Block,
    Schedule,
    ScheduleImpossible,
    row_taper,
    schedule,
    schedule_sizes,
    stitches_per_change,
    taper_steps,
    two_rates,
)


def _gaps(made: Schedule) -> list[set[int]]:
    return [set(block.gaps) for block in made.blocks]


def test_gaps_by_turns_count_every_change() -> None:
    made = Schedule((Block((2, 3), 3), Block((2,), 2)), 1)
    assert made.positions() == (2, 5, 7, 9, 11)
    assert (made.changes, made.rows) == (5, 12)


def test_deviation_looks_at_every_row() -> None:
    made = Schedule((Block((1,), 3), Block((2,), 4)), 1)
    done, worst = 0, 0.0
    for row in range(made.rows + 1):
        done += row in made.positions()
        worst = max(worst, abs(done - made.changes * row / made.rows))
    assert made.deviation() == pytest.approx(worst)


def test_one_change_stands_in_the_middle_not_at_the_end() -> None:
    assert schedule(1, 24).positions() in ((12,), (13,))


def test_a_change_on_every_row() -> None:
    assert schedule(6, 6) == Schedule((Block((1,), 6),), 0)


def test_no_changes_leave_all_rows_even() -> None:
    assert schedule(0, 9) == two_rates(0, 9) == Schedule((), 9)
    assert schedule(0, 0).deviation() == 0.0


def test_more_changes_than_rows_says_how_many_rows_are_needed() -> None:
    with pytest.raises(ScheduleImpossible, match="7 shaping rows do not fit in 6 rows: 7 are needed") as caught:
        schedule(7, 6)
    assert caught.value.needed == 7
    with pytest.raises(ScheduleImpossible) as caught:
        two_rates(7, 13, step=2)
    assert caught.value.needed == 14


def test_needed_rows_are_enough_and_one_less_is_not() -> None:
    with pytest.raises(ScheduleImpossible) as caught:
        schedule(5, 3, step=2, first="on first row")
    assert caught.value.needed == 9
    assert schedule(5, 9, step=2, first="on first row").positions() == (1, 3, 5, 7, 9)
    with pytest.raises(ScheduleImpossible):
        schedule(5, 8, step=2, first="on first row")


@pytest.mark.parametrize("bad", [(-1, 5, 1), (2, -5, 1), (2, 5, 0)])
def test_nonsense_is_refused(bad: tuple[int, int, int]) -> None:
    with pytest.raises(ValueError, match="no schedule"):
        schedule(*bad)


def test_on_first_row_shares_the_rows_after_it() -> None:
    made = schedule(10, 88, first="on first row")
    rest = schedule(9, 87)
    assert made.positions() == (1, *(1 + row for row in rest.positions()))
    assert made.blocks[0] == Block((1,), 1)
    assert made.rows == 88


def test_changes_keep_to_one_side() -> None:
    assert all(row % 2 == 0 for row in schedule(11, 109, step=2).positions())
    assert all(row % 2 == 1 for row in schedule(11, 109, step=2, first="on first row").positions())


def test_all_sizes_have_their_blocks_in_one_order() -> None:
    pairs = [(n, 40 + 3 * i) for i, n in enumerate((7, 8, 9, 11, 12, 13, 15, 16, 18))]
    made = schedule_sizes(pairs)
    assert [(s.changes, s.rows) for s in made] == pairs
    two = [[b.gaps[0] for b in s.blocks] for s in made if len(s.blocks) == 2]
    assert len(two) > 1
    assert all(a < b for a, b in two) or all(a > b for a, b in two)


def test_sizes_share_their_rates_where_that_is_unseen() -> None:
    pairs = [(6, 27), (7, 30), (5, 25)]
    alone = set().union(*(g for n, rows in pairs for g in _gaps(schedule(n, rows))))
    together = schedule_sizes(pairs)
    shared = set().union(*(g for made in together for g in _gaps(made)))
    assert len(shared) <= 2 <= len(alone)
    for (n, rows), made in zip(pairs, together, strict=True):
        assert made.deviation() - schedule(n, rows).deviation() < 0.5


def test_sizes_keep_their_own_rates_where_sharing_would_show() -> None:
    made = schedule_sizes([(5, 20), (5, 60)])
    assert not set().union(*_gaps(made[0])) & set().union(*_gaps(made[1]))


def test_thick_yarn_takes_two_gaps_by_turns() -> None:
    made, = schedule_sizes([(20, 30)])
    assert made == Schedule((Block((1, 2), 20),), 0)
    assert made.deviation() < 1 < schedule(20, 30).deviation()


@pytest.mark.parametrize("pair", [(4, 10), (7, 9)])
def test_turns_are_left_alone_where_they_would_not_be_seen(pair: tuple[int, int]) -> None:
    made, = schedule_sizes([pair])
    assert made == schedule(*pair)


def test_several_stitches_a_change_count_for_straightness() -> None:
    single, = schedule_sizes([(6, 9)], per_change=1)
    triple, = schedule_sizes([(6, 9)], per_change=3)
    assert triple.deviation() < single.deviation()
    assert any(len(block.gaps) == 2 for block in triple.blocks)


def test_a_size_without_changes_joins_in() -> None:
    nothing, some = schedule_sizes([(0, 12), (3, 12)])
    assert nothing == Schedule((), 12)
    assert some.changes == 3


def test_no_sizes_no_schedules() -> None:
    assert schedule_sizes([]) == ()


def test_one_size_that_does_not_fit_is_refused() -> None:
    with pytest.raises(ScheduleImpossible):
        schedule_sizes([(3, 12), (13, 12)])


@pytest.mark.parametrize(("stitches", "rows", "expected"), [(12, 12, 1), (13, 12, 2), (24, 12, 2), (25, 12, 3), (0, 0, 1)])
def test_fewest_stitches_a_row(stitches: int, rows: int, expected: int) -> None:
    assert stitches_per_change(stitches, rows) == expected


def test_stitches_without_rows_are_refused() -> None:
    with pytest.raises(ScheduleImpossible):
        taper_steps(3, 0)


def test_a_row_taper_uses_every_row_and_stitch() -> None:
    taper = row_taper(17, 6)
    assert len(taper.steps()) == 6
    assert sum(taper.steps()) == 17
    assert set(taper.steps()) == {2, 3}


def test_taper_steps_are_single_while_rows_suffice() -> None:
    assert taper_steps(5, 9) == (1,) * 5
    assert taper_steps(0, 9) == taper_steps(0, 0) == ()
