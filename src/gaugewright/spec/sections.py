"""The sections a piece is stacked from; each kind is its own model, named by the key that opens it."""

from typing import Annotated, Self

from pydantic import Field, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.crowns import Crown
from gaugewright.spec.extents import refuse_extents, stated_keys
from gaugewright.spec.fields import Change, Count, FabricName, FormulaText, LengthOrRest, Refers, Text, YarnName, refuse
from gaugewright.spec.motifs import Motif
from gaugewright.spec.opened import Opened
from gaugewright.spec.raglans import Raglan
from gaugewright.spec.round_yokes import RoundYoke
from gaugewright.spec.shaped_sections import AS, Armhole, Cap, Neck, NeckEdge, RaglanEdge, SlopeWay, rises_somewhere
from gaugewright.spec.slits import Slit
from gaugewright.spec.triangles import Triangle
from gaugewright.spec.vocabulary import RoundingRule
from gaugewright.spec.wedges import Wedge

WhichEdge = Annotated[Text, Refers("own edge")]

_FABRIC = Field(None, description="The fabric of this section, if it isn't the piece's.")
_COLOUR = Field(None, description="The yarn of this section, if it isn't by the piece's colours.")
_TO = Field(None, description="The height from the hem at which the section ends: a level, or a formula.")


EXTENTS = ("to", "length", "rows", "rounds")
"""How far a section goes: one of these."""


def _refuse_extents(model: SpecModel) -> None:
    refuse_extents(model, EXTENTS, "", "section", "how far it goes", "add `length: 10 cm`, or `to` with a level, or `rows`")


class Even(SpecModel):
    """Worked even, without shaping; its extent is given in one way."""

    to: FormulaText | None = _TO
    length: LengthOrRest | None = Field(
        None, description="The section's own length, or `rest`: what the piece's total leaves."
    )
    rows: Count | None = Field(None, description="How many rows.")
    rounds: Count | None = Field(None, description="How many rounds.")
    fabric: FabricName | None = _FABRIC
    colour: YarnName | None = _COLOUR

    @model_validator(mode="after")
    def _one_extent(self) -> Self:
        _refuse_extents(self)
        return self


class Taper(SpecModel):
    """Shaped in or out, given by two of: how far, to what width, how many stitches each time."""

    to: FormulaText | None = _TO
    length: FormulaText | None = Field(None, description="The section's own length.")
    rows: Count | None = Field(None, description="How many rows.")
    rounds: Count | None = Field(None, description="How many rounds.")
    target: FormulaText | None = Field(None, description="The width at its end.")
    stitches: Count | None = Field(None, description="The stitch count at its end.")
    each: Change | None = Field(None, description="Stitches changed in each shaping row or round; without a target, minus takes them away.")
    at: WhichEdge = Field("both", description="Where it is shaped: both, starting, far, or the name of an edge; in rounds pairs (beside their beginning), sides (there and opposite) or all round.")
    round: RoundingRule = Field("nearest", description="How the count at its end is rounded.")
    in_one: bool = Field(
        False, description="In rows: whether several increases at an edge are worked into its one edge stitch, as from a point or in a crescent, instead of side by side."
    )
    close: bool = Field(False, description="In rounds: whether its last stitches are drawn together, which shuts the piece.")
    fabric: FabricName | None = _FABRIC
    colour: YarnName | None = _COLOUR

    @model_validator(mode="after")
    def _two_of_three(self) -> Self:
        extent, width = stated_keys(self, *EXTENTS), stated_keys(self, "target", "stitches")
        if len(extent) > 1:
            _refuse_extents(self)
        if len(width) > 1:
            raise refuse(
                "two-widths", "this taper gives both `target` and `stitches`", "keep one of them", path=("stitches",)
            )
        given = [*extent, *width, *stated_keys(self, "each")]
        if len(given) > 2:
            message = (
                f"this taper gives {given[0]}, {given[1]} and {given[2]}: with two, the third follows for each size"
            )
            raise refuse("taper-overstated", message, f"take out `{given[2]}`", path=(given[2],))
        if len(given) < 2:
            message = f"this taper gives only {given[0]}" if given else "this taper says neither how far nor how wide"
            hint = "add `target: 40 cm`, the width at its end" if extent else "add `length: 9 cm`, how far it goes"
            hint = hint if given else "add `length: 9 cm` and `target: 40 cm`"
            raise refuse(
                "taper-understated", f"{message}; two of length, width and stitches each time are expected", hint
            )
        return self


