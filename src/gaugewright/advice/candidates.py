"""Several yarns for one design: each is put in place of the pattern's own and the whole is graded anew, checked and weighed."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from gaugewright import pipeline
from gaugewright.advice.yarn_reasons import Judged, reasons_of
from gaugewright.design.model import Design, Yarn
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.hand import at_stitches, hand_of, usual_stitches
from gaugewright.gauge.hanging import growth_between
from gaugewright.gauge.model import Gauge
from gaugewright.sized import Sized
from gaugewright.spec.candidates import Candidate, CandidateFile
from gaugewright.trade.care import care_lines, care_names
from gaugewright.trade.substitution import metres_per_100g
from gaugewright.trade.yarn_weights import category_of
from gaugewright.yarn.comparison import Compared, Comparison, Take, YarnGauge
from gaugewright.yarn.mass import garment_mass, least_mass
from gaugewright.yarn.substitute import NewYarn, fabrics_of_yarns, main_yarns, substituted


@dataclass(frozen=True, slots=True)
class Trial:
    """The design in one yarn: graded for its sizes, with what its checks warn of; or the problems for which it can't be."""

    graded: pipeline.Graded | None
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class Bench:
    """What all candidates are tried on: the pattern as it is, the yarns and fabrics that change, the sizes asked for."""

    graded: pipeline.Graded
    yarns: tuple[Yarn, ...]
    fabrics: frozenset[str]
    sizes: tuple[str, ...]

    @property
    def pattern_gauge(self) -> Gauge:
        """The flat gauge of the main fabric."""
        design = self.graded.design
        return design.fabric(design.pieces[0].fabric).flat


