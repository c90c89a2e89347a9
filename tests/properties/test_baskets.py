"""The cheapest basket is the cheapest of all baskets, tried one by one, to the coin."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from gaugewright.shopping.model import AmountOff, Bought, ByPieces, Listing, Offer, Pack, PercentOff, Shop, Wanted, choices
from gaugewright.shopping.shares import Choice, Market, cheapest, cheapest_two
from gaugewright.shopping.till import receipt
from shopping.naive_till import asked, cheapest_of_all

SPARE = 3
THINGS = ("oat", "kelp", "slate")


@st.composite
def prices(draw: st.DrawFn, places: int, most: int) -> Decimal:
    return Decimal(draw(st.integers(min(most, 60), most))).scaleb(-places)


@st.composite
def offers(draw: st.DrawFn, places: int) -> Offer:
    on = frozenset(draw(st.sets(st.sampled_from(THINGS), min_size=1)))
    share = Decimal(draw(st.sampled_from(("5", "10", "12.5", "33.3", "50", "90"))))
    over = draw(prices(places, 3000))
    match draw(st.integers(0, 3)):
        case 0:
            return ByPieces(on, 2, 1, draw(st.sampled_from((Decimal(50), Decimal(70), Decimal(100)))))
        case 1:
            of = draw(st.integers(2, 4))
            return ByPieces(on, of, draw(st.integers(1, of - 1)), Decimal(100))
        case 2:
            return PercentOff(on, share, draw(st.sampled_from((over, Decimal(0)))))
        case _:
            return AmountOff(on, min(over, draw(prices(places, 800))), over)


@st.composite
def shops(draw: st.DrawFn, key: str) -> Shop:
    places = draw(st.sampled_from((0, 2)))
    listings = {}
    for thing in THINGS:
        if thing == "oat" or draw(st.booleans()):
            packs = tuple(Pack(draw(st.integers(2, 4)), draw(prices(places, 2500))) for _ in range(draw(st.integers(0, 1))))
            stock = draw(st.none() | st.lists(st.integers(0, 5), min_size=1, max_size=2).map(tuple))
            listings[thing] = Listing(draw(prices(places, 1200)), packs, stock)
    combine = draw(st.booleans())
    found: list[Offer] = []
    for offer in draw(st.lists(offers(places), max_size=3)):
        twice = combine and isinstance(offer, ByPieces) and any(isinstance(one, ByPieces) and one.on & offer.on for one in found)
        found += [] if twice else [offer]
    free = draw(st.none() | prices(places, 4000))
    delivery = draw(st.sampled_from((Decimal(0), Decimal(490).scaleb(-places))))
    return Shop(key, key, "EUR", places, draw(st.sampled_from((Decimal(1), Decimal("1.1643")))), listings, tuple(found), choices(tuple(found), combine), delivery, free)


@st.composite
def errands(draw: st.DrawFn) -> tuple[tuple[Shop, ...], tuple[Wanted, ...]]:
    some = tuple(draw(shops(key)) for key in ("quay", "lane", "mill")[: draw(st.integers(1, 2))])
    sold = [thing for thing in THINGS if any(thing in shop.listings for shop in some)][: draw(st.integers(1, 2 if len(some) > 1 else 3))]
    return some, tuple(Wanted(thing, thing, "yarn", draw(st.integers(1, 3)), draw(st.booleans())) for thing in sold)


def told(found: Choice | None, some: tuple[Shop, ...]) -> Fraction | None:
    """A choice's cost as the slow till adds it up."""
    if found is None:
        return None
    total = Fraction(0)
    for shop in some:
        if basket := found.baskets.get(shop.key):
            of_all = asked(shop, {line.key: (line.singles, *line.packs) for line in basket.lines}) * Fraction(shop.rate)
            total += (of_all * 10**2 / 10**shop.places + Fraction(1, 2)) // 1
    return total


@given(errands())
@settings(max_examples=120, deadline=None)
def test_nothing_is_cheaper_than_the_cheapest(errand: tuple[tuple[Shop, ...], tuple[Wanted, ...]]) -> None:
    some, wanted = errand
    found = cheapest(Market(some, 2), wanted)
    tried = cheapest_of_all(some, wanted, SPARE)
    if found is None or tried is None:
        assert found is None and tried is None
        return
    assert Fraction(found.total) * 100 == told(found, some)
    for one in wanted:
        bought = sum(line.units(shop.listings[line.key]) for shop in some if shop.key in found.baskets for line in found.baskets[shop.key].lines if line.key == one.key)
        assert bought >= one.count and (one.mixed or len(found.shops_of(one.key)) == 1)
    assert Fraction(found.total) * 100 <= tried
    if Fraction(found.total) * 100 < tried:
        assert beyond(found, wanted), "only what the slow search doesn't reach may be cheaper"


def beyond(found: Choice, wanted: tuple[Wanted, ...]) -> bool:
    """Whether more is bought to spare than the slow search tries."""
    counts = {one.key: one.count for one in wanted}
    lines = [line for basket in found.baskets.values() for line in basket.lines]
    return any(line.singles > counts[line.key] + SPARE or any(n >= counts[line.key] + SPARE for n in line.packs) for line in lines)


@given(shops("quay"), st.dictionaries(st.sampled_from(THINGS), st.integers(0, 7), min_size=1))
@settings(max_examples=250, deadline=None)
def test_the_till_agrees_with_one_that_lays_out_every_piece(shop: Shop, counts: dict[str, int]) -> None:
    lines = [Bought(key, count, tuple(1 for _ in shop.listings[key].packs)) for key, count in counts.items() if key in shop.listings]
    assert Fraction(receipt(shop, lines).total) * 10**shop.places == asked(shop, {line.key: (line.singles, *line.packs) for line in lines})


@given(errands())
@settings(max_examples=80, deadline=None)
def test_the_next_best_is_the_best_with_something_elsewhere(errand: tuple[tuple[Shop, ...], tuple[Wanted, ...]]) -> None:
    """Every way to say where each thing comes from, worked out with nothing else for sale there."""
    some, mixed = errand
    wanted = tuple(replace(one, mixed=False) for one in mixed)
    totals = []
    for places in product(some, repeat=len(wanted)):
        own = {shop.key: {one.key for one, place in zip(wanted, places, strict=True) if place is shop} for shop in some}
        only = tuple(replace(shop, listings={key: listing for key, listing in shop.listings.items() if key in own[shop.key]}) for shop in some)
        if (found := cheapest(Market(only, 2), wanted)) is not None:
            totals.append(found.total)
    assert [one.total for one in cheapest_two(Market(some, 2), wanted)] == sorted(totals)[:2]
