"""A shop's offers and its delivery, as they are written in a shopping file."""

import re
from decimal import Decimal
from typing import Annotated, Any, Self

from pydantic import Field, PlainValidator, Strict, WithJsonSchema, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import Count, OneOrMany, Text, as_written, refuse
from gaugewright.spec.money import Money, MoneyError, parse_money


def _price(value: Any) -> Money:
    """A price above nothing: what costs nothing is no entry of a price list."""
    if isinstance(value, bool) or not isinstance(value, (str, int, float)):
        raise refuse("wrong-kind", "a price is expected", "write a price such as 7.40 EUR")
    try:
        money = parse_money(str(as_written(value)))
    except MoneyError as fault:
        raise refuse("price-text", fault.message, fault.hint, fault.column) from None
    if not money.amount:
        raise refuse("not-positive", f"{value} is no price: more than nothing is expected", "write what is paid, such as 7.40 EUR, or take it out")
    return money


def _share(value: Any) -> Decimal:
    """A percentage, exactly as written: 33.3 % stays 33.3."""
    text = str(as_written(value)).strip()
    match = re.fullmatch(r"([0-9]{1,3}(?:\.[0-9]{1,4})?)\s*%", text)
    if not match or not 0 < Decimal(match[1]) <= 100:
        raise refuse("offer-gives-nothing", f"{text} is no reduction: a percentage above 0, up to 100, is expected", "write a percentage such as 50 %")
    return Decimal(match[1])


def _off(value: Any) -> Money | Decimal:
    if isinstance(value, (str, int, float)) and "%" in str(value):
        share = _share(value)
        if share == 100:
            raise refuse("offer-gives-nothing", "with 100 % off there is nothing left to pay", "write a percentage below 100 %")
        return share
    return _price(value)


SalePrice = Annotated[Money, PlainValidator(_price), WithJsonSchema({"type": "string", "examples": ["7.40 EUR"]})]
ExactPercent = Annotated[Decimal, PlainValidator(_share), WithJsonSchema({"type": "string", "examples": ["50 %"]})]
Off = Annotated[Money | Decimal, PlainValidator(_off), WithJsonSchema({"type": "string", "examples": ["10 %", "5.00 EUR"]})]
Names = Annotated[tuple[Text, ...], Strict(False), OneOrMany, Field(min_length=1, max_length=40)]


class Offer(SpecModel):
    """One offer: `second_reduced`, or `take` and `pay`, or `off`."""

    second_reduced: ExactPercent | None = Field(None, description="Of every two pieces, the cheaper is reduced by this.", examples=["50 %"])
    take: Count | None = Field(None, description="So many pieces ...", examples=[3])
    pay: Count | None = Field(None, description="... for the price of so many, the cheapest of them being free.", examples=[2])
    off: Off | None = Field(None, description="A percentage, or an amount, off what is bought.", examples=["10 %"])
    over: SalePrice | None = Field(None, description="What must be bought before `off` is given; it may be just as much.", examples=["60 EUR"])
    on: Names | None = Field(None, description="The yarns, hooks and notions it is for, or `all`; all yarns unless stated.", examples=["[oat, kelp]"])

    @model_validator(mode="after")
    def _one_kind(self) -> Self:
        kinds = [self.second_reduced is not None, self.take is not None or self.pay is not None, self.off is not None]
        if sum(kinds) != 1:
            raise refuse("offer-kind", "an offer is `second_reduced`, or `take` and `pay`, or `off`: one of them", "write each offer as an entry of its own, such as {take: 3, pay: 2}")
        if (self.take is None) != (self.pay is None):
            missing = "pay: 2" if self.pay is None else "take: 3"
            raise refuse("missing-key", "`take` and `pay` belong together", f"add `{missing}`")
        if self.take is not None and self.pay is not None and self.pay >= self.take:
            raise refuse("offer-gives-nothing", f"{self.take} for the price of {self.pay} is no offer", f"write take: {self.pay + 1}, pay: {self.pay}", path=("pay",))
        return self._checked_threshold()

    def _checked_threshold(self) -> Self:
        if self.over is not None and self.off is None:
            raise refuse("offer-kind", "`over` belongs to `off`; an offer by pieces has no threshold", "take out `over`", path=("over",))
        if isinstance(self.off, Money):
            if self.over is None:
                raise refuse("missing-key", "an amount off needs to say over what it is given", f"add `over: {self.off}`")
            if self.over.code == self.off.code and self.over.amount < self.off.amount:
                raise refuse("offer-gives-nothing", f"{self.off} off what costs {self.over} leaves less than nothing", f"write over: {self.off}", path=("over",))
        return self

    @property
    def by_pieces(self) -> bool:
        """Whether single pieces are reduced or free."""
        return self.off is None

    @property
    def prices(self) -> tuple[tuple[str, Money], ...]:
        """The sums of money in it, by key."""
        return tuple((key, value) for key, value in (("off", self.off), ("over", self.over)) if isinstance(value, Money))


class Delivery(SpecModel):
    """What it costs to have things sent."""

    cost: SalePrice = Field(description="What delivery costs.", examples=["4.90 EUR"])
    free_over: SalePrice | None = Field(None, description="What is paid for the goods, after offers, from which delivery is free.", examples=["60 EUR"])

