"""Motifs: pieces worked out from a closed centre in rounds with corners, and grids of them joined to a size."""

from typing import Annotated, Self

from pydantic import Field, Strict, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import Count, FabricName, FormulaText, Many, YarnName, refuse
from gaugewright.spec.vocabulary import ColourPlan, SeamMethod, TakeUp

_Loose = Strict(False)
FEWEST_SIDES, MOST_SIDES = 3, 8


class Motif(SpecModel):
    """A flat motif in rounds: each round increases at its corners only."""

    sides: Count = Field(description="How many sides, and corners, it has: 3 to 8.", examples=[4])
    rounds: Count | None = Field(None, description="How many rounds.")
    target: FormulaText | None = Field(None, description="How wide it is, from side to side; with an odd number of sides from side to corner.", examples=["12 cm"])
    fabric: FabricName | None = Field(None, description="The fabric of this section, if it isn't the piece's.")
    colour: YarnName | None = Field(None, description="The yarn of this section, if it isn't by the piece's colours.")

    @model_validator(mode="after")
    def _one_size(self) -> Self:
        if not FEWEST_SIDES <= self.sides <= MOST_SIDES:
            raise refuse(
                "out-of-range", f"a motif of {self.sides} sides is none: {FEWEST_SIDES} to {MOST_SIDES} are expected",
                f"write a number from {FEWEST_SIDES} to {MOST_SIDES}, or use `crown` for a disc", path=("sides",),
            )
        if self.rounds is not None and self.target is not None:
            raise refuse("two-extents", "this motif gives both `rounds` and `target`", "keep one of them", path=("target",))
        if self.rounds is None and self.target is None:
            raise refuse("missing-key", "this motif doesn't say how large it becomes", "add `rounds: 6`, or `target: 12 cm`, how wide it is")
        return self


class Grid(SpecModel):
    """Motifs joined to a size: as many across and down as come nearest to it."""

    across: FormulaText = Field(description="The width of the whole, once joined; with its border, where one is picked up round its `rim`.", examples=["size.width"])
    down: FormulaText = Field(description="The length of the whole, once joined; with its border, where it has one.", examples=["size.length"])
    method: SeamMethod = Field("whip", description="How the motifs are joined.")
    take_up: TakeUp = Field("edge to edge", description="How much of each edge a join takes up.")
    turns: Annotated[tuple[YarnName, ...], _Loose, Many, Field(min_length=1)] = Field(
        (), description="Yarns in which the motifs begin, by turns, in place of the piece's first one.", examples=["[foam, kelp]"]
    )
    plan: ColourPlan = Field("checkerboard", description="How the yarns of `turns` lie: in diagonals as a checkerboard does, or a row each.")
