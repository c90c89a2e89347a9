"""Which dimensions may meet: lengths add to lengths, and only a number multiplies one.

The one place that holds these rules; `evaluate` asks here, and so does the reader, which knows no
sizes yet but can already tell that a length is added to a plain number.
"""

from collections.abc import Callable

from gaugewright.formulas.nodes import Binary, Call, FormulaError, Name, Negative, Node, Number
from gaugewright.units import Dimension

BUILT_IN = ("min", "max")


def combined(node: Binary, left: Dimension, right: Dimension) -> Dimension:
    """The dimension an operator gives, or a `FormulaError` at the operator."""
    if node.operator in "+-":
        if left == right:
            return left
        word = "added to" if node.operator == "+" else "taken from"
        first, second = (left, right) if node.operator == "+" else (right, left)
        hint = "give the number a unit, such as cm" if "number" in (left, right) else "use one dimension throughout"
        raise FormulaError(f"a {first} can't be {word} a {second}", node.column, hint)
    if right == "number":
        return left
    if node.operator == "/" and left == right:
        return "number"
    if node.operator == "*" and left == "number":
        return right
    verb = "multiplied" if node.operator == "*" else "divided"
    raise FormulaError(
        f"a {left} can't be {verb} by a {right}",
        node.column,
        f"take the unit from one of them: only a number {'multiplies' if verb == 'multiplied' else 'divides'} a {left}"
        if left != "number"
        else "turn the two round: a length may be divided by a number",
    )


def agreed(call: Call, dimensions: tuple[Dimension, ...]) -> Dimension:
    """The dimension of `min` and `max`: that of all their arguments."""
    if not dimensions:
        raise FormulaError(
            f"{call.function}() needs at least one value", call.column, f"write {call.function}(20 cm, 30 cm)"
        )
    for dimension, argument in zip(dimensions, call.arguments, strict=True):
        if dimension != dimensions[0]:
            message = f"{call.function}() compares a {dimensions[0]} with a {dimension}"
            raise FormulaError(message, argument.column, "give all its values the same dimension")
    return dimensions[0]


def dimension_of(
    node: Node, of_name: Callable[[Name], Dimension | None], of_call: Callable[[Call], Dimension | None]
) -> Dimension | None:
    """A formula's dimension without its value; None where a name's dimension isn't known."""
    if isinstance(node, Number):
        return node.quantity.dimension
    if isinstance(node, Name):
        return of_name(node)
    if isinstance(node, Negative):
        return dimension_of(node.operand, of_name, of_call)
    if isinstance(node, Binary):
        left = dimension_of(node.left, of_name, of_call)
        right = dimension_of(node.right, of_name, of_call)
        return combined(node, left, right) if left and right else None
    if node.function in BUILT_IN:
        parts = tuple(dimension_of(argument, of_name, of_call) for argument in node.arguments)
        known = tuple(part for part in parts if part)
        return agreed(node, known) if len(known) == len(parts) else None
    return of_call(node)
