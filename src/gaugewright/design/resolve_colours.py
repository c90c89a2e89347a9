"""Colours: the shared bands and stripes of a spec, and what each piece has."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from gaugewright.design.colours import Bands, Block, BlockRows, Colours, Match, Stripe, Stripes
from gaugewright.design.origins import Origins, Path
from gaugewright.spec import Spec
from gaugewright.trade.tails import tail


@dataclass(frozen=True, slots=True)
class SharedColours:
    """What the pieces of a spec share: its first yarn, bands and stripe sequences by name."""

    only_yarn: str
    bands: Mapping[str, Bands]
    stripes: Mapping[str, tuple[Stripe, ...]]


def shared_colours(spec: Spec, origins: Origins) -> SharedColours:
    """The bands and stripes that stand by themselves."""
    return SharedColours(
        next(iter(spec.yarns)),
        {key: _bands(key, value, ("bands", key), origins) for key, value in spec.bands.items()},
        {key: _sequence(value, ("stripes", key), origins) for key, value in spec.stripes.items()},
    )


def resolve_colours(value: Any, shared: SharedColours, path: Path, origins: Origins) -> Colours:
    """A piece's colours; one yarn where it states none."""
    if value is None or isinstance(value, str):
        return Colours((value or shared.only_yarn,))
    if value.stripes is not None:
        stripes = _stripes(value, shared, path, origins)
        return Colours(tuple(dict.fromkeys(stripe.colour for stripe in stripes.sequence)), stripes=stripes)
    if value.blocks is not None:
        rows = tuple(_block_rows(part, (*path, "blocks", index), origins) for index, part in enumerate(value.blocks))
        return Colours(tuple(dict.fromkeys(block.colour for part in rows for block in part.blocks)), blocks=rows)
    named = isinstance(value.bands, str)
    return Colours(value.order, shared.bands[value.bands] if named else _bands("", value.bands, (*path, "bands"), origins))


def _bands(key: str, value: Any, path: Path, origins: Origins) -> Bands:
    top = None if value.to == "total" else origins.formula(value.to, (*path, "to"))
    heights = tuple(
        None if text == "rest" else origins.formula(text, (*path, "heights", index)) for index, text in enumerate(value.heights)
    )
    return Bands(key, top, heights, origins.at((*path, "heights")))


def _sequence(parts: Any, path: Path, origins: Origins) -> tuple[Stripe, ...]:
    found = []
    for index, part in enumerate(parts):
        (colour, text), = part.items()
        place = (*path, index, colour)
        rows = int(text) if text.isdecimal() else None
        found.append(Stripe(colour, rows, None if rows else origins.formula(text, place), origins.at(place)))
    return tuple(found)


def _stripes(value: Any, shared: SharedColours, path: Path, origins: Origins) -> Stripes:
    own, match = (*path, "stripes"), value.match
    sequence = shared.stripes[value.stripes] if isinstance(value.stripes, str) else _sequence(value.stripes, own, origins)
    matched = None if match is None else Match(
        match.to, _formula(match.at, (*path, "match", "at"), origins), _formula(match.own, (*path, "match", "own"), origins),
        origins.at((*path, "match", "to")),
    )
    carry = int(tail("carry")) if value.carry is None else value.carry
    return Stripes(sequence, _formula(value.begin, (*path, "begin"), origins), matched, carry, origins.at(own))


def _formula(text: str | None, path: Path, origins: Origins) -> Any:
    return None if text is None else origins.formula(text, path)


def _block_rows(part: Any, path: Path, origins: Origins) -> BlockRows:
    across = (*path, "across")
    if isinstance(part.across, str):
        blocks: tuple[Block, ...] = (Block(part.across, None, origins.at(across)),)
    else:
        blocks = tuple(
            Block(colour, None if text == "rest" else origins.formula(text, (*across, index, colour)), origins.at((*across, index, colour)))
            for index, one in enumerate(part.across)
            for colour, text in one.items()
        )
    top = None if part.to in (None, "total") else origins.formula(part.to, (*path, "to"))
    return BlockRows(top, blocks, origins.at(path))
