"""The pattern's own data, and its sizes."""

from typing import Annotated

from pydantic import Field, Strict, Tag

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import Date, FitOrLength, Length, Many, NameKey, Refers, Shape, SignedLength, Text
from gaugewright.spec.vocabulary import Level, PrintedHours, ReadRange, ShownUnits, SizeTable, Terms

_Loose = Strict(False)
SizeLabel = Annotated[Text, Refers("size")]


class Pattern(SpecModel):
    """What is printed about the pattern as a whole."""

    title: Text = Field(description="The pattern's title.", examples=["Saltmarsh Jacket"])
    workshop: Text | None = Field(None, description="Who publishes it.")
    level: Level | None = Field(None, description="How much experience it asks for.")
    version: Text | None = Field(None, description="The edition.")
    date: Date | None = Field(None, description="The date of this edition, as year-month-day.")
    language: Annotated[Text, Field(pattern="^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$")] = Field(
        "en", description="The language, as a tag such as en or en-GB."
    )
    terms: Terms = Field("us", description="Whether stitches are named in US or UK terms.")
    units: ShownUnits = Field("cm", description="The unit shown first.")
    about: Text | None = Field(None, description="A paragraph that introduces the pattern.")
    licence: Text | None = Field(None, description="The licence under which it is published.")
    hours: PrintedHours | None = Field(
        None, description="Whether hours of work are printed; at a glance where a swatch is timed, unless stated. Stated without one, a wide estimate is."
    )
    notes: Annotated[tuple[Text, ...], _Loose, Many] = Field((), description="Notes on the whole pattern.")


Ease = Annotated[
    Annotated[FitOrLength, Tag("<text>")]
    | Annotated[tuple[SignedLength, ...], _Loose, Many, Tag("<list>")]
    | Annotated[dict[SizeLabel, SignedLength], Tag("<table>")],
    Shape,
]


class Sizes(SpecModel):
    """The sizes made, and the bodies they are made for."""

    table: SizeTable | None = Field(None, description="The table of body measures.")
    make: Annotated[tuple[SizeLabel, ...], _Loose, Many, Field(min_length=1)] | None = Field(
        None, description="The sizes made, smallest first; all of the table, or all under `own` or `dimensions`, unless stated."
    )
    read: ReadRange = Field("upper", description="Which end of a range in the table is used.")
    own: dict[Text, dict[NameKey, Length]] = Field(
        default_factory=dict, description="Own measures, by size; they go before the table's."
    )
    dimensions: dict[Text, dict[NameKey, Length]] = Field(
        default_factory=dict,
        description="For things that fit no body: lengths by size, under names of your own, which formulas use as size.width.",
        examples=["{Scarf: {width: 24 cm, length: 170 cm}}"],
    )
    ease: dict[Annotated[Text, Refers("measure")], Ease] = Field(
        default_factory=dict,
        description="Room beyond the body, by measure: a length, a fit, a list with one length for each size, or a length by size.",
    )
