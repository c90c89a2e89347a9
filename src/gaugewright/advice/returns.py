"""What came back from test makers, held to what the pattern predicts: at its own gauge and at each maker's.

In: a graded pattern and read files. Out: for each garment made its measures, yarn and hours beside the prediction, and over all
of them what stands out, what nobody made or told, and every remark. Makers' names are for the designer's eyes; nothing of
a return goes into a pattern.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from gaugewright import pipeline
from gaugewright.advice.own_gauge import OwnGauge, own_gauges, stretched
from gaugewright.advice.return_checks import check_gauges, check_measures, check_names, check_pace, check_yarn, grams_told
from gaugewright.changes import Side, measures_of
from gaugewright.design.model import Design
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.spec.returns import FabricReturn, MakerReturn, ReadReturn
from gaugewright.tolerances import fit_tolerance
from gaugewright.yarn.counted import counted

ALL_YARN = "yarn in all"

Verdict = Literal["as predicted", "their gauge", "unclear", "not their gauge", "gauge not told"]


@dataclass(frozen=True, slots=True)
class Compared:
    """A finished measure, mm: the pattern's, what this maker's gauge makes of it (None where none was told) and as it was made.
    `open` is how far the range of their gauge reaches to either side.
    """

    key: str
    label: str
    pattern: float
    own: float | None
    open: float
    made: float
    verdict: Verdict

    @property
    def off(self) -> float:
        """By how much it is larger than predicted at this maker's gauge, as a share; than the pattern's, where none was told."""
        predicted = self.pattern if self.own is None else self.own
        return self.made / predicted - 1


@dataclass(frozen=True, slots=True)
class YarnUsed:
    """Grams of a colour ("" for all of them): counted from the rows, as printed with the margin, and used. The first two are 0
    where a swatch wasn't weighed.
    """

    key: str
    label: str
    counted: float
    printed: float
    used: float

    @property
    def off(self) -> float | None:
        """How much more was used than counted, as a share; None where nothing is counted."""
        return self.used / self.counted - 1 if self.counted else None


@dataclass(frozen=True, slots=True)
class Returned:
    """One garment made. `hours` is None where not all of them were told, `pace` is stitches an hour."""

    maker: str
    file: str
    size: str
    gauges: Mapping[str, OwnGauge]
    hooks: Mapping[str, str]
    measures: tuple[Compared, ...]
    yarns: tuple[YarnUsed, ...]
    hours: float | None
    by_piece: Mapping[str, float]
    pace: float | None


def returned(graded: pipeline.Graded, reads: Sequence[ReadReturn]) -> tuple[tuple[Returned, ...], tuple[Problem, ...]]:
    """Each return beside its predictions, and warnings; raises `ProblemsFound` with the faults of all files."""
    side = pipeline.side(graded)
    problems: list[Problem] = []
    found: list[Returned] = []
    for read in reads:
        faults = list(check_names(read, graded.bodies.labels, side))
        if not any(one.severity == "error" for one in faults):
            one, more = _returned(graded, side, read)
            found.append(one)
            faults += more
        problems += faults
    errors = [one for one in problems if one.severity == "error"]
    if errors:
        raise ProblemsFound(problems)
    return tuple(found), tuple(problems)


def _returned(graded: pipeline.Graded, side: Side, read: ReadReturn) -> tuple[Returned, list[Problem]]:
    told, size = read.told, read.told.size
    gauges = own_gauges(told)
    problems = list(check_gauges(read, gauges, graded.design))
    measures: tuple[Compared, ...] = ()
    if not problems:
        predicted = _predicted(graded, side, size, gauges)
        problems += check_measures(read, {key: pattern if own is None else own for key, (_, pattern, own, _) in predicted.items()})
        measures = tuple(_compared(key, *predicted[key], told.finished[key].mm) for key in predicted if key in told.finished)
    counted = _counted(side, size)
    problems += check_yarn(read, {key: one.counted for key, one in counted.items()})
    stitches = worked_stitches(graded, size)
    by_piece = told.hours if isinstance(told.hours, dict) else {}
    hours = _hours(told, tuple(stitches))
    pace = {key: stitches[key] / spent for key, spent in by_piece.items()}
    whole = {"": sum(stitches.values()) / hours} if hours is not None else {}
    problems += check_pace(read, pace or whole)
    yarns = tuple(_used(told, counted, graded.design))
    return Returned(maker_of(read), str(read.path), size, gauges, _hooks(told), measures, yarns, hours, by_piece, whole.get("")), problems


def maker_of(read: ReadReturn) -> str:
    """A name, or the file's where none is told."""
    return read.told.maker or str(read.path)


