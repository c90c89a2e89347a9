"""One size, many bodies: bodies of one bust differ in arm and hip, so a size right for its chart may bind on many."""

from collections.abc import Mapping

from gaugewright.checks.model import Found, Measured, Subject
from gaugewright.checks.terms import piece_fabrics
from gaugewright.checks.wearing import inside_loss
from gaugewright.checks.wording import by_size, problem
from gaugewright.measurements.limits import limits
from gaugewright.measurements.survey import Line, lines
from gaugewright.rounding import half_up, up
from gaugewright.tolerances import TIGHT_ON_MANY

BINDS = ("upper_arm", "hip")
"""Where a garment that is too narrow can't be worn; a cuff or a waist stretches or is left open."""


def check_crowds(subject: Subject) -> Found:
    """Arms and hips aren't too narrow for many of the surveyed bodies of a size's bust."""
    known = lines(subject.design.sizes.table) if subject.design.sizes.table else {}
    problems, figures = [], []
    for measured in subject.measured:
        of = measured.measure.of
        if of not in BINDS or of not in known:
            continue
        loss = inside_loss(piece_fabrics(measured.measure.measure, subject.design))
        shares = _tight(measured, known[of], limits()[of].least + loss, subject)
        if not shares:
            continue
        worst = max(shares, key=lambda size: shares[size])
        figures.append(f"{measured.measure.key}: tight on up to {_percent(shares[worst])} of the bodies of a size ({worst})")
        many = [size for size in shares if shares[size] >= TIGHT_ON_MANY]
        if many:
            wider = max(_missing(measured, known[of], limits()[of].least + loss, subject, size) for size in many)
            problems.append(problem(
                "tight-on-many", f"{measured.measure.key} is tight on many of the surveyed bodies of the size's bust: "
                + by_size((size, _percent(shares[size])) for size in many) + f"; from {_percent(TIGHT_ON_MANY)} on it is told", measured.measure.origin,
                f"make it {up(wider) / 10:.1f} cm wider, rounded up to whole stitches, or say in the pattern whom it fits; `bodies` shows the shares of all sizes",
                many, "warning",
            ))
    return Found(tuple(problems), "; ".join(figures) or "no arm or hip of surveyed bodies")


def _busts(line: Line, subject: Subject) -> Mapping[str, float]:
    """The bust of each size that the survey covers, mm: its line isn't carried on beyond it."""
    busts = {label: body.values["bust"].mm for label, body in subject.bodies.items() if "bust" in body.values}
    return {size: mm for size, mm in busts.items() if line.chest_min * 10 <= mm <= line.chest_max * 10}


def _tight(measured: Measured, line: Line, least: float, subject: Subject) -> Mapping[str, float]:
    return {size: line.bodies(bust).over(measured.actual[size] - least) for size, bust in _busts(line, subject).items()}


def _missing(measured: Measured, line: Line, least: float, subject: Subject, size: str) -> float:
    """What would bring a size under the share that is told of, mm."""
    bodies = line.bodies(_busts(line, subject)[size])
    return bodies.with_over(TIGHT_ON_MANY) + least - measured.actual[size]


def _percent(part: float) -> str:
    return f"{half_up(part * 100)} %"
