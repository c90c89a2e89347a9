"""The colours of a piece: one yarn, bands by height, stripes by sequence, or blocks side by side in a row."""

import re
from typing import Annotated, Any, Self

from pydantic import AfterValidator, Field, PlainValidator, Strict, Tag, WithJsonSchema, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import (
    FORMULA,
    BandsName,
    FormulaText,
    Many,
    PieceName,
    Share,
    Shape,
    StripesName,
    YarnName,
    length_formula,
    refuse,
    whole_count,
)

_Loose = Strict(False)


class Bands(SpecModel):
    """Colour bands from the hem upwards."""

    to: FormulaText = Field(description="The height that the bands fill: a level, or `total`.", examples=["shoulder"])
    heights: Annotated[tuple[Share, ...], _Loose, Many, Field(min_length=1)] = Field(
        description="Each band's height from the hem up, as a length or a share; one may be `rest`.",
        examples=["[50 %, rest]"],
    )

    @model_validator(mode="after")
    def _one_rest(self) -> Self:
        rests = [index for index, height in enumerate(self.heights) if height == "rest"]
        if len(rests) > 1:
            raise refuse(
                "rest-twice",
                "only one band can take the rest",
                "give this band a height such as 30 %",
                path=("heights", rests[1]),
            )
        return self


def _stripe_rows(value: Any) -> str:
    """Whole rows, or a length: either is kept as it was written."""
    if isinstance(value, (bool, int, float)) or re.fullmatch(r"\s*[0-9.]+\s*", str(value)):
        return str(whole_count(value))
    return length_formula(value)


StripeRows = Annotated[
    str, PlainValidator(_stripe_rows), FORMULA,
    WithJsonSchema({"anyOf": [{"type": "integer", "minimum": 1}, {"type": "string"}], "examples": [4, "3 cm"]}),
]


def _one_yarn(value: dict[str, str]) -> dict[str, str]:
    if len(value) != 1:
        found = "no yarn" if not value else f"{len(value)} yarns, {' and '.join(value)},"
        raise refuse(
            "one-yarn-each",
            f"{found} in one place of the list, where one yarn is expected",
            "give each yarn a place of its own: [{oat: 4}, {kelp: 2}]",
        )
    return value


Stripe = Annotated[dict[YarnName, StripeRows], AfterValidator(_one_yarn)]
StripeList = Annotated[tuple[Stripe, ...], _Loose, Many, Field(min_length=1)]
Block = Annotated[dict[YarnName, Share], AfterValidator(_one_yarn)]


class Match(SpecModel):
    """Where a piece's stripes stand as another piece's do, so that they meet across a seam or go on from it."""

    to: PieceName = Field(description="The piece whose stripes these meet.", examples=["back"])
    at: FormulaText | None = Field(
        None, description="The height on that piece, such as its underarm; its end unless stated.", examples=["underarm"]
    )
    own: FormulaText | None = Field(
        None, description="The height on this piece that lies beside it; its beginning unless stated.", examples=["40 cm"]
    )


class BlockRows(SpecModel):
    """Rows with the same blocks of colour side by side."""

    to: FormulaText | None = Field(None, description="The height these rows go up to; the top unless stated.", examples=["15 cm"])
    across: Annotated[
        Annotated[YarnName, Tag("<text>")] | Annotated[Annotated[tuple[Block, ...], _Loose, Many, Field(min_length=1)], Tag("<list>")],
        Shape,
    ] = Field(
        description="The blocks across the row from the starting edge, each a yarn with a length, a share or `rest`; or one yarn.",
        examples=["[{oat: 30 %}, {kelp: rest}]"],
    )

    @model_validator(mode="after")
    def _one_rest(self) -> Self:
        blocks = () if isinstance(self.across, str) else self.across
        rests = [index for index, block in enumerate(blocks) if "rest" in block.values()]
        if len(rests) > 1:
            raise refuse(
                "rest-twice",
                "only one block of a row can take the rest",
                "give this block a width such as 30 %",
                path=("across", rests[1]),
            )
        return self


class Colours(SpecModel):
    """A piece's colours: bands with their order, stripes, or blocks."""

    bands: Annotated[Annotated[BandsName, Tag("<text>")] | Annotated[Bands, Tag("<table>")], Shape] | None = Field(
        None, description="The name of bands, or bands of this piece's own.", examples=["tide"]
    )
    order: Annotated[tuple[YarnName, ...], _Loose, Many, Field(min_length=1)] | None = Field(
        None, description="With `bands`: a yarn for each band, from the hem up.", examples=["[oat, kelp]"]
    )
    stripes: Annotated[Annotated[StripesName, Tag("<text>")] | Annotated[StripeList, Tag("<list>")], Shape] | None = Field(
        None,
        description="A sequence of stripes repeated over the piece, each a yarn with its rows or a length; or the name of one.",
        examples=["[{oat: 4}, {kelp: 2}]"],
    )
    begin: FormulaText | None = Field(
        None, description="With `stripes`: the height at which the sequence begins; the bottom edge unless stated.", examples=["6 cm"]
    )
    match: Match | None = Field(None, description="With `stripes`: where they stand as another piece's do.")
    carry: Annotated[int, Field(ge=0, le=20)] | None = Field(
        None, description="With `stripes`: the most rows over which a resting yarn is carried up the edge instead of cut; 4 unless stated."
    )
    blocks: Annotated[tuple[BlockRows, ...], _Loose, Many, Field(min_length=1)] | None = Field(
        None, description="Blocks of colour side by side, for rows from the bottom edge up."
    )

    @model_validator(mode="before")
    @classmethod
    def _one_plan(cls, value: Any) -> Any:
        if not isinstance(value, dict):
            return value
        plans = [key for key in ("bands", "stripes", "blocks") if value.get(key) is not None]
        if len(plans) > 1:
            raise refuse(
                "two-colour-plans", f"this piece has both `{plans[0]}` and `{plans[1]}`", f"take out `{plans[1]}`", path=(plans[1],)
            )
        if not plans:
            raise refuse("missing-key", "these colours are neither bands, stripes nor blocks", "add `stripes: [{oat: 4}, {kelp: 2}]`, or name one yarn")
        if plans == ["bands"] and value.get("order") is None:
            raise refuse("missing-key", "these bands have no `order`", "add `order` with a yarn for each band, such as [oat, kelp]")
        for key, plan in (("order", "bands"), ("begin", "stripes"), ("match", "stripes"), ("carry", "stripes")):
            if value.get(key) is not None and plan not in plans:
                raise refuse("unknown-key", f"`{key}` goes with `{plan}`, not with `{plans[0]}`", f"take out `{key}`", path=(key,))
        if value.get("begin") is not None and value.get("match") is not None:
            raise refuse("two-beginnings", "`begin` and `match` both say where the sequence stands", "take out `begin`", path=("begin",))
        return value

    @model_validator(mode="after")
    def _last_goes_up(self) -> Self:
        for index, rows in enumerate((self.blocks or ())[:-1]):
            if rows.to is None:
                raise refuse(
                    "missing-key", "these rows of blocks go up to the top, but more blocks follow", "add `to: 15 cm`, the height they go up to",
                    path=("blocks", index),
                )
        return self


PieceColours = Annotated[Annotated[YarnName, Tag("<text>")] | Annotated[Colours, Tag("<table>")], Shape]

__all__ = ["Bands", "BlockRows", "Colours", "Match", "PieceColours", "StripeList"]
