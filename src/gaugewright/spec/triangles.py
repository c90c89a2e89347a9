"""Triangles worked from the middle of their long edge, as shawls are."""

from pydantic import Field

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import FabricName, FormulaText, YarnName


class Triangle(SpecModel):
    """Rows in a V that widen at both ends and on both sides of a stitch in their middle, the spine."""

    width: FormulaText = Field(description="The length of its long edge, from tip to tip; it is half as deep.", examples=["size.width"])
    fabric: FabricName | None = Field(None, description="The fabric of this section, if it isn't the piece's.")
    colour: YarnName | None = Field(None, description="The yarn of this section, if it isn't by the piece's colours.")
