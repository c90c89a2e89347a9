"""Sections shaped at their edges, as designed: armholes, raglan edges, divided necks, neck edges of half fronts, sleeve caps."""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.design.formula import Extent, Formula
from gaugewright.design.opened import Opened
from gaugewright.design.raglans import Raglan
from gaugewright.design.round_yokes import RoundYoke
from gaugewright.design.triangles import Triangle
from gaugewright.design.wedges import Wedge
from gaugewright.design.slits import Slit
from gaugewright.errors import Origin
from gaugewright.vocabulary import HalfNeckShape, NeckShape, RowEdge


@dataclass(frozen=True, slots=True)
class Armhole:
    """Shaped in to the width `target`, `block` of it at once; `at` is "both", "starting" or "far"."""

    extent: Extent
    target: Formula
    block: Formula | None
    at: str
    fabric: str
    colour: str
    origin: Origin


@dataclass(frozen=True, slots=True)
class RaglanEdge:
    """Shaped in to the width `target` at the neck, in one line after the `block`; `at` as of an armhole."""

    extent: Extent
    target: Formula
    block: Formula | None
    at: str
    fabric: str
    colour: str
    origin: Origin


@dataclass(frozen=True, slots=True)
class Shoulders:
    """The top edge divided into shoulder, neck, shoulder; works no rows but those of its slope,
    which are the last ones of the section below it, or a single one of `rising` stitches."""

    neck: Formula
    fabric: str
    origin: Origin
    slope: Formula | None = None
    rising: bool = False


@dataclass(frozen=True, slots=True)
class Neck:
    """The divided top; its rows, and those of the slope, are the last ones of the section below it.

    Without a `width` it stands above raglan edges, which leave it all that is between them.
    """

    shape: NeckShape
    width: Formula | None
    depth: Formula
    slope: Formula | None
    fabric: str
    origin: Origin
    rising: bool = False


@dataclass(frozen=True, slots=True)
class NeckEdge:
    """The top of a half front, whose neck edge is `at` one side; rows as of a divided top."""

    shape: HalfNeckShape
    width: Formula | None
    depth: Formula
    at: RowEdge
    slope: Formula | None
    fabric: str
    origin: Origin
    rising: bool = False


@dataclass(frozen=True, slots=True)
class Cap:
    """A set-in sleeve's top: its edge fits the edges that `opening` adds up, on the mean `depth` of them.
    Its rows follow from that."""

    opening: Formula
    depth: Formula
    ease: Formula | None
    block: Formula | None
    fabric: str
    colour: str
    origin: Origin
    extent: None = None


def shape_formulas(section: object) -> Iterator[Formula]:
    """The formulas of a section that say what its edges are shaped to, in the order of their keys."""
    found: tuple[Formula | None, ...]
    match section:
        case Armhole(target=target, block=block) | RaglanEdge(target=target, block=block):
            found = (target, block)
        case Neck(width=width, depth=depth, slope=slope) | NeckEdge(width=width, depth=depth, slope=slope):
            found = (width, depth, slope)
        case Cap(opening=opening, ease=ease, block=block):
            found = (opening, ease, block)
        case Raglan() | RoundYoke() | Wedge() | Triangle():
            found = section.formulas
        case Opened(leave=leave):
            found = (leave,)
        case Slit(width=width, inset=inset):
            found = (width, inset)
        case _:
            found = (getattr(section, "neck", None), getattr(section, "slope", None))
    yield from (formula for formula in found if formula is not None)