def compare(graded: pipeline.Graded, file: CandidateFile, sizes: tuple[str, ...]) -> Comparison:
    """Each candidate beside the pattern's own yarn, for these sizes (all unless any is named)."""
    yarns = main_yarns(graded.design, graded.grading)
    bench = Bench(graded, yarns, fabrics_of_yarns(graded.grading, yarns), sizes)
    labels = pipeline.chosen(graded, sizes).bodies.labels
    own = _own(bench)
    others = tuple(_compared(bench, name, candidate, own) for name, candidate in file.candidates.items())
    kept = tuple(yarn.label for yarn in graded.design.yarns if yarn not in yarns)
    return Comparison(graded.design.about.title, labels[len(labels) // 2], own, others, kept)


def _own(bench: Bench) -> Compared:
    """The pattern's own yarn; nothing is held against it that it shares with itself."""
    yarn = bench.yarns[0]
    metres = metres_per_100g(yarn.ball_mass, yarn.ball_length) if yarn.ball_mass and yarn.ball_length else None
    category = yarn.weight if yarn.weight is not None else category_of(metres) if metres else None
    gauge = YarnGauge(bench.pattern_gauge, "the pattern")
    take = _take(bench, (bench.graded,), False)
    hand = None if category is None else hand_of(category, gauge.gauge)
    label = " / ".join(one.label for one in bench.yarns)
    care = care_lines(care_names([name for name, _ in yarn.fibre], yarn.treatment, yarn.structure)).lines if yarn.fibre else ()
    found = Compared(label, category, metres, yarn.structure, yarn.fibre, gauge, hand, hand, take, _cost(take, yarn.price), yarn.currency, care, ())
    return replace(found, reasons=reasons_of(Judged(found, found, yarn.treatment, yarn.treatment, bench.graded, bench.graded, (), bench.sizes)))


def _compared(bench: Bench, name: str, candidate: Candidate, own: Compared) -> Compared:
    gauge = _gauge(bench.pattern_gauge, candidate)
    new = _new_yarn(candidate)
    trial = _trial(bench, new, gauge.gauge)
    take = None
    if trial.graded is not None:
        ends = [_trial(bench, new, end).graded for end in gauge.ends or ()]
        take = _take(bench, (trial.graded, *(end for end in ends if end is not None)), new.stitch_mass is None)
    category = candidate.category
    fibres = [fibre for fibre, _ in new.fibre]
    care = care_lines(care_names(fibres, new.treatment, new.structure)).lines if fibres else ()
    hands = [None if category is None else hand_of(category, one) for one in (gauge.gauge, bench.pattern_gauge)]
    found = Compared(name, category, candidate.metres, new.structure, new.fibre, gauge, hands[0], hands[1], take, _cost(take, new.price), new.currency, care, ())
    return replace(found, reasons=reasons_of(Judged(found, own, new.treatment, bench.yarns[0].treatment, bench.graded, trial.graded, trial.problems, bench.sizes)))


def _gauge(pattern: Gauge, candidate: Candidate) -> YarnGauge:
    """Its own swatch or gauge; else the pattern's where its category is published to hold it, else the middle of what is published."""
    if candidate.swatch is not None:
        swatch = candidate.swatch
        return YarnGauge(Gauge(swatch.stitches, swatch.width.mm, swatch.rows, swatch.height.mm), "its swatch")
    if candidate.gauge is not None:
        written = candidate.gauge
        return YarnGauge(Gauge(written.stitches, written.width, written.rows, written.height), "as stated")
    assert candidate.category is not None  # a file without one isn't read
    if hand_of(candidate.category, pattern) == "usual":
        return YarnGauge(pattern, "within its category")
    low, high = usual_stitches(candidate.category)
    ends = None if low == high else (at_stitches(pattern, high), at_stitches(pattern, low))
    return YarnGauge(at_stitches(pattern, (low + high) / 2), "its category", ends)


def _new_yarn(candidate: Candidate) -> NewYarn:
    swatch, price = candidate.swatch, candidate.price
    mass = swatch.mass.grams / (swatch.stitches * swatch.rows) if swatch and swatch.mass else None
    growth = None
    if swatch and swatch.hung:
        lying = Gauge(swatch.stitches, swatch.width.mm, swatch.rows, swatch.height.mm)
        growth = growth_between(lying, replace(lying, height=swatch.hung.mm))
    return NewYarn(
        candidate.category, tuple((candidate.fibre or {}).items()), candidate.ball.mass.grams, candidate.ball.length.mm,
        price.amount if price else None, price.code if price else "", candidate.structure or "", candidate.treatment or "", mass, growth,
    )


def _trial(bench: Bench, new: NewYarn, gauge: Gauge) -> Trial:
    """The design regraded in this yarn; what its checks find in the sizes asked for that they don't find in the pattern is told."""
    design: Design = substituted(bench.graded.design, bench.yarns, bench.fabrics, new, gauge)
    try:
        graded = pipeline.grade(design)
    except ProblemsFound as found:
        return Trial(None, found.problems)
    results = pipeline.check(pipeline.chosen(graded, bench.sizes))
    errors = pipeline.errors_of(results)
    if errors:
        return Trial(None, errors)
    known = {problem.name for result in pipeline.check(pipeline.chosen(bench.graded, bench.sizes)) for problem in result.problems}
    told = (problem for result in results for problem in result.problems)
    return Trial(graded, tuple(problem for problem in told if problem.severity == "warning" and problem.name not in known))


def _take(bench: Bench, tried: tuple[pipeline.Graded, ...], estimated: bool) -> Take | None:
    """Balls of the yarns that change, and grams of all that is finished, least and most of what was tried.

    Yarns that stay weigh what they do in the pattern, since a fabric shared with the new yarn has the new yarn's mass.
    """
    keys = [yarn.key for yarn in bench.yarns]
    pattern, *sides = [pipeline.side(pipeline.chosen(graded, bench.sizes)) for graded in (bench.graded, *tried)]
    if any(one is None for side in sides for one in side.amounts) or not bench.yarns[0].ball_mass:
        return None
    labels = sides[0].amounts.labels

    def ends(size: str) -> Iterator[tuple[int, float]]:
        for side in sides:
            new = {key: one for key, one in (side.amounts[size] or {}).items() if key in keys}
            kept = {key: one for key, one in (pattern.amounts[size] or {}).items() if key not in keys}
            yield sum(one.balls for one in new.values()), garment_mass(side.design, {**kept, **new})
            yield sum(one.fewest_balls for one in new.values()), least_mass(side.design, {**kept, **new})

    each = {size: tuple(ends(size)) for size in labels}
    balls = Sized(labels, tuple((min(one for one, _ in each[size]), max(one for one, _ in each[size])) for size in labels))
    grams = Sized(labels, tuple((min(one for _, one in each[size]), max(one for _, one in each[size])) for size in labels))
    unweighed = any(one.estimated for side in sides for found in side.amounts for one in (found or {}).values())
    return Take(balls, grams, estimated or unweighed)


def _cost(take: Take | None, price: Decimal | None) -> Sized[tuple[Decimal, Decimal]] | None:
    """What the balls cost, exactly."""
    return None if take is None or price is None else take.balls.map(lambda ends: (ends[0] * price, ends[1] * price))
