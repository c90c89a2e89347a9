"""Tubes opened at their end, as designed."""

from dataclasses import dataclass
from typing import Any

from gaugewright.design.formula import Formula
from gaugewright.design.origins import Origins, Path
from gaugewright.errors import Origin


@dataclass(frozen=True, slots=True)
class Opened:
    """The last round shared between the edge `left`, at its end, and the part that `rest` names; no rows of its own."""

    leave: Formula
    left: str
    rest: str
    fabric: str
    origin: Origin


def resolve_opened(part: Any, below: str, path: Path, origins: Origins) -> Opened:
    """A tube's opening with its formula parsed, in the fabric `below` it."""
    return Opened(origins.formula(part.leave, (*path, "leave")), part.left, part.rest, below, origins.at(path[:-1]))
