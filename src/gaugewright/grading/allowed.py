"""Exact stitches to a count that the fabric and the shaping allow; located problems where none comes near.

In: an exact number of stitches, the rule of the fabric, and how the stitches before are changed.
Out: the count.
"""

from dataclasses import dataclass, replace
from math import lcm

from gaugewright.errors import Origin, Problem, ProblemsFound
from gaugewright.gauge.counts import CountImpossible, CountRule, Parity, allows, count_for, spacing
from gaugewright.problem_text import count_of
from gaugewright.rounding import half_up
from gaugewright.tolerances import count_tolerance
from gaugewright.vocabulary import TaperEnds

MOST_STITCHES = 20_000
"""No row has more: twenty metres of the finest thread. Above it a unit was mistaken."""


@dataclass(frozen=True, slots=True)
class Asked:
    """What a count is for, so that a problem can say so and where it was written."""

    what: str
    origin: Origin
    size: str


def allowed_count(exact: float, rule: CountRule, asked: Asked) -> int:
    """The count the rule gives; a located problem where no allowed count comes near the exact one."""
    try:
        count = count_for(exact, rule)
    except CountImpossible as fault:
        hint = "change the multiple or the parity"
        message = f"{asked.what} a count that cannot be: {fault}"
        raise ProblemsFound([Problem("count-impossible", message, asked.origin, hint, asked.size)]) from None
    _check_size(count, asked)
    limit = spacing(rule) / 2 if rule.direction == "nearest" else spacing(rule)
    if exact < 0.5 or abs(count - exact) > min(limit, count_tolerance(exact)) + 1e-6:
        message = f"{asked.what} {_figure(exact)}; the nearest count its rule allows is {count}"
        width = f"{'at least ' if count > exact else ''}{count_of(count, 'stitch', 'stitches')}"
        hint = f"make it {width} wide, or use a smaller multiple or minimum"
        raise ProblemsFound([Problem("multiple-does-not-fit", message, asked.origin, hint, asked.size)])
    return count


def stepped_count(exact: float, before: int, step: int, rule: CountRule, asked: Asked) -> int:
    """The allowed count nearest to the exact one that is reached from `before` in whole steps.

    Every shaping row changes exactly `step` stitches, so a target between two steps is met by
    one of them, in the rule's direction.
    """
    try:
        reach = lcm(step, spacing(rule)) // step + 1
    except CountImpossible:
        return allowed_count(exact, rule, asked)
    middle = half_up((exact - before) / step)
    counts = [before + step * steps for steps in range(middle - reach, middle + reach + 1)]
    within = {
        "nearest": counts,
        "up": [count for count in counts if count >= exact - 1e-9],
        "down": [count for count in counts if count <= exact + 1e-9],
    }[rule.direction]
    allowed = [count for count in within if allows(rule, count)]
    if not allowed or exact < 0.5:
        message = f"{asked.what} {_figure(exact)}, which steps of {step} from {before} do not reach in this fabric's counts"
        hint = "change the target, the stitches each time, or the fabric's multiple"
        raise ProblemsFound([Problem("multiple-does-not-fit", message, asked.origin, hint, asked.size)])
    count = min(allowed, key=lambda count: (abs(count - exact), -count))
    _check_size(count, asked)
    return count


def stated_count(count: int, rule: CountRule, asked: Asked, hint: str = "") -> int:
    """A count that is given already (stated in the spec, or by the section before), which its fabric must allow."""
    try:
        fits = allows(rule, count)
    except CountImpossible:
        fits = False
    if not fits:
        near = allowed_count(max(1.0, count), rule, asked)
        message = f"{asked.what} {count} stitches, which its fabric does not allow; the nearest it allows is {near}"
        raise ProblemsFound([Problem("multiple-does-not-fit", message, asked.origin, hint or f"write {near}", asked.size)])
    return count


def of_parity(rule: CountRule, like: int) -> CountRule:
    """The rule for a count that changes two at a time from `like`: it keeps its parity."""
    parity: Parity = "odd" if like % 2 else "even"
    if rule.parity not in ("any", parity):
        # A rule of the other parity: said by the counts themselves as a contradiction.
        return replace(rule, multiple=2, plus=0 if rule.parity == "even" else 1, parity=parity)
    return replace(rule, parity=parity)


def even_by(habit: TaperEnds, rule: CountRule) -> CountRule:
    """The rule for a count that a taper at two edges begins or ends with, by the pattern's habit.

    A parity or a direction that the spec asks for goes before the habit.

    >>> even_by("even below", CountRule()).direction, even_by("nearest even", CountRule(parity="odd")).parity
    ('down', 'odd')
    """
    if habit == "as they fall":
        return rule
    if rule.parity == "any" and parity_fits(rule, 0):
        rule = replace(rule, parity="even")
    below = habit == "even below" and rule.direction == "nearest"
    return replace(rule, direction="down") if below else rule


def parity_fits(rule: CountRule, like: int) -> bool:
    """Whether the rule allows any count of this parity."""
    try:
        count_for(1, of_parity(rule, like))
    except CountImpossible:
        return False
    return True


def _figure(exact: float) -> str:
    """Exact stitches to a tenth; whole ones, as a stated count is, in whole.

    >>> _figure(12.34), _figure(8.0), _figure(1.0)
    ('12.3 stitches', '8 stitches', '1 stitch')
    """
    figure = f"{exact:.1f}".removesuffix(".0")
    return f"{figure} {'stitch' if figure == '1' else 'stitches'}"


def _check_size(count: int, asked: Asked) -> None:
    if count > MOST_STITCHES:
        message = f"{asked.what} {count} stitches, more than {MOST_STITCHES}"
        raise ProblemsFound([Problem("too-many-stitches", message, asked.origin, "check its width and the fabric's gauge", asked.size)])
