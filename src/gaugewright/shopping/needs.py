"""What all that is made needs: balls of each colour over all sizes and people, hooks, buttons, notions.

Bought together, grams are added before balls are rounded up: what one leaves of its last ball is the other's.
"""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from gaugewright.design.model import Design
from gaugewright.rounding import up
from gaugewright.shopping.model import Wanted
from gaugewright.yarn.amounts import Amount


@dataclass(frozen=True, slots=True)
class Make:
    """So many of one size, for somebody (or nobody named)."""

    size: str
    person: str
    times: int


@dataclass(frozen=True, slots=True)
class Colour:
    """One colour over all that is made, grams.

    `balls` hold `grams`, which include the margin; `bare` are the balls without it, `apart` those that everybody buying
    for themselves would come to. Where a swatch wasn't weighed all that is `estimated`, its upper end, and `least_grams` and
    `fewest` balls are its lower one; else they are the same.
    """

    key: str
    label: str
    grams: float
    balls: int
    bare: int
    apart: int
    in_hand: int
    least_grams: float
    fewest: int
    estimated: bool

    @property
    def to_buy(self) -> int:
        """Balls that aren't in hand."""
        return max(0, self.balls - self.in_hand)


def colours(design: Design, by_size: Mapping[str, Mapping[str, Amount]], makes: Sequence[Make], have: Mapping[str, int]) -> tuple[Colour, ...]:
    """Each colour in use; every one of them must have a ball of known mass."""
    return tuple(_colours(design, by_size, makes, have))


def _colours(design: Design, by_size: Mapping[str, Mapping[str, Amount]], makes: Sequence[Make], have: Mapping[str, int]) -> Iterator[Colour]:
    for yarn in design.yarns:
        of = [(one.times, by_size[one.size][yarn.key]) for one in makes if yarn.key in by_size[one.size]]
        if of and yarn.ball_mass:
            grams = sum(times * amount.total for times, amount in of)
            bare = sum(times * without_margin(amount) for times, amount in of)
            apart = sum(times * amount.balls for times, amount in of)
            low = sum(times * amount.bought(amount.low if amount.estimated else amount.counted) for times, amount in of)
            yield Colour(
                yarn.key, yarn.label, grams, up(grams / yarn.ball_mass), up(bare / yarn.ball_mass), apart, have.get(yarn.key, 0),
                low, up(low / yarn.ball_mass), any(amount.estimated for _, amount in of),
            )  # fmt: skip


def without_margin(amount: Amount) -> float:
    """Grams of one colour in one size as counted, nothing to spare."""
    return amount.used(amount.counted)


def at_the_least(colours: Sequence[Colour]) -> tuple[Colour, ...]:
    """The same at the lower end of an estimate."""
    return tuple(replace(one, grams=one.least_grams, balls=one.fewest) for one in colours)


def hooks_of(design: Design, fabrics: Collection[str]) -> tuple[str, ...]:
    """The hooks of the fabrics in use, by size."""
    return tuple(dict.fromkeys(f"{fabric.tool:g} mm" for fabric in design.fabrics if fabric.tool is not None and fabric.key in fabrics))


def buttons_of(design: Design, makes: Sequence[Make]) -> dict[str, int]:
    """Buttons by size, for all that is made."""
    found: dict[str, int] = {}
    times = sum(one.times for one in makes)
    for piece in design.pieces:
        if piece.buttonholes is not None:
            name = button_name(piece.buttonholes.size)
            found[name] = found.get(name, 0) + piece.buttonholes.count * piece.make * times
    return found


def button_name(mm: float) -> str:
    """How a shopping file calls a button.

    >>> button_name(20.0)
    'button 20 mm'
    """
    return f"button {mm:g} mm"


def yarns_wanted(colours: Sequence[Colour], mixed: Collection[str]) -> tuple[Wanted, ...]:
    """Balls to buy; `mixed` are the colours whose lots may mix, or "all"."""
    found = [Wanted(one.key, one.label, "yarn", one.to_buy, one.key in mixed or "all" in mixed) for one in colours]
    return tuple(one for one in found if one.count)


def tools_wanted(hooks: Sequence[str], notions: Mapping[str, int], have: Mapping[str, int]) -> tuple[Wanted, ...]:
    """Hooks and notions to buy, one hook of each size."""
    tools = [Wanted(hook, hook, "hook", max(0, 1 - have.get(hook, 0)), False) for hook in hooks]
    more = [Wanted(name, name, "notion", max(0, count - have.get(name, 0)), False) for name, count in notions.items()]
    return tuple(one for one in (*tools, *more) if one.count)
