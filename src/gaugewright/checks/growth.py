"""Large sizes are not small ones blown up: what grows with the bust is held to how bodies grow.

Girths of the trunk grow with the bust; necks, shoulders, wrists and heads hardly do. A measure may grow
twice as fast as bodies (a garment isn't skin) and by what whole stitches add; what is graded by the chart's
own measure is held to the chart, and the chart to bodies.
"""

from collections.abc import Iterator, Mapping

from gaugewright.checks.behind import bodies_behind, grown_by, length_of, stated
from gaugewright.checks.grown import Ends, Grown, grown_measures
from gaugewright.checks.model import Found, Subject
from gaugewright.checks.sources import measures_used
from gaugewright.checks.wording import cm, count_of, problem
from gaugewright.design.model import Formula
from gaugewright.errors import Problem, Severity
from gaugewright.measurements.growth import Growth, growth
from gaugewright.rounding import to_step
from gaugewright.tolerances import GROWTH_SPREADS, GROWTH_TIMES, LEAST_BUST_SPAN, LEAST_SURVEYED_BUST, SAME_LENGTH

TRUNK = frozenset(("bust", "chest"))
STRAIGHT = frozenset(("waist", "hip"))


def check_growth(subject: Subject) -> Found:
    """What grows from the smallest to the largest size much faster than bodies do is named with its formula."""
    busts = {label: body.values["bust"].mm for label, body in subject.bodies.items() if "bust" in body.values}
    table = subject.design.sizes.table or _table_of_own(busts)
    rates = dict(growth(table))
    if not rates:
        return Found((), "sizes of neither the women's nor the men's table, nor own ones of grown women: no surveyed bodies to compare with")
    if len(busts) < len(subject.sizes):
        return Found((), "sizes without a bust: nothing to compare their growth with")
    ends = Ends(min(busts, key=lambda size: busts[size]), max(busts, key=lambda size: busts[size]))
    span = busts[ends.large] - busts[ends.small]
    if span < LEAST_BUST_SPAN - SAME_LENGTH:
        return Found((), f"the bust grows {cm(span)} over the sizes: too little to compare")
    compared = 0
    found: dict[tuple[int, int], Problem] = {}
    for one in grown_measures(subject, ends, rates):
        compared += 1
        told = _too_fast(one, subject, ends, span, rates)
        if told is not None and told.origin is not None:
            found.setdefault((told.origin.location.line, told.origin.location.column), told)
    problems = (*found.values(), *_chart(subject, ends, span, rates))
    among = "" if subject.design.sizes.table else " with the women surveyed, since no table is named"
    return Found(problems, f"{count_of(compared, 'measure')} compared over {cm(span)} of bust{among}")


def _table_of_own(busts: Mapping[str, float]) -> str:
    """Whose bodies sizes without a table are compared with: women's, by whom their gaps are filled, unless one is a child's."""
    return "women" if len(busts) > 1 and min(busts.values()) >= LEAST_SURVEYED_BUST else ""


def _too_fast(one: Grown, subject: Subject, ends: Ends, span: float, rates: Mapping[str, Growth]) -> Problem | None:
    """One measure against bodies; against the chart too, where the chart's own measure grades it."""
    rate, grows = rates[one.like], one.large - one.small
    formula = stated(one.formula, subject.design)
    alone = _by_bust_alone(one, formula, subject, ends)
    limit = _limit(one, rate, span, alone)
    if one.like in bodies_behind(one.node, subject.design):
        small, large = (subject.bodies[size].values[one.like].mm for size in ends)
        limit = max(limit, large - small)
    over = grows - limit - one.slack
    if over <= SAME_LENGTH:
        return None
    by = grown_by(one.node, subject, *ends)
    severity: Severity = "warning" if alone and grows - _twice(rate, span) - one.slack > GROWTH_SPREADS * rate.spread else "note"
    most = max(by, key=lambda measure: by[measure], default="")
    grown = f", {cm(by[most])} of it with body.{most}" if most and by[most] > SAME_LENGTH else ""
    return problem(
        "grows-unlike-bodies", f"{one.name} grows with `{formula.text}` from {cm(one.small)} in {ends.small} to {cm(one.large)} in {ends.large}: "
        f"{cm(grows)}{grown}, or {_rate(grows, span)}; bodies grow {_rate(rate.over(span), span)} there ({_bodies(one, rate, span, subject)}), "
        f"and up to {cm(limit + one.slack)} is expected", formula.origin, _hint(one, subject), ends, severity,
    )


