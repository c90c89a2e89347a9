"""A till that lays out every piece, and a search that tries every basket: slow, and written apart from the program's."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import combinations, product

from gaugewright.shopping.model import AmountOff, ByPieces, Offer, PercentOff, Shop, Wanted

Pieces = Mapping[str, tuple[int, ...]]
"""Of each thing single pieces, then each kind of pack."""


def coins(value: Fraction) -> Fraction:
    """Whole coins, halves up."""
    return Fraction((value + Fraction(1, 2)) // 1)


def asked(shop: Shop, pieces: Pieces) -> Fraction:
    """What a till asks, in the smallest coins."""
    unit = 10**shop.places
    if not any(any(counts) for counts in pieces.values()):
        return Fraction(0)
    best = min(_goods(shop, pieces, [shop.offers[n] for n in some], unit) for some in allowed(shop))
    if shop.free_over is not None and best >= Fraction(shop.free_over) * unit:
        return best
    return best + Fraction(shop.delivery) * unit


def allowed(shop: Shop) -> Iterator[tuple[int, ...]]:
    """Every set of offers that may be given together: all, where the shop's one choice holds all; else those that share nothing."""
    everything = tuple(range(len(shop.offers)))
    if shop.choices == (everything,):
        yield everything
        return
    for size in range(len(everything) + 1):
        for some in combinations(everything, size):
            if all(not shop.offers[a].on & shop.offers[b].on for a, b in combinations(some, 2)):
                yield some


def _goods(shop: Shop, pieces: Pieces, offers: Sequence[Offer], unit: int) -> Fraction:
    left = {}
    for key, listing in shop.listings.items():
        if key in pieces:
            single, *packs = pieces[key]
            left[key] = single * Fraction(listing.price) * unit + sum(n * Fraction(pack.price) * unit for n, pack in zip(packs, listing.packs, strict=True))
    for offer in (one for one in offers if isinstance(one, ByPieces)):
        row = [(Fraction(shop.listings[key].price) * unit, key) for key in shop.listings if key in pieces and key in offer.on for _ in range(pieces[key][0])]
        row.sort(key=lambda one: -one[0])
        for start in range(0, len(row) - offer.of + 1, offer.of):
            for price, key in row[start : start + offer.of][offer.of - offer.reduced :]:
                left[key] -= price - coins(price * (100 - Fraction(offer.share)) / 100)
    for offer in offers:
        keys = [key for key in left if key in getattr(offer, "on")]
        if isinstance(offer, PercentOff) and sum(left[key] for key in keys) >= Fraction(offer.over) * unit:
            for key in keys:
                left[key] = coins(left[key] * (100 - Fraction(offer.share)) / 100)
        if isinstance(offer, AmountOff) and sum(left[key] for key in keys) >= Fraction(offer.over) * unit:
            rest = Fraction(offer.amount) * unit
            for key in keys:
                taken = min(rest, left[key])
                left[key], rest = left[key] - taken, rest - taken
    return sum(left.values(), Fraction(0))


def cheapest_of_all(shops: Sequence[Shop], wanted: Sequence[Wanted], spare: int) -> Fraction | None:
    """The least that everything comes to, with at most so many pieces to spare of each thing in each shop, and of each pack one less than that of single pieces."""
    places = [list(_places(shops, one, spare)) for one in wanted]
    best: Fraction | None = None
    for some in product(*places):
        total = Fraction(0)
        for shop in shops:
            pieces = {one.key: way[shop.key] for one, way in zip(wanted, some, strict=True) if shop.key in way}
            total += coins(asked(shop, pieces) * Fraction(shop.rate) * 100 / 10**shop.places) if pieces else 0
        best = total if best is None else min(best, total)
    return best


def _places(shops: Sequence[Shop], one: Wanted, spare: int) -> Iterator[dict[str, tuple[int, ...]]]:
    """Every way to have one thing: from one shop, or where its lots may mix from several."""
    selling = [shop for shop in shops if one.key in shop.listings]
    for size in range(1, (len(selling) if one.mixed else 1) + 1):
        for some in combinations(selling, min(size, one.count)):
            if len(some) < size:
                continue
            for ways in product(*(list(_amounts(shop, one, spare)) for shop in some)):
                if sum(units for units, _ in ways) >= one.count:
                    yield {shop.key: way for shop, (_, way) in zip(some, ways, strict=True)}


def _amounts(shop: Shop, one: Wanted, spare: int) -> Iterator[tuple[int, tuple[int, ...]]]:
    listing = shop.listings[one.key]
    stock = float("inf") if listing.stock is None else sum(listing.stock) if one.mixed else max(listing.stock)
    ranges = [range(one.count + spare + 1), *(range(one.count + spare) for _ in listing.packs)]
    for counts in product(*ranges):
        units = counts[0] + sum(n * pack.units for n, pack in zip(counts[1:], listing.packs, strict=True))
        if 0 < units <= stock:
            yield units, counts
