"""Openings worked into a piece, as designed: a row or round that passes stitches over and chains over them."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from gaugewright.design.formula import Formula, ForRows
from gaugewright.design.origins import Origins, Path
from gaugewright.errors import Origin
from gaugewright.vocabulary import OpeningPlace

MIRRORED: dict[OpeningPlace, OpeningPlace] = {"start": "end", "end": "start", "middle": "middle"}
"""Where an opening lies in the mirrored twin of a piece worked in rounds; rows are turned over instead."""


@dataclass(frozen=True, slots=True)
class Slit:
    """An opening `width` wide, `inset` from the start or end of its round (None: a stitch); its `edge` goes round it."""

    edge: str
    width: Formula
    at: OpeningPlace
    inset: Formula | None
    fabric: str
    colour: str
    origin: Origin

    @property
    def extent(self) -> ForRows:
        """One row or round."""
        return ForRows(1)


def resolve_slit(part: Any, fabric: str, path: Path, origins: Origins, mirrored: bool) -> Slit:
    """An opening with its formulas parsed, at the other end of the round where `mirrored`."""
    inset = None if part.inset is None else origins.formula(part.inset, (*path, "inset"))
    return Slit(
        part.edge, origins.formula(part.width, (*path, "width")), MIRRORED[part.at] if mirrored else part.at, inset,
        part.fabric or fabric, part.colour or "", origins.at(path[:-1]),
    )


def slit_edges(sections: Iterable[object]) -> tuple[str, ...]:
    """The names of the edges round the openings among a piece's sections."""
    return tuple(section.edge for section in sections if isinstance(section, Slit))