def _limit(one: Grown, rate: Growth, span: float, alone: bool) -> float:
    """What a measure may grow: twice as fast as bodies, since a garment isn't skin.

    A rule by the bust alone, such as 0.4 of it for an upper arm, knows nothing of what it scales: it is held to
    what all but one body in forty grow. The trunk below a straight body is as wide as the bust wants it.
    """
    if not alone or one.like in STRAIGHT:
        return _twice(rate, span)
    return min(_twice(rate, span), max(0.0, rate.over(span)) + GROWTH_SPREADS * rate.spread)


def _twice(rate: Growth, span: float) -> float:
    return GROWTH_TIMES * max(0.0, rate.over(span))


def _by_bust_alone(one: Grown, formula: Formula, subject: Subject, ends: Ends) -> bool:
    """Whether the formula minds no measure but the bust: one that does, if only as a limit, was thought about.

    A measure that a difference of two heights takes out again isn't minded at either end.
    """
    effects = (*grown_by(one.node, subject, ends.small, ends.large).items(), *grown_by(one.node, subject, ends.large, ends.small).items())
    minded = {measure for measure, effect in effects if abs(effect) > SAME_LENGTH}
    return minded & bodies_behind(formula.node, subject.design) <= TRUNK


def _rate(grows: float, span: float) -> str:
    return f"{cm(grows / span * 100)} per 10 cm of bust"


def _bodies(one: Grown, rate: Growth, span: float, subject: Subject) -> str:
    """What the figure for bodies is, how far single bodies are from it, and where nobody was measured."""
    largest = max(body.values["bust"].mm for body in subject.bodies)
    parts = [
        "the neck's girth by pi" if one.like == "neck_width" else rate.how,
        f"{cm(rate.over(span))} over these sizes",
        f"one in three differs by more than {cm(rate.spread)} at one bust",
        f"none with a bust over {cm(rate.surveyed)} were surveyed" if largest > rate.surveyed else "",
    ]
    return ", ".join(part for part in parts if part)


def _hint(one: Grown, subject: Subject) -> str:
    """The body's own measure, with what it takes to leave the middle size as it is."""
    middle = subject.sizes[len(subject.sizes) // 2]
    env, grade_by = subject.environments[middle], f"grade it by body.{one.by}"
    if one.like == "shoulder_length":
        return f"grade the width above the armholes by body.{one.by}, so that large sizes lose more at the armholes"
    now = length_of(one.node, env, subject.design, env.body)
    if now is None or one.by not in env.body:
        return grade_by
    own = env.body[one.by]
    if one.like == "neck_width":
        return f"{grade_by}: in {middle} it is now body.{one.by} * {to_step(now / own, 0.01):.2f}"
    return f"{grade_by}: in {middle} it is now body.{one.by} {'+' if now >= own else '-'} {cm(abs(now - own))}"


def _chart(subject: Subject, ends: Ends, span: float, rates: Mapping[str, Growth]) -> Iterator[Problem]:
    """Where a chart's own measure that the design uses grows less than half or more than twice as fast as bodies."""
    own = {label for label, _ in subject.design.sizes.own}
    if own.intersection(ends):
        return
    for measure, origin in measures_used(subject.design).items():
        values = [subject.bodies[size].values.get(measure) for size in ends]
        if measure not in rates or values[0] is None or values[1] is None or values[0].spread_mm:
            continue
        grows, bodies = values[1].mm - values[0].mm, rates[measure].over(span)
        unlike = grows > GROWTH_TIMES * bodies or grows < bodies / GROWTH_TIMES
        if unlike and abs(grows - bodies) > GROWTH_SPREADS * rates[measure].spread:
            yield problem(
                "chart-unlike-bodies", f"the chart's {measure} grows {_rate(grows, span)} from {ends.small} to {ends.large}, "
                f"bodies' {_rate(bodies, span)}" + (f" ({rates[measure].how})" if rates[measure].how else ""), origin,
                f"nothing needs doing where the chart is wanted; give your own {measure} under sizes: own: where the fit depends on it", ends, "note",
            )
