"""Yarns, and the fabrics worked from them."""

from typing import Annotated, Literal, Self

from pydantic import Discriminator, Field, Strict, Tag, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import (
    Colour,
    Count,
    FabricName,
    GaugeText,
    Length,
    Mass,
    OneOrMany,
    Percent,
    Price,
    StitchPatternName,
    Text,
    Tool,
    YarnName,
    refuse,
)
from gaugewright.spec.growth import MOST_GROWTH, Growth
from gaugewright.spec.timed import Timed
from gaugewright.spec.vocabulary import Loop, Parity, Stitch, Structure, Treatment, TurningChainCounts, Worked

_Loose = Strict(False)


class Ball(SpecModel):
    """One ball as it is sold."""

    mass: Mass = Field(description="What one ball weighs, without its band.", examples=["100 g"])
    length: Length = Field(description="How much yarn one ball holds.", examples=["58 m"])


class YarnFacts(SpecModel):
    """What a yarn is, whatever its colour."""

    weight: Annotated[int, Field(ge=0, le=7)] | None = Field(
        None, description="The yarn weight category, from 0 (lace) to 7 (jumbo)."
    )
    fibre: dict[Text, Percent] | None = Field(None, description="Each fibre with its share in percent, 100 in all.")
    ball: Ball | None = Field(None, description="Mass and length of one ball.")
    price: Price | None = Field(None, description="The price of one ball with its currency's code.")
    structure: Structure | None = Field(None, description="How the yarn is made.")
    treatment: Treatment | None = Field(None, description="What the band says was done to its fibre.")

    @model_validator(mode="after")
    def _fibres_add_up(self) -> Self:
        total = sum((self.fibre or {}).values())
        if self.fibre and abs(total - 100) > 0.01:
            raise refuse(
                "fibre-total",
                f"the fibres come to {total:g} %, not 100 %",
                "change the shares so that they come to 100",
                path=("fibre",),
            )
        return self


class Yarn(YarnFacts):
    """One yarn in one colour."""

    colour: Colour | None = Field(None, description="The colour for drawings, as six hex digits in quotes.")
    label: Text | None = Field(None, description="The name printed for this yarn; otherwise its key.")
    like: YarnName | None = Field(None, description="Another yarn that gives all that isn't stated here.")


class Swatch(SpecModel):
    """A swatch as counted and measured: what is printed here is what is graded from."""

    stitches: Count = Field(description="Whole stitches counted across the width.", examples=[18])
    rows: Count = Field(description="Whole rows counted over the height.", examples=[14])
    width: Length = Field(description="The width those stitches measure.", examples=["20.5 cm"])
    height: Length = Field(description="The height those rows measure.", examples=["19.5 cm"])
    mass: Mass | None = Field(
        None, description="What the counted part of the swatch weighs, its tails and foundation chain taken off; yarn is worked out from it."
    )
    thickness: Length | None = Field(None, description="How thick the fabric is; thick cloth is smaller inside.")
    timed: Annotated[tuple[Timed, ...], _Loose, OneOrMany, Field(min_length=1, max_length=50)] | None = Field(
        None, description="Stitches worked by the clock, once or several times; hours of work are counted from them.", examples=["{stitches: 24, rows: 4, minutes: 9}"]
    )
    hung: Length | None = Field(
        None, description="The height those rows measure after the swatch has hung with a garment's weight on it."
    )

    @model_validator(mode="after")
    def _hangs_longer(self) -> Self:
        if self.hung is not None and not 1 <= self.hung.mm / self.height.mm <= 1 + MOST_GROWTH / 100:
            raise refuse(
                "hung-unlikely",
                f"{self.rows} rows that measure {self.height.text} measure {self.hung.text} hung: as long, or up to {MOST_GROWTH:g} % longer, is expected",
                "measure the same rows flat and hung, or take out `hung`",
                path=("hung",),
            )
        return self


