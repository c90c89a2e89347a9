"""Short rows: what each works and leaves, how turns share the stitches, and what has no room."""

import pytest

from gaugewright.grading.short_rows import Reach, ShortRowsImpossible, reaches, turns


def test_rows_that_grow_shorter_at_both_sides() -> None:
    assert reaches(30, (4, 4, 3, 3)) == (Reach(0, 26, 4), Reach(4, 22, 4), Reach(4, 19, 7), Reach(7, 16, 7))


def test_rows_that_grow_shorter_at_one_side_come_back_to_the_edge() -> None:
    assert reaches(30, (4, 0, 3, 0)) == (Reach(0, 26, 4), Reach(4, 26, 0), Reach(0, 23, 7), Reach(7, 23, 0))


def test_rows_that_take_stitches_in_again() -> None:
    made = reaches(30, (10, -2, -2, -8, -8), begin=10)
    assert [reach.works for reach in made] == [10, 12, 14, 22, 30]
    assert made[-1] == Reach(0, 30, 0)


@pytest.mark.parametrize(("stitches", "leaves", "begin"), [(10, (5, 5), 0), (10, (-1,), 0), (10, (3, -1), 0), (4, (1,), 4)])
def test_a_row_with_nothing_to_work_is_refused(stitches: int, leaves: tuple[int, ...], begin: int) -> None:
    with pytest.raises(ShortRowsImpossible):
        reaches(stitches, leaves, begin)


@pytest.mark.parametrize(("number", "first", "room"), [(0, 3, 9), (2, 0, 9), (4, 3, 2)])
def test_turns_without_room_are_refused(number: int, first: int, room: int) -> None:
    with pytest.raises(ShortRowsImpossible):
        turns(number, first, room)
