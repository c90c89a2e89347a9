"""What a basket costs at least, whatever is added to it.

Every threshold is taken as met. A bound that never falls when a piece is added is what lets a search stop: no basket
that holds this one is cheaper. Percentages upon offers by pieces need care, since one piece more may move the reduction
to another line; there all lines of the offer are bounded together, with half a coin a line for the rounding. A group
that isn't full is taken as reduced already, since the piece that fills it may reduce more than one.
"""

from collections.abc import Sequence
from decimal import Decimal

from gaugewright.shopping.model import AmountOff, Bought, ByPieces, Offer, PercentOff, Shop
from gaugewright.shopping.till import HUNDRED, ZERO, full_prices, less_percent, reduced_pieces, saved_by_piece


def least(shop: Shop, lines: Sequence[Bought]) -> Decimal:
    """The bound for goods and delivery of this basket and of every larger one."""
    full = full_prices(shop, lines)
    goods = min(_least(shop, lines, full, [shop.offers[number] for number in choice]) for choice in shop.choices)
    return goods + (shop.delivery if lines and shop.free_over is None else ZERO)


def _least(shop: Shop, lines: Sequence[Bought], full: dict[str, Decimal], offers: Sequence[Offer]) -> Decimal:
    percents = [offer for offer in offers if isinstance(offer, PercentOff)]
    total, told = ZERO, set()
    for offer in offers:
        if isinstance(offer, ByPieces):
            keys = [line.key for line in lines if line.key in offer.on]
            saved = sum((count * saved_by_piece(shop, shop.listings[key].price, offer) for key, count in reduced_pieces(shop, lines, offer, full_groups=False).items()), ZERO)
            total += _after(shop, keys, sum((full[key] for key in keys), ZERO) - saved, percents)
            told.update(keys)
    total += sum((_after(shop, [key], value, percents) for key, value in full.items() if key not in told), ZERO)
    return max(ZERO, total - amounts_of(offers))


def _after(shop: Shop, keys: Sequence[str], value: Decimal, percents: Sequence[PercentOff]) -> Decimal:
    """A line after its percentages, exactly; several lines at least."""
    on = [offer for offer in percents if offer.on.intersection(keys)]
    if len(keys) == 1:
        for offer in on:
            value = less_percent(value, offer.share, shop.places)
        return value
    for offer in on:
        value *= (HUNDRED - offer.share) / HUNDRED
    return value - half_coin(shop) * len(keys) * len(on)


def amounts_of(offers: Sequence[Offer]) -> Decimal:
    """All sums off together."""
    return sum((offer.amount for offer in offers if isinstance(offer, AmountOff)), ZERO)


def half_coin(shop: Shop) -> Decimal:
    """Half of a currency's smallest coin."""
    return Decimal(1).scaleb(-shop.places) / 2


def floor(shop: Shop, line: Bought, choice: Sequence[int]) -> Decimal:
    """The least that one line adds to a basket under a choice of offers, sums off aside.

    Of a full group the cheapest pieces are reduced, so a group is never reduced by more than each of its pieces by its part.
    """
    offers = [shop.offers[number] for number in choice]
    value, block = full_prices(shop, (line,))[line.key], {line.key}
    for offer in offers:
        if isinstance(offer, ByPieces) and line.key in offer.on:
            value -= line.singles * saved_by_piece(shop, shop.listings[line.key].price, offer) * offer.reduced / offer.of
            block |= offer.on
    percents = [offer for offer in offers if isinstance(offer, PercentOff) and offer.on & block]
    for percent in percents:
        value *= (HUNDRED - percent.share) / HUNDRED
    return value - half_coin(shop) * len(percents)
