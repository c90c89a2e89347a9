"""Motifs and their grids: formulas parsed, places kept."""

from typing import Any

from gaugewright.design.motifs import Grid, Motif
from gaugewright.design.origins import Origins, Path


def resolve_motif(part: Any, fabric: str, path: Path, origins: Origins) -> Motif:
    """A motif with its formula parsed."""
    target = None if part.target is None else origins.formula(part.target, (*path, "target"))
    return Motif(part.sides, part.rounds, target, part.fabric or fabric, part.colour or "", origins.at(path[:-1]))


def resolve_grid(part: Any, path: Path, origins: Origins) -> Grid | None:
    """A grid with its formulas parsed; None where the piece has none."""
    if part is None:
        return None
    across, down = (origins.formula(getattr(part, key), (*path, key)) for key in ("across", "down"))
    return Grid(across, down, part.method, part.take_up, part.turns, part.plan, origins.at(path, key=True))
