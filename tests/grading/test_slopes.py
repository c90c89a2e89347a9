"""Shoulder slopes: one group more than rows, a stitch apart at most."""

from typing import get_args

import pytest

from gaugewright.grading.curves import ProfileImpossible
from gaugewright.grading.profile import EdgeStep, Profile
from gaugewright.grading.slopes import slope, slope_profile
from gaugewright.vocabulary import ShoulderSteps

REMAINDERS: tuple[ShoulderSteps, ...] = get_args(ShoulderSteps)


@pytest.mark.parametrize("remainder", REMAINDERS)
def test_groups_make_the_shoulder_and_differ_by_one(remainder: ShoulderSteps) -> None:
    for stitches in range(1, 50):
        for rows in range(min(6, stitches)):
            groups = slope(stitches, rows, remainder)
            assert (sum(groups), len(groups)) == (stitches, rows + 1)
            assert max(groups) - min(groups) <= 1


def test_the_remainder_lies_where_it_is_wanted() -> None:
    assert [slope(18, 3, remainder) for remainder in ("larger at the neck", "larger at the armhole", "spread")] == [(4, 4, 5, 5), (5, 5, 4, 4), (5, 4, 5, 4)]


def test_every_row_steps_and_the_group_at_the_neck_stays() -> None:
    made = slope_profile(17, 3, "larger at the neck")
    assert made == Profile(3, (EdgeStep(1, 4, "leave"), EdgeStep(2, 4, "leave"), EdgeStep(3, 4, "leave")))
    assert 17 - made.stitches == slope(17, 3, "larger at the neck")[-1] == 5


def test_a_level_shoulder_has_one_group_and_no_step() -> None:
    assert slope(12, 0, "larger at the armhole") == (12,)
    assert slope_profile(12, 0, "larger at the armhole") == Profile(0, ())


@pytest.mark.parametrize(("stitches", "rows"), [(3, 3), (0, 0), (12, -1)])
def test_more_groups_than_stitches_are_refused(stitches: int, rows: int) -> None:
    with pytest.raises(ProfileImpossible):
        slope(stitches, rows, "spread")


def test_an_unknown_remainder_is_an_error_of_ours() -> None:
    with pytest.raises(TypeError, match="middle"):
        slope(16, 2, "middle")  # type: ignore[arg-type]
