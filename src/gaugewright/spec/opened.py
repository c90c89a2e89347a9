"""Tubes opened at their end: part of the last round is left, and a piece in rows goes on over the rest."""

from pydantic import Field

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import FormulaText, NameKey


class Opened(SpecModel):
    """The last stitches of the last round are left; another piece goes on over the others with `go_on`."""

    leave: FormulaText = Field(description="How much of the last round is left.", examples=["8 cm"])
    left: NameKey = Field("instep", description="The name of the edge that is left.")
    rest: NameKey = Field("sole", description="The name of the part that a piece in rows goes on over.")
