"""A formula's value, once somebody says what its names and calls mean."""

import math
from collections.abc import Callable

from gaugewright.formulas.dimensions import BUILT_IN, agreed, combined
from gaugewright.formulas.nodes import Binary, Call, FormulaError, Name, Negative, Node, Number
from gaugewright.units import Quantity

Lookup = Callable[[Name], Quantity]
CallRule = Callable[[Call, tuple[Node, ...]], Quantity]


def evaluate(node: Node, lookup: Lookup, call: CallRule) -> Quantity:
    """Works a formula out; what `lookup` and `call` raise passes through.

    >>> from gaugewright.formulas.parser import parse_formula
    >>> tree = parse_formula("(around - 4 cm) / 2")
    >>> evaluate(tree, lambda name: Quantity(1000.0, "length"), lambda call, arguments: Quantity(0.0, "number"))
    Quantity(amount=480.0, dimension='length')
    """
    if isinstance(node, Number):
        return node.quantity
    if isinstance(node, Name):
        return _finite(lookup(node), node)
    if isinstance(node, Negative):
        amount, dimension = evaluate(node.operand, lookup, call)
        return Quantity(-amount, dimension)
    if isinstance(node, Binary):
        return _operate(node, evaluate(node.left, lookup, call), evaluate(node.right, lookup, call))
    if node.function in BUILT_IN:
        values = tuple(evaluate(argument, lookup, call) for argument in node.arguments)
        dimension = agreed(node, tuple(value.dimension for value in values))
        choose = min if node.function == "min" else max
        return Quantity(choose(value.amount for value in values), dimension)
    return _finite(call(node, node.arguments), node)


def _operate(node: Binary, left: Quantity, right: Quantity) -> Quantity:
    dimension = combined(node, left.dimension, right.dimension)
    if node.operator == "+":
        amount = left.amount + right.amount
    elif node.operator == "-":
        amount = left.amount - right.amount
    elif node.operator == "*":
        amount = left.amount * right.amount
    elif right.amount == 0:
        raise FormulaError("this divides by zero", node.column, "check what stands after the /")
    else:
        amount = left.amount / right.amount
    return _finite(Quantity(amount, dimension), node)


def _finite(value: Quantity, node: Node) -> Quantity:
    if not math.isfinite(value.amount):
        raise FormulaError("this comes to no finite number", node.column, "check the numbers in it")
    return value
