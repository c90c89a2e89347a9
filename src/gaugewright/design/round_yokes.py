"""Circular yokes as designed, with their formulas parsed."""

from typing import Any, NamedTuple

from gaugewright.design.formula import Formula, ForLength, ForRows
from gaugewright.design.origins import Origins, Path
from gaugewright.errors import Origin


class RoundYoke(NamedTuple):
    """Rounds of increases spread round a yoke: `body` and `sleeve` are the girths below the arm, the
    `underarm` chains included; `at` are shares of the depth from the neck (None: at even intervals),
    `increases` how many such rounds (None: as few as the widening allows)."""

    extent: ForLength | ForRows
    body: Formula
    sleeve: Formula
    underarm: Formula
    increases: int | None
    at: tuple[float, ...] | None
    fabric: str
    colour: str
    origin: Origin

    @property
    def formulas(self) -> tuple[Formula, ...]:
        """The widths, in the order of their keys."""
        return (self.body, self.sleeve, self.underarm)


def resolve_round_yoke(part: Any, fabric: str, path: Path, origins: Origins) -> RoundYoke:
    """A circular yoke with its formulas parsed."""

    def formula(key: str) -> Formula:
        return origins.formula(getattr(part, key), (*path, key))

    extent = ForLength(formula("length")) if part.length is not None else ForRows(part.rounds)
    return RoundYoke(
        extent, formula("body"), formula("sleeve"), formula("underarm"), part.increases, part.at, part.fabric or fabric, part.colour or "",
        origins.at(path[:-1]),
    )
