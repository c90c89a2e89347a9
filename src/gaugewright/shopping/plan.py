"""What to buy where, what it costs, and what the next best ways would."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from gaugewright.shopping.baskets import Effort
from gaugewright.shopping.model import Shop, Wanted
from gaugewright.shopping.shares import Choice, Market, cheapest, cheapest_two
from gaugewright.shopping.till import Receipt, receipt


@dataclass(frozen=True, slots=True)
class Visit:
    """One shop to go to: what its till says, and that in the total's currency."""

    shop: Shop
    receipt: Receipt
    cost: Decimal


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """Another way to buy the same: what comes from where, and what it costs in all."""

    total: Decimal
    shops: tuple[str, ...]
    differs: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True, slots=True)
class Plan:
    """The cheapest way to buy everything.

    `spare` are pieces beyond what is needed, by thing; `to_the_piece` is the cheapest total without any (the same where
    none are bought). `next_best` is the cheapest way in which at least one thing comes from elsewhere; `single` the total
    in each shop that has everything; `titles` the names of all shops by their keys.
    """

    total: Decimal
    visits: tuple[Visit, ...]
    spare: tuple[tuple[str, int], ...]
    to_the_piece: Decimal
    next_best: Elsewhere | None
    single: tuple[tuple[str, Decimal], ...]
    titles: tuple[tuple[str, str], ...]


def make_plan(market: Market, wanted: Sequence[Wanted]) -> Plan | None:
    """The plan, or None where the shops don't have everything."""
    two = cheapest_two(market, wanted)
    if not two:
        return None
    best = two[0]
    spare = tuple((one.key, bought - one.count) for one in wanted if (bought := _bought(market, best, one.key)) > one.count)
    exact = cheapest(replace(market, effort=Effort()), wanted, spare=False) if spare else best
    return Plan(
        best.total, _visits(market, best), spare, exact.total if exact else best.total, _elsewhere(wanted, best, two[1]) if len(two) > 1 else None,
        _single(market, wanted), tuple((shop.key, shop.title) for shop in market.shops),
    )  # fmt: skip


def _visits(market: Market, choice: Choice) -> tuple[Visit, ...]:
    found = []
    for shop in market.shops:
        if basket := choice.baskets.get(shop.key):
            found.append(Visit(shop, receipt(shop, basket.lines), market.cost(shop, basket)))
    return tuple(found)


def _bought(market: Market, choice: Choice, key: str) -> int:
    listings = {shop.key: shop.listings for shop in market.shops}
    return sum(line.units(listings[shop][key]) for shop, basket in choice.baskets.items() for line in basket.lines if line.key == key)


def _elsewhere(wanted: Sequence[Wanted], best: Choice, found: Choice) -> Elsewhere:
    differs = tuple((one.key, tuple(sorted(found.shops_of(one.key)))) for one in wanted if found.shops_of(one.key) != best.shops_of(one.key))
    return Elsewhere(found.total, tuple(found.baskets), differs)


def _single(market: Market, wanted: Sequence[Wanted]) -> tuple[tuple[str, Decimal], ...]:
    """Everything from one shop, of each shop that has it."""
    found = []
    for shop in market.shops:
        alone = cheapest(replace(market, shops=(shop,)), wanted)
        if alone is not None:
            found.append((shop.key, alone.total))
    return tuple(found)
