"""Triangles as designed, with their formula parsed."""

from typing import Any, NamedTuple

from gaugewright.design.formula import Formula
from gaugewright.design.origins import Origins, Path
from gaugewright.errors import Origin


class Triangle(NamedTuple):
    """Rows in a V out from the middle of a long edge, `width` from tip to tip. Its rows follow from that, so it
    has no extent of its own."""

    width: Formula
    fabric: str
    colour: str
    origin: Origin
    extent: None = None

    @property
    def formulas(self) -> tuple[Formula, ...]:
        """Its one length."""
        return (self.width,)


def resolve_triangle(part: Any, fabric: str, path: Path, origins: Origins) -> Triangle:
    """A triangle with its formula parsed."""
    return Triangle(origins.formula(part.width, (*path, "width")), part.fabric or fabric, part.colour or "", origins.at(path[:-1]))
