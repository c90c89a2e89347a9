"""Closed centres and crowns: pieces worked out from a ring of a few stitches, or drawn shut at their end."""

from typing import Annotated, Any, Literal, Self

from pydantic import Discriminator, Field, Tag, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import Count, FabricName, FormulaText, YarnName, refuse
from gaugewright.spec.vocabulary import RoundingRule


def _count_or_word(value: Any) -> str:
    """Which choice is meant; the marks are no keys, so paths in the file pass over them."""
    return "<word>" if isinstance(value, str) else "<count>"


Centre = Annotated[
    Annotated[Count, Tag("<count>")] | Annotated[Literal["flat"], Tag("<word>")], Discriminator(_count_or_word)
]
"""Stitches of a centre's first round, or `flat`: as many as each round of a flat disc adds."""


Middle = Literal["flat"]
"""The middle of an edge, from which rows fan out: as many stitches as lie flat there."""


class Crown(SpecModel):
    """A flat or domed disc in rounds: each adds alike until the girth is reached, or takes away alike until it closes."""

    target: FormulaText | None = Field(None, description="The length around its last round.", examples=["body.head - 2 cm"])
    stitches: Count | None = Field(
        None, description="The stitch count of its last round; with `close`, the stitches drawn together."
    )
    close: bool = Field(False, description="Whether it is decreased to a handful of stitches and drawn shut.")
    each: Count | None = Field(
        None, description="Stitches added or taken away in each round, such as 6, 8 or 12; as many as lie flat unless stated."
    )
    round: RoundingRule = Field("nearest", description="How the count of its last round is rounded.")
    fabric: FabricName | None = Field(None, description="The fabric of this section, if it isn't the piece's.")
    colour: YarnName | None = Field(None, description="The yarn of this section, if it isn't by the piece's colours.")

    @model_validator(mode="after")
    def _one_end(self) -> Self:
        if self.target is not None and (self.close or self.stitches is not None):
            other = "stitches" if self.stitches is not None else "close"
            raise refuse("two-widths", f"this crown gives both `target` and `{other}`", "keep one of them", path=(other,))
        if self.target is None and self.stitches is None and not self.close:
            hint = "add `target: 52 cm`, the length around its last round, or `close: true`"
            raise refuse("missing-key", "this crown doesn't say how wide it becomes", hint)
        return self
