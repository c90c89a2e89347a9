"""Pieces: how each starts, its sections, the names of its edges, its colours."""

from typing import Annotated, Self

from pydantic import Field, Strict, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.buttonholes import Buttonholes
from gaugewright.spec.colours import PieceColours
from gaugewright.spec.crowns import Centre, Middle
from gaugewright.spec.fields import (
    Count,
    EdgeName,
    FabricName,
    FormulaText,
    Many,
    OneOrMany,
    Percent,
    PieceName,
    Refers,
    Text,
    refuse,
)
from gaugewright.spec.motifs import Grid
from gaugewright.spec.sections import Section
from gaugewright.spec.vocabulary import CornerName, JoinBy, TakeUp

_Loose = Strict(False)
EdgeList = Annotated[tuple[Annotated[Text, Refers("edge or level")], ...], _Loose, Many, Field(min_length=1)]


class Start(SpecModel):
    """How a piece begins, in exactly one of these ways."""

    chain: FormulaText | None = Field(None, description="A foundation chain of this width, worked in rows.")
    ring: FormulaText | None = Field(None, description="A foundation ring of this circumference, worked in rounds.")
    centre: Centre | None = Field(
        None, description="A closed centre (adjustable ring) holding this many stitches, worked in rounds; `flat`: as many as lie flat."
    )
    middle: Middle | None = Field(
        None, description="A ring at the middle of a long edge, from which a triangle's rows fan out; `flat`: with as many stitches as lie flat."
    )
    pick_up: Annotated[tuple[EdgeName, ...], _Loose, OneOrMany, Field(min_length=1)] | None = Field(
        None, description="Edges along which stitches are picked up, in order, as piece.edge."
    )
    divide: EdgeName | None = Field(
        None, description="The part of a yoke that the piece goes on from: piece.body or piece.sleeve.", examples=["yoke.body"]
    )
    join: Annotated[tuple[EdgeName, ...], _Loose, OneOrMany, Field(min_length=1)] | None = Field(
        None, description="With `chain`: edges to which a band worked sideways is joined as it grows, in order, as piece.edge."
    )
    gather: Percent | None = Field(None, description="With `join`: how much shorter than its edges the band is, to pull them in.")
    join_by: JoinBy = Field("slip stitch", description="With `join`: joined by slip stitches as it grows, or by sewing afterwards.")
    go_on: EdgeName | None = Field(
        None, description="The part of an opened tube that the piece goes on over in rows.", examples=["foot.sole"]
    )
    fabric: FabricName | None = Field(
        None, description="The fabric whose gauge counts the start, if it isn't the piece's."
    )
    take_up: TakeUp | None = Field(
        None, description="With `pick_up` or `join`: how much of each edge is taken up; edge to edge unless stated."
    )

    corners: Annotated[tuple[CornerName, ...], _Loose, OneOrMany, Field(min_length=1)] | None = Field(
        None,
        description="With `pick_up`: the corners that the band is shaped at. Unless stated a band up to 6 cm deep is shaped at V points, "
        "square necks, underarms, hems and tips of shawls, and any border round joined motifs at all of theirs; `none`: it runs straight over them.",
        examples=["[point, back neck]"],
    )

    @model_validator(mode="after")
    def _corners_of_bands(self) -> Self:
        if self.corners and not self.pick_up:
            raise refuse(
                "corners-without-edge", "only a band that is picked up has corners", "take out `corners`; it goes with `pick_up`", path=("corners",)
            )
        if self.corners and "none" in self.corners and len(self.corners) > 1:
            raise refuse("corners-without-edge", "`none` stands beside other corners", "take out `none`, or the others", path=("corners",))
        return self

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        given = [key for key in ("chain", "ring", "centre", "middle", "pick_up", "divide", "go_on") if getattr(self, key) is not None]
        if len(given) > 1:
            raise refuse(
                "two-starts",
                f"this piece starts with both `{given[0]}` and `{given[1]}`",
                f"take out `{given[1]}`",
                path=(given[1],),
            )
        if not given:
            raise refuse(
                "missing-key",
                "this start is neither chain, ring, centre, middle, pick_up, divide nor go_on",
                "add `chain: 20 cm`, the width it starts with",
            )
        _check_join(self)
        if self.take_up and not (self.pick_up or self.join):
            raise refuse(
                "take-up-without-edge",
                f"a {given[0]} takes nothing up",
                "take out `take_up`; it goes with `pick_up` and `join`",
                path=("take_up",),
            )
        return self


MOST_GATHERED = 50.0
"""Per cent: no band pulls an edge in to less than half."""


