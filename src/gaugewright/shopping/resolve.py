"""A shopping file's shops as tills see them; or the pattern's own prices as one shop."""

from decimal import Decimal

from gaugewright.design.model import Design
from gaugewright.shopping.model import AmountOff, ByPieces, Listing, Offer, Pack, PercentOff, Shop, choices
from gaugewright.spec import offers as written
from gaugewright.spec.check_shopping import basket_currency, currency_of, things_of
from gaugewright.spec.money import Money, places_of
from gaugewright.spec.shopping import Shop as WrittenShop
from gaugewright.spec.shopping import ShoppingFile, thing

FREE = Decimal(100)
OWN = "pattern"
"""The key of the shop that stands for the pattern's own prices."""


def shops_of(file: ShoppingFile) -> tuple[Shop, ...]:
    """All shops of a file, which has been checked."""
    into = basket_currency(file)
    return tuple(_shop(key, shop, file.data.rate_of(currency_of(shop), into) or Decimal(1)) for key, shop in file.data.shops.items())


def _shop(key: str, shop: WrittenShop, rate: Decimal) -> Shop:
    listings = {name: Listing(one.price.amount, tuple(Pack(pack.balls, pack.price.amount) for pack in one.packs), one.in_stock) for name, one in shop.yarns.items()}
    listings |= {thing(name): Listing(price.amount) for name, price in (*shop.hooks.items(), *shop.notions.items())}
    offers = tuple(_offer(shop, one) for one in shop.offers)
    delivery, code = shop.delivery, currency_of(shop)
    free_over = delivery.free_over.amount if delivery and delivery.free_over else None
    return Shop(
        key, shop.title or key, code, places_of(code), rate, listings, offers, choices(offers, shop.combine),
        delivery.cost.amount if delivery else Decimal(0), free_over,
    )  # fmt: skip


def _offer(shop: WrittenShop, one: written.Offer) -> Offer:
    on = things_of(shop, one)
    over = one.over.amount if one.over else Decimal(0)
    if one.second_reduced is not None:
        return ByPieces(on, 2, 1, one.second_reduced)
    if one.take is not None and one.pay is not None:
        return ByPieces(on, one.take, one.take - one.pay, FREE)
    if isinstance(one.off, Money):
        return AmountOff(on, one.off.amount, over)
    return PercentOff(on, one.off or Decimal(0), over)


def own_prices(design: Design) -> Shop | None:
    """The prices that the spec states, where all yarns have one in one currency."""
    codes = {yarn.currency for yarn in design.yarns}
    if len(codes) != 1 or any(yarn.price is None for yarn in design.yarns):
        return None
    (code,) = codes
    listings = {yarn.key: Listing(yarn.price or Decimal(0)) for yarn in design.yarns}
    return Shop(OWN, "", code, places_of(code), Decimal(1), listings, (), ((),), Decimal(0), None)
