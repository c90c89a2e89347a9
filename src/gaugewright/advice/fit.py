"""Which size fits a body: ease beside the intended, where it is tight or loose, and what to change."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal

from gaugewright import pipeline
from gaugewright.advice.follow import LEADS
from gaugewright.changes import Side, measures_of
from gaugewright.checks.crowds import BINDS
from gaugewright.checks.terms import piece_fabrics, terms_of
from gaugewright.checks.wearing import inside_loss
from gaugewright.design.model import Design
from gaugewright.errors import Problem, ProblemsFound, UserError
from gaugewright.measurements import BodyValue
from gaugewright.measurements.choice import nearest_size, outside
from gaugewright.measurements.limits import limits
from gaugewright.rounding import half_up
from gaugewright.tolerances import LEAST_FIT, TAPE_ERROR, fit_tolerance

OWN = "Own"
"""The label of a size for one body: no name goes into a pattern."""

ROUND = ("bust", "chest", "waist", "hip", "upper_arm", "wrist", "neck", "head", "hand", "foot", "thigh", "calf", "ankle", "cross_back")
"""Body measures round or across a body: there a garment is tight or loose, elsewhere short or long."""

Verdict = Literal["fits", "tight", "loose", "short", "long", "not measured"]


@dataclass(frozen=True, slots=True)
class Measured:
    """A finished measurement of the size on this body, mm. `body` is the wearer's measure beneath it (0 if it wasn't measured
    or there is none), `chart` the one that the size is made for; `own` what a size of the wearer's own has. `stitches` of the
    main fabric more, or fewer, give the intended ease round the body, where it is tight or loose.
    """

    key: str
    label: str
    of: str
    got: float
    body: float
    chart: float
    own: float
    verdict: Verdict
    stitches: int

    @property
    def ease(self) -> float:
        """Room on this body."""
        return self.got - self.body

    @property
    def intended(self) -> float:
        """Room that the design gives the body it is made for."""
        return self.got - self.chart

    @property
    def wanted(self) -> float:
        """What the intended ease comes to on this body."""
        return self.body + self.intended


@dataclass(frozen=True, slots=True)
class LengthChange:
    """A piece worked longer or shorter than the size says: rows in all, and what they should be."""

    piece: str
    title: str
    rows: int
    new_rows: int


@dataclass(frozen=True, slots=True)
class Fit:
    """The size to make for one person, what it gives, and what to change of it; `filled` are measures taken from the mean of such bodies."""

    person: str
    size: str
    lead: Measured
    measures: tuple[Measured, ...]
    lengths: tuple[LengthChange, ...]
    filled: tuple[str, ...]

    @property
    def own_mends(self) -> tuple[Measured, ...]:
        """What is tight or loose in this size and nearer to the intended in one of the wearer's own."""
        return tuple(one for one in self.off if abs(one.own - one.wanted) + LEAST_FIT / 2 < abs(one.got - one.wanted))

    @property
    def off(self) -> tuple[Measured, ...]:
        """What is tight or loose; no change of length mends that."""
        return tuple(one for one in (self.lead, *self.measures) if one.verdict in ("tight", "loose"))


def own_size(design: Design, measures: Mapping[str, float], size: str, label: str = OWN) -> Design:
    """The design in one size, for one body, with the ease of a size of its own."""
    sizes = design.sizes
    at = sizes.labels.index(size)
    ease = tuple(replace(one, values=(one.values[at],)) for one in sizes.ease)
    dimensions = tuple((label, values) for one, values in sizes.dimensions if one == size)
    own = ((label, tuple(measures.items())),)
    return replace(design, sizes=replace(sizes, labels=(label,), own=own, ease=ease, dimensions=dimensions))


def with_own_lengths(graded: pipeline.Graded, measures: Mapping[str, float], size: str) -> dict[str, float]:
    """The body that a size is made for, with the wearer's own measures wherever they go along the body, not round or across it."""
    chart = {name: value.mm for name, value in graded.bodies[size].values.items()}
    return {**chart, **{name: mm for name, mm in measures.items() if name not in ROUND}}


def grade_own(design: Design, measures: Mapping[str, float], size: str, person: str, label: str = OWN) -> pipeline.Graded:
    """The same graded; a measure that its formulas want and nobody took is asked for where it belongs."""
    try:
        return pipeline.grade(own_size(design, measures, size, label))
    except ProblemsFound as found:
        raise ProblemsFound([_asked(problem, person) for problem in found.problems]) from None


def _asked(problem: Problem, person: str) -> Problem:
    if problem.name != "formula-fault":
        return problem
    return replace(problem, size="", hint=f"measure it, and add it to {person}; a bust or chest lets the others be judged by it")


