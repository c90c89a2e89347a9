"""The cheapest way to buy given things in one shop, exactly, with packs and pieces to spare.

Branch and bound: each thing is covered by packs and single pieces in every way that has no piece too many to leave out
(a whole pack aside); to each full cover pieces are added as long as the bound of `least` says that a threshold might
still pay for them. Spare pieces are only of what is bought in the shop anyway.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from functools import partial
from itertools import product

from gaugewright.errors import UserError
from gaugewright.shopping.least import amounts_of, floor, least
from gaugewright.shopping.model import Bought, Listing, Shop
from gaugewright.shopping.till import ZERO, receipt

MOST_TRIED = 120_000
"""Baskets, and beginnings of baskets, looked at for one answer: some ten seconds at the most."""


@dataclass(slots=True)
class Effort:
    """How much has been looked at; too much ends in a plain refusal rather than in a guess. `ways` are those to cover a need at a shop."""

    tried: int = 0
    ways: "dict[tuple[str, Need, bool], list[Bought]]" = field(default_factory=dict)

    def spend(self, steps: int = 1) -> None:
        """Counts steps; raises `UserError` where they become too many."""
        self.tried += steps
        if self.tried > MOST_TRIED:
            raise UserError(
                "basket-too-large", f"there are too many ways to buy this for the cheapest to be found for certain (more than {MOST_TRIED:,} looked at)",
                "take out a shop that is clearly dearer, an offer or a pack that you won't use, or let fewer colours mix their lots",
            )


@dataclass(frozen=True, slots=True)
class Need:
    """So many of one thing at one shop, of which no more than `most` can be had."""

    key: str
    count: int
    most: float


@dataclass(frozen=True, slots=True)
class Basket:
    """What is bought at one shop, and what its till asks in its currency."""

    total: Decimal
    units: int
    lines: tuple[Bought, ...]

    @property
    def rank(self) -> tuple[Decimal, int]:
        """Cheaper first; of equal ones that with fewer pieces."""
        return self.total, self.units


def cheapest_at(shop: Shop, needs: Sequence[Need], spare: bool, effort: Effort) -> Basket | None:
    """The cheapest basket of one shop, or None where it doesn't have everything; without `spare` it holds what is needed to the piece."""
    if any(need.count > need.most for need in needs):
        return None
    linked = frozenset().union(*(offer.on for offer in shop.offers))
    together = [need for need in needs if need.key in linked or shop.free_over is not None]
    apart = [_ways(shop, need, spare, effort)[0] for need in needs if need not in together]
    found = _search(shop, together, spare, effort)
    lines = (*found, *apart)
    units = sum(line.units(shop.listings[line.key]) for line in lines)
    return Basket(receipt(shop, lines).total, units, lines)


