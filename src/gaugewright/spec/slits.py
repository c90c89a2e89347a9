"""Openings worked into a piece: a thumb's, a pocket's."""

from pydantic import Field

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import FabricName, FormulaText, NameKey, YarnName
from gaugewright.spec.vocabulary import OpeningPlace


class Slit(SpecModel):
    """One row or round in which stitches are passed over and as many chains made over them."""

    edge: NameKey = Field(description="The name of its edge, both sides of it together.", examples=["thumb"])
    width: FormulaText = Field(description="How wide it is: the stitches passed over.", examples=["6 cm"])
    at: OpeningPlace = Field(
        "middle", description="Where it lies: near the start or the end of the round (or the starting or far edge of rows), or in the middle."
    )
    inset: FormulaText | None = Field(
        None, description="How far it lies from that start, end or edge; a stitch unless stated."
    )
    fabric: FabricName | None = Field(None, description="The fabric of its row, if it isn't the piece's.")
    colour: YarnName | None = Field(None, description="The yarn of its row, if it isn't by the piece's colours.")
