"""Raglan yokes as designed, with their formulas parsed."""

from typing import Any, NamedTuple

from gaugewright.design.formula import Formula, ForLength, ForRows
from gaugewright.design.origins import Origins, Path
from gaugewright.errors import Origin


class Raglan(NamedTuple):
    """Rounds in which back, front and sleeves widen: `body` and `sleeve` are the girths below the
    arm, the `underarm` chains included; `neck_sleeve` is a sleeve's width at the neck (None: a sixth)."""

    extent: ForLength | ForRows
    body: Formula
    sleeve: Formula
    underarm: Formula
    neck_sleeve: Formula | None
    fabric: str
    colour: str
    origin: Origin

    @property
    def formulas(self) -> tuple[Formula, ...]:
        """The widths, in the order of their keys."""
        found = (self.body, self.sleeve, self.underarm, self.neck_sleeve)
        return tuple(formula for formula in found if formula is not None)


def resolve_raglan(part: Any, fabric: str, path: Path, origins: Origins) -> Raglan:
    """A raglan with its formulas parsed."""

    def formula(key: str) -> Formula:
        return origins.formula(getattr(part, key), (*path, key))

    extent = ForLength(formula("length")) if part.length is not None else ForRows(part.rounds)
    neck_sleeve = None if part.neck_sleeve is None else formula("neck_sleeve")
    return Raglan(
        extent, formula("body"), formula("sleeve"), formula("underarm"), neck_sleeve, part.fabric or fabric, part.colour or "",
        origins.at(path[:-1]),
    )
