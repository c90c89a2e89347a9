"""What of a shopping file can't be: by itself, and beside the pattern it is for."""

from collections.abc import Collection, Iterator
from typing import NamedTuple

from gaugewright.errors import Problem
from gaugewright.spec.messages import did_you_mean, listed
from gaugewright.spec.money import Money
from gaugewright.spec.offers import Offer
from gaugewright.spec.shopping import Shop, ShoppingFile, is_size, thing

Path = tuple[str | int, ...]


class Known(NamedTuple):
    """The names that mean something beside a pattern: its yarns, the sizes it is made in, its buttons."""

    yarns: Collection[str]
    sizes: Collection[str]
    buttons: Collection[str]


def problems_in(file: ShoppingFile) -> Iterator[Problem]:
    """Problems that show without the pattern: currencies, and offers that contradict each other."""
    for key, shop in file.data.shops.items():
        yield from _currencies(file, key, shop)
        yield from _offers(file, key, shop)
        for hook in shop.hooks:
            if not is_size(hook):
                yield Problem("wrong-unit", f"{hook} is no size of a hook", file.origin("shops", key, "hooks", hook, key=True), "write its size, such as 10 mm")
        if not shop.yarns and not shop.hooks and not shop.notions:
            yield Problem("empty-value", f"{key} sells nothing", file.origin("shops", key, key=True), "add its price list, such as yarns: {oat: 7.40 EUR}")
    yield from _rates(file)


def problems_beside(file: ShoppingFile, known: Known) -> Iterator[Problem]:
    """Names of yarns and sizes that the pattern doesn't have, and of notions that nobody wants."""
    data = file.data
    things = [*known.yarns, *data.notions, *known.buttons]
    for key, shop in data.shops.items():
        for name in shop.yarns:
            yield from _unknown_yarn(file, ("shops", key, "yarns", name), name, known.yarns, True)
        sold = {*shop.yarns, *shop.notions, *map(thing, shop.hooks), "all"}
        for number, offer in enumerate(shop.offers):
            for place, name in enumerate(offer.on or ()):
                if thing(name) not in sold:
                    yield from _not_sold(file, ("shops", key, "offers", number, "on", place), name, sold)
    for place, name in enumerate(data.mix_lots or ()):
        if name != "all":
            yield from _unknown_yarn(file, ("mix_lots", place), name, known.yarns, False)
    for name in data.have:
        if not is_size(name):
            yield from _unknown_yarn(file, ("have", name), name, things, True)
    for place, one in enumerate(data.make or ()):
        if one.size not in known.sizes:
            hint = did_you_mean(one.size, known.sizes, f"its sizes are {', '.join(known.sizes)}")
            yield Problem("size-not-made", f"this pattern has no size {one.size}", file.origin("make", place, "size"), hint)


def _unknown_yarn(file: ShoppingFile, path: Path, name: str, known: Collection[str], is_key: bool) -> Iterator[Problem]:
    if name not in known:
        hint = did_you_mean(name, known, f"the names are {listed(known, 'and')}")
        yield Problem("unknown-yarn", f"the pattern has no yarn called {name}", file.origin(*path, key=is_key), hint)


def _not_sold(file: ShoppingFile, path: Path, name: str, sold: Collection[str]) -> Iterator[Problem]:
    hint = did_you_mean(name, sorted(sold), "write something of this shop's price list, or all")
    yield Problem("offer-for-nothing", f"this shop sells no {name}", file.origin(*path), hint)


def _prices(key: str, shop: Shop) -> Iterator[tuple[Path, Money]]:
    """Every sum of money of a shop with its path."""
    for name, listing in shop.yarns.items():
        yield ("shops", key, "yarns", name, "price"), listing.price
        yield from ((("shops", key, "yarns", name, "packs", n, "price"), pack.price) for n, pack in enumerate(listing.packs))
    for kind, prices in (("hooks", shop.hooks), ("notions", shop.notions)):
        yield from ((("shops", key, kind, name), price) for name, price in prices.items())
    for number, offer in enumerate(shop.offers):
        yield from ((("shops", key, "offers", number, part), money) for part, money in offer.prices)
    if shop.delivery:
        yield ("shops", key, "delivery", "cost"), shop.delivery.cost
        if shop.delivery.free_over:
            yield ("shops", key, "delivery", "free_over"), shop.delivery.free_over


