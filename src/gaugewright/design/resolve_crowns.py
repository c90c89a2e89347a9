"""Crowns: the formula parsed, the place kept."""

from typing import Any

from gaugewright.design.crowns import Crown
from gaugewright.design.origins import Origins, Path


def resolve_crown(part: Any, fabric: str, path: Path, origins: Origins) -> Crown:
    """A crown with its formula parsed."""
    target = None if part.target is None else origins.formula(part.target, (*path, "target"))
    return Crown(
        target, part.stitches, part.close, part.each, part.round, part.fabric or fabric, part.colour or "", origins.at(path[:-1])
    )
