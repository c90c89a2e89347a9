"""Formulas: plain arithmetic over lengths, as a maker writes it in the spec.

In: text such as `(around - finished(back.width)) / 2 - 4 cm`. Out: a tree of frozen nodes, each
with its column in the text, and its value once somebody says what the names and calls mean.
Nothing here is ever handed to Python to evaluate.
"""

from gaugewright.formulas.dimensions import dimension_of
from gaugewright.formulas.evaluate import evaluate
from gaugewright.formulas.names import Cycle, calls_in, names_in, order_by_reference
from gaugewright.formulas.nodes import Binary, Call, FormulaError, Name, Negative, Node, Number
from gaugewright.formulas.parser import parse_formula

__all__ = [
    "Binary",
    "Call",
    "Cycle",
    "FormulaError",
    "Number",
    "Name",
    "Negative",
    "Node",
    "calls_in",
    "dimension_of",
    "evaluate",
    "names_in",
    "order_by_reference",
    "parse_formula",
]
