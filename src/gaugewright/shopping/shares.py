"""Everything shared out over the shops in the cheapest way, exactly.

A thing is bought in one shop, since its balls are to be of one dye lot; one whose lots may mix is divided in every way.
What the other things cost is found by dynamic programming over sets: shop by shop, the cheapest way to have a set is one
part of it here and the rest in the shops before. With n things that means at most 2^n baskets a shop and 3^n sums for
each shop between the first and the last; `Effort` refuses what would take too long.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from itertools import product

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


def cheapest(market: Market, wanted: Sequence[Wanted], spare: bool = True, but: tuple[str, Support] | None = None) -> Choice | None:
    """The cheapest choice, or None where there is none; `but` names a thing and the shops that it is not to come from."""
    best: Choice | None = None
    whole = [one for one in wanted if not one.mixed]
    for division in _divisions(market, [one for one in wanted if one.mixed], but):
        found = _share_out(market, whole, division, spare, but)
        if found is not None and (best is None or found.rank < best.rank):
            best = found
    return best


def _divisions(market: Market, mixed: Sequence[Wanted], but: tuple[str, Support] | None) -> Iterator[Mapping[str, tuple[Need, ...]]]:
    """What is needed at each shop of the things whose lots may mix, in every way to divide them."""
    ways = [[one for one in _shares(market.shops, thing) if but is None or but[0] != thing.key or frozenset(one) != but[1]] for thing in mixed]
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


Sums = dict[int, tuple[tuple[Decimal, int, int], tuple[tuple[str, Basket], ...]]]


def _share_out(market: Market, whole: Sequence[Wanted], division: Mapping[str, tuple[Need, ...]], spare: bool, but: tuple[str, Support] | None) -> Choice | None:
    """The things that come from one shop each, shared out beside what is divided already."""
    everything = (1 << len(whole)) - 1
    sums: Sums = {0: ((Decimal(0), 0, 0), ())}
    for place, shop in enumerate(market.shops):
        sold = sum(1 << bit for bit, one in enumerate(whole) if one.key in shop.listings and but != (one.key, frozenset({shop.key})))
        last = place == len(market.shops) - 1
        steps = sum(1 if last else 1 << (sold & ~mask).bit_count() for mask in sums)
        if steps > MOST_SUMS:
            raise UserError("basket-too-large", f"{len(whole)} things in {len(market.shops)} shops are too many for the cheapest choice to be found for certain", "take out a shop that is clearly dearer, or notions that cost the same anywhere")
        sums = _with_shop(market, shop, sums, _Shelf(whole, sold, division.get(shop.key, ()), spare), everything if last else None)
    if everything not in sums:
        return None
    (total, _, _), baskets = sums[everything]
    return Choice(total, dict(baskets))


@dataclass(frozen=True, slots=True)
class _Shelf:
    """What may be bought at one shop (a set of bits), and what must be."""

    whole: Sequence[Wanted]
    sold: int
    fixed: tuple[Need, ...]
    spare: bool


def _with_shop(market: Market, shop: Shop, sums: Sums, shelf: _Shelf, target: int | None) -> Sums:
    """The cheapest way to have each set with one shop more."""
    found: Sums = {}
    for mask, (rank, baskets) in sums.items():
        for part in _parts(shelf.sold & ~mask) if target is None else [target & ~mask]:
            if part & ~shelf.sold:
                continue
            needs = (*shelf.fixed, *(need_at(shop, one, one.count) for bit, one in enumerate(shelf.whole) if part >> bit & 1))
            basket = market.basket(shop, needs, shelf.spare) if needs else None
            if needs and basket is None:
                continue
            added = (market.cost(shop, basket), 1, basket.units) if basket else (Decimal(0), 0, 0)
            new = rank[0] + added[0], rank[1] + added[1], rank[2] + added[2]
            if mask | part not in found or new < found[mask | part][0]:
                found[mask | part] = new, (*baskets, (shop.key, basket)) if basket else baskets
    return found


def _parts(whole: int) -> Iterator[int]:
    """Every subset of a set of bits, itself and the empty one too."""
    part = whole
    while True:
        yield part
        if not part:
            return
        part = (part - 1) & whole