def currency_of(shop: Shop) -> str:
    """A shop's currency: that of its first price."""
    return next((money.code for _, money in _prices("", shop)), "")


def basket_currency(file: ShoppingFile) -> str:
    """The currency of the total: as stated, else the budget's, else the first shop's."""
    data = file.data
    return data.currency or (data.budget.code if data.budget else next(currency_of(shop) for shop in data.shops.values()))


def _currencies(file: ShoppingFile, key: str, shop: Shop) -> Iterator[Problem]:
    own = currency_of(shop)
    for path, money in _prices(key, shop):
        if money.code != own:
            yield Problem("currencies-in-shop", f"{key} asks {own} for one thing and {money.code} for another", file.origin(*path), f"write all prices of a shop in {own}, or make two shops of it")
    into = basket_currency(file)
    if own and file.data.rate_of(own, into) is None:
        place = file.origin(*next(_prices(key, shop))[0])
        yield Problem("currency-without-rate", f"{key} asks {own}, and the total is in {into}", place, f"add `rates: {{{own}: 1.00 {into}}}` with what one {own} costs")


def _rates(file: ShoppingFile) -> Iterator[Problem]:
    into = basket_currency(file)
    budget = file.data.budget
    for code, rate in file.data.rates.items():
        if rate.code != into or code == into:
            yield Problem("currency-without-rate", f"this is what one {code} costs in {rate.code}, and the total is in {into}", file.origin("rates", code), f"write what one unit of a shop's currency costs in {into}")
    if budget and file.data.rate_of(budget.code, into) is None:
        yield Problem("currency-without-rate", f"the budget is in {budget.code}, and the total in {into}", file.origin("budget"), f"write both in one currency, or add `rates: {{{budget.code}: 1.00 {into}}}`")


def _offers(file: ShoppingFile, key: str, shop: Shop) -> Iterator[Problem]:
    """Two offers that can't both be meant: unlike reductions by one rule, or one ball reduced twice as a piece."""
    for number, offer in enumerate(shop.offers):
        for earlier, other in enumerate(shop.offers[:number]):
            place = file.origin("shops", key, "offers", number)
            if not _share_things(shop, offer, other):
                continue
            if shop.combine and offer.by_pieces and other.by_pieces:
                yield Problem("offers-contradict", f"offers {earlier + 1} and {number + 1} would reduce one ball twice", place, "take one of them out, give them different things under `on`, or write combine: false")
            elif _same_rule(offer, other):
                yield Problem("offers-contradict", f"offers {earlier + 1} and {number + 1} give different reductions by one rule", place, "keep the one that is true, or give them different things under `on`")


def _same_rule(one: Offer, other: Offer) -> bool:
    """Alike but for what is given: seconds reduced by different shares, or different sums off from one threshold."""
    if one.by_pieces != other.by_pieces:
        return False
    if one.by_pieces:
        return (one.second_reduced is not None and other.second_reduced is not None) or (one.take is not None and one.take == other.take)
    return one.over == other.over and isinstance(one.off, Money) == isinstance(other.off, Money)


def _share_things(shop: Shop, one: Offer, other: Offer) -> bool:
    return bool(things_of(shop, one) & things_of(shop, other))


def things_of(shop: Shop, offer: Offer) -> frozenset[str]:
    """What an offer is for: all yarns unless it says."""
    if offer.on is None:
        return frozenset(shop.yarns)
    if "all" in offer.on:
        return frozenset((*shop.yarns, *map(thing, shop.hooks), *shop.notions))
    return frozenset(map(thing, offer.on))
