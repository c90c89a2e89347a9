"""Everything shared out over the shops in the cheapest way, exactly.

A thing is bought in one shop, since its balls are to be of one dye lot; one whose lots may mix is divided in every way.
What the other things cost is found by dynamic programming over sets: shop by shop, the cheapest way to have a set is one
part of it here and the rest in the shops before; the two cheapest ways are kept. With n things that means at most 2^n
baskets a shop and 3^n sums for each shop between the first and the last: what would take too long is refused.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from itertools import product
from typing import NamedTuple

from gaugewright.errors import UserError
from gaugewright.rounding import to_coins
from gaugewright.shopping.baskets import Basket, Effort, Need, cheapest_at
from gaugewright.shopping.model import Shop, Wanted

MOST_SUMS, MOST_DIVISIONS = 600_000, 2_000
Support = frozenset[str]


@dataclass(frozen=True, slots=True)
class Choice:
    """Which basket is bought in which shop, and what all of it costs in the total's currency."""

    total: Decimal
    baskets: Mapping[str, Basket]

    @property
    def rank(self) -> tuple[Decimal, int, int]:
        """Cheaper first, then fewer shops, then fewer pieces."""
        return self.total, len(self.baskets), sum(one.units for one in self.baskets.values())

    def shops_of(self, key: str) -> Support:
        """The shops where one thing is bought."""
        return frozenset(shop for shop, basket in self.baskets.items() if any(line.key == key for line in basket.lines))


@dataclass(slots=True)
class Market:
    """The shops with what was found out about them; `places` are those of the total's currency."""

    shops: tuple[Shop, ...]
    places: int
    effort: Effort = field(default_factory=Effort)
    known: dict[tuple[str, bool, tuple[Need, ...]], Basket | None] = field(default_factory=dict)

    def basket(self, shop: Shop, needs: tuple[Need, ...], spare: bool) -> Basket | None:
        """The cheapest basket of a shop, looked for once."""
        key = shop.key, spare, needs
        if key not in self.known:
            self.known[key] = cheapest_at(shop, needs, spare, self.effort)
        return self.known[key]

    def cost(self, shop: Shop, basket: Basket) -> Decimal:
        """A basket's total in the currency of all, rounded once."""
        return to_coins(basket.total * shop.rate, self.places)


def need_at(shop: Shop, one: Wanted, count: int) -> Need:
    """A need at one shop, with what it can have there."""
    return Need(one.key, count, shop.listings[one.key].most(one.mixed))


def cheapest(market: Market, wanted: Sequence[Wanted], spare: bool = True) -> Choice | None:
    """The cheapest choice, or None where there is none."""
    return next(iter(cheapest_two(market, wanted, spare)), None)


def cheapest_two(market: Market, wanted: Sequence[Wanted], spare: bool = True) -> tuple[Choice, ...]:
    """The cheapest choice, and the cheapest in which at least one thing comes from elsewhere, as far as there are any."""
    found: dict[tuple[Support, ...], Choice] = {}
    whole = [one for one in wanted if not one.mixed]
    for division in _divisions(market, [one for one in wanted if one.mixed]):
        for choice in share_out(market, whole, division, spare):
            places = tuple(choice.shops_of(one.key) for one in wanted)
            if places not in found or choice.rank < found[places].rank:
                found[places] = choice
    return tuple(sorted(found.values(), key=lambda one: one.rank)[:2])


def _divisions(market: Market, mixed: Sequence[Wanted]) -> Iterator[Mapping[str, tuple[Need, ...]]]:
    """What is needed at each shop of the things whose lots may mix, in every way to divide them."""
    ways = [_shares(market.shops, thing) for thing in mixed]
    total = 1
    for way in ways:
        total *= len(way)
    if total > MOST_DIVISIONS:
        raise UserError("basket-too-large", f"balls that may come from several lots can be divided over the shops in {total:,} ways, more than can be looked at", "let fewer colours mix their lots, or take out a shop that is clearly dearer")
    for some in product(*ways):
        needs: dict[str, tuple[Need, ...]] = {}
        for one in some:
            for key, need in one.items():
                needs[key] = (*needs.get(key, ()), need)
        yield needs


def _shares(shops: Sequence[Shop], thing: Wanted) -> list[dict[str, Need]]:
    """Every way to divide a thing over the shops that sell it."""
    found: list[dict[str, Need]] = []

    def divide(rest: int, at: int, some: dict[str, Need]) -> None:
        if not rest:
            found.append(some)
            return
        for place in range(at, len(shops)):
            if thing.key in shops[place].listings:
                most = need_at(shops[place], thing, rest).most
                for count in range(1, int(min(rest, most)) + 1):
                    if len(found) <= MOST_DIVISIONS:
                        divide(rest - count, place + 1, {**some, shops[place].key: need_at(shops[place], thing, count)})

    divide(thing.count, 0, {})
    return found


