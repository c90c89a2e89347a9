"""Yarns side by side for one design, as plain data: what each would take, cost and be like, and whether it will do."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from gaugewright.gauge.hand import Hand
from gaugewright.gauge.model import Gauge
from gaugewright.sized import Sized

Verdict = Literal["fit", "fit with cautions", "not for this"]
Basis = Literal["the pattern", "its swatch", "as stated", "within its category", "its category"]
"""Where a gauge is from: of the last two, estimates, the one is the pattern's own, which the category's published range holds."""


@dataclass(frozen=True, slots=True)
class Reason:
    """What speaks against a yarn, asks for care, or is only to be known; its phrase with what fills it, and its source."""

    gravity: Literal["against", "caution", "fact"]
    key: str
    slots: Mapping[str, str]
    source: str


@dataclass(frozen=True, slots=True)
class YarnGauge:
    """A flat gauge and where it is from; of an estimate `ends` are the most stitches and the fewest that are published."""

    gauge: Gauge
    basis: Basis
    ends: tuple[Gauge, Gauge] | None = None

    @property
    def estimated(self) -> bool:
        """Whether nobody has swatched this yarn."""
        return self.basis in ("within its category", "its category")


@dataclass(frozen=True, slots=True)
class Take:
    """What a yarn takes in each size: least and most balls and grams of the finished work; `estimated` where its swatch wasn't weighed."""

    balls: Sized[tuple[int, int]]
    grams: Sized[tuple[float, float]]
    estimated: bool


@dataclass(frozen=True, slots=True)
class Compared:
    """One yarn. `take` is None where it can't be told or the design can't be made of it; `cost` where it has no price.

    `hand` is the cloth's at its own gauge, `at_pattern` that at the pattern's; None where its category isn't known.
    """

    name: str
    category: int | None
    metres: float | None
    structure: str
    fibre: tuple[tuple[str, float], ...]
    gauge: YarnGauge
    hand: Hand | None
    at_pattern: Hand | None
    take: Take | None
    cost: Sized[tuple[Decimal, Decimal]] | None
    currency: str
    care: tuple[str, ...]
    reasons: tuple[Reason, ...]

    @property
    def verdict(self) -> Verdict:
        """The gravest reason decides."""
        gravities = {reason.gravity for reason in self.reasons}
        return "not for this" if "against" in gravities else "fit with cautions" if "caution" in gravities else "fit"


@dataclass(frozen=True, slots=True)
class Comparison:
    """The pattern's own yarn first. `size` is the one shown where there is room for one only; `kept` are yarns of the pattern that stay."""

    title: str
    size: str
    own: Compared
    candidates: tuple[Compared, ...]
    kept: tuple[str, ...]

    @property
    def all(self) -> tuple[Compared, ...]:
        """Every yarn, the pattern's own first."""
        return (self.own, *self.candidates)
