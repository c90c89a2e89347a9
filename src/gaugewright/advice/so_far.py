"""Finished pieces weighed: what their maker's hand really takes, and what the rest will.

In: a graded pattern, a size, and what each finished piece weighs before it is sewn, its tails still on. Out: for each
colour what went, what is still to come, and what is to buy. What a piece takes more or less than was counted, the pieces
in its fabric will too; a fabric that none of them is worked in is told with more doubt.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from gaugewright import pipeline
from gaugewright.advice.yarn_in_hand import found_amounts
from gaugewright.design.model import Design, Yarn
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.rounding import up
from gaugewright.spec.yarn_text import YarnText
from gaugewright.yarn.counted import Share, counted
from gaugewright.yarn.weighing import SCALE_READS_TO, Weighing, weighing

UNLIKELY = 2.0
"""Nobody's stitches take twice or half of what a swatch's do: then something else was weighed."""


@dataclass(frozen=True, slots=True)
class Ratio:
    """True grams to counted ones: the figure and its ends."""

    low: float
    middle: float
    high: float


@dataclass(frozen=True, slots=True)
class Weighed:
    """One finished piece: its true grams and those counted; `fabric` is what most of it is worked in."""

    piece: str
    title: str
    fabric: str
    grams: float
    counted: float

    @property
    def ratio(self) -> float:
        """True to counted."""
        return self.grams / self.counted


@dataclass(frozen=True, slots=True)
class Rest:
    """One colour: grams that went, those still to come with their ends (no margin), and grams in hand."""

    yarn: Yarn
    went: float
    low: float
    middle: float
    high: float
    in_hand: float
    told: bool
    margin: float

    @property
    def to_buy(self) -> float:
        """Grams to buy, the margin on what is still to come included."""
        return max(0.0, self.middle * (1 + self.margin) - self.in_hand)

    @property
    def balls(self) -> int:
        """Whole balls to buy; 0 without ball data."""
        return up(self.to_buy / self.yarn.ball_mass) if self.yarn.ball_mass else 0

    @property
    def lacks_at_most(self) -> float:
        """Grams that lack at the upper end, with nothing to spare, once those balls are bought."""
        return max(0.0, self.high - self.in_hand - self.balls * (self.yarn.ball_mass or 0.0))


@dataclass(frozen=True, slots=True)
class SoFar:
    """The answer for one size; `ratios` by fabric, `untold` those fabrics that no finished piece tells of."""

    size: str
    weighed: tuple[Weighed, ...]
    ratios: Mapping[str, Ratio]
    untold: tuple[str, ...]
    rests: tuple[Rest, ...]


def so_far(graded: pipeline.Graded, size: str, used: Sequence[YarnText], held: Mapping[str, float]) -> SoFar:
    """Re-estimates one size; raises `ProblemsFound` where a piece is unknown, or weighs what none could."""
    design = graded.design
    found = found_amounts(graded, size)
    pieces = pipeline.pieces_of(graded, size)
    shares = counted(design, pieces)
    weights = weighing(design, shares)
    assert weights is not None  # there are amounts
    made = {piece.key: pieces[piece.key].layout.motifs if pieces[piece.key].layout else piece.make for piece in design.pieces}  # type: ignore[union-attr]
    weighed = _weighed(design, shares, weights, made, used, size)
    fabrics = tuple(dict.fromkeys(share.fabric for share in shares if share.fabric and share.term != "swatches"))
    ratios = {fabric: _ratio(fabric, weighed) for fabric in fabrics}
    done = {key: sum(one.piece == key for one in weighed) / count for key, count in made.items()}
    rests = []
    for key, amount in found.items():
        own = tuple(share for share in shares if share.colour == key)
        went = sum(_went(one, own, weights, made) for one in weighed)
        low, middle, high = (sum(_to_come(share, done, ratios, weights, end) for share in own) for end in ("low", "middle", "high"))
        in_hand = held[key] if key in held else amount.balls * (amount.ball or 0.0) - went if amount.ball else amount.total - went
        rests.append(Rest(design.yarn(key), went, low, middle, high, max(0.0, in_hand), key in held, design.buying.margin))
    untold = tuple(fabric for fabric in fabrics if all(one.fabric != fabric for one in weighed))
    return SoFar(size, weighed, ratios, untold, tuple(rests))


def _weighed(design: Design, shares: tuple[Share, ...], weights: Weighing, made: Mapping[str, int], used: Sequence[YarnText], size: str) -> tuple[Weighed, ...]:
    found, problems = list[Weighed](), list[Problem]()
    for text in used:
        if text.name not in made:
            problems.append(Problem("unknown-piece", f"this pattern has no piece {text.name!r}", text.origin, f"its pieces are {', '.join(made)}", size))
        elif sum(one.piece == text.name for one in found) == made[text.name]:
            problems.append(Problem("used-unlikely", f"{text.name} is weighed more often than it is made ({made[text.name]})", text.origin, "give each finished piece once", size))
        else:
            one, fault = _one(design, shares, weights, made, text, size)
            found.append(one)
            problems += [fault] if fault else []
    if problems:
        raise ProblemsFound(problems)
    return tuple(found)


def _one(design: Design, shares: tuple[Share, ...], weights: Weighing, made: Mapping[str, int], text: YarnText, size: str) -> tuple[Weighed, Problem | None]:
    """A piece's weight beside what was counted for it, and a problem where no hand explains the difference."""
    own = [share for share in shares if _in_the_piece(share, text.name)]
    worked: dict[str, float] = {}
    for share in own:
        if share.fabric:
            worked[share.fabric] = worked.get(share.fabric, 0.0) + weights.middle.of(share)
    low, middle, high = (sum(each.of(share) for share in own) / made[text.name] for each in (weights.low, weights.middle, weights.high))
    one = Weighed(text.name, design.piece(text.name).title, max(worked, key=lambda key: worked[key]), text.amount, middle)
    if low / UNLIKELY <= text.amount <= high * UNLIKELY:
        return one, None
    many = "more" if text.amount > middle else "less"
    told = f"about {middle:.0f} g" if not weights.estimated else f"{low:.0f} to {high:.0f} g"
    hint = "weigh one piece, dry, without hook and ball" + (f"; {made[text.name]} are made, and each is given by itself" if made[text.name] > 1 else "")
    return one, Problem("used-unlikely", f"{text.name} at {text.amount:g} g takes {many} than such a piece could: {told} were counted", text.origin, hint, size)