def covers(listing: Listing, need: Need, spare: bool, effort: Effort) -> Iterator[Bought]:
    """Packs and single pieces that cover a need, no pack or piece of them being superfluous.

    >>> from gaugewright.shopping.model import Pack
    >>> five = Listing(Decimal(7), (Pack(5, Decimal(30)),))
    >>> [(one.singles, one.packs) for one in covers(five, Need("oat", 7, 9), True, Effort())]
    [(7, (0,)), (2, (1,))]
    >>> [(one.singles, one.packs) for one in covers(five, Need("oat", 7, 10), True, Effort())]
    [(7, (0,)), (2, (1,)), (0, (2,))]
    """
    for packs in product(*(range(-(-need.count // pack.units) + 1) for pack in listing.packs)):
        effort.spend()
        held = sum(count * pack.units for count, pack in zip(packs, listing.packs, strict=True))
        over = held - need.count
        least_used = min((pack.units for count, pack in zip(packs, listing.packs, strict=True) if count), default=0)
        if over <= 0 or (spare and over < least_used and held <= need.most):
            yield Bought(need.key, max(0, -over), packs)


def _bare(listing: Listing, one: Bought) -> Decimal:
    return one.singles * listing.price + sum((count * pack.price for count, pack in zip(one.packs, listing.packs, strict=True)), ZERO)


def _ways(shop: Shop, need: Need, spare: bool, effort: Effort) -> list[Bought]:
    """All covers, the cheapest at its full price first."""
    key = shop.key, need, spare
    if key not in effort.ways:
        effort.ways[key] = sorted(covers(shop.listings[need.key], need, spare, effort), key=partial(_plain_rank, shop.listings[need.key]))
    return effort.ways[key]


def _plain_rank(listing: Listing, one: Bought) -> tuple[Decimal, int]:
    return _bare(listing, one), one.units(listing)


def _search(shop: Shop, needs: Sequence[Need], spare: bool, effort: Effort) -> tuple[Bought, ...]:
    """Everything that an offer or a threshold links, in the cheapest way."""
    ways = [_ways(shop, need, spare, effort) for need in needs]
    search = _Search(shop, list(needs), ways, spare, effort)
    search.cover(())
    return search.best


class _Search:
    """One search: the best basket so far, and what bounds the rest."""

    def __init__(self, shop: Shop, needs: list[Need], ways: list[list[Bought]], spare: bool, effort: Effort) -> None:
        self.shop, self.needs, self.ways, self.spare, self.effort = shop, needs, ways, spare, effort
        self.best: tuple[Bought, ...] = ()
        self.rank: tuple[Decimal, int] | None = None
        self.floors = [{way: floor(shop, way, choice) for some in ways for way in some} for choice in shop.choices]
        self.off = [amounts_of([shop.offers[one] for one in choice]) for choice in shop.choices]
        self.rest = []
        for floors in self.floors:
            lowest = [min(floors[way] for way in some) for some in ways]
            self.rest.append([sum(lowest[start:], ZERO) for start in range(len(ways) + 1)])

    def cover(self, lines: tuple[Bought, ...]) -> None:
        """Covers one thing after the other, then tries pieces to spare."""
        if len(lines) == len(self.ways):
            self._spare(lines)
            return
        for way in self.ways[len(lines)]:
            grown = (*lines, way)
            self.effort.spend()
            if self.rank is None or not self._too_dear(grown):
                self.cover(grown)

    def _too_dear(self, lines: tuple[Bought, ...]) -> bool:
        """Whether no basket that begins with these lines can be cheaper than the best so far."""
        assert self.rank is not None
        fixed = self.shop.delivery if self.shop.free_over is None else ZERO
        bounds = [
            sum((floors[line] for line in lines), ZERO) + rest[len(lines)] - off
            for floors, rest, off in zip(self.floors, self.rest, self.off, strict=True)
        ]  # fmt: skip
        return min(bounds) + fixed >= self.rank[0] or least(self.shop, lines) >= self.rank[0]

    def _spare(self, lines: tuple[Bought, ...]) -> None:
        """This basket, and every one with pieces or packs added, each reached in one order only."""
        waiting = [(lines, 0)]
        while waiting:
            self.effort.spend()
            held, first = waiting.pop()
            bound = least(self.shop, held)
            if self.rank is not None and bound > self.rank[0]:
                continue
            rank = receipt(self.shop, held).total, sum(line.units(self.shop.listings[line.key]) for line in held)
            if self.rank is None or rank < self.rank:
                self.best, self.rank = held, rank
            if self.spare and bound < self.rank[0]:
                waiting += [(grown, place) for place, grown in self._grown(held, first)]

    def _grown(self, lines: tuple[Bought, ...], first: int) -> Iterator[tuple[int, tuple[Bought, ...]]]:
        """The basket with one piece or one pack more, in a fixed order of places."""
        place = 0
        for index, (line, need) in enumerate(zip(lines, self.needs, strict=True)):
            listing = self.shop.listings[line.key]
            more = [Bought(line.key, line.singles + 1, line.packs)]
            more += [Bought(line.key, line.singles, (*line.packs[:n], line.packs[n] + 1, *line.packs[n + 1 :])) for n in range(len(line.packs))]
            for one in more:
                if place >= first and one.units(listing) <= need.most:
                    yield place, (*lines[:index], one, *lines[index + 1 :])
                place += 1
