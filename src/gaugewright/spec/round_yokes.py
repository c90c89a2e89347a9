"""Circular yokes: widened by rounds of increases from the neck down, then divided into a body and two sleeves."""

from typing import Annotated, Any, Self

from pydantic import Field, PlainValidator, Strict, WithJsonSchema, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.extents import refuse_extents
from gaugewright.spec.fields import Count, FabricName, FormulaText, Many, YarnName, refuse
from gaugewright.units import UnitError, parse_quantity


def _share(value: Any) -> float:
    """A share of the depth, from 0 (at the neck) to 1 (at the underarm)."""
    text = str(value)
    try:
        amount, dimension = parse_quantity(text if "%" in text else f"{text} %")
    except UnitError as fault:
        raise refuse("wrong-unit", fault.message, fault.hint, fault.column) from None
    if dimension != "number" or not 0 <= amount <= 1:
        raise refuse("out-of-range", f"{text} is no share of the depth", "write a percentage from 0 % (at the neck) to 100 %")
    return amount


DepthShare = Annotated[float, PlainValidator(_share), WithJsonSchema({"type": ["number", "string"], "examples": [0, "25 %"]})]


class RoundYoke(SpecModel):
    """A yoke without lines: rounds of increases, spread evenly, until body and sleeves meet under the arm."""

    length: FormulaText | None = Field(None, description="How deep the yoke is, from the rounds before it to the underarm.")
    rounds: Count | None = Field(None, description="How many rounds.")
    body: FormulaText = Field(description="The girth below the arms, the underarms included.", examples=["body.bust + ease.bust"])
    sleeve: FormulaText = Field(description="The girth of the upper sleeve, its underarm included.", examples=["body.upper_arm + 6 cm"])
    underarm: FormulaText = Field(description="The width of the chain under each arm, shared by body and sleeve.", examples=["7 cm"])
    increases: Count | None = Field(
        None, description="How many increase rounds, the same in all sizes; unless stated as few as never need more than one increase in two stitches."
    )
    at: Annotated[tuple[DepthShare, ...], Strict(False), Many, Field(min_length=1)] | None = Field(
        None, description="Where the increase rounds stand, as shares of the depth from the neck; at even intervals, over as much of it as lies flat, unless stated.",
        examples=["[0 %, 25 %, 50 %]"],
    )
    fabric: FabricName | None = Field(None, description="The fabric of this section, if it isn't the piece's.")
    colour: YarnName | None = Field(None, description="The yarn of this section, if it isn't by the piece's colours.")

    @model_validator(mode="after")
    def _stated_once(self) -> Self:
        refuse_extents(self, ("length", "rounds"), "rounds", "yoke", "how deep it is", "add `length: 22 cm`, or `rounds`")
        if self.at is not None and self.increases is not None:
            raise refuse("two-counts", "this yoke gives both `at` and `increases`: a share for each increase round says how many there are", "take out `increases`", path=("increases",))
        if self.at is not None and list(self.at) != sorted(set(self.at)):
            raise refuse("out-of-range", "the increase rounds of this yoke don't go down from the neck one after the other", "put each share once, the smallest first", path=("at",))
        return self
