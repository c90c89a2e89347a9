"""Buttonholes of a picked-up band. Buttons are bought: their number and size are the same in all sizes."""

from pydantic import Field

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import Count, EdgeName, FormulaText, Length


class Buttonholes(SpecModel):
    """Buttonholes spaced evenly along one of the edges that a band is picked up on."""

    count: Count = Field(description="How many, in every size.")
    size: Length = Field(description="The width of the button, in every size.", examples=["22 mm"])
    edge: EdgeName = Field(
        description="The edge they lie along, as piece.edge: the first or the last that the band is picked up on.",
        examples=["right_front.front"],
    )
    first: FormulaText = Field(description="From the band's end at that edge to the middle of the first.", examples=["3 cm"])
    last: FormulaText = Field(description="From the middle of the last to the other end of that edge.", examples=["1.5 cm"])