def _hooks(told: MakerReturn) -> dict[str, str]:
    """Hooks by fabric, as they were written."""
    gauges = told.gauge if isinstance(told.gauge, dict) else {}
    hooks = {key: one.hook for key, one in gauges.items() if isinstance(one, FabricReturn) and one.hook is not None}
    return {key: hook if isinstance(hook, str) else hook.text for key, hook in hooks.items()}


def _predicted(graded: pipeline.Graded, side: Side, size: str, gauges: Mapping[str, OwnGauge]) -> dict[str, tuple[str, float, float | None, float]]:
    """By key: label, the pattern's measure, what these gauges make of it, and how far their ranges reach.

    A measure grows with the stitches' width and the rows' height almost in a straight line, so the ends of either range show
    how far it reaches; the two are read apart, and combine as independent errors do.
    """
    pattern = {key: (label, values[size]) for key, label, values in measures_of(side)}
    if not gauges:
        return {key: (label, mm, None, 0.0) for key, (label, mm) in pattern.items()}
    one_size = pipeline.chosen(graded, (size,))

    def worked(across: float, along: float) -> dict[str, float]:
        at = pipeline.worked_at(one_size, stretched(gauges, across, along))
        return {key: values[size] for key, _, values in measures_of(pipeline.side(at))}

    own, wide, high = worked(0, 0), worked(1, 0), worked(0, 1)
    return {key: (label, mm, own[key], ((wide[key] - own[key]) ** 2 + (high[key] - own[key]) ** 2) ** 0.5) for key, (label, mm) in pattern.items()}


def _compared(key: str, label: str, pattern: float, own: float | None, reach: float, made: float) -> Compared:
    return Compared(key, label, pattern, own, reach, made, verdict_of(pattern, own, reach, made))


def verdict_of(pattern: float, own: float | None, reach: float, made: float) -> Verdict:
    """Whether a measure is as the pattern says, off by this maker's gauge, or off beyond it; mm.

    >>> verdict_of(1160, 1140, 40, 1165), verdict_of(1160, 1240, 20, 1235), verdict_of(1160, 1240, 20, 1160)
    ('unclear', 'their gauge', 'not their gauge')
    >>> verdict_of(1160, 1160, 20, 1165), verdict_of(1160, None, 0, 1300)
    ('as predicted', 'gauge not told')
    """
    near = fit_tolerance(pattern)
    as_printed = abs(made - pattern) <= near
    if own is None:
        return "as predicted" if as_printed else "gauge not told"
    off = abs(made - own)
    if off > max(near, reach):
        return "not their gauge"
    if off > near:
        return "unclear"
    return "as predicted" if as_printed else "their gauge"


def _counted(side: Side, size: str) -> dict[str, YarnUsed]:
    """The yarn of one size by colour, and of all of them under ""; nothing where a swatch wasn't weighed."""
    amounts = side.amounts[size]
    if amounts is None or any(one.estimated for one in amounts.values()):
        return {}
    found = {
        key: YarnUsed(key, side.design.yarn(key).label, one.counted.total, one.total, 0.0)
        for key, one in amounts.items()
    }
    return {**found, "": YarnUsed("", ALL_YARN, sum(one.counted for one in found.values()), sum(one.printed for one in found.values()), 0.0)}


def _used(told: MakerReturn, counted: Mapping[str, YarnUsed], design: Design) -> Iterator[YarnUsed]:
    """In the order of the spec's yarns."""
    grams = grams_told(told)
    for key, label in (*((yarn.key, yarn.label) for yarn in design.yarns), ("", ALL_YARN)):
        if key in grams:
            one = counted.get(key)
            yield YarnUsed(key, label, one.counted if one else 0.0, one.printed if one else 0.0, grams[key])


def _hours(told: MakerReturn, pieces: tuple[str, ...]) -> float | None:
    """All hours, if they were told in all or for every piece."""
    if isinstance(told.hours, dict):
        return sum(told.hours.values()) if set(told.hours) == set(pieces) else None
    return told.hours


def worked_stitches(graded: pipeline.Graded, size: str) -> dict[str, float]:
    """Stitches worked for each piece, as often as it is made."""
    found = {piece.key: 0.0 for piece in graded.design.pieces}
    for share in counted(graded.design, pipeline.pieces_of(graded, size)):
        if share.term in ("stitches", "picked up"):
            found[share.piece] += share.amount
    return found