class _Way(NamedTuple):
    """One way to have a set of things: its rank as one number (coins, then shops, then pieces), the part bought at the
    last shop, and which way to have the rest it goes on from.
    """

    rank: int
    part: int
    before: int
    place: int


Ways = dict[int, tuple[_Way, ...]]
"""By set of things, the two cheapest ways to have it."""


def share_out(market: Market, whole: Sequence[Wanted], division: Mapping[str, tuple[Need, ...]], spare: bool) -> Iterator[Choice]:
    """The two cheapest choices for things that come from one shop each, beside what is divided already."""
    everything = (1 << len(whole)) - 1
    layers: list[Ways] = [{0: (_Way(0, 0, 0, 0),)}]
    tables: list[dict[int, Basket | None]] = []
    for place, shop in enumerate(market.shops):
        last = place == len(market.shops) - 1
        sold = sum(1 << bit for bit, one in enumerate(whole) if one.key in shop.listings)
        alone = everything if last and not place else None
        if alone is None and (1 << sold.bit_count() > MOST_SUMS or sum(1 if last else 1 << (sold & ~mask).bit_count() for mask in layers[-1]) > MOST_SUMS):
            raise _too_many(f"{len(whole)} things in {len(market.shops)} shops")
        tables.append(_table(market, shop, whole, sold, division.get(shop.key, ()), spare, alone))
        layers.append(_with_shop(market, shop, tables[-1], layers[-1], everything if last else None))
    for way in layers[-1].get(everything, ()):
        yield _choice(market, layers, tables, way)


def _too_many(what: str) -> UserError:
    return UserError("basket-too-large", f"{what} are too many for the cheapest choice to be found for certain", "take out a shop that is clearly dearer, or notions that cost the same anywhere")


def _table(market: Market, shop: Shop, whole: Sequence[Wanted], sold: int, fixed: tuple[Need, ...], spare: bool, only: int | None) -> dict[int, Basket | None]:
    """The cheapest basket of one shop for each set of things that it sells (None for nothing at all); sets of which it has too little are left out."""
    found: dict[int, Basket | None] = {}
    for part in _parts(sold) if only is None else [only & sold]:
        needs = (*fixed, *(need_at(shop, one, one.count) for bit, one in enumerate(whole) if part >> bit & 1))
        basket = market.basket(shop, needs, spare) if needs else None
        if basket is not None or not needs:
            found[part] = basket
    return found


def _with_shop(market: Market, shop: Shop, table: Mapping[int, Basket | None], ways: Ways, target: int | None) -> Ways:
    """The two cheapest ways to have each set with one shop more."""
    ranks = {part: _rank(market, shop, basket) for part, basket in table.items()}
    sold = 0
    for part in ranks:
        sold |= part
    found: dict[int, list[_Way]] = {}
    for mask, some in ways.items():
        for part in _parts(sold & ~mask) if target is None else (target & ~mask,):
            if part in ranks:
                best = found.setdefault(mask | part, [])
                for place, way in enumerate(some):
                    rank = way.rank + ranks[part]
                    if len(best) < 2 or rank < best[1].rank:
                        best.append(_Way(rank, part, mask, place))
                        best.sort()
                        del best[2:]
    return {mask: tuple(best) for mask, best in found.items()}


def _rank(market: Market, shop: Shop, basket: Basket | None) -> int:
    if basket is None:
        return 0
    coins = int(market.cost(shop, basket).scaleb(market.places))
    return (coins * 100 + 1) * 10**6 + basket.units


def _choice(market: Market, layers: Sequence[Ways], tables: Sequence[Mapping[int, Basket | None]], way: _Way) -> Choice:
    """The baskets that a way is made of, followed back to the first shop."""
    baskets: dict[str, Basket] = {}
    for place in range(len(market.shops) - 1, -1, -1):
        basket = tables[place][way.part]
        if basket is not None:
            baskets[market.shops[place].key] = basket
        way = layers[place][way.before][way.place]
    in_order = {shop.key: baskets[shop.key] for shop in market.shops if shop.key in baskets}
    return Choice(sum((market.cost(shop, in_order[shop.key]) for shop in market.shops if shop.key in in_order), Decimal(0)), in_order)


def _parts(whole: int) -> Iterator[int]:
    """Every subset of a set of bits, itself and the empty one too."""
    part = whole
    while True:
        yield part
        if not part:
            return
        part = (part - 1) & whole
