"""What a formula is made of. Every node knows its column, so that a fault can be pointed at."""

from dataclasses import dataclass
from typing import Literal

from gaugewright.units import Quantity

Operator = Literal["+", "-", "*", "/"]


class FormulaError(Exception):
    """A formula that can't be read or worked out; `column` counts from 0 within its text."""

    def __init__(self, message: str, column: int = 0, hint: str = "") -> None:
        self.message, self.column, self.hint = message, column, hint
        super().__init__(message)


@dataclass(frozen=True, slots=True)
class Number:
    """A number, with or without a unit: `20 cm`, `16 1/2 in`, `30 %`, `0.42`."""

    quantity: Quantity
    column: int


@dataclass(frozen=True, slots=True)
class Name:
    """A name, perhaps with dots: `around`, `body.bust`."""

    name: str
    column: int


@dataclass(frozen=True, slots=True)
class Negative:
    """A minus sign before something."""

    operand: "Node"
    column: int


@dataclass(frozen=True, slots=True)
class Binary:
    """Two nodes with an operator; the column is the operator's."""

    operator: Operator
    left: "Node"
    right: "Node"
    column: int


@dataclass(frozen=True, slots=True)
class Call:
    """A named rule applied to what stands in its brackets: `edge(back.armhole)`."""

    function: str
    arguments: "tuple[Node, ...]"
    column: int


Node = Number | Name | Negative | Binary | Call
