"""One environment per size: the body read from its table (or the spec's own figures) and the ease."""

from collections.abc import Mapping

from gaugewright.design.model import Design
from gaugewright.errors import Problem, ProblemsFound, UserError
from gaugewright.measurements import Body, body, own_body
from gaugewright.measurements.model import Which
from gaugewright.sized import Sized, for_each_size
from gaugewright.sizing.environment import Environment, named_formulas


def bodies(design: Design) -> Sized[Body]:
    """The body of each size, with a source for every measure."""
    sizes, own = design.sizes, dict(design.sizes.own)

    problems: list[Problem] = []

    def one(label: str) -> Body:
        if label in own:
            which: Which = sizes.table or "women"  # type: ignore[assignment]
            try:
                return own_body(label, dict(own[label]), which)
            except UserError as fault:
                problems.append(Problem(fault.name, fault.message, sizes.origin, fault.hint, label))
                return Body(label, {})
        if not sizes.table:
            return Body(label, {})
        return body(sizes.table, label, sizes.read)

    found = for_each_size(sizes.labels, one)
    if problems:
        raise ProblemsFound(problems)
    return found


def environments(design: Design, of_bodies: Sized[Body]) -> Sized[Environment]:
    """What formulas may use in each size."""
    formulas = named_formulas(design)
    found = []
    for index, (label, one) in enumerate(of_bodies.items()):
        measures: Mapping[str, float] = {name: value.mm for name, value in one.values.items()}
        ease = {each.measure: each.values[index] for each in design.sizes.ease}
        found.append(Environment(label, measures, ease, formulas, dimensions=design.sizes.dimensions_of(label)))
    return Sized(of_bodies.labels, tuple(found))