class Shoulders(SpecModel):
    """The top of a back or front: a neck in the middle, a shoulder at each side."""

    neck: FormulaText = Field(description="The width of the neck.", examples=["16 cm"])
    slope: FormulaText | None = Field(
        None, description="How far the shoulders slope from the neck to the armholes; it lies within the total."
    )
    worked_as: SlopeWay = AS

    @model_validator(mode="after")
    def _rises_somewhere(self) -> Self:
        return rises_somewhere(self, self.worked_as, self.slope)


SectionPart = Even | Taper | Shoulders | Armhole | RaglanEdge | Neck | NeckEdge | Cap | Crown | Raglan | RoundYoke | Wedge | Slit | Opened | Motif | Triangle
KINDS = (
    "even", "taper", "shoulders", "armhole", "raglan_edge", "neck", "neck_edge", "cap", "crown", "raglan", "round_yoke", "wedge", "opening", "open", "motif", "triangle",
)


class Section(SpecModel):
    """One section: one key, which names its kind."""

    even: Even | None = Field(None, description="Worked even.")
    taper: Taper | None = Field(None, description="Shaped in or out.")
    shoulders: Shoulders | None = Field(None, description="Neck and shoulders.")
    armhole: Armhole | None = Field(None, description="Shaped armholes.")
    raglan_edge: RaglanEdge | None = Field(None, description="Raglan edges of a flat piece, from the underarm up to the neck.")
    neck: Neck | None = Field(None, description="The top divided by a shaped neck.")
    neck_edge: NeckEdge | None = Field(None, description="The neck edge and shoulder of a half front.")
    cap: Cap | None = Field(None, description="The cap of a set-in sleeve.")
    crown: Crown | None = Field(None, description="A disc, or the closed end of a tube, in rounds.")
    motif: Motif | None = Field(None, description="A flat motif with corners, in rounds.")
    raglan: Raglan | None = Field(None, description="A yoke from the neck down, divided at the underarm.")
    round_yoke: RoundYoke | None = Field(None, description="A circular yoke from the neck down, divided at the underarm.")
    wedge: Wedge | None = Field(None, description="A wedge of short rows, such as a front needs over a full bust.")
    opening: Slit | None = Field(None, description="A row or round with an opening, such as a thumb's: stitches passed over, chains over them.")
    open: Opened | None = Field(None, description="A tube's end, opened: part of its last round is left, and a piece in rows goes on over the rest.")
    triangle: Triangle | None = Field(None, description="A triangle from the middle of its long edge, as a shawl: all of a piece that starts with `middle`.")

    @model_validator(mode="after")
    def _one_kind(self) -> Self:
        given = stated_keys(self, *KINDS)
        if len(given) > 1:
            raise refuse(
                "two-kinds",
                f"one section is both {given[0]} and {given[1]}",
                f"begin a new entry with `- {given[1]}:`",
                path=(given[1],),
            )
        if not given:
            raise refuse(
                "missing-key",
                "this section has no kind",
                f"begin it with {', '.join(KINDS[:-1])} or {KINDS[-1]}, such as `even: {{length: 10 cm}}`",
            )
        return self

    @property
    def part(self) -> SectionPart:
        """What the section holds."""
        found: SectionPart = next(part for kind in KINDS if (part := getattr(self, kind)) is not None)
        return found
