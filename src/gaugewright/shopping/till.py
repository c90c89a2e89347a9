"""What a till asks for a basket, step by step, to the smallest coin.

In: a shop and what is taken to its till. Out: a receipt. First offers by pieces: all pieces that one is for are laid out
dearest first, and of each full group the last are reduced (a reduced price is rounded half up to the coin); packs count
as no pieces. Then percentages and sums off in the order in which the shop states them, each on what is left to pay of
its lines, each line rounded half up; a threshold is met by what is left to pay when its turn comes, or by just as much.
Where offers don't combine, the choice that comes cheapest is given. Delivery is added last, free from what is paid for
the goods. Tills differ in all of this (common practice, no source): the card says which way was taken.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from gaugewright.rounding import to_coins
from gaugewright.shopping.model import AmountOff, Bought, ByPieces, Offer, PercentOff, Shop

ZERO = Decimal(0)
HUNDRED = Decimal(100)


@dataclass(frozen=True, slots=True)
class Given:
    """An offer by its number in the shop's list, and what it takes off."""

    number: int
    saved: Decimal


@dataclass(frozen=True, slots=True)
class Receipt:
    """What one till asks, in the shop's currency: of each thing what is left to pay, then delivery, then all of it."""

    shop: str
    bought: tuple[Bought, ...]
    full: tuple[Decimal, ...]
    paid: tuple[Decimal, ...]
    given: tuple[Given, ...]
    delivery: Decimal

    @property
    def goods(self) -> Decimal:
        """What the goods cost after offers."""
        return sum(self.paid, ZERO)

    @property
    def total(self) -> Decimal:
        """Goods and delivery."""
        return self.goods + self.delivery


def receipt(shop: Shop, basket: Sequence[Bought]) -> Receipt:
    """The till's sum for a basket; of equal choices of offers the first."""
    order = {key: place for place, key in enumerate(shop.listings)}
    lines = tuple(sorted((one for one in basket if one.singles or any(one.packs)), key=lambda one: order[one.key]))
    full = full_prices(shop, lines)
    tried = [_reduced(shop, lines, full, [(number, shop.offers[number]) for number in choice]) for choice in shop.choices]
    left, given = min(tried, key=lambda one: sum(one[0].values(), ZERO))
    goods = sum(left.values(), ZERO)
    free = not lines or (shop.free_over is not None and goods >= shop.free_over)
    return Receipt(shop.key, lines, tuple(full.values()), tuple(left.values()), given, ZERO if free else shop.delivery)


def full_prices(shop: Shop, lines: Sequence[Bought]) -> dict[str, Decimal]:
    """What each line costs before any offer."""
    found = {}
    for line in lines:
        listing = shop.listings[line.key]
        packs = sum((count * pack.price for count, pack in zip(line.packs, listing.packs, strict=True)), ZERO)
        found[line.key] = line.singles * listing.price + packs
    return found


def _reduced(shop: Shop, lines: Sequence[Bought], full: dict[str, Decimal], offers: Sequence[tuple[int, Offer]]) -> tuple[dict[str, Decimal], tuple[Given, ...]]:
    left, given = dict(full), []
    by_turn = sorted(offers, key=lambda one: not isinstance(one[1], ByPieces))
    for number, offer in by_turn:
        before = sum(left.values(), ZERO)
        _apply(shop, lines, left, offer)
        if saved := before - sum(left.values(), ZERO):
            given.append(Given(number, saved))
    return left, tuple(given)


def _apply(shop: Shop, lines: Sequence[Bought], left: dict[str, Decimal], offer: Offer) -> None:
    on = [line.key for line in lines if line.key in offer.on]
    match offer:
        case ByPieces():
            for key, count in reduced_pieces(shop, lines, offer).items():
                left[key] -= count * saved_by_piece(shop, shop.listings[key].price, offer)
        case PercentOff():
            if sum((left[key] for key in on), ZERO) >= offer.over:
                left.update({key: less_percent(left[key], offer.share, shop.places) for key in on})
        case AmountOff():
            if sum((left[key] for key in on), ZERO) >= offer.over:
                take_off(left, on, offer.amount)


def reduced_pieces(shop: Shop, lines: Sequence[Bought], offer: ByPieces, full_groups: bool = True) -> dict[str, int]:
    """How many pieces of each thing an offer by pieces reduces: laid out dearest first, the last of each full group
    (or of each group as far as it goes).
    """
    dearest = sorted((line for line in lines if line.key in offer.on and line.singles), key=lambda one: -shop.listings[one.key].price)
    pieces = sum(line.singles for line in dearest)
    full = pieces // offer.of * offer.of if full_groups else pieces
    found, upto = {}, 0
    for line in dearest:
        before, upto = _reduced_among(min(upto, full), offer), upto + line.singles
        found[line.key] = _reduced_among(min(upto, full), offer) - before
    return found


def _reduced_among(first: int, offer: ByPieces) -> int:
    """How many of the first pieces are reduced, those of a group being its last."""
    groups, rest = divmod(first, offer.of)
    return groups * offer.reduced + max(0, rest - (offer.of - offer.reduced))


def saved_by_piece(shop: Shop, price: Decimal, offer: ByPieces) -> Decimal:
    """What a reduced piece costs less."""
    return price - less_percent(price, offer.share, shop.places)


def less_percent(value: Decimal, share: Decimal, places: int) -> Decimal:
    """
    >>> str(less_percent(Decimal("7.45"), Decimal(50), 2))
    '3.73'
    """
    return to_coins(value * (HUNDRED - share) / HUNDRED, places)


def take_off(left: dict[str, Decimal], on: Sequence[str], amount: Decimal) -> None:
    """A sum off some lines, in their order, none below nothing."""
    for key in on:
        taken = min(amount, left[key])
        left[key] -= taken
        amount -= taken
