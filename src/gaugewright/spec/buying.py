"""What is bought beyond what the rows take."""

from typing import Annotated, Any, Literal

from pydantic import Field, PlainValidator, WithJsonSchema

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import percentage, refuse

MARGIN = 10.0
"""Percent added to every colour unless the spec sets it (published: designers add 10 to 15 %, Devious Knitter)."""

MOST = 100.0
"""Twice the yarn is no margin any more."""


def _margin(value: Any) -> float:
    """A percentage from nothing up; nothing at all is a choice too."""
    percent, text = percentage(value, "15 %")
    if not 0 <= percent <= MOST:
        less = percent < 0
        raise refuse(
            "out-of-range", f"a margin of {text} is {'less yarn than the rows take' if less else 'more yarn to spare than to work'}",
            "write a percentage from 0 % to 100 %, such as 15 %",
        )
    return percent


Margin = Annotated[float, PlainValidator(_margin), WithJsonSchema({"type": ["number", "string"], "examples": [15, "15 %"]})]


class Buying(SpecModel):
    """What is bought beyond what the rows take."""

    margin: Margin = Field(MARGIN, description="What is added to every colour for what can't be counted, in percent; 0 % adds nothing.", examples=["15 %"])
    swatches: Literal["apart", "in the balls"] = Field(
        "apart", description="Whether the yarn for the swatches that the pattern asks for is told apart, or is in the balls and grams."
    )
    cost: Literal["left out", "printed"] = Field("left out", description="Whether the pattern prints what the balls cost at the prices stated; prices age sooner than patterns.")
