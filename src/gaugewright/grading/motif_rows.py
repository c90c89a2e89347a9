"""The rounds of a motif, as they are worked: plain along its sides, increased at its corners."""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.operations import Operation, at_corner, bridge, turning_chain, work
from gaugewright.trade.stitches import stitch


@dataclass(frozen=True, slots=True)
class MotifRound:
    """One round: `lead` plain stitches up to its first corner, `side` plain ones between corners, `trail` after the
    last corner; `half` stitches on each side of a corner's middle, one of which the round before had there too."""

    lead: int
    side: int
    trail: int
    half: int


@dataclass(frozen=True, slots=True)
class MotifPlan:
    """A motif in one size. In tall stitches a corner's middle is a space under `chains`, else (0) a stitch; either
    counts as one stitch, whose place it takes.
    """

    cloth: Cloth
    colour: str
    sides: int
    chains: int
    rounds: tuple[MotifRound, ...]

    @property
    def rows(self) -> int:
        """Rounds in all."""
        return len(self.rounds)

    @property
    def stitches(self) -> int:
        """Stitches of the first round, which the centre holds."""
        return self.count(1)

    @property
    def end(self) -> int:
        """Stitches of the last round."""
        return self.count(self.rows)

    def along(self, number: int) -> int:
        """Stitches of one side after a round, with one of its corners."""
        one = self.rounds[number - 1]
        return one.side + 1 + 2 * one.half

    def count(self, number: int) -> int:
        """Stitches after a round, corners among them."""
        return self.sides * self.along(number)


def motif_rounds(increases: tuple[int, ...], turned: bool) -> tuple[MotifRound, ...]:
    """The rounds, from what each adds to a side; the first entry is the first round's stitches along a side.

    A round begins where the one before ended, in a side: so the plain stitches before its first corner and after
    its last one come to a side's; where the work is turned they change places.

    >>> motif_rounds((4, 4), False)
    (MotifRound(lead=3, side=3, trail=0, half=0), MotifRound(lead=3, side=3, trail=0, half=2))
    """
    lead, trail = increases[0] - 1, 0
    found = [MotifRound(lead, lead, 0, 0)]
    for added in increases[1:]:
        before = found[-1]
        lead, trail = before.lead + before.half, before.trail + before.half
        lead, trail = (trail, lead) if turned else (lead, trail)
        found.append(MotifRound(lead, lead + trail, trail, added // 2))
    return tuple(found)


def is_spaced(name: str) -> bool:
    """Whether corners are spaces under chains: in double crochet and taller, where several in one stitch would crowd."""
    return stitch(name).chains >= TALL


TALL = 3
"""Turning chains of the stitches that are tall (double crochet and taller)."""

Step = tuple[Operation, int]


def motif_steps(plan: MotifPlan) -> Iterator[tuple[Step, ...]]:
    """Each round's operations in the order of working, with how often each is worked."""
    cloth = plan.cloth
    plain = work(cloth.stitch, cloth.loop)
    for number, one in enumerate(plan.rounds, start=1):
        opening: tuple[Step, ...] = ((turning_chain(cloth.stitch, False), 1),) if cloth.chains else ()
        middle = bridge() if number == 1 and plan.chains else plain
        corner = at_corner(cloth.stitch, 1, 1 + 2 * one.half, cloth.loop) if one.half else middle
        sides: list[Step] = [(plain, one.lead), (corner, 1)]
        for _ in range(plan.sides - 1):
            sides += [(plain, one.side), (corner, 1)]
        trail = 0 if number == 1 else one.trail
        yield tuple(step for step in (*opening, *sides, (plain, trail)) if step[1])
