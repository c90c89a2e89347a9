"""Text to nodes, by recursive descent.

    sum     = product { ("+" | "-") product }
    product = signed { ("*" | "/") signed }
    signed  = "-" signed | atom
    atom    = number [unit] | name | name "(" [sum { "," sum }] ")" | "(" sum ")"

A fraction binds to its unit ("1/2 in" is half an inch) and to a whole number before it ("2 1/2").
A fraction with neither is an ordinary division, so `around / 1/2` is what arithmetic says it is.
Length and depth are bounded: a formula is a line somebody typed.
"""

import re
from fractions import Fraction

from gaugewright.formulas.nodes import Binary, Call, FormulaError, Name, Negative, Node, Number, Operator
from gaugewright.units import LARGEST, NUMBER, UNIT, Dimension, Quantity, UnitError, number_value, unit_named

LONGEST = 500
DEEPEST = 50

_SPACE = re.compile(r"[ \t\r\n\u00a0]*")
_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*(?:\.[A-Za-z_][A-Za-z0-9_]*)*")
_SIGNS: dict[str, Operator] = {"+": "+", "-": "-", "−": "-", "*": "*", "×": "*", "/": "/", "÷": "/"}


def parse_formula(text: str) -> Node:
    """The formula's tree, or a `FormulaError` with its column and a hint.

    >>> parse_formula("1/2 in").quantity.amount
    12.7
    """
    if len(text) > LONGEST:
        raise FormulaError(
            f"this formula has {len(text)} characters, more than {LONGEST}", LONGEST, "name parts of it under `lengths`"
        )
    reader = _Reader(text)
    if reader.at_end():
        raise FormulaError("a formula is expected, but nothing is written", 0, "write a length such as 20 cm")
    node = reader.sum(0)
    if not reader.at_end():
        raise reader.unexpected()
    return node


class _Reader:
    """A cursor over one formula's text."""

    def __init__(self, text: str) -> None:
        self.text, self.at = text, 0

    def peek(self) -> str:
        space = _SPACE.match(self.text, self.at)
        assert space is not None
        self.at = space.end()
        return self.text[self.at : self.at + 1]

    def at_end(self) -> bool:
        return self.peek() == ""

    def sum(self, depth: int) -> Node:
        return self._chain("+-", depth)

    def _chain(self, operators: str, depth: int) -> Node:
        """Operators of one rank, taken from left to right."""
        left = self._link(operators, depth)
        while (sign := _SIGNS.get(self.peek())) and sign in operators:
            column = self.at
            self.at += 1
            left = Binary(sign, left, self._link(operators, depth), column)
        return left

    def _link(self, operators: str, depth: int) -> Node:
        return self._chain("*/", depth) if operators == "+-" else self.signed(depth)

    def signed(self, depth: int) -> Node:
        self._too_deep(depth)
        if _SIGNS.get(self.peek()) == "-":
            column = self.at
            self.at += 1
            return Negative(self.signed(depth + 1), column)
        return self.atom(depth)

    def _too_deep(self, depth: int) -> None:
        if depth > DEEPEST:
            raise FormulaError(
                f"this formula is nested more than {DEEPEST} deep", self.at, "name parts of it under `lengths`"
            )

    def atom(self, depth: int) -> Node:
        found, column = self.peek(), self.at
        if found == "(":
            self.at += 1
            node = self.sum(depth + 1)
            self._close(column)
            return node
        if number := NUMBER.match(self.text, self.at):
            return self.number(number)
        if name := _NAME.match(self.text, self.at):
            self.at = name.end()
            if self.text[self.at : self.at + 1] == "(":
                return self.call(name.group(), column, depth)
            return Name(name.group(), column)
        raise self.unexpected("a number, a name or a bracket")

    def call(self, function: str, column: int, depth: int) -> Node:
        opening = self.at
        self.at += 1
        arguments: list[Node] = []
        while self.peek() != ")":
            if arguments:
                if self.peek() != ",":
                    self._close(opening)
                self.at += 1
            arguments.append(self.sum(depth + 1))
        self.at += 1
        return Call(function, tuple(arguments), column)

    def _close(self, opening: int) -> None:
        if self.peek() != ")":
            if self.at_end():
                raise FormulaError("this bracket is never closed", opening, f"write {self.text.strip()})")
            raise self.unexpected("an operator or a closing bracket")
        self.at += 1

    def number(self, number: re.Match[str]) -> Number:
        column = self.at
        self.at = number.end()
        self.peek()
        unit = UNIT.match(self.text, self.at)
        try:
            if unit:
                value, dimension = self.with_unit(number, unit)
            elif number["lone_top"]:  # an ordinary division: "/bottom" is read next
                value, dimension = Fraction(number["lone_top"][:24]), "number"
                self.at = number.end("lone_top")
            else:
                value, dimension = number_value(number, column), "number"
        except UnitError as fault:
            raise FormulaError(fault.message, fault.column, fault.hint) from None
        if abs(value) > LARGEST:
            raise FormulaError("this amount is too large to be meant", column, "check the number and its unit")
        return Number(Quantity(float(value), dimension), column)

    def with_unit(self, number: re.Match[str], unit: re.Match[str]) -> tuple[Fraction, Dimension]:
        """A name after a number is a unit; if there is no such unit, a `*` was probably left out."""
        name, value = unit.group(), number_value(number, number.start())
        self.at = unit.end()
        try:
            factor, dimension = unit_named(name, unit.start())
        except UnitError as fault:
            near = "did you mean" in fault.hint and abs(len(name) - 2) < 2
            hint = fault.hint if near else f"write {number.group()} * {name} to multiply"
            raise UnitError(fault.message, fault.column, hint) from None
        return value * factor, dimension

    def unexpected(self, wanted: str = "an operator (+ - * /) or the end") -> FormulaError:
        found, column = self.peek(), self.at
        if not found:
            return FormulaError(
                f"the formula ends where {wanted} is expected", column, "complete it, or take away the last sign"
            )
        comma = re.compile(r"([0-9]+),([0-9]+)").search(self.text, max(0, column - 12))
        if found == "," and comma and comma.end(1) == column:
            return FormulaError("a comma can't stand inside a number", column, f"write {comma[1]}.{comma[2]}")
        hint = "write powers as products, such as a * a" if self.text[column - 1 : column + 1] == "**" else ""
        hint = hint or f"take away {found!r}, or write the operator that belongs before it"
        return FormulaError(f"{wanted} is expected here, not {found!r}", column, hint)
