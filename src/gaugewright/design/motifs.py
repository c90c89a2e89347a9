"""Motifs as designed, and the grid that many of them are joined to."""

from dataclasses import dataclass

from gaugewright.design.formula import Formula
from gaugewright.errors import Origin
from gaugewright.vocabulary import ColourPlan, TakeUp


@dataclass(frozen=True, slots=True)
class Motif:
    """Rounds out from a closed centre that increase at their corners only: so many `rounds`, or as many as bring
    it nearest to the `target` from side to side. Its counts and rows follow from each other, so it has no extent."""

    sides: int
    rounds: int | None
    target: Formula | None
    fabric: str
    colour: str
    origin: Origin
    extent: None = None


@dataclass(frozen=True, slots=True)
class Grid:
    """Motifs joined to a width and a length; `turns` are the yarns they begin in, by turns (none: the piece's own)."""

    across: Formula
    down: Formula
    method: str
    take_up: TakeUp
    turns: tuple[str, ...]
    plan: ColourPlan
    origin: Origin
