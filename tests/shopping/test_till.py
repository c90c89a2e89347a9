"""Tills worked by hand, to the coin."""

from decimal import Decimal

import pytest

from gaugewright.shopping.model import AmountOff, Bought, ByPieces, Listing, Offer, Pack, PercentOff, Shop, choices
from gaugewright.shopping.till import Receipt, receipt

D = Decimal
OAT, BOTH, KELP = frozenset({"oat"}), frozenset({"oat", "kelp"}), frozenset({"kelp"})
HALF, TENTH, ALL, NOTHING = D(50), D(10), D(100), D(0)


def till(*offers: Offer, combine: bool = False, oat: int = 0, kelp: int = 0, fives: int = 0, places: int = 2, delivery: str = "0", free: str = "") -> Receipt:
    """A shop that asks 7.45 for oat (33.00 for five) and 6.00 for kelp; yen are cents here."""
    listings = {"oat": Listing(D(745).scaleb(-places), (Pack(5, D(3300).scaleb(-places)),)), "kelp": Listing(D(600).scaleb(-places))}
    shop = Shop("quay", "Quay", "EUR" if places else "JPY", places, D(1), listings, offers, choices(offers, combine), D(delivery), D(free) if free else None)
    return receipt(shop, (Bought("kelp", kelp, ()), Bought("oat", oat, (fives,))))


def test_without_an_offer_prices_add_up() -> None:
    found = till(oat=2, kelp=1, fives=1)
    assert (found.full, found.goods, found.given) == ((D("47.90"), D("6.00")), D("53.90"), ())


def test_the_cheaper_of_each_two_is_reduced_and_its_price_rounded_half_up() -> None:
    """7.45, 7.45 | 7.45, 6.00: 3.725 is 3.73, so 3.72 off, then 3.00."""
    assert till(ByPieces(BOTH, 2, 1, HALF), oat=3, kelp=1).goods == D("28.35") - D("3.72") - D("3.00")
    assert till(ByPieces(BOTH, 2, 1, HALF), oat=3).goods == D("22.35") - D("3.72"), "the third has no second"


def test_three_for_two_leaves_the_cheapest_of_each_full_three_out() -> None:
    """7.45, 7.45, [6.00] and a fourth alone."""
    found = till(ByPieces(BOTH, 3, 1, ALL), oat=2, kelp=2)
    assert (found.goods, found.given[0].saved) == (D("20.90"), D("6.00"))


def test_a_pack_is_no_piece() -> None:
    assert till(ByPieces(OAT, 2, 1, ALL), oat=1, fives=1).goods == D("40.45")


def test_a_threshold_is_met_by_just_as_much() -> None:
    assert till(PercentOff(KELP, TENTH, D(18)), kelp=3).goods == D("16.20")
    assert till(PercentOff(KELP, TENTH, D("18.01")), kelp=3).goods == D("18.00")


def test_a_percentage_is_rounded_on_each_line() -> None:
    """10 % off 7.45 is 6.705, so 6.71; off 6.00 it is 5.40."""
    assert till(PercentOff(BOTH, TENTH, NOTHING), oat=1, kelp=1).paid == (D("6.71"), D("5.40"))


def test_a_sum_off_is_taken_from_the_lines_in_order() -> None:
    assert till(AmountOff(BOTH, D(10), D(10)), oat=1, kelp=1).paid == (D("0.00"), D("3.45"))


@pytest.mark.parametrize(("combine", "goods"), [
    (True, D("16.77")),   # 22.35 less 3.72 is 18.63, less a tenth 16.767: pieces go first, wherever they are written
    (False, D("18.63")),  # either 3.72 or 2.23 off, not both
])  # fmt: skip
def test_offers_on_one_thing_combine_or_the_cheaper_is_given(combine: bool, goods: Decimal) -> None:
    assert till(PercentOff(OAT, TENTH, NOTHING), ByPieces(OAT, 2, 1, HALF), combine=combine, oat=3).goods == goods


def test_offers_on_different_things_are_both_given() -> None:
    found = till(ByPieces(OAT, 2, 1, HALF), PercentOff(KELP, TENTH, NOTHING), oat=2, kelp=1)
    assert (found.goods, [one.number for one in found.given]) == (D("11.18") + D("5.40"), [0, 1])


def test_a_later_threshold_counts_what_is_left_to_pay() -> None:
    """18.00 less a tenth is 16.20, under the 17 of the next."""
    assert till(PercentOff(KELP, TENTH, NOTHING), AmountOff(KELP, D(2), D(17)), combine=True, kelp=3).goods == D("16.20")
    assert till(PercentOff(KELP, TENTH, NOTHING), AmountOff(KELP, D(2), D(16)), combine=True, kelp=3).goods == D("14.20")


def test_delivery_is_free_from_what_is_paid_for_the_goods() -> None:
    assert till(kelp=3, delivery="4.90", free="18").total == D("18.00")
    assert till(PercentOff(KELP, TENTH, NOTHING), kelp=3, delivery="4.90", free="18").total == D("21.10")
    assert till(delivery="4.90").total == 0, "nothing is sent"


def test_yen_have_no_coins_below_one() -> None:
    """Half of 745 is 372.5, so 373."""
    assert till(ByPieces(OAT, 2, 1, HALF), oat=2, places=0).goods == D(745 + 373)
