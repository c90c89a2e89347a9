"""Formulas worked out for one size: body, ease, named lengths and levels, and what is graded so far.

In: the design's formulas and one size's body. Out: lengths in mm. Lengths and levels are worked
out on first use, so that they may refer to pieces graded earlier.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from gaugewright.design.model import Design, Formula
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.formulas.evaluate import evaluate
from gaugewright.formulas.nodes import Binary, Call, FormulaError, Name, Negative, Node
from gaugewright.units import Quantity


@dataclass(slots=True)
class Environment:
    """One size's names. `answers` maps a call's name (`edge`, `finished`, ...) to what answers it, in mm.

    `own` holds what a name means inside one piece only; `known` keeps what has been worked out.
    """

    size: str
    body: Mapping[str, float]
    ease: Mapping[str, float]
    formulas: Mapping[str, Formula]
    answers: Mapping[str, "Answer"] = field(default_factory=dict)
    known: dict[str, float] = field(default_factory=dict)
    own: Mapping[str, float] = field(default_factory=dict)
    dimensions: Mapping[str, float] = field(default_factory=dict)

    def within(self, own: Mapping[str, float]) -> "Environment":
        """The same size inside one piece, where more names have a meaning (its total)."""
        return replace(self, own=own)

    def length(self, formula: Formula) -> float:
        """The formula's length in mm; a located problem if it isn't a length."""
        quantity = self.quantity(formula)
        if quantity.dimension != "length":
            message = f"{formula.text!r} gives a {quantity.dimension} where a length is needed"
            raise ProblemsFound([Problem("not-a-length", message, formula.origin, "add a unit, such as cm", self.size)])
        return quantity.amount

    def share_or_length(self, formula: Formula, whole: float) -> float:
        """A length in mm, or a share ("35 %") of `whole`."""
        quantity = self.quantity(formula)
        return quantity.amount if quantity.dimension == "length" else quantity.amount * whole

    def quantity(self, formula: Formula) -> Quantity:
        """The formula's value; its faults are located in the formula's own text."""
        try:
            return self.value(formula.node)
        except FormulaError as fault:
            origin = formula.origin.shifted(fault.column)
            raise ProblemsFound([Problem("formula-fault", fault.message, origin, fault.hint, self.size)]) from None

    def value(self, node: Node) -> Quantity:
        """A node's value; raises FormulaError with a column of the formula it stands in."""
        return evaluate(node, self._name, self._call)

    def _name(self, name: Name) -> Quantity:
        family, _, measure = name.name.partition(".")
        if family in ("body", "ease", "size"):
            values = {"body": self.body, "ease": self.ease, "size": self.dimensions}[family]
            if measure in values:
                return Quantity(values[measure], "length")
            hint = {
                "body": "give it under sizes: own:, or a bust or chest by which it is judged", "ease": f"add {measure} under sizes: ease:",
                "size": f"add {measure} under sizes: dimensions:",
            }[family]
            raise FormulaError(f"{name.name} is not known for this size", name.column, hint)
        if name.name in self.own:
            return Quantity(self.own[name.name], "length")
        if name.name not in self.formulas:
            raise FormulaError(f"{name.name} means nothing here", name.column, "write the length itself, such as 20 cm")
        if name.name not in self.known:
            self._work_out(name.name)
        return Quantity(self.known[name.name], "length")

    def _work_out(self, name: str) -> None:
        """A named length and all it needs, with a stack of its own: a spec may chain more names than Python nests calls."""
        waiting = [name]
        while waiting:
            formula = self.formulas[waiting[-1]]
            wanted = (n for n in lengths_needed(formula.node) if n.name in self.formulas and n.name not in self.known)
            needed = next(wanted, None)
            if needed is None:
                self.known[waiting.pop()] = self.length(formula)
            elif needed.name in waiting:
                message, origin = f"{needed.name} needs itself", formula.origin.shifted(needed.column)
                raise ProblemsFound([Problem("formula-cycle", message, origin, f"write a length for {needed.name}", self.size)])
            else:
                waiting.append(needed.name)

    def _call(self, call: Call, _arguments: tuple[Node, ...]) -> Quantity:
        return Quantity(self.answers[call.function](call, self), "length")


def lengths_needed(node: Node) -> Iterator[Name]:
    """The names a formula needs the length of: not those of pieces, edges and fabrics inside its calls."""
    match node:
        case Name():
            yield node
        case Negative(operand=operand):
            yield from lengths_needed(operand)
        case Binary(left=left, right=right):
            yield from lengths_needed(left)
            yield from lengths_needed(right)
        case Call(function="edge" | "finished"):
            return
        case Call(function=function, arguments=arguments):
            for argument in arguments[:1] if function == "in_rows" else arguments:
                yield from lengths_needed(argument)


Answer = Callable[[Call, Environment], float]


def named_formulas(design: Design) -> dict[str, Formula]:
    """Lengths and levels by name; the spec reader has made sure that no name is both."""
    return {**dict(design.lengths), **dict(design.levels)}