def _in_the_piece(share: Share, piece: str) -> bool:
    """Whether a share is weighed with a finished piece: seams come later."""
    return share.piece == piece and share.term != "seams"


def _ratio(fabric: str, weighed: Sequence[Weighed]) -> Ratio:
    """Of the pieces in this fabric, with the half gram of the scale, and as far as they differ among themselves; without
    any that of all, and then what was counted may be as true.
    """
    own = [one for one in weighed if one.fabric == fabric]
    told = own or list(weighed)
    middle = sum(one.grams for one in told) / sum(one.counted for one in told)
    ends = [end for one in told for end in ((one.grams - SCALE_READS_TO) / one.counted, (one.grams + SCALE_READS_TO) / one.counted)]
    doubt = [] if own else [1.0]
    return Ratio(min(*ends, *doubt), middle, max(*ends, *doubt))


def _went(one: Weighed, own: Sequence[Share], weights: Weighing, made: Mapping[str, int]) -> float:
    """Grams of a colour in a finished piece: its weight shared out as it was counted."""
    return sum(weights.middle.of(share) for share in own if _in_the_piece(share, one.piece)) / made[one.piece] * one.ratio


def _to_come(share: Share, done: Mapping[str, float], ratios: Mapping[str, Ratio], weights: Weighing, end: str) -> float:
    """Grams of a share that are still to be worked; tails and seams are as long in any hand. Swatches are worked already."""
    if share.term == "swatches":
        return 0.0
    left = 1.0 if share.term == "seams" else 1.0 - done[share.piece]
    ratio = getattr(ratios[share.fabric], end) if share.fabric else 1.0
    return float(left * ratio * weights.middle.of(share))
