"""Buttonholes as designed: number and width fixed, their places as formulas."""

from dataclasses import dataclass

from gaugewright.design.formula import Formula
from gaugewright.errors import Origin


@dataclass(frozen=True, slots=True)
class Buttonholes:
    """Buttonholes along one picked-up edge; `size` is the button's width in mm."""

    count: int
    size: float
    edge: tuple[str, str]
    first: Formula
    last: Formula
    origin: Origin
