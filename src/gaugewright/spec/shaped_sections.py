"""Sections shaped at their edges: armholes, raglan edges, necks, a half front's neck edge, sleeve caps.

Each is its own model, named by the key that opens it. Depths and slopes hang from the shoulder, so
they lie within the piece's total: a neck takes its rows from the section below it.
"""

from typing import Annotated, Any, Literal, Self, TypeVar

from pydantic import Field, Strict, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.extents import refuse_extents
from gaugewright.spec.fields import EdgeName, FabricName, FormulaText, OneOrMany, Refers, Text, YarnName, refuse
from gaugewright.spec.vocabulary import HalfNeckShape, NeckShape

OneEdge = Annotated[Text, Refers("own edge")]

_SLOPE = Field(None, description="How far the shoulder slopes from the neck to the armhole; it lies within the total.")
_WIDTH = "The width of the neck"
_DEPTH = Field(description="How deep the neck is, measured down from the top of the shoulder.", examples=["8 cm"])

SlopeWay = Literal["steps", "rising stitches"]
AS: Any = Field(
    "steps", alias="as",
    description="How the slope is worked: in steps of stitches left, or within the last row by stitches of rising height (sl st, sc, hdc, dc, tr).",
)
_Sloped = TypeVar("_Sloped", bound=SpecModel)


def rises_somewhere(model: _Sloped, worked_as: SlopeWay, slope: str | None) -> _Sloped:
    """Rising stitches make a slope, so one must be stated."""
    if worked_as != "steps" and slope is None:
        raise refuse("rising-without-slope", "stitches rise here, but by no stated slope", "add `slope: 2 cm`, or take out `as`", path=("as",))
    return model


class Armhole(SpecModel):
    """Shaped in at the side edges: stitches left at the underarm, then a curve, then straight."""

    to: FormulaText | None = Field(None, description="The height from the hem at which the section ends: a level, or a formula.")
    length: FormulaText | None = Field(None, description="The section's own length.")
    target: FormulaText = Field(description="The width left above the armholes.", examples=["body.cross_back + 2 cm"])
    block: FormulaText | None = Field(None, description="How much is left at once at each underarm; half of what goes there unless stated.")
    at: OneEdge = Field("both", description="Where it is shaped: both, starting, far, or the name of an edge.")
    fabric: FabricName | None = Field(None, description="The fabric of this section, if it isn't the piece's.")
    colour: YarnName | None = Field(None, description="The yarn of this section, if it isn't by the piece's colours.")

    @model_validator(mode="after")
    def _one_extent(self) -> Self:
        refuse_extents(self, ("to", "length"), "length", "armhole", "how far it goes", "add `to` with a level, or `length: 20 cm`")
        return self


class RaglanEdge(SpecModel):
    """Shaped in at the side edges in one straight line from the underarm to the neck."""

    to: FormulaText | None = Field(None, description="The height from the hem at which the section ends: a level, or a formula.")
    length: FormulaText | None = Field(None, description="How deep the raglan is, from the underarm to the neck; alike in body and sleeves.", examples=["(body.upper_arm + 10 cm) / 2"])
    target: FormulaText = Field(description="The width left at the neck.", examples=["body.neck * 0.4"])
    block: FormulaText | None = Field(None, description="How much is left at once at each underarm, alike in body and sleeves; 2.5 cm unless stated.")
    at: OneEdge = Field("both", description="Where it is shaped: both, starting, far, or the name of an edge.")
    fabric: FabricName | None = Field(None, description="The fabric of this section, if it isn't the piece's.")
    colour: YarnName | None = Field(None, description="The yarn of this section, if it isn't by the piece's colours.")

    @model_validator(mode="after")
    def _one_extent(self) -> Self:
        refuse_extents(self, ("to", "length"), "to", "raglan edge", "how far it goes", "add `length: 22 cm`, or `to` with a level")
        return self


class Neck(SpecModel):
    """The divided top of a back or front: each side of the neck is worked by itself."""

    shape: NeckShape = Field(description="The neck's shape: round, v, boat or square.")
    width: FormulaText | None = Field(None, description=f"{_WIDTH}; above raglan edges it takes what they leave.", examples=["18 cm"])
    depth: FormulaText = _DEPTH
    slope: FormulaText | None = _SLOPE
    worked_as: SlopeWay = AS

    @model_validator(mode="after")
    def _rises_somewhere(self) -> Self:
        return rises_somewhere(self, self.worked_as, self.slope)


class NeckEdge(SpecModel):
    """The top of a half front: its neck edge is shaped, and the shoulder beside it."""

    shape: HalfNeckShape = Field(description="The edge's shape: round or v.")
    width: FormulaText | None = Field(
        None, description=f"{_WIDTH} that this edge takes: half of the whole; above a raglan edge it takes what that leaves.", examples=["9 cm"]
    )
    depth: FormulaText = _DEPTH
    at: OneEdge = Field(description="The edge that is shaped: starting, far, or its name.")
    slope: FormulaText | None = _SLOPE
    worked_as: SlopeWay = AS

    @model_validator(mode="after")
    def _rises_somewhere(self) -> Self:
        return rises_somewhere(self, self.worked_as, self.slope)


class Cap(SpecModel):
    """The top of a set-in sleeve worked flat: shaped at both edges until its edge fits its armhole."""

    fit: Annotated[tuple[EdgeName, ...], Strict(False), OneOrMany, Field(min_length=1)] = Field(
        description="The edges it is sewn into, as piece.edge.", examples=[["back.armhole", "front.armhole"]]
    )
    ease: FormulaText | None = Field(None, description="How much longer than its armhole the cap's edge is; nothing unless stated.")
    block: FormulaText | None = Field(None, description="How much is left at once at each edge, best the armhole's own; 2.5 cm unless stated.")
    colour: YarnName | None = Field(None, description="The yarn of this section, if it isn't by the piece's colours.")
