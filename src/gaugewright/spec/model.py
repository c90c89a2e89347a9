"""`Spec`: the whole file as a model, and its JSON schema."""

from typing import Annotated, Any, Literal

from pydantic import Field, Strict

from gaugewright.spec.base import SpecModel
from gaugewright.spec.buying import Buying
from gaugewright.spec.colours import Bands, StripeList
from gaugewright.spec.conventions import Conventions
from gaugewright.spec.fields import EdgeName, FormulaText, Many, Mass, MeasureName, NameKey, OneOrMany, Percent, Text
from gaugewright.spec.materials import Fabric, Yarn
from gaugewright.spec.pieces import Attachment, Piece
from gaugewright.spec.stitch_patterns import WrittenPattern
from gaugewright.spec.sizes import Pattern, Sizes
from gaugewright.spec.vocabulary import BodyPart, SeamMethod, TakeUp

_Loose = Strict(False)


class Seam(SpecModel):
    """Two edges sewn together; the second may be several, one after the other."""

    join: EdgeName = Field(description="The edge sewn, as piece.edge.", examples=["back.side"])
    to: Annotated[tuple[EdgeName, ...], _Loose, OneOrMany, Field(min_length=1)] = Field(
        description="The edge or edges it is sewn to.", examples=["front.side"]
    )
    take_up: TakeUp = Field("edge to edge", description="How much of each edge the seam takes up.")
    method: SeamMethod | None = Field(None, description="How it is sewn.")


class Opening(SpecModel):
    """An opening that part of a body must pass."""

    name: Text = Field(description="The opening's name.", examples=["cuff"])
    around: Annotated[tuple[EdgeName, ...], _Loose, OneOrMany, Field(min_length=1)] = Field(
        description="The edges that lie around it, as piece.edge.", examples=["[sleeve.cuff]"]
    )
    passes: BodyPart = Field(description="What must pass it.", examples=["hand"])
    stretch: Percent | None = Field(None, description="How far it stretches, in percent.")


class Finished(SpecModel):
    """One finished measure of the table that the pattern prints."""

    measure: FormulaText = Field(
        description="How it is measured on the finished garment.", examples=["finished(back.width) * 2"]
    )
    wanted: FormulaText | None = Field(None, description="What it should come to.")
    of: MeasureName | None = Field(None, description="The body measure it belongs to.")
    label: Text | None = Field(None, description="The name printed for it; otherwise its key.")


class Spec(SpecModel):
    """A pattern's spec."""

    gaugewright: Literal[1] = Field(description="The version of this file format.", examples=[1])
    pattern: Pattern = Field(
        description="What is printed about the pattern as a whole.", examples=["{title: Harbour Hat}"]
    )
    sizes: Sizes = Field(
        default_factory=lambda: Sizes.model_validate({}), description="The sizes made; one size unless stated."
    )
    conventions: Conventions = Field(
        default_factory=lambda: Conventions.model_validate({}),
        description="How what doesn't share out evenly is placed, where the trade has several habits.",
    )
    yarns: dict[NameKey, Yarn] = Field(min_length=1, description="The yarns, by name.", examples=["{oat: {weight: 6}}"])
    notions: dict[Text, Mass] = Field(
        default_factory=dict, description="What goes on the finished work beside its yarn, and what all of it weighs.", examples=["{buttons: 45 g}"]
    )
    fabrics: dict[NameKey, Fabric] = Field(
        min_length=1,
        description="The fabrics, by name.",
        examples=['{body: {stitch: hdc, gauge: "8 sts, 7 rows / 10 cm"}}'],
    )
    stitch_patterns: dict[NameKey, WrittenPattern] = Field(default_factory=dict, description="Stitch patterns of this spec's own, by name.")
    buying: Buying = Field(
        default_factory=lambda: Buying.model_validate({}), description="What is bought beyond what the rows take: the margin, and yarn for swatches."
    )
    lengths: dict[NameKey, FormulaText] = Field(default_factory=dict, description="Named lengths.")
    levels: dict[NameKey, FormulaText] = Field(
        default_factory=dict, description="Named heights above the hem, shared by the pieces."
    )
    bands: dict[NameKey, Bands] = Field(default_factory=dict, description="Named colour bands.")
    stripes: dict[NameKey, StripeList] = Field(default_factory=dict, description="Named stripe sequences, shared by pieces.")
    pieces: dict[NameKey, Piece] = Field(
        min_length=1,
        description="The pieces, by name.",
        examples=["{square: {start: {chain: 20 cm}, sections: [even: {length: 20 cm}]}}"],
    )
    seams: Annotated[tuple[Seam, ...], _Loose, Many] = Field((), description="The seams, in the order they are sewn.")
    attach: Annotated[tuple[Attachment, ...], _Loose, Many] = Field((), description="Pieces sewn onto others.")
    openings: Annotated[tuple[Opening, ...], _Loose, Many] = Field(
        (), description="Openings that a hand, a head or a foot must pass."
    )
    finished: dict[NameKey, Finished] = Field(default_factory=dict, description="The finished measures printed.")


def json_schema() -> dict[str, Any]:
    """The spec's JSON schema, for editors."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **Spec.model_json_schema(by_alias=True, mode="validation"),
    }
