"""A file of yarns that might do for a pattern, as it is written."""

from pathlib import Path
from typing import Self

from pydantic import Field, ValidationError, model_validator

from gaugewright.errors import ProblemsFound
from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import GaugeText, Text, refuse
from gaugewright.spec.materials import Ball, Swatch, YarnFacts
from gaugewright.spec.messages import problems_from
from gaugewright.trade.substitution import metres_per_100g
from gaugewright.trade.yarn_weights import category_of
from gaugewright.yaml_reader import read_yaml


class Candidate(YarnFacts):
    """One yarn: what its band says, and its swatch if there is one."""

    ball: Ball = Field(description="Mass and length of one ball.", examples=["{mass: 100 g, length: 58 m}"])
    swatch: Swatch | None = Field(None, description="A swatch of it in the pattern's main fabric, as counted and measured.")
    gauge: GaugeText | None = Field(None, description="Its gauge as text, where there is no swatch to weigh.")

    @model_validator(mode="after")
    def _gauge_is_known(self) -> Self:
        if self.swatch and self.gauge:
            raise refuse("two-gauges", "this yarn states both `swatch` and `gauge`; one of them rules", "keep the swatch and take out `gauge`", path=("gauge",))
        if not self.swatch and not self.gauge and self.category is None:
            raise refuse(
                "missing-key", "nothing tells the gauge of this yarn, whose metres lie between the weight categories",
                "add `weight: 6` or whatever the band says, or a `swatch`, or `gauge: 8 sts, 7 rows / 10 cm`",
            )
        return self

    @property
    def metres(self) -> float:
        """Metres to 100 g."""
        return metres_per_100g(self.ball.mass.grams, self.ball.length.mm)

    @property
    def category(self) -> int | None:
        """Its weight category: as stated, or the one that holds its metres."""
        return self.weight if self.weight is not None else category_of(self.metres)


class CandidateFile(SpecModel):
    """The yarns to compare, by name."""

    candidates: dict[Text, Candidate] = Field(description="The yarns to compare, by name.", min_length=1, examples=["{Drift: {weight: 6, ball: {mass: 200 g, length: 100 m}, price: 9.80 EUR}}"])


def read_candidates(path: Path) -> CandidateFile:
    """The file; raises its problems, placed in it."""
    source = read_yaml(path)
    try:
        return CandidateFile.model_validate(source.data)
    except ValidationError as fault:
        raise ProblemsFound(problems_from(fault, CandidateFile, source)) from None
