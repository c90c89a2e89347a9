"""A raglan in one size: its plan, the rounds of its yoke, and the round that divides it.

A round of a yoke goes over the back, one sleeve, the front, the other sleeve; the raglan lines
stand at the ends of these parts. The module knows no design: it turns whole numbers into runs.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.divide_start import DivideStart
from gaugewright.grading.model import Run, chain, increase, pick_up, skip, turning_chain, work
from gaugewright.grading.raglan import Parts, RaglanCounts

Runs = Iterator[Run]


@dataclass(frozen=True, slots=True)
class RaglanPlan:
    """A yoke's rounds, the first `lead` of them even: those of the section, from 1, on which back and
    front increase, and those on which the sleeves do."""

    cloth: Cloth
    colour: str
    rows: int
    counts: RaglanCounts
    body_rows: tuple[int, ...]
    sleeve_rows: tuple[int, ...]
    lead: int = 0

    @property
    def stitches(self) -> int:
        """Stitches at the neck."""
        return self.counts.neck.total

    @property
    def end(self) -> int:
        """Stitches of all parts below the arm, before they are divided."""
        return self.counts.end.total

    def parts_after(self) -> Iterator[Parts]:
        """Stitches of the parts after each round."""
        body, sleeve = set(self.body_rows), set(self.sleeve_rows)
        parts = self.counts.neck
        for row in range(1, self.rows + 1):
            parts = Parts(parts.body + 2 * (row in body), parts.sleeve + 2 * (row in sleeve))
            yield parts


def raglan_rounds(plan: RaglanPlan, colours: list[str]) -> Iterator[Runs]:
    """Each round's runs."""
    before = plan.counts.neck
    for after, colour in zip(plan.parts_after(), colours, strict=True):
        yield _round(plan.cloth, before, after, colour)
        before = after


def _round(cloth: Cloth, before: Parts, after: Parts, colour: str) -> Runs:
    yield from _opening(cloth, colour)
    for _ in ("back", "front"):
        yield from _part(cloth, before.body, after.body > before.body, colour)
        yield from _part(cloth, before.sleeve, after.sleeve > before.sleeve, colour)


def _opening(cloth: Cloth, colour: str) -> Runs:
    if cloth.chains:
        yield Run(turning_chain(cloth.stitch, cloth.counts), 1, colour, cloth.fabric)


def _part(cloth: Cloth, stitches: int, grows: bool, colour: str) -> Runs:
    """A part, with an increase at each end where it grows."""
    ends = Run(increase(cloth.stitch, loop=cloth.loop), int(grows), colour, cloth.fabric)
    yield ends
    yield Run(work(cloth.stitch, cloth.loop), stitches - 2 * grows, colour, cloth.fabric)
    yield ends


def dividing_round(start: DivideStart, cloth: Cloth, colour: str) -> Runs:
    """Round 1 of the body, which skips the sleeves, or of a sleeve, which works into the chain under the arm."""
    plain = work(cloth.stitch, cloth.loop)
    yield from _opening(cloth, colour)
    if start.part == "body":
        for _ in ("back", "front"):
            yield Run(plain, start.back, colour, cloth.fabric)
            yield Run(skip(), start.sleeve, colour, cloth.fabric)
            yield Run(chain(), start.underarm, colour, cloth.fabric)
        return
    before, after = start.halves
    yield Run(pick_up(cloth.stitch), before, colour, cloth.fabric)
    yield Run(plain, start.sleeve, colour, cloth.fabric)
    yield Run(pick_up(cloth.stitch), after, colour, cloth.fabric)
