"""Plans of sections whose edges are shaped step by step: armholes, raglan edges, caps, neck edges, divided tops."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal, NamedTuple

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.profile import EdgeStep, Profile
from gaugewright.grading.rising import Rise
from gaugewright.vocabulary import RowEdge

PartName = Literal["armhole", "raglan", "shoulder", "neck", "cap"]


class EdgePart(NamedTuple):
    """What is shaped along one edge, and how: rows are counted from 1 within the section."""

    name: PartName
    profile: Profile


EdgeParts = tuple[EdgePart, ...]
"""Everything that is shaped at one edge over a section's rows; no two parts share a row."""


def gone(parts: Iterable[EdgePart]) -> int:
    """Stitches that an edge loses in all.

    >>> gone((EdgePart("armhole", Profile(9, (EdgeStep(1, 3, "leave"),))), EdgePart("shoulder", Profile(9, (EdgeStep(9, 4, "leave"),)))))
    7
    """
    return sum(part.profile.stitches for part in parts)


def steps_of(parts: Iterable[EdgePart]) -> dict[int, EdgeStep]:
    """An edge's steps by their rows."""
    return {step.row: step for part in parts for step in part.profile.steps}


def cut(profile: Profile, first: int, last: int) -> Profile:
    """The steps on rows `first` to `last`, counted anew from 1.

    >>> cut(Profile(9, (EdgeStep(1, 3, "leave"), EdgeStep(5, 1, "decrease"))), 4, 9)
    Profile(rows=6, steps=(EdgeStep(row=2, stitches=1, way='decrease'),))
    """
    steps = tuple(step._replace(row=step.row - first + 1) for step in profile.steps if first <= step.row <= last)
    return Profile(last - first + 1, steps)


def later(profile: Profile, rows: int, total: int) -> Profile:
    """The same steps after `rows` rows more, within `total` rows.

    >>> later(Profile(2, (EdgeStep(1, 4, "leave"),)), 7, 9)
    Profile(rows=9, steps=(EdgeStep(row=8, stitches=4, way='leave'),))
    """
    return Profile(total, tuple(step._replace(row=step.row + rows) for step in profile.steps))


@dataclass(frozen=True, slots=True)
class ProfilePlan:
    """A section with a shape of its own at each edge; an edge without parts is straight. The stitches of a
    half front's shoulder may be `rising` on the last row, from the armhole edge to the neck edge."""

    cloth: Cloth
    colour: str
    rows: int
    stitches: int
    starting: EdgeParts
    far: EdgeParts
    rising: tuple[Rise, ...] = ()

    @property
    def end(self) -> int:
        """Stitches at the end."""
        return self.stitches - gone(self.starting) - gone(self.far)

    def parts(self, side: RowEdge) -> EdgeParts:
        """What is shaped at one edge."""
        return self.starting if side == "starting" else self.far


@dataclass(frozen=True, slots=True)
class DividedPlan:
    """The last section: the stitches before it split into a side, the centre left, and a side.

    Both sides are worked over the same rows, one the mirror of the other. `outer` is what is left of
    the armhole and the shoulder's slope, `inner` the neck edge; a slope that begins below the division has
    left `sloped` stitches of each shoulder there. Above `raglan` edges there are no shoulders: what stays at
    the top of each side lies at the neck. Or the last row is of `rising` stitches.
    """

    cloth: Cloth
    colour: str
    rows: int
    stitches: int
    centre: int
    outer: EdgeParts
    inner: EdgeParts
    sloped: int = 0
    raglan: bool = False
    rising: tuple[Rise, ...] = ()

    @property
    def side(self) -> int:
        """Stitches with which each side begins."""
        return (self.stitches - self.centre) // 2

    @property
    def side_end(self) -> int:
        """Stitches of each side's last row."""
        return self.side - gone(self.outer) - gone(self.inner)

    @property
    def shoulder(self) -> int:
        """Stitches of each shoulder: those left on its slope and those of the last row."""
        return self.side_end + self.sloped + gone(part for part in self.outer if part.name == "shoulder")

    @property
    def neck(self) -> int:
        """Stitches that the neck takes in all."""
        return self.centre + 2 * gone(self.inner)

    @property
    def end(self) -> int:
        """Stitches of both last rows."""
        return 2 * self.side_end
