"""Buttonholes: the formulas parsed, the place kept."""

from typing import Any

from gaugewright.design.buttonholes import Buttonholes
from gaugewright.design.origins import Origins, Path


def resolve_buttonholes(part: Any, path: Path, origins: Origins) -> Buttonholes | None:
    """Buttonholes with their formulas parsed; None where the piece has none."""
    if part is None:
        return None
    piece, _, edge = part.edge.partition(".")
    first, last = (origins.formula(getattr(part, key), (*path, key)) for key in ("first", "last"))
    return Buttonholes(part.count, part.size.mm, (piece, edge), first, last, origins.at(path, key=True))
