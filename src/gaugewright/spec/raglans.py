"""Raglan yokes: worked from the neck down in rounds, then divided into a body and two sleeves."""

from typing import Self

from pydantic import Field, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.extents import refuse_extents
from gaugewright.spec.fields import Count, FabricName, FormulaText, YarnName


class Raglan(SpecModel):
    """Back, sleeve, front and sleeve, each widened at both ends, until they meet under the arm."""

    length: FormulaText | None = Field(None, description="How deep the raglan is, from the rounds before it to the underarm.")
    rounds: Count | None = Field(None, description="How many rounds.")
    body: FormulaText = Field(description="The girth below the arms, the underarms included.", examples=["body.chest + ease.chest"])
    sleeve: FormulaText = Field(description="The girth of the upper sleeve, its underarm included.", examples=["body.upper_arm + 6 cm"])
    underarm: FormulaText = Field(description="The width of the chain under each arm, shared by body and sleeve.", examples=["4 cm"])
    neck_sleeve: FormulaText | None = Field(
        None, description="The width of each sleeve at the neck; a sixth of the round unless stated, so that back, front and both sleeves have a third each."
    )
    fabric: FabricName | None = Field(None, description="The fabric of this section, if it isn't the piece's.")
    colour: YarnName | None = Field(None, description="The yarn of this section, if it isn't by the piece's colours.")

    @model_validator(mode="after")
    def _one_extent(self) -> Self:
        refuse_extents(self, ("length", "rounds"), "rounds", "raglan", "how deep it is", "add `length: 18 cm`, or `rounds`")
        return self
