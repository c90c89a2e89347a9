"""Shaped sections: their formulas parsed, the edges they name found on their sides."""

from collections.abc import Callable
from typing import Any

from gaugewright.design.formula import Extent, ForLength, Formula, ToLevel
from gaugewright.design.origins import Origins, Path
from gaugewright.design.shapes import Armhole, Cap, Neck, NeckEdge, RaglanEdge

SHAPED = ("armhole", "raglan_edge", "neck", "neck_edge", "cap")
"""The keys that open these sections."""


def resolve_shape(
    part: Any, fabric: str, below: str, path: Path, origins: Origins, side_of: Callable[[str], str]
) -> Armhole | RaglanEdge | Neck | NeckEdge | Cap:
    """One shaped section. `below` is the fabric of the section below, whose rows a neck takes."""
    origin = origins.at(path[:-1])

    def formula(key: str) -> Formula:
        return origins.formula(getattr(part, key), (*path, key))

    def optional(key: str) -> Formula | None:
        return None if getattr(part, key) is None else formula(key)

    match path[-1]:
        case "armhole" | "raglan_edge":
            extent: Extent = ToLevel(formula("to")) if part.to is not None else ForLength(formula("length"))
            kind = Armhole if path[-1] == "armhole" else RaglanEdge
            return kind(
                extent, formula("target"), optional("block"), side_of(part.at), part.fabric or fabric, part.colour or "", origin
            )
        case "neck":
            return Neck(part.shape, optional("width"), formula("depth"), optional("slope"), below, origin, part.worked_as != "steps")
        case "neck_edge":
            at = side_of(part.at)
            return NeckEdge(part.shape, optional("width"), formula("depth"), at, optional("slope"), below, origin, part.worked_as != "steps")  # type: ignore[arg-type]
        case "cap":
            opening = origins.formula(" + ".join(f"edge({edge})" for edge in part.fit), (*path, "fit"))
            depths = " + ".join(f"depth({edge})" for edge in part.fit)
            depth = origins.formula(f"({depths}) / {len(part.fit)}", (*path, "fit"))
            return Cap(opening, depth, optional("ease"), optional("block"), fabric, part.colour or "", origin)
    raise TypeError(f"no shaped section {path[-1]}")