class Multiple(SpecModel):
    """A stitch pattern's multiple and extra: the count is a multiple of `of`, plus `plus`."""

    of: Count = Field(description="Stitches in one repeat of the pattern.", examples=[2])
    plus: Annotated[int, Field(ge=0)] = Field(0, description="Stitches beyond the whole repeats.")


class TurningChain(SpecModel):
    """How a row is begun; both habits are printed, so a pattern states its own."""

    chains: Annotated[int, Field(ge=0, le=6)] = Field(description="Chains at the turn.", examples=[2])
    counts: TurningChainCounts = Field("not as a stitch", description="Whether the turning chain counts as a stitch.")


EdgeStitches = Annotated[
    Annotated[int, Field(ge=0, le=20), Tag("<number>")] | Annotated[Literal["as needed"], Tag("<text>")],
    Discriminator(lambda value: "<number>" if isinstance(value, int) else "<text>"),
]


class Fabric(SpecModel):
    """One fabric: a stitch worked in one way with one tool, and its gauge."""

    stitch: Stitch | None = Field(None, description="The stitch, by its US abbreviation; or give `pattern`.")
    pattern: StitchPatternName | None = Field(None, description="A stitch pattern: the spec's own, or one of the templates'.", examples=["moss"])
    edge_stitches: EdgeStitches | None = Field(
        None, description="Plain stitches kept at each edge of a stitch pattern, or `as needed`: whole repeats wherever they fit, and plain stitches for the rest."
    )
    loop: Loop | None = Field(None, description="The loop worked into; both unless stated.")
    worked: Worked | None = Field(
        None, description="Back and forth in rows, or how in rounds; rows unless stated. Rounds have their own gauge."
    )
    turning_chain: TurningChain | None = Field(
        None, description="Chains at the turn, and whether they count as a stitch."
    )
    tool: Tool | None = Field(None, description="The hook's size, or `hands`.")
    swatch: Swatch | None = Field(None, description="The swatch as counted and measured; or give `gauge`.")
    gauge: GaugeText | None = Field(None, description="The gauge as text, where there is no weighed swatch.")
    growth: Growth | None = Field(
        None, description="How much longer its rows are when the finished piece hangs than when it lies flat, in percent.",
    )
    multiple: Multiple | None = Field(None, description="The stitch pattern's multiple and extra.")
    parity: Parity | None = Field(None, description="Whether stitch counts must be even or odd.")
    minimum: Count | None = Field(None, description="The fewest stitches this fabric can be worked over.")
    like: FabricName | None = Field(None, description="Another fabric that gives all that isn't stated here.")

    @model_validator(mode="after")
    def _has_a_gauge(self) -> Self:
        if self.swatch and self.gauge:
            raise refuse(
                "two-gauges",
                "this fabric states both `swatch` and `gauge`; one of them rules",
                "keep the swatch and take out `gauge`",
                path=("gauge",),
            )
        if self.growth is not None and self.swatch and self.swatch.hung:
            raise refuse(
                "two-growths",
                "this fabric states both `growth` and what its swatch measures hung; one of them rules",
                "keep the swatch's `hung` and take out `growth`",
                path=("growth",),
            )
        if not self.like and not self.swatch and not self.gauge:
            raise refuse(
                "missing-key",
                "this fabric has no gauge",
                "add `gauge: 8 sts, 7 rows / 10 cm` with what you count, or a `swatch`",
            )
        if not self.like and not self.stitch and not self.pattern:
            raise refuse(
                "missing-key", "this fabric has no `stitch`", "add `stitch: hdc`, or the stitch it is worked in"
            )
        self._check_pattern()
        return self

    def _check_pattern(self) -> None:
        """What a stitch pattern states already can't be stated again."""
        if not self.pattern:
            return
        for key, why in (("stitch", "its stitches"), ("loop", "its loops"), ("turning_chain", "each row's turning chain, by its first stitch"), ("multiple", "its multiple")):
            if getattr(self, key) is not None:
                raise refuse("stitch-pattern-states", f"the stitch pattern {self.pattern} gives {why} already", f"take out `{key}`", path=(key,))
