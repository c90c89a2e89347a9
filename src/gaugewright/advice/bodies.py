"""What share of real bodies each size fits: bodies of the size's bust differ in arm and hip, the pattern doesn't."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from statistics import NormalDist

from gaugewright.design.model import FinishedMeasure
from gaugewright.errors import UserError
from gaugewright.measurements.limits import Limits, limits
from gaugewright.measurements.survey import Line, lines
from gaugewright.pipeline import Graded

MANY = 0.2
"""From one body in five on a designer is warned that a size is tight (common practice, no source);
how loose a garment is meant to be is the design's own matter, so that is told and not warned of."""


@dataclass(frozen=True, slots=True)
class Share:
    """A finished measurement of one size, mm, and which parts of the surveyed bodies of its bust it is tight and loose on."""

    measure: str
    size: str
    finished: float
    body: float
    spread: float
    tight: float
    loose: float

    @property
    def fits(self) -> float:
        """The part whose ease lies within the limits."""
        return 1 - self.tight - self.loose


@dataclass(frozen=True, slots=True)
class BodiesAdvice:
    """The shares by measure and size, the limits of ease they hold for, and the sizes whose bust nobody surveyed has."""

    table: str
    girth: str
    limits: Mapping[str, Limits]
    shares: tuple[Share, ...]
    beyond: tuple[str, ...]
    caveats: tuple[str, ...]


def bodies_within(graded: Graded, wanted: Mapping[str, Limits]) -> BodiesAdvice:
    """The shares of a graded pattern; `wanted` are limits of ease that take the place of the usual ones.

    Raises `UserError` where no survey covers the sizes, or nothing the pattern measures was surveyed.
    """
    sizes = graded.design.sizes
    surveyed = lines(sizes.table) if sizes.table else {}
    if not surveyed:
        raise UserError("no-survey", "the sizes of this pattern are of no table whose bodies were surveyed", "the survey holds grown women and men: give the sizes the table women or men")
    girth = "chest" if sizes.table == "men" else "bust"
    used = {**limits(), **wanted}
    clothed = [one for one in graded.design.finished if one.of in used and one.of in surveyed]
    missing = sorted(set(wanted) - {one.of for one in clothed})
    if missing or not clothed:
        said = f"no finished measurement of this pattern is of {', '.join(missing) or 'what was surveyed'}"
        raise UserError("nothing-to-compare", said, f"give one of the spec's finished measurements an of: {', '.join(sorted(set(used) & set(surveyed)))}")
    inside, beyond = _surveyed_sizes(graded, girth, surveyed[clothed[0].of])
    shares = tuple(share for one in clothed for share in _shares(graded, one, surveyed[one.of], used[one.of], inside))
    caveats = tuple(dict.fromkeys(text for one in clothed for text in (surveyed[one.of].source, f"{one.of}: {surveyed[one.of].how}" if surveyed[one.of].how else "") if text))
    return BodiesAdvice(sizes.table, girth, {one.of: used[one.of] for one in clothed}, shares, beyond, caveats)


def _surveyed_sizes(graded: Graded, girth: str, line: Line) -> tuple[Mapping[str, float], tuple[str, ...]]:
    """The busts of the sizes within the survey in mm, and the sizes outside it: a line isn't carried on."""
    busts = {size: env.body[girth] for size, env in graded.grading.environments.items() if girth in env.body}
    inside = {size: mm for size, mm in busts.items() if line.chest_min * 10 <= mm <= line.chest_max * 10}
    return inside, tuple(size for size in graded.grading.environments.labels if size not in inside)


def _shares(graded: Graded, measured: FinishedMeasure, line: Line, allowed: Limits, busts: Mapping[str, float]) -> Iterator[Share]:
    """Bodies of one bust lie about the survey's line as its spread says."""
    for size, bust in busts.items():
        finished = graded.grading.environments[size].length(measured.measure)
        yield share_of(measured.of, size, finished, NormalDist(line.at(bust), line.spread * 10), allowed)


def share_of(measure: str, size: str, finished: float, bodies: NormalDist, allowed: Limits) -> Share:
    """A body is tight where less ease is left than the least, loose where more than the most.

    >>> one = share_of("upper_arm", "M", 340.0, NormalDist(300.0, 20.0), Limits(40.0, 80.0, ""))
    >>> one.tight, round(one.loose, 4)
    (0.5, 0.0228)
    """
    tight, loose = 1 - bodies.cdf(finished - allowed.least), bodies.cdf(finished - allowed.most)
    return Share(measure, size, finished, bodies.mean, bodies.stdev, tight, loose)
