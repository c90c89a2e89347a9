"""Wedges of short rows: more length in one place than along the side edges, as a full bust needs in a front."""

from typing import Annotated

from pydantic import Field

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import FormulaText, Refers, Text


class Wedge(SpecModel):
    """Rows that turn before the end, each pair a step shorter, between two stretches worked even."""

    depth: FormulaText = Field(
        description="How much longer the piece is at its deepest; sizes where it is 0 have no wedge.", examples=["max(0 cm, (body.bust - 110 cm) * 0.15)"]
    )
    point: FormulaText = Field(description="How far from each side edge the wedge begins.", examples=["5 cm"])
    shortest: FormulaText | None = Field(None, description="How wide its shortest row is; a third of the piece unless stated.")
    at: Annotated[Text, Refers("own edge")] = Field(
        "middle", description="Where it is deepest: in the middle, or at an edge: starting, far, or its name, as the front edge of a half front."
    )
