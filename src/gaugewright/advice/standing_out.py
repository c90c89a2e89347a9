"""What stands out over all returns: the design rather than a maker, hours, what nobody made or told, and every remark."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from gaugewright.advice.agreement import LEVEL, Agreement, agreements
from gaugewright.advice.returns import Returned, maker_of
from gaugewright.changes import measures_of
from gaugewright.pipeline import Graded, side
from gaugewright.spec.returns import ReadReturn
from gaugewright.tolerances import fit_tolerance

TAPE = 5.0
"""A tape is read to half a centimetre, mm (common practice, no source)."""

SCALES = 0.01
"""What is used of a ball is weighed to a hundredth or so (common practice, no source)."""

YARN_OFF = 0.05
"""Half of the margin that a pattern adds to its yarn: what is less is within any maker's hand (common practice, no source)."""

Judged = Literal["too few", "the design", "perhaps the design", "nothing"]


@dataclass(frozen=True, slots=True)
class Standing:
    """One measure or yarn over all makers: `typical` is what was predicted on average, mm or g."""

    key: str
    label: str
    typical: float
    agreement: Agreement
    judged: Judged


@dataclass(frozen=True, slots=True)
class Spent:
    """Hours of a size, all of it or of one piece; or, of the pace, stitches an hour."""

    size: str
    piece: str
    mean: float
    low: float
    high: float
    makers: int


@dataclass(frozen=True, slots=True)
class Remark:
    """What a maker said of a piece, by its title; of what was hard to follow, or of all, where `about` is one of those words."""

    about: str
    size: str
    maker: str
    file: str
    said: str


@dataclass(frozen=True, slots=True)
class Overview:
    """All returns together. What nobody made or told is named as the pattern names it."""

    measures: tuple[Standing, ...]
    yarns: tuple[Standing, ...]
    hours: tuple[Spent, ...]
    pace: Spent | None
    unmade: tuple[str, ...]
    unmeasured: tuple[str, ...]
    unweighed: tuple[str, ...]
    untimed: tuple[str, ...]
    remarks: tuple[Remark, ...]


HARD, MORE = "Hard to follow", "More"


def overview(graded: Graded, reads: Sequence[ReadReturn], found: Sequence[Returned]) -> Overview:
    """The returns of one pattern together; `reads` are the files that `found` was made of."""
    design = graded.design
    in_all = any(not yarn.key for one in found for yarn in one.yarns)
    used = {yarn.key for one in found for yarn in one.yarns}
    timed = {piece for one in found for piece in one.by_piece}
    measured = {measure.key for one in found for measure in one.measures}
    worked = {colour for piece in design.pieces for sized in graded.grading.pieces[piece.key] for strip in sized.strips for row in strip.all_rows() for colour in row.colours}
    return Overview(
        _measures(found), _yarns(found), tuple(_hours(graded, found)), _pace(found),
        unmade=tuple(label for label in graded.bodies.labels if label not in {one.size for one in found}),
        unmeasured=tuple(label for key, label, _ in measures_of(side(graded)) if key not in measured),
        unweighed=tuple(yarn.label for yarn in design.yarns if yarn.key in worked - used and not in_all),
        untimed=tuple(piece.title for piece in design.pieces if piece.key not in timed),
        remarks=tuple(_remarks(graded, reads)),
    )  # fmt: skip


def _measures(found: Sequence[Returned]) -> tuple[Standing, ...]:
    """Held to what each maker's own gauge makes of a measure: makers whose gauge isn't known tell nothing here."""
    rows = [(one.maker, each.key, each.label, each.own, each.off) for one in found for each in one.measures if each.own is not None]
    return _standing(rows, lambda typical: TAPE / typical, lambda mean, typical: abs(mean) * typical > fit_tolerance(typical))


def _yarns(found: Sequence[Returned]) -> tuple[Standing, ...]:
    rows = [(one.maker, each.key, each.label, each.counted, each.off) for one in found for each in one.yarns if each.off is not None]
    return _standing(rows, lambda _typical: SCALES, lambda mean, _typical: abs(mean) > YARN_OFF)


Row = tuple[str, str, str, float, float]
"""Maker, key, label, what was predicted, and by which share it is off."""


def _standing(rows: Iterable[Row], blur: Callable[[float], float], matters: Callable[[float, float], bool]) -> tuple[Standing, ...]:
    """Judged by makers, not by garments: somebody who made two has one voice, the mean of both."""
    rows = tuple(rows)
    labels = {key: label for _, key, label, _, _ in rows}
    typical = {key: _mean([predicted for _, other, _, predicted, _ in rows if other == key]) for key in labels}
    shares: dict[str, list[float]] = {}
    for key in labels:
        makers = dict.fromkeys(maker for maker, other, *_ in rows if other == key)
        shares[key] = [_mean([off for one, other, _, _, off in rows if (one, other) == (maker, key)]) for maker in makers]
    agreed = agreements(shares, {key: blur(mean) for key, mean in typical.items()})
    return tuple(Standing(key, label, typical[key], agreed[key], judged(agreed[key], matters(agreed[key].mean, typical[key]))) for key, label in labels.items())


def judged(agreed: Agreement, matters: bool) -> Judged:
    """Whether it is the design; `matters` is whether the mean is off by more than anybody would miss."""
    if not agreed.enough:
        return "too few"
    if not matters or agreed.chance > LEVEL:
        return "nothing"
    return "the design" if agreed.among <= LEVEL else "perhaps the design"


def _mean(values: Sequence[float]) -> float:
    return sum(values) / len(values)


def _spent(size: str, piece: str, values: Sequence[float]) -> Spent:
    return Spent(size, piece, _mean(values), min(values), max(values), len(values))


def _hours(graded: Graded, found: Sequence[Returned]) -> Iterator[Spent]:
    """By size, all of it first, then its pieces."""
    for size in graded.bodies.labels:
        made = [one for one in found if one.size == size]
        whole = [one.hours for one in made if one.hours is not None]
        if whole:
            yield _spent(size, "", whole)
        for piece in graded.design.pieces:
            spent = [one.by_piece[piece.key] for one in made if piece.key in one.by_piece]
            if spent:
                yield _spent(size, piece.title, spent)


def _pace(found: Sequence[Returned]) -> Spent | None:
    paces = [one.pace for one in found if one.pace is not None]
    return _spent("", "", paces) if paces else None


def _remarks(graded: Graded, reads: Sequence[ReadReturn]) -> Iterator[Remark]:
    """Piece by piece, smallest size first within each; then what was hard to follow, then the rest."""
    labels = graded.bodies.labels
    in_order = sorted(reads, key=lambda read: labels.index(read.told.size))
    abouts: Mapping[str, str] = {piece.key: piece.title for piece in graded.design.pieces}
    for key, title in abouts.items():
        yield from (Remark(title, read.told.size, maker_of(read), str(read.path), said) for read in in_order for said in read.told.remarks.get(key, ()))
    yield from (Remark(HARD, read.told.size, maker_of(read), str(read.path), said) for read in in_order for said in read.told.hard_to_follow)
    yield from (Remark(MORE, read.told.size, maker_of(read), str(read.path), said) for read in in_order for said in read.told.more)
