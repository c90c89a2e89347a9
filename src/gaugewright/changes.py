"""Two gradings of one pattern side by side: what another gauge changes.

In: the pattern at its own gauge and at another. Out: counts at the places where a follower counts, finished
measurements, balls and what they cost, old and new in each size. Nothing is graded here.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise

from gaugewright.design.model import Design, Fabric, Piece
from gaugewright.grading.grade import Grading
from gaugewright.grading.plan import PiecePlan
from gaugewright.sized import Sized, join
from gaugewright.yarn.amounts import Amount

FOUNDATION = "foundation"

KINDS = {
    "Even": "even", "Taper": "taper", "Shoulders": "shoulders", "Armhole": "armhole", "RaglanEdge": "raglan edge", "Neck": "neck", "NeckEdge": "neck edge",
    "Cap": "cap", "Crown": "crown", "Raglan": "raglan", "Wedge": "wedge", "RoundYoke": "round yoke", "Motif": "motif", "Triangle": "triangle", "Slit": "opening", "Opened": "open",
}  # fmt: skip
"""Sections by the trade words that open them in a spec."""


@dataclass(frozen=True, slots=True)
class Side:
    """A graded pattern as it is compared: finished measures by key in mm, grams and balls, None where nothing was weighed."""

    design: Design
    grading: Grading
    finished: Mapping[str, Sized[float]]
    amounts: Sized[dict[str, Amount] | None]


@dataclass(frozen=True, slots=True)
class Place:
    """The foundation of a piece (`part` 0) or the end of one of its sections: the row reached and the stitches there."""

    part: int
    kind: str
    rows: Sized[int]
    stitches: Sized[int]


@dataclass(frozen=True, slots=True)
class CountChange:
    """What is counted at one place of a piece, at the pattern's gauge and at the other. `unit` is "sts", "rows" or "rounds"."""

    piece: str
    title: str
    part: int
    kind: str
    unit: str
    old: Sized[int]
    new: Sized[int]


@dataclass(frozen=True, slots=True)
class MeasureChange:
    """A finished measurement in mm, at either gauge."""

    key: str
    label: str
    old: Sized[float]
    new: Sized[float]


@dataclass(frozen=True, slots=True)
class BallChange:
    """Balls of one yarn; a size without it has none."""

    yarn: str
    label: str
    old: Sized[int]
    new: Sized[int]


@dataclass(frozen=True, slots=True)
class CostChange:
    """What all balls cost, in one currency."""

    currency: str
    old: Sized[Decimal]
    new: Sized[Decimal]


@dataclass(frozen=True, slots=True)
class Changes:
    """Everything that another gauge changes."""

    counts: tuple[CountChange, ...]
    measures: tuple[MeasureChange, ...]
    balls: tuple[BallChange, ...]
    costs: tuple[CostChange, ...]


def changes(old: Side, new: Side) -> Changes:
    """What differs between two gradings of one design; both have the same sizes."""
    counts = tuple(change for piece in old.design.pieces for change in _counts(piece, old.grading.plans[piece.key], new.grading.plans[piece.key]))
    balls = tuple(_balls(old, new))
    return Changes(counts, tuple(_measures(old, new)), balls, tuple(_costs(old.design, balls)))


def places(piece: Piece, plans: Sized[PiecePlan]) -> tuple[Place, ...]:
    """The foundation and each section's end; sections that are structure alone, such as shoulders without a slope, have no place."""
    found = [Place(0, FOUNDATION, plans.map(lambda _plan: 0), plans.map(lambda plan: plan.start.stitches))]
    for index, section in enumerate(piece.sections):
        rows = plans.map(lambda plan, index=index: sum(one.rows for one in plan.sections[: index + 1]))  # type: ignore[misc]
        stitches = plans.map(lambda plan, index=index: plan.sections[index].end)  # type: ignore[misc]
        if rows != found[-1].rows or stitches != found[-1].stitches:
            found.append(Place(index + 1, KINDS[type(section).__name__], rows, stitches))
    return tuple(found)


def _counts(piece: Piece, old: Sized[PiecePlan], new: Sized[PiecePlan]) -> Iterator[CountChange]:
    """Stitches where they aren't those of the place before, rows where there are any more."""
    was, now = ({place.part: place for place in places(piece, plans)} for plans in (old, new))
    parts = [part for part in was if part in now]

    row = "rows" if old.values[0].worked == "rows" else "rounds"

    def change(part: int, unit: str) -> CountChange:
        values = (getattr(side[part], "stitches" if unit == "sts" else "rows") for side in (was, now))
        return CountChange(piece.key, piece.title, part, was[part].kind, unit, *values)

    yield change(0, "sts")
    for before, part in pairwise(parts):
        if any(side[part].rows != side[before].rows for side in (was, now)):
            yield change(part, row)
        if any(side[part].stitches != side[before].stitches for side in (was, now)):
            yield change(part, "sts")


def measures_of(side: Side) -> tuple[tuple[str, str, Sized[float]], ...]:
    """Key, label and mm of each finished measurement; of a pattern that states none, each piece's width and length."""
    if side.design.finished:
        return tuple((one.key, one.label, side.finished[one.key]) for one in side.design.finished)
    return tuple(
        (f"{piece.key}.{name}", f"{piece.title}, {name}", side.grading.pieces[piece.key].map(lambda graded, name=name: graded.finished[name]))  # type: ignore[misc]
        for piece in side.design.pieces for name in ("width", "length")
    )


def fabrics_of(side: Side) -> tuple[Fabric, ...]:
    """The fabrics that something is worked in."""
    used = {section.cloth.fabric for plans in side.grading.plans.values() for section in plans.values[0].sections}
    return tuple(fabric for fabric in side.design.fabrics if fabric.key in used)


def _measures(old: Side, new: Side) -> Iterator[MeasureChange]:
    for (key, label, was), (_, _, now) in zip(measures_of(old), measures_of(new), strict=True):
        yield MeasureChange(key, label, was, now)


def _balls(old: Side, new: Side) -> Iterator[BallChange]:
    """Balls to buy, where all yarns in use have a weighed swatch and a ball: an estimate's ends are too far apart to compare."""
    if any(one is None or any(each.estimated for each in one.values()) for side in (old, new) for one in side.amounts):
        return
    for yarn in old.design.yarns:
        was, now = (side.amounts.map(lambda one, key=yarn.key: one[key].balls if one and key in one else 0) for side in (old, new))  # type: ignore[misc]
        if yarn.ball_mass and any((*was, *now)):
            yield BallChange(yarn.key, yarn.label, was, now)


def _costs(design: Design, balls: tuple[BallChange, ...]) -> Iterator[CostChange]:
    """What the balls cost; nothing where one of the yarns bought has no price, since a part of a sum misleads."""
    yarns = [design.yarn(one.yarn) for one in balls]
    if any(yarn.price is None for yarn in yarns):
        return
    for currency in dict.fromkeys(yarn.currency for yarn in yarns):
        paid = [(one, yarn.price or Decimal(0)) for one, yarn in zip(balls, yarns, strict=True) if yarn.currency == currency]
        yield CostChange(currency, _sum([one.old.map(lambda n, price=price: n * price) for one, price in paid]), _sum([one.new.map(lambda n, price=price: n * price) for one, price in paid]))  # type: ignore[misc]


def _sum(parts: list[Sized[Decimal]]) -> Sized[Decimal]:
    return join(lambda *amounts: sum(amounts, Decimal(0)), *parts)
