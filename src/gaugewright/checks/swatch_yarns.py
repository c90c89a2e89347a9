"""Swatches that stand for more yarns than they can: a weight is one yarn's."""

from collections.abc import Iterator

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import count_of, problem
from gaugewright.design.model import Fabric
from gaugewright.errors import Problem
from gaugewright.yarn.weighing import ALIKE_WITHIN, metres_per_gram


def check_swatch_yarns(subject: Subject) -> Found:
    """A weighed fabric is worked in yarns of about one thickness, so that its swatch's weight is each one's."""
    weighed = [fabric for fabric in subject.design.fabrics if fabric.swatch_mass is not None]
    colours: dict[str, dict[str, None]] = {}
    for sized in subject.grading.pieces.values():
        for graded in sized:
            for run in (run for strip in graded.strips for row in strip.rows for run in row.runs):
                colours.setdefault(run.fabric, {})[run.colour] = None
    problems = [one for fabric in weighed for one in _unlike(subject, fabric, tuple(colours.get(fabric.key, ())))]
    return Found(tuple(problems), f"{count_of(len(weighed), 'swatch', 'swatches')} weighed")


def _unlike(subject: Subject, fabric: Fabric, colours: tuple[str, ...]) -> Iterator[Problem]:
    """Yarns of a fabric that are finer or thicker than the one it begins in."""
    metres = {colour: found[0] for colour in colours if (found := metres_per_gram(subject.design.yarn(colour))) and found[0] == found[1]}
    first = next(iter(metres), "")
    for colour, each in metres.items():
        off = each / metres[first] - 1
        if abs(off) > ALIKE_WITHIN:
            yield problem(
                "swatch-of-another-yarn",
                f"{fabric.key} has one swatch's weight for {first} and {colour}, which has {abs(off) * 100:.0f} % {'more' if off > 0 else 'fewer'} metres to the gram: what {colour} takes is told as wrongly",
                fabric.origin, f"give {colour} a fabric of its own, `like: {fabric.key}`, with a swatch weighed in it", (), "warning",
            )
