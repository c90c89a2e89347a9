"""With so much yarn in hand: which sizes can be made, what is short, and which colour could lend.

In: a graded pattern and grams of some of its colours. A colour that isn't named is bought as the pattern says.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from gaugewright import pipeline
from gaugewright.design.model import Design, Yarn
from gaugewright.errors import Problem, ProblemsFound, UserError
from gaugewright.rounding import up
from gaugewright.spec.yarn_text import YarnText
from gaugewright.yarn.amounts import Amount, amounts
from gaugewright.yarn.weighing import ALIKE_WITHIN, metres_per_gram

Verdict = Literal["enough", "barely", "perhaps", "short"]

ORDER: tuple[Verdict, ...] = ("enough", "barely", "perhaps", "short")
"""From best to worst. barely: what the rows take, but not the margin; perhaps: within an estimate's ends."""


@dataclass(frozen=True, slots=True)
class Stock:
    """One colour in hand beside what it takes: grams `short` of what is to be had with the margin, or `spare` beyond it."""

    yarn: Yarn
    have: float
    amount: Amount | None

    @property
    def verdict(self) -> Verdict:
        """Whether it is enough."""
        if self.amount is None or self.have >= self.amount.total - 1e-9:
            return "enough"
        if self.amount.estimated:
            return "perhaps" if self.have >= self.amount.used(self.amount.low) else "short"
        return "barely" if self.have >= self.amount.used(self.amount.counted) else "short"

    @property
    def short(self) -> float:
        """Grams that lack."""
        return max(0.0, (self.amount.total if self.amount else 0.0) - self.have)

    @property
    def spare(self) -> float:
        """Grams that nothing of this size needs."""
        return max(0.0, self.have - (self.amount.total if self.amount else 0.0))

    @property
    def balls_short(self) -> int:
        """Whole balls that would make it up; 0 without ball data."""
        return up(self.short / self.yarn.ball_mass) if self.yarn.ball_mass else 0


@dataclass(frozen=True, slots=True)
class InHand:
    """One size: each colour named, those to be bought in any case, and who could lend (colour short, colour with some to spare)."""

    size: str
    stocks: tuple[Stock, ...]
    to_buy: tuple[Amount, ...]
    lenders: tuple[tuple[Stock, Stock], ...]

    @property
    def verdict(self) -> Verdict:
        """That of the colour that is worst off."""
        return max((stock.verdict for stock in self.stocks), key=ORDER.index)


def in_hand(graded: pipeline.Graded, held: Mapping[str, float]) -> tuple[InHand, ...]:
    """The answer for every size; raises `UserError` where nothing can be said."""
    return tuple(_of_size(graded, held, size) for size in graded.bodies.labels)


def found_amounts(graded: pipeline.Graded, size: str) -> dict[str, Amount]:
    """The amounts of one size, or a plain word that there are none."""
    found = amounts(graded.design, pipeline.pieces_of(graded, size))
    if found is None:
        raise UserError("yarn-unknown", "no swatch of this pattern was weighed, and nothing is published by which to estimate its yarn", "weigh a swatch and write its mass, or give the yarns a weight category")
    return found


def _of_size(graded: pipeline.Graded, held: Mapping[str, float], size: str) -> InHand:
    found = found_amounts(graded, size)
    stocks = tuple(Stock(graded.design.yarn(key), have, found.get(key)) for key, have in held.items())
    to_buy = tuple(amount for key, amount in found.items() if key not in held)
    lenders = tuple((one, other) for one in stocks for other in stocks if one.short and other.spare and _alike(one.yarn, other.yarn))
    return InHand(size, stocks, to_buy, lenders)


def _alike(one: Yarn, other: Yarn) -> bool:
    """Whether two yarns are thick alike; where their metres aren't known, by their category."""
    metres = metres_per_gram(one), metres_per_gram(other)
    if metres[0] is None or metres[1] is None:
        return one.weight is not None and one.weight == other.weight
    return abs(metres[0][0] / metres[1][0] - 1) <= ALIKE_WITHIN and abs(metres[0][1] / metres[1][1] - 1) <= ALIKE_WITHIN


def grams_held(design: Design, texts: Sequence[YarnText]) -> dict[str, float]:
    """Grams by colour; a ball or a length is weighed by the yarn's own ball. Raises `ProblemsFound` with all faults."""
    yarns = {yarn.key: yarn for yarn in design.yarns}
    found, problems = dict[str, float](), list[Problem]()
    for text in texts:
        if text.name not in yarns:
            problems.append(Problem("unknown-yarn", f"this pattern has no yarn {text.name!r}", text.origin, f"its yarns are {', '.join(yarns)}"))
            continue
        grams = _grams(yarns[text.name], text)
        if grams is None:
            problems.append(Problem("yarn-without-ball", f"{text.name} has no ball in the spec, by which {'balls' if text.unit == 'balls' else 'metres'} could be weighed", text.origin, f"write the grams, or add `ball: {{mass: 100 g, length: 58 m}}` to {text.name}"))
        else:
            found[text.name] = grams
    if problems:
        raise ProblemsFound(problems)
    return found


def _grams(yarn: Yarn, text: YarnText) -> float | None:
    if text.unit == "g":
        return text.amount
    if text.unit == "balls":
        return yarn.ball_mass and text.amount * yarn.ball_mass
    return text.amount * yarn.ball_mass / yarn.ball_length if yarn.ball_mass and yarn.ball_length else None
