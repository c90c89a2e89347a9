"""Formulas as designed, and how far a section goes by them."""

from dataclasses import dataclass

from gaugewright.errors import Origin
from gaugewright.formulas.nodes import Node


@dataclass(frozen=True, slots=True)
class Formula:
    """A parsed formula with the place and the text it came from."""

    node: Node
    text: str
    origin: Origin


@dataclass(frozen=True, slots=True)
class ToLevel:
    """Up to a height above the hem: a named level, or a formula of its own."""

    height: Formula


@dataclass(frozen=True, slots=True)
class ForLength:
    """For a length of mm."""

    length: Formula


@dataclass(frozen=True, slots=True)
class ForRows:
    """For so many rows or rounds."""

    rows: int


@dataclass(frozen=True, slots=True)
class Rest:
    """What the other sections leave of the piece's total."""


Extent = ToLevel | ForLength | ForRows | Rest
