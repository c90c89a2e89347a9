"""What share of real bodies each size fits: bodies of the size's bust differ in arm and hip, the pattern doesn't."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from gaugewright.advice.together import Overall, Together, Wearing, overall, together
from gaugewright.checks.terms import piece_fabrics
from gaugewright.checks.wearing import inside_loss
from gaugewright.design.model import FinishedMeasure
from gaugewright.errors import UserError
from gaugewright.measurements.limits import Limits, bust_limits, intended_ease, limits
from gaugewright.measurements.survey import Bodies, Line, lines
from gaugewright.measurements.surveyed_bodies import surveyed_bodies
from gaugewright.pipeline import Graded

GIRTHS = ("bust", "chest")
"""What a size is chosen by: judged with the other measures, since its own bodies have it."""


@dataclass(frozen=True, slots=True)
class Share:
    """A finished measurement of one size as worn, mm, and which parts of the surveyed bodies of its bust it is tight and loose on."""

    measure: str
    size: str
    worn: float
    body: float
    spread: float
    least: float
    most: float
    tight: float
    loose: float

    @property
    def fits(self) -> float:
        """The part whose ease lies within the limits."""
        return 1 - self.tight - self.loose


@dataclass(frozen=True, slots=True)
class BodiesAdvice:
    """The shares by measure and size, the limits of ease they start from, and the sizes whose bust nobody surveyed has.

    `together` are the shares of single bodies that a size fits in all of `measures` at once; `some` is the pattern's.
    """

    table: str
    girth: str
    limits: Mapping[str, Limits]
    shares: tuple[Share, ...]
    measures: tuple[str, ...]
    together: tuple[Together, ...]
    some: Overall
    beyond: tuple[str, ...]
    caveats: tuple[str, ...]


def bodies_within(graded: Graded, wanted: Mapping[str, Limits]) -> BodiesAdvice:
    """The shares of a graded pattern; `wanted` are limits of ease that take the place of the usual ones, in every size.

    Raises `UserError` where no survey covers the sizes, or nothing the pattern measures was surveyed.
    """
    sizes = graded.design.sizes
    surveyed = lines(sizes.table) if sizes.table else {}
    if not surveyed:
        raise UserError("no-survey", "the sizes of this pattern are of no table whose bodies were surveyed", "the survey holds grown women and men: give the sizes the table women or men")
    girth = "chest" if sizes.table == "men" else "bust"
    used = {**limits(), **wanted}
    clothed = [one for one in graded.design.finished if one.of in used and one.of in surveyed]
    around = [one for one in graded.design.finished if one.of in GIRTHS][:1]
    missing = sorted(set(wanted) - {one.of for one in (*clothed, *around)})
    if missing or not clothed:
        said = f"no finished measurement of this pattern is of {', '.join(missing) or 'what was surveyed'}"
        raise UserError("nothing-to-compare", said, f"give one of the spec's finished measurements an of: {', '.join(sorted(set(used) & set(surveyed)))}")
    inside, beyond = _surveyed_sizes(graded, girth, surveyed[clothed[0].of])
    worn = tuple(_wearing(graded, one, wanted, surveyed.get(one.of)) for one in (*around, *clothed))
    shares = tuple(share for one, wear in zip(clothed, worn[len(around):], strict=True) for share in _shares(one, wear, surveyed[one.of], inside))
    chosen_by = [(label, body.values[girth]) for label, body in graded.bodies.items() if girth in body.values]
    caveats = tuple(dict.fromkeys(text for one in clothed for text in (surveyed[one.of].source, f"{one.of}: {surveyed[one.of].how}" if surveyed[one.of].how else "") if text))
    people = surveyed_bodies(sizes.table)
    return BodiesAdvice(
        sizes.table, girth, {one.of: used[one.of] for one in clothed}, shares, tuple(one.of for one in worn),
        together(people, chosen_by, worn), overall(people, chosen_by, worn), beyond, caveats,
    )


def _surveyed_sizes(graded: Graded, girth: str, line: Line) -> tuple[Mapping[str, float], tuple[str, ...]]:
    """The busts of the sizes within the survey in mm, and the sizes outside it: a line isn't carried on."""
    busts = {size: env.body[girth] for size, env in graded.grading.environments.items() if girth in env.body}
    inside = {size: mm for size, mm in busts.items() if line.chest_min * 10 <= mm <= line.chest_max * 10}
    return inside, tuple(size for size in graded.grading.environments.labels if size not in inside)


def _wearing(graded: Graded, measured: FinishedMeasure, wanted: Mapping[str, Limits], line: Line | None) -> Wearing:
    """A finished measurement in every size, less what the cloth's thickness takes, with its limits: those asked for, else the size's own."""
    loss = inside_loss(piece_fabrics(measured.measure, graded.design))
    finished = {size: env.length(measured.measure) - loss for size, env in graded.grading.environments.items()}
    allowed = {}
    for size, mm in finished.items():
        body = graded.bodies[size].values.get(measured.of)
        if measured.of in wanted:
            allowed[size] = wanted[measured.of]
        elif line is None:
            allowed[size] = bust_limits(intended_ease(mm, body) if body else 0.0)
        else:
            usual = limits()[measured.of]
            allowed[size] = usual.meant(intended_ease(mm, body), line.spread * 10) if body else usual
    return Wearing(measured.of, finished, allowed)


def _shares(measured: FinishedMeasure, worn: Wearing, line: Line, busts: Mapping[str, float]) -> Iterator[Share]:
    """Bodies of one bust lie about the survey's line as its spread says."""
    for size, bust in busts.items():
        yield share_of(measured.of, size, worn.worn[size], line.bodies(bust), worn.allowed[size])


def share_of(measure: str, size: str, worn: float, bodies: Bodies, allowed: Limits) -> Share:
    """A body is tight where less ease is left than the least, loose where more than the most.

    >>> one = share_of("upper_arm", "M", 340.0, Bodies(300.0, 20.0), Limits(40.0, 80.0, ""))
    >>> one.tight, round(one.loose, 4)
    (0.5, 0.0228)
    """
    tight, loose = bodies.over(worn - allowed.least), 1 - bodies.over(worn - allowed.most)
    return Share(measure, size, worn, bodies.mean, bodies.spread, allowed.least, allowed.most, tight, loose)
