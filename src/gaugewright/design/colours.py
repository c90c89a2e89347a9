"""A piece's colours as designed: bands by height, stripes by sequence, blocks side by side."""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.design.formula import Formula
from gaugewright.errors import Origin


@dataclass(frozen=True, slots=True)
class Bands:
    """Colour bands from the bottom edge up to `top` (None: the piece's total): heights as formulas or
    shares, None for the rest."""

    key: str
    top: Formula | None
    heights: tuple[Formula | None, ...]
    origin: Origin


@dataclass(frozen=True, slots=True)
class Stripe:
    """One stripe of a sequence: so many rows, or a length."""

    colour: str
    rows: int | None
    length: Formula | None
    origin: Origin


@dataclass(frozen=True, slots=True)
class Match:
    """The height `own` of this piece (None: its beginning) lies beside the height `at` of another (None: its end)."""

    piece: str
    at: Formula | None
    own: Formula | None
    origin: Origin


@dataclass(frozen=True, slots=True)
class Stripes:
    """A sequence repeated over a piece: from the height `begin` (None: the bottom edge), or as a `match` says.

    `carry` is the most rows over which a resting yarn is carried up the edge; over more it is cut.
    """

    sequence: tuple[Stripe, ...]
    begin: Formula | None
    match: Match | None
    carry: int
    origin: Origin


@dataclass(frozen=True, slots=True)
class Block:
    """A block of one colour within a row: its width as a length or a share, None for the rest."""

    colour: str
    width: Formula | None
    origin: Origin


@dataclass(frozen=True, slots=True)
class BlockRows:
    """Rows up to the height `top` (None: the last row) with the same blocks, in order from the starting edge."""

    top: Formula | None
    blocks: tuple[Block, ...]
    origin: Origin


@dataclass(frozen=True, slots=True)
class Colours:
    """The yarns of a piece in order of use, and at most one plan for them: without one, the first is its only yarn."""

    order: tuple[str, ...]
    bands: Bands | None = None
    stripes: Stripes | None = None
    blocks: tuple[BlockRows, ...] = ()

    def formulas(self) -> Iterator[Formula]:
        """All formulas of the plan."""
        found: list[Formula | None] = []
        if self.bands:
            found += [self.bands.top, *self.bands.heights]
        if self.stripes:
            match = self.stripes.match
            found += [stripe.length for stripe in self.stripes.sequence]
            found += [self.stripes.begin, *((match.at, match.own) if match else ())]
        for part in self.blocks:
            found += [part.top, *(block.width for block in part.blocks)]
        yield from (formula for formula in found if formula is not None)

    @property
    def carry(self) -> int:
        """The most rows over which a yarn is carried up the edge; bands are cut."""
        return self.stripes.carry if self.stripes else 0
