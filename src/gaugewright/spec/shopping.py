"""A shopping file, as it is written: shops with their prices, what is in hand, for whom is made, what may be spent.

It stays with its owner and is only read; prices, shops and people never go into a pattern.
"""

from decimal import Decimal
from pathlib import Path
from typing import Annotated, Any, NamedTuple

from pydantic import Field, PlainValidator, Strict, WithJsonSchema, model_validator

from gaugewright.errors import Origin, ProblemsFound
from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import Count, Date, Many, NameKey, OneOrMany, Text, refuse
from gaugewright.spec.money import CODES, Money, MoneyError, parse_rate
from gaugewright.spec.offers import Delivery, Names, Offer, SalePrice
from gaugewright.spec.own_files import validated
from gaugewright.units import UnitError, parse_length
from gaugewright.yaml_reader import Source, read_yaml

MOST_OFFERS, MOST_SHOPS = 6, 8


def _rate(value: Any) -> Money:
    try:
        return parse_rate(str(value))
    except MoneyError as fault:
        raise refuse("price-text", fault.message, fault.hint, fault.column) from None


def _code(value: Any) -> str:
    if isinstance(value, str) and value in CODES:
        return value
    raise refuse("price-text", f"{value} is not a currency code in use", "write a code such as EUR, GBP or USD")


Code = Annotated[str, PlainValidator(_code), WithJsonSchema({"type": "string", "examples": ["EUR"]})]
Rate = Annotated[Money, PlainValidator(_rate), WithJsonSchema({"type": "string", "examples": ["1.1643 EUR"]})]
InHand = Annotated[int, Field(ge=0, le=9999)]
Lots = Annotated[tuple[InHand, ...], Strict(False), OneOrMany, Field(min_length=1, max_length=20)]


class Pack(SpecModel):
    """Several balls sold together."""

    balls: Annotated[Count, Field(ge=2, le=100)] = Field(description="How many balls are in it.", examples=[5])
    price: SalePrice = Field(description="The price of the whole pack.", examples=["34.50 EUR"])


class Listing(SpecModel):
    """One yarn in a price list; a price alone may stand for it."""

    price: SalePrice = Field(description="The price of one ball.", examples=["7.40 EUR"])
    packs: Annotated[tuple[Pack, ...], Strict(False), Many, Field(max_length=3)] = Field((), description="What it is sold in besides single balls.", examples=["[{balls: 5, price: 34.50 EUR}]"])
    in_stock: Lots | None = Field(None, description="Balls there are, or a list with those of each dye lot; as many as are wanted unless stated.", examples=["[8, 14]"])

    @model_validator(mode="before")
    @classmethod
    def _from_price(cls, value: Any) -> Any:
        return value if isinstance(value, dict) or value is None else {"price": value}


class Shop(SpecModel):
    """One shop: what it asks for what, its offers and its delivery."""

    title: Text | None = Field(None, description="The name printed for it; otherwise its key.")
    yarns: dict[Text, Listing] = Field({}, description="The price list, by the spec's names of yarns.", examples=["{oat: 7.40 EUR}"])
    hooks: dict[Text, SalePrice] = Field({}, description="Hooks by their size.", examples=["{10 mm: 6.90 EUR}"])
    notions: dict[Text, SalePrice] = Field({}, description="Whatever else is wanted, by name.", examples=["{yarn needle: 2.20 EUR}"])
    offers: Annotated[tuple[Offer, ...], Strict(False), Many, Field(max_length=MOST_OFFERS)] = Field((), description="Its offers, in the order in which its till takes them.")
    combine: bool = Field(False, description="Whether one thing may get several of the offers; unless it does, the till takes the cheapest choice.")
    delivery: Delivery | None = Field(None, description="What sending costs; nothing where it isn't sent.", examples=["{cost: 4.90 EUR, free_over: 60 EUR}"])


class Making(SpecModel):
    """One size that is made."""

    size: Text = Field(description="A size of the pattern.", examples=["M"])
    person: Text | None = Field(None, alias="for", description="Whom it is for.")
    times: Annotated[Count, Field(le=50)] = Field(1, description="How many are made.")


class Shopping(SpecModel):
    """All that is known before buying."""

    shops: Annotated[dict[NameKey, Shop], Field(min_length=1, max_length=MOST_SHOPS)] = Field(description="The shops, by a short name.", examples=["{quay: {yarns: {oat: 7.40 EUR}}}"])
    make: Annotated[tuple[Making, ...], Strict(False), Many, Field(min_length=1, max_length=40)] | None = Field(None, description="What is made: sizes, for whom, how many.", examples=["[{size: M, for: Ada}]"])
    have: dict[Text, InHand] = Field({}, description="Balls, hooks and notions already in hand.", examples=["{oat: 2, 10 mm: 1}"])
    notions: dict[Text, Count] = Field({}, description="What else is wanted, and how many; hooks and buttons come from the pattern.", examples=["{yarn needle: 1}"])
    mix_lots: Names | None = Field(None, description="Yarns whose balls may come from several dye lots and shops, or `all`.", examples=["[slate]"])
    budget: SalePrice | None = Field(None, description="What may be spent in all.", examples=["160 EUR"])
    currency: Code | None = Field(None, description="The currency of the total; the budget's, or the first shop's, unless stated.")
    rates: dict[Code, Rate] = Field({}, description="What one unit of another currency costs.", examples=["{GBP: 1.1643 EUR}"])
    prices_as_of: Date | None = Field(None, description="The day the prices were read.")

    def rate_of(self, code: str, into: str) -> Decimal | None:
        """What one unit of a currency costs in another, where it is stated."""
        if code == into:
            return Decimal(1)
        rate = self.rates.get(code)
        return rate.amount if rate is not None and rate.code == into else None


class ShoppingFile(NamedTuple):
    """A shopping file with the places of its parts."""

    data: Shopping
    source: Source

    def origin(self, *path: str | int, key: bool = False) -> Origin:
        """The place of a part."""
        return self.source.origin_at(path, key=key)


def read_shopping(path: Path) -> ShoppingFile:
    """The file; raises its problems, placed in it."""
    return shopping_from(read_yaml(path))


def shopping_from(source: Source) -> ShoppingFile:
    """What a source holds; raises its problems."""
    from gaugewright.spec.check_shopping import problems_in

    found = ShoppingFile(validated(Shopping, source), source)
    if problems := tuple(problems_in(found)):
        raise ProblemsFound(problems)
    return found


def is_size(name: str) -> bool:
    """Whether a name is a hook's size."""
    try:
        return parse_length(name) > 0
    except UnitError:
        return False


def thing(name: str) -> str:
    """A hook's size in one writing; any other name as it is.

    >>> thing("10.0 mm"), thing("0.9 cm"), thing("oat")
    ('10 mm', '9 mm', 'oat')
    """
    return f"{parse_length(name):g} mm" if is_size(name) else name
