"""Whose numbers to follow: a pattern left as it is, worked at another gauge, gives other sizes than it says."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from gaugewright import pipeline
from gaugewright.changes import Side, measures_of
from gaugewright.checks.terms import terms_of
from gaugewright.design.model import Design
from gaugewright.gauge.model import Gauge
from gaugewright.rounding import half_up
from gaugewright.sized import Sized
from gaugewright.tolerances import fit_tolerance

LEADS = ("bust", "chest", "head", "hand", "foot", "hip", "waist", "upper_arm")
"""Body measures by which a size is chosen, the first of them that a garment states."""


@dataclass(frozen=True, slots=True)
class Got:
    """A finished measurement, mm: what the pattern says of the wanted size, and what is got. `rows` more (or fewer)
    mend it, where it is the length of one piece; 0 where only other stitches would.
    """

    key: str
    label: str
    wanted: float
    got: float
    rows: int

    @property
    def off(self) -> float:
        """How much too large it is, mm."""
        return self.got - self.wanted

    @property
    def fits(self) -> bool:
        """Near enough not to be another fit."""
        return abs(self.off) <= fit_tolerance(self.wanted)


@dataclass(frozen=True, slots=True)
class Follow:
    """The numbers to follow for one wanted size; `lead` is the measure that chose them, `others` all the rest."""

    wanted: str
    numbers: str
    lead: Got
    others: tuple[Got, ...]


def follow(graded: pipeline.Graded, gauge: Gauge | Mapping[str, Gauge]) -> tuple[Follow, ...]:
    """For each size the numbers that come nearest to it at this gauge; every size's numbers are tried for every size."""
    return nearest(pipeline.side(graded), pipeline.side(pipeline.worked_at(graded, gauge)))


def nearest(own: Side, worked: Side, piece: str = "") -> tuple[Follow, ...]:
    """The same from the two sides: as printed, and the printed numbers as worked; by the measures of one piece, if it is named.

    The measure that a size is chosen by decides; of numbers equally near, those with the least off in all their other measures.
    """
    sizes = own.grading.environments.labels
    tried = {size: [got(own, worked, size, numbers, piece) for numbers in sizes] for size in sizes}
    return tuple(min(tried[size], key=lambda one: (half_up(abs(one.lead.off)), sum(abs(other.off) for other in one.others))) for size in sizes)


def got(own: Side, worked: Side, wanted: str, numbers: str, piece: str = "") -> Follow:
    """What the numbers of one size give somebody who wants another, or the same, in all measures or those that one piece has a part in."""
    row = worked.design.fabric(worked.design.pieces[0].fabric).gauge.row_height
    straight = _straight(own.design)
    found = []
    for (key, label, old), (_, _, new) in zip(_measured(own, piece), _measured(worked, piece), strict=True):
        off = new[numbers] - old[wanted]
        rows = half_up(-off / row) if key in straight else 0
        found.append(Got(key, label, old[wanted], new[numbers], rows))
    lead = _lead(own.design, [one.key for one in found])
    return Follow(wanted, numbers, found[lead], (*found[:lead], *found[lead + 1 :]))


def _measured(side: Side, piece: str) -> tuple[tuple[str, str, Sized[float]], ...]:
    """All finished measurements, or those that a piece has a part in; of a piece with a part in none, its own width and length."""
    found = measures_of(side)
    if not piece or not side.design.finished:
        return tuple(one for one in found if not piece or one[0].startswith(f"{piece}."))
    shared = {one.key for one in side.design.finished if any(term.piece == piece for term in terms_of(one.measure, side.design))}
    return tuple(one for one in found if one[0] in shared) or measures_of(replace(side, design=replace(side.design, finished=(), pieces=(side.design.piece(piece),))))


def _lead(design: Design, keys: Sequence[str]) -> int:
    """Which of the measures a size is chosen by: the first girth that the garment states, else the first measure."""
    of = {measure.key: measure.of for measure in design.finished}
    found = [of.get(key, "") for key in keys]
    return next((found.index(name) for name in LEADS if name in found), 0)


def _straight(design: Design) -> frozenset[str]:
    """Measures that are one piece's length in the main fabric and nothing else: rows more or fewer mend them."""
    main = design.pieces[0].fabric
    found = set()
    for measure in design.finished:
        terms = terms_of(measure.measure, design)
        if len(terms) == 1 and terms[0].name == "length" and terms[0].factor == 1 and design.piece(terms[0].piece).fabric == main:
            found.add(measure.key)
    plain = {f"{piece.key}.length" for piece in design.pieces if piece.fabric == main}
    return frozenset(found | plain)
