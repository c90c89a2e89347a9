"""Shoulder slopes: groups of stitches left at the armhole edge, the last group at the neck never left."""

from gaugewright.grading.curves import ProfileImpossible
from gaugewright.grading.profile import EdgeStep, Profile
from gaugewright.rounding import half_up
from gaugewright.vocabulary import ShoulderSteps


def slope(stitches: int, rows: int, remainder: ShoulderSteps) -> tuple[int, ...]:
    """The groups of a slope, from the armhole edge to the neck: one more than the rows that step.

    Groups differ by at most one stitch. What doesn't share out goes one each to the groups nearest the
    neck, to the outer ones, or is spread among them.

    >>> slope(16, 2, "larger at the neck"), slope(16, 2, "larger at the armhole"), slope(17, 3, "spread")
    ((5, 5, 6), (6, 5, 5), (4, 5, 4, 4))
    """
    groups = rows + 1
    if rows < 0 or stitches < groups:
        raise ProfileImpossible(f"{stitches} stitches don't make {groups} groups")
    each, over = divmod(stitches, groups)
    match remainder:
        case "larger at the neck":
            return (each,) * (groups - over) + (each + 1,) * over
        case "larger at the armhole":
            return (each + 1,) * over + (each,) * (groups - over)
        case "spread":
            ends = [half_up(over * number / groups) for number in range(groups + 1)]
            return tuple(each + after - before for before, after in zip(ends, ends[1:], strict=False))
        case _:
            raise TypeError(f"no remainder {remainder!r}")


def slope_profile(stitches: int, rows: int, remainder: ShoulderSteps) -> Profile:
    """The slope at the armhole edge: a group left on each row, at its end or slip-stitched over at its start.

    The group at the neck is worked on the last row and stays, so `stitches` less that group go.

    >>> slope_profile(16, 2, "larger at the neck").after()
    (5, 10)
    """
    groups = slope(stitches, rows, remainder)
    return Profile(rows, tuple(EdgeStep(row, group, "leave") for row, group in enumerate(groups[:-1], start=1)))
