"""Baskets and plans worked by hand: packs, pieces to spare, several shops, what else is possible."""

from decimal import Decimal

import pytest

from gaugewright.errors import UserError
from gaugewright.shopping.budget import Cheaper, asked_by_margin, margin_changes
from gaugewright.shopping.model import AmountOff, ByPieces, Listing, Offer, Pack, Shop, Wanted, choices
from gaugewright.shopping.needs import Colour, yarns_wanted
from gaugewright.shopping.plan import Plan, make_plan
from gaugewright.shopping.shares import Market

D = Decimal


def shop(key: str, *offers: Offer, delivery: str = "0", free: str = "", **prices: str | Listing) -> Shop:
    listings = {name: one if isinstance(one, Listing) else Listing(D(one)) for name, one in prices.items()}
    return Shop(key, key.title(), "EUR", 2, D(1), listings, offers, choices(offers, False), D(delivery), D(free) if free else None)


def plan(shops: list[Shop], mixed: bool = False, **counts: int) -> Plan:
    found = make_plan(Market(tuple(shops), 2), [Wanted(key, key, "yarn", count, mixed) for key, count in counts.items()])
    assert found is not None
    return found


def test_a_ball_more_is_bought_where_that_is_cheaper() -> None:
    """Nine at 7.00 are 63; ten are 70, and 10 off from 70 leaves 60."""
    found = plan([shop("quay", AmountOff(frozenset({"oat"}), D(10), D(70)), oat="7.00")], oat=9)
    assert (found.total, found.spare, found.to_the_piece) == (D("60.00"), (("oat", 1),), D("63.00"))


def test_a_pack_with_a_ball_too_many_may_be_cheaper() -> None:
    found = plan([shop("quay", oat=Listing(D(7), (Pack(5, D(27)),)))], oat=4)
    assert (found.total, found.spare, found.to_the_piece) == (D("27.00"), (("oat", 1),), D("28.00"))


def test_three_for_one_makes_two_dearer_than_three() -> None:
    found = plan([shop("quay", ByPieces(frozenset({"oat"}), 3, 2, D(100)), oat="7.00")], oat=2)
    assert (found.total, found.spare) == (D("7.00"), (("oat", 1),))


def test_free_delivery_may_pay_for_a_ball() -> None:
    found = plan([shop("quay", delivery="4.90", free="20", oat="4.00")], oat=4)
    assert (found.total, found.spare) == (D("20.00"), (("oat", 1),))


def test_everything_goes_where_it_is_cheapest_unless_delivery_eats_it() -> None:
    near, far = shop("near", oat="7.00", kelp="7.00"), shop("far", delivery="3.00", oat="6.50", kelp="5.00")
    found = plan([near, far], oat=2, kelp=2)
    assert (found.total, [visit.shop.key for visit in found.visits]) == (D("26.00"), ["far"])
    assert found.next_best is not None and (found.next_best.total, found.next_best.differs) == (D("27.00"), (("oat", ("near",)),))
    assert found.single == (("near", D("28.00")), ("far", D("26.00")))


def test_a_colour_comes_from_one_lot_unless_lots_may_mix() -> None:
    near, far = shop("near", oat=Listing(D(6), stock=(3, 2))), shop("far", oat="7.00")
    assert plan([near, far], oat=4).total == D("28.00")
    assert plan([near, far], oat=4, mixed=True).total == D("24.00")
    assert plan([near, far], oat=6, mixed=True).total == D("37.00"), "five here, one there"


def test_what_nobody_has_enough_of_is_no_plan() -> None:
    market = Market((shop("near", oat=Listing(D(6), stock=(3, 2))),), 2)
    assert make_plan(market, [Wanted("oat", "oat", "yarn", 4, False)]) is None


def test_nothing_to_buy_costs_nothing() -> None:
    found = plan([shop("near", oat="7.00", delivery="3.00")])
    assert (found.total, found.visits, found.next_best) == (D(0), (), None)


def test_of_equal_totals_fewer_shops_are_visited() -> None:
    found = plan([shop("near", oat="7.00", kelp="7.00"), shop("far", oat="7.00", kelp="7.00")], oat=2, kelp=2)
    assert len(found.visits) == 1 and found.total == D("28.00")


def test_too_many_ways_are_refused() -> None:
    shops = [shop(key, **{f"c{number}": "7.00" for number in range(22)}) for key in ("a", "b", "c")]
    with pytest.raises(UserError) as caught:
        plan(shops, **{f"c{number}": 3 for number in range(22)})
    assert caught.value.name == "basket-too-large"
    with pytest.raises(UserError) as caught:
        plan([shop(key, oat="7.00") for key in ("a", "b", "c", "d")], mixed=True, oat=60)
    assert caught.value.name == "basket-too-large" and "several lots" in caught.value.message


def test_one_shop_has_no_limit_of_colours() -> None:
    assert plan([shop("a", **{f"c{number}": "7.00" for number in range(30)})], **{f"c{number}": 3 for number in range(30)}).total == D("630.00")


def colour(key: str, balls: int, bare: int, in_hand: int = 0) -> Colour:
    return Colour(key, key, balls * 99.0, balls, bare, balls, in_hand, balls * 99.0, balls, False)


def test_balls_for_the_margin_alone_are_what_is_left_out_first() -> None:
    some = (colour("oat", 5, 4), colour("kelp", 6, 6), colour("slate", 3, 2), colour("sand", 3, 2, in_hand=3))
    assert asked_by_margin(some) == ("oat", "slate")
    market = [shop("quay", oat="7.00", kelp="6.00", slate="5.00")]

    def total(left: "tuple[Colour, ...] | list[Colour]") -> Decimal:
        found = make_plan(Market(tuple(market), 2), yarns_wanted(left, ()))
        assert found is not None
        return found.total

    assert margin_changes(some, total) == [  # type: ignore[arg-type]
        Cheaper("margin", "oat", "", D("79.00")), Cheaper("margin", "slate", "", D("81.00")), Cheaper("all margins", "", "", D("74.00")),
    ]  # fmt: skip
