"""Yarn by colour, counted from the rows and weighed.

In: graded rows of one size. Out: an amount for each colour, its terms kept apart: stitches, stitches picked up,
foundations, tails, seams; then the margin, and the swatches that the pattern asks for. Without a weighed swatch it is an
estimate with two ends, because published rules for yarn by stitch contradict one another.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields

from gaugewright.design.buying import Buying
from gaugewright.design.model import Design
from gaugewright.grading.model import GradedPiece
from gaugewright.rounding import up
from gaugewright.yarn.counted import Share, counted
from gaugewright.yarn.weighing import Weights, metres_per_gram, weighing


@dataclass(frozen=True, slots=True)
class Terms:
    """Grams, term by term; the swatches are no part of `total`."""

    stitches: float = 0.0
    picked_up: float = 0.0
    foundations: float = 0.0
    tails: float = 0.0
    seams: float = 0.0
    swatches: float = 0.0

    @property
    def total(self) -> float:
        """What the garment takes."""
        return self.stitches + self.picked_up + self.foundations + self.tails + self.seams


@dataclass(frozen=True, slots=True)
class Amount:
    """Yarn of one colour in one size. `counted` is what the rows take; `low` and `high` are how surely that is known.

    Of an estimate there is no single figure: `counted` is the upper end, so that whoever buys by `total` and `balls` has
    enough. `ball` is the grams of a ball, None where the spec has none; `per_gram` the least and most metres in a gram.
    """

    colour: str
    counted: Terms
    low: Terms
    high: Terms
    buying: Buying
    estimated: bool = False
    ball: float | None = None
    per_gram: tuple[float, float] | None = None

    @property
    def margin(self) -> float:
        """Grams added for what can't be counted."""
        return self.counted.total * self.buying.margin

    @property
    def total(self) -> float:
        """Grams to buy: with the margin, and with swatches where they are to be in the balls."""
        return self.bought(self.counted)

    @property
    def balls(self) -> int:
        """Whole balls to buy; 0 without ball data."""
        return self.in_balls(self.total)

    @property
    def fewest_balls(self) -> int:
        """Balls at the lower end of an estimate."""
        return self.in_balls(self.bought(self.low) if self.estimated else self.total)

    @property
    def lacks_a_ball(self) -> bool:
        """Whether the rows may take more than the balls hold, the margin spent as well, at the upper end of what the swatch tells."""
        return self.ball is not None and not self.estimated and self.used(self.high) > self.balls * self.ball

    def used(self, terms: Terms) -> float:
        """Grams that go if nothing of the margin does."""
        return terms.total + (terms.swatches if self.buying.swatches_in_balls else 0.0)

    def bought(self, terms: Terms) -> float:
        """Grams to buy at one end."""
        return self.used(terms) + terms.total * self.buying.margin

    def in_balls(self, grams: float) -> int:
        """Whole balls that hold so much; 0 without ball data."""
        return up(grams / self.ball) if self.ball else 0

    def left(self, terms: Terms) -> float | None:
        """Grams left over of the balls bought if nothing of the margin goes."""
        return None if self.ball is None else self.balls * self.ball - self.used(terms)

    @property
    def metres(self) -> tuple[float, float] | None:
        """Metres to buy: one figure twice, or an estimate's ends; None where no ball is known and nothing is estimated.

        An estimate's metres are narrower than its grams, since its least grams are those of the finest yarn.
        """
        if self.per_gram is None or (not self.estimated and self.per_gram[0] != self.per_gram[1]):
            return None
        low = self.bought(self.low) if self.estimated else self.total
        return low * self.per_gram[1], self.total * self.per_gram[0]


def amounts(design: Design, pieces: Mapping[str, GradedPiece]) -> dict[str, Amount] | None:
    """The amount of each colour for one size; None where a fabric in use can be neither weighed nor estimated."""
    shares = counted(design, pieces)
    weights = weighing(design, shares)
    if weights is None:
        return None
    found = {}
    for yarn in design.yarns:
        own = [share for share in shares if share.colour == yarn.key]
        if any(share.term in ("stitches", "picked up") for share in own):
            middle, low, high = (grams(own, one) for one in (weights.middle, weights.low, weights.high))
            found[yarn.key] = Amount(yarn.key, middle, low, high, design.buying, bool(weights.estimated), yarn.ball_mass, metres_per_gram(yarn))
    return found


def grams(shares: Iterable[Share], weights: Weights) -> Terms:
    """Shares of one colour, weighed, term by term."""
    found = {one.name: 0.0 for one in fields(Terms)}
    for share in shares:
        found[share.term.replace(" ", "_")] += weights.of(share)
    return Terms(**found)


def grams_of(design: Design, colour: str, length: float) -> float:
    """Grams of a length of yarn in mm; nothing where its ball isn't known."""
    yarn = design.yarn(colour)
    if not yarn.ball_mass or not yarn.ball_length:
        return 0.0
    return yarn.ball_mass / yarn.ball_length * length