def fit(graded: pipeline.Graded, person: str, measures: Mapping[str, float]) -> Fit:
    """The advice for one person; raises `UserError` where nothing that a size is chosen by was measured."""
    measures = _both_names(measures)
    key, of = _lead(graded.design, measures, person)
    size = _size(graded, of, measures[of])
    own = grade_own(graded.design, measures, size, person)
    standard, fitted = pipeline.side(graded), pipeline.side(own)
    found = tuple(_measured(graded, standard, fitted, measures, size))
    lead = next(one for one in found if one.key == key)
    filled = tuple(one.of for one in found if one.of and one.of not in measures and one.of in own.bodies[OWN].values)
    return Fit(person, size, lead, tuple(one for one in found if one is not lead), _lengths(graded, standard, fitted, size), tuple(dict.fromkeys(filled)))


def _both_names(measures: Mapping[str, float]) -> dict[str, float]:
    """A bust and a chest are one girth under two names."""
    girth = measures.get("bust", measures.get("chest"))
    return dict(measures) if girth is None else {**measures, "bust": measures.get("bust", girth), "chest": measures.get("chest", girth)}


def _lead(design: Design, measures: Mapping[str, float], person: str) -> tuple[str, str]:
    """The finished measure that chooses the size, and the body measure beneath it."""
    clothed = {measure.of: measure.key for measure in design.finished if measure.of}
    found = next((name for name in LEADS if name in clothed and name in measures), None)
    if found is None:
        wanted = [name for name in LEADS if name in clothed]
        if not wanted:
            raise UserError("nothing-to-fit", "this pattern states no finished measurement of a girth to fit by", "add one to the spec's finished, such as bust: {measure: ..., of: bust}")
        raise UserError("nothing-to-fit", f"{person} has no {' or '.join(wanted)}, by which a size of this pattern is chosen", f"measure it, and add it to {person}")
    return clothed[found], found


def _size(graded: pipeline.Graded, of: str, mm: float) -> str:
    """The size whose range of bodies holds this one, else the one whose range is nearest, the larger of two."""
    bodies = [(label, body.values[of]) for label, body in graded.bodies.items() if of in body.values]
    return nearest_size(bodies, mm)


def _measured(graded: pipeline.Graded, standard: Side, fitted: Side, measures: Mapping[str, float], size: str) -> list[Measured]:
    of = {measure.key: measure.of for measure in graded.design.finished}
    loss = {measure.key: inside_loss(piece_fabrics(measure.measure, graded.design)) for measure in graded.design.finished}
    body = graded.bodies[size].values
    width = graded.design.fabric(graded.design.pieces[0].fabric).gauge.stitch_width
    found = []
    for (key, label, values), (_, _, own) in zip(measures_of(standard), measures_of(fitted), strict=True):
        name = of.get(key, "")
        chart = body.get(name)
        mm = measures.get(name, 0.0)
        verdict = verdict_of(name, mm, chart, values[size] - loss[key] - mm) if mm and chart is not None else "not measured" if name else _length_verdict(own[OWN] - values[size], own[OWN])
        stitches = half_up((mm - chart.mm) / width) if chart and verdict in ("tight", "loose") else 0
        found.append(Measured(key, label, name, values[size], mm, chart.mm if chart else 0.0, own[OWN], verdict, stitches))
    return found


def verdict_of(name: str, mm: float, chart: BodyValue, room: float) -> Verdict:
    """A measure of a body against the ones that its size is made for; `room` is the ease that it has as worn, mm.

    A body larger than the size's finds it tight too where it hardly has room: a close sleeve binds on an arm that a
    wide one wouldn't mind. The tape's own error is allowed for, so that who is told has time to measure again.
    """
    binds = name in BINDS and mm > chart.high_mm and room < limits()[name].least + TAPE_ERROR
    if binds:
        return "tight"
    if outside(chart, mm) <= fit_tolerance(mm):
        return "fits"
    larger = mm > chart.high_mm
    return ("tight" if larger else "loose") if name in ROUND else ("short" if larger else "long")


def _length_verdict(missing: float, length: float) -> Verdict:
    return "fits" if abs(missing) <= fit_tolerance(length) else "short" if missing > 0 else "long"


def _lengths(graded: pipeline.Graded, standard: Side, fitted: Side, size: str) -> tuple[LengthChange, ...]:
    """Rows more or fewer in the pieces whose length alone decides a measure that is off."""
    design = graded.design
    found: dict[str, LengthChange] = {}
    for measure in design.finished:
        long = [term for term in terms_of(measure.measure, design) if term.name == "length" and term.factor == 1]
        missing = fitted.finished[measure.key][OWN] - standard.finished[measure.key][size]
        if len(long) != 1 or measure.of in ROUND or abs(missing) <= fit_tolerance(fitted.finished[measure.key][OWN]):
            continue
        piece = design.piece(long[0].piece)
        rows = graded.grading.plans[piece.key][size].rows
        more = half_up(missing / design.fabric(piece.fabric).gauge.row_height)
        found.setdefault(piece.key, LengthChange(piece.key, piece.title, rows, rows + more))
    return tuple(found.values())
