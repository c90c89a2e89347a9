"""Wedges of short rows as designed, with their formulas parsed."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal

from gaugewright.design.formula import Formula
from gaugewright.design.origins import Origins, Path
from gaugewright.errors import Origin

Deepest = Literal["middle", "starting", "far"]


@dataclass(frozen=True, slots=True)
class Wedge:
    """More length at `at` than at the sides: `depth` there, nothing from `point` to a side edge on, and rows
    that grow shorter down to `shortest` (None: a third of the width)."""

    depth: Formula
    point: Formula
    shortest: Formula | None
    at: Deepest
    fabric: str
    origin: Origin

    @property
    def formulas(self) -> tuple[Formula, ...]:
        """The lengths, in the order of their keys."""
        return tuple(formula for formula in (self.depth, self.point, self.shortest) if formula is not None)


def resolve_wedge(part: Any, below: str, path: Path, origins: Origins, side_of: Callable[[str], str]) -> Wedge:
    """A wedge with its formulas parsed; it goes on in the fabric of the section below it."""

    def formula(key: str) -> Formula:
        return origins.formula(getattr(part, key), (*path, key))

    shortest = None if part.shortest is None else formula("shortest")
    return Wedge(formula("depth"), formula("point"), shortest, side_of(part.at), below, origins.at(path[:-1]))  # type: ignore[arg-type]
