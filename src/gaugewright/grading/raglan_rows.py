"""A raglan in one size: its plan and the rounds of its yoke.

A round of a yoke goes over the back, one sleeve, the front, the other sleeve; the raglan lines
stand at the ends of these parts. Rounds that are turned begin in the middle of the back: an increase
in a round's first stitch would move its beginning. The module knows no design: it turns whole numbers into runs.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.divide_start import Division, halves_of_back
from gaugewright.grading.runs import Runs, opening
from gaugewright.grading.model import Run, increase, work
from gaugewright.grading.raglan import Parts, RaglanCounts
from gaugewright.vocabulary import Side


@dataclass(frozen=True, slots=True)
class RaglanPlan:
    """A yoke's rounds, the first `lead` of them even: those of the section, from 1, on which back and
    front increase, and those on which the sleeves do. `centred` where rounds begin in the middle of the back."""

    cloth: Cloth
    colour: str
    rows: int
    counts: RaglanCounts
    body_rows: tuple[int, ...]
    sleeve_rows: tuple[int, ...]
    lead: int = 0
    centred: bool = False

    @property
    def stitches(self) -> int:
        """Stitches at the neck."""
        return self.counts.neck.total

    @property
    def end(self) -> int:
        """Stitches of all parts below the arm, before they are divided."""
        return self.counts.end.total

    @property
    def division(self) -> Division:
        """What the last round is divided into."""
        return self.counts.division

    def parts_after(self) -> Iterator[Parts]:
        """Stitches of the parts after each round."""
        body, sleeve = set(self.body_rows), set(self.sleeve_rows)
        parts = self.counts.neck
        for row in range(1, self.rows + 1):
            parts = Parts(parts.body + 2 * (row in body), parts.sleeve + 2 * (row in sleeve))
            yield parts


def raglan_rounds(plan: RaglanPlan, colours: list[str], sides: Sequence[Side]) -> Iterator[Runs]:
    """Each round's runs, in its order of working."""
    before = plan.counts.neck
    for after, colour, side in zip(plan.parts_after(), colours, sides, strict=True):
        yield _round(plan.cloth, before, after, colour, halves_of_back(before.body, plan.centred, side))
        before = after


def _round(cloth: Cloth, before: Parts, after: Parts, colour: str, back: tuple[int, int]) -> Runs:
    """A round; where it begins within the back, that part is worked in two."""
    first, last = back
    body, sleeve = after.body > before.body, after.sleeve > before.sleeve
    yield from opening(cloth, colour)
    yield from _part(cloth, first, body and not last, body, colour)
    yield from _part(cloth, before.sleeve, sleeve, sleeve, colour)
    yield from _part(cloth, before.body, body, body, colour)
    yield from _part(cloth, before.sleeve, sleeve, sleeve, colour)
    if last:
        yield from _part(cloth, last, body, False, colour)


def _part(cloth: Cloth, stitches: int, at_start: bool, at_end: bool, colour: str) -> Runs:
    """A part, with an increase at each end that grows."""
    change = increase(cloth.stitch, loop=cloth.loop)
    yield Run(change, int(at_start), colour, cloth.fabric)
    yield Run(work(cloth.stitch, cloth.loop), stitches - at_start - at_end, colour, cloth.fabric)
    yield Run(change, int(at_end), colour, cloth.fabric)
