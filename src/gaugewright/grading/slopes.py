"""Shoulder slopes: groups of stitches left at the armhole edge, the last group at the neck never left."""

from typing import Literal

from gaugewright.grading.curves import ProfileImpossible
from gaugewright.grading.profile import EdgeStep, Profile
from gaugewright.rounding import half_up

Remainder = Literal["neck", "outer", "even"]
"""Where the groups that are a stitch larger lie; published patterns do each, so the pattern states it."""


def slope(stitches: int, rows: int, remainder: Remainder) -> tuple[int, ...]:
    """The groups of a slope, from the armhole edge to the neck: one more than the rows that step.

    Groups differ by at most one stitch. What doesn't share out goes one each to the groups nearest the
    neck, to the outer ones, or is spread among them.

    >>> slope(16, 2, "neck"), slope(16, 2, "outer"), slope(17, 3, "even")
    ((5, 5, 6), (6, 5, 5), (4, 5, 4, 4))
    """
    groups = rows + 1
    if rows < 0 or stitches < groups:
        raise ProfileImpossible(f"{stitches} stitches don't make {groups} groups")
    each, over = divmod(stitches, groups)
    match remainder:
        case "neck":
            return (each,) * (groups - over) + (each + 1,) * over
        case "outer":
            return (each + 1,) * over + (each,) * (groups - over)
        case "even":
            ends = [half_up(over * number / groups) for number in range(groups + 1)]
            return tuple(each + after - before for before, after in zip(ends, ends[1:], strict=False))
        case _:
            raise TypeError(f"no remainder {remainder!r}")


def slope_profile(stitches: int, rows: int, remainder: Remainder) -> Profile:
    """The slope at the armhole edge: a group left on each row, at its end or slip-stitched over at its start.

    The group at the neck is worked on the last row and stays, so `stitches` less that group go.

    >>> slope_profile(16, 2, "neck").after()
    (5, 10)
    """
    groups = slope(stitches, rows, remainder)
    return Profile(rows, tuple(EdgeStep(row, group, "leave") for row, group in enumerate(groups[:-1], start=1)))
