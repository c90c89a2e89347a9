"""Shops as their tills see them, and what is wanted of them."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal, NamedTuple

Kind = Literal["yarn", "hook", "notion"]


@dataclass(frozen=True, slots=True)
class Wanted:
    """So many of one thing: balls of a colour, a hook, a notion. `mixed` means that its balls may be of several dye lots."""

    key: str
    label: str
    kind: Kind
    count: int
    mixed: bool


class Pack(NamedTuple):
    """Several balls sold as one, at one price."""

    units: int
    price: Decimal


@dataclass(frozen=True, slots=True)
class Listing:
    """What a shop asks for one, or for a pack; `stock` are the pieces of each lot there, None where any number is."""

    price: Decimal
    packs: tuple[Pack, ...] = ()
    stock: tuple[int, ...] | None = None

    def most(self, mixed: bool) -> float:
        """How many can be bought here together."""
        if self.stock is None:
            return float("inf")
        return sum(self.stock) if mixed else max(self.stock)


@dataclass(frozen=True, slots=True)
class ByPieces:
    """Of each `of` pieces, dearest first, the last `reduced` cost `share` % less (all of it where they are free)."""

    on: frozenset[str]
    of: int
    reduced: int
    share: Decimal


@dataclass(frozen=True, slots=True)
class PercentOff:
    """A percentage off each line, once what is left to pay of all of them comes to `over`."""

    on: frozenset[str]
    share: Decimal
    over: Decimal


@dataclass(frozen=True, slots=True)
class AmountOff:
    """A sum off, taken from the lines in their order, once what is left to pay of them comes to `over`."""

    on: frozenset[str]
    amount: Decimal
    over: Decimal


Offer = ByPieces | PercentOff | AmountOff


@dataclass(frozen=True, slots=True)
class Shop:
    """A shop with one currency (its code, and the places of its smallest coin).

    `choices` are the sets of offers, by number, of which its till takes the cheapest: one set of all where they combine,
    else each largest set in which nothing is reduced by two. `rate` is what one unit costs in the total's currency.
    """

    key: str
    title: str
    currency: str
    places: int
    rate: Decimal
    listings: Mapping[str, Listing]
    offers: tuple[Offer, ...]
    choices: tuple[tuple[int, ...], ...]
    delivery: Decimal
    free_over: Decimal | None


@dataclass(frozen=True, slots=True)
class Bought:
    """So many single pieces of one thing, and so many of each of its packs."""

    key: str
    singles: int
    packs: tuple[int, ...]

    def units(self, listing: Listing) -> int:
        """Pieces in all."""
        return self.singles + sum(count * pack.units for count, pack in zip(self.packs, listing.packs, strict=True))


def choices(offers: tuple[Offer, ...], combine: bool) -> tuple[tuple[int, ...], ...]:
    """The sets of offers that a till may give together.

    >>> oat, both = frozenset({"oat"}), frozenset({"oat", "kelp"})
    >>> half, tenth = Decimal(50), Decimal(10)
    >>> choices((ByPieces(oat, 2, 1, half), PercentOff(both, tenth, Decimal(0)), ByPieces(frozenset({"kelp"}), 3, 1, half)), False)
    ((0, 2), (1,))
    """
    if combine:
        return (tuple(range(len(offers))),)
    found: list[tuple[int, ...]] = [()]
    for number, offer in enumerate(offers):
        found += [(*some, number) for some in found if all(not offer.on & offers[other].on for other in some)]
    largest = [some for some in found if not any(set(some) < set(other) for other in found)]
    return tuple(sorted(largest))