def _check_join(start: Start) -> None:
    """A band worked sideways begins with a chain; only it is gathered."""
    if start.join and start.chain is None:
        raise refuse("join-without-chain", "a band joined as it grows begins with a chain as long as the band is deep", "add `chain: 6 cm`", path=("join",))
    given = [key for key, is_given in (("gather", start.gather is not None), ("join_by", start.join_by != "slip stitch")) if is_given]
    if given and not start.join:
        raise refuse("join-without-edge", f"`{given[0]}` goes with `join`, and this start names no edge to join", f"add `join: [back.hem]`, or take out `{given[0]}`", path=(given[0],))
    if start.gather is not None and start.gather > MOST_GATHERED:
        raise refuse("out-of-range", f"{start.gather:g} % is more than an edge can be pulled in", f"write {MOST_GATHERED:g} % or less", path=("gather",))


class Edges(SpecModel):
    """Names for a piece's edges. A list goes up from the hem: edge, level, edge, level, edge."""

    both: EdgeList | None = Field(None, description="Names on both side edges, with the levels between them.")
    starting: EdgeList | None = Field(None, description="Names on the edge where right-side rows begin.")
    far: EdgeList | None = Field(None, description="Names on the edge where right-side rows end.")
    bottom: Text | None = Field(None, description="The name of the starting edge.")
    top: Text | None = Field(None, description="The name of the last row's edge.")

    @model_validator(mode="after")
    def _sides_once(self) -> Self:
        if self.both and (self.starting or self.far):
            other = "starting" if self.starting else "far"
            raise refuse(
                "two-edges",
                f"`both` names the {other} edge already",
                f"take out `{other}`, or name `starting` and `far` only",
                path=(other,),
            )
        for key in ("both", "starting", "far"):
            names = getattr(self, key)
            if names and len(names) % 2 == 0:
                hint = f"write `{key}: [{names[0]}]`, or add the edge above {names[-1]}"
                raise refuse(
                    "edge-list",
                    f"this list ends with the level {names[-1]}; it goes edge, level, edge",
                    hint,
                    path=(key,),
                )
        return self


class Piece(SpecModel):
    """One piece; what isn't stated comes from the piece it is `like`."""

    title: Text | None = Field(None, description="The name printed for this piece; otherwise its key.")
    make: Count | None = Field(None, description="How many alike are made; 1 unless stated.")
    grid: Grid | None = Field(None, description="Motifs joined to a size, in place of `make`.")
    fabric: FabricName | None = Field(None, description="The fabric; may be left out where there is only one.")
    start: Start | None = Field(None, description="How the piece begins.")
    sections: Annotated[tuple[Section, ...], _Loose, Many, Field(min_length=1)] | None = Field(
        None, description="The sections, in the order they are worked; those of a band joined to edges follow from them."
    )
    edges: Edges | None = Field(None, description="Names for the piece's edges.")
    colours: PieceColours | None = Field(
        None, description="One yarn, bands, stripes or blocks; may be left out where there is only one yarn."
    )
    buttonholes: Buttonholes | None = Field(None, description="Buttonholes along an edge of a picked-up band.")
    total: FormulaText | None = Field(
        None, description="The piece's total length; a section of length `rest` takes what is left."
    )
    like: PieceName | None = Field(None, description="Another piece that gives all that isn't stated here.")
    mirrored: bool = Field(False, description="Whether left and right are exchanged against the piece it is like.")
    notes: Annotated[tuple[Text, ...], _Loose, Many] = Field((), description="Notes printed with the piece.")

    @model_validator(mode="after")
    def _complete(self) -> Self:
        if not self.like:
            for key, advice in (
                ("start", "`start: {chain: 20 cm}`"),
                ("sections", "`sections: [even: {length: 10 cm}]`"),
            ):
                if getattr(self, key) is None and not (key == "sections" and self.start and self.start.join):
                    raise refuse(
                        "missing-key", f"this piece has no `{key}`", f"add {advice}, or `like` with the name of a piece"
                    )
        if self.mirrored and not self.like:
            raise refuse(
                "mirrored-alone",
                "a mirrored piece mirrors another",
                "add `like` with that piece's name, or take out `mirrored`",
                path=("mirrored",),
            )
        if self.make is not None and self.grid is not None:
            raise refuse("grid-and-make", "this piece has both `make` and `grid`, and a grid says how many are made", "take out `make`", path=("make",))
        rests = [i for i, section in enumerate(self.sections or ()) if section.even and section.even.length == "rest"]
        if len(rests) > 1:
            path = ("sections", rests[1], "even", "length")
            raise refuse(
                "rest-twice",
                "only one section of a piece can take the rest",
                "give this section a length such as 10 cm",
                path=path,
            )
        return self


class Attachment(SpecModel):
    """A piece sewn onto another."""

    piece: PieceName = Field(description="The piece sewn on.", examples=["pocket"])
    to: PieceName = Field(description="The piece it is sewn to.", examples=["back"])
    up: FormulaText = Field(description="Height of its lower edge above the hem.", examples=["10 cm"])
    inward: FormulaText = Field(
        alias="in", description="Distance of its near side from the edge named in `from`.", examples=["3 cm"]
    )
    from_edge: Annotated[Text, Refers("edge of to")] = Field(
        alias="from", description="The edge from which `in` is measured.", examples=["side"]
    )


__all__ = ["Attachment", "Edges", "Piece", "Start"]
