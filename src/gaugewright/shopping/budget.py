"""What a budget leaves; and where it is over, which changes would fit it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from gaugewright.shopping.needs import Colour

Change = Literal["margin", "all margins", "mix lots", "smaller size"]


@dataclass(frozen=True, slots=True)
class Cheaper:
    """One change, of which colour or whose size (`of`), and the cheapest total with it."""

    change: Change
    of: str
    to: str
    total: Decimal


@dataclass(frozen=True, slots=True)
class Budget:
    """What may be spent and what is left of it (less than nothing where it doesn't do); `changes` are cheaper ways, the least first."""

    amount: Decimal
    left: Decimal
    changes: tuple[Cheaper, ...]

    @property
    def fitting(self) -> tuple[Cheaper, ...]:
        """The changes that would fit."""
        return tuple(one for one in self.changes if one.total <= self.amount)


def without_margin_balls(colours: Sequence[Colour], keys: Sequence[str]) -> tuple[Colour, ...]:
    """The same with no ball that only the margin asks for, of some colours."""
    return tuple(replace(one, balls=one.bare) if one.key in keys else one for one in colours)


def asked_by_margin(colours: Sequence[Colour]) -> tuple[str, ...]:
    """The colours whose last ball to buy is there for the margin alone."""
    return tuple(one.key for one in colours if one.bare < one.balls and one.to_buy)


def margin_changes(colours: Sequence[Colour], total_of: Callable[[Sequence[Colour]], Decimal | None]) -> list[Cheaper]:
    """What leaving out the margin's balls would save, colour by colour and all together."""
    keys = asked_by_margin(colours)
    found = [Cheaper("margin", key, "", total) for key in keys if (total := total_of(without_margin_balls(colours, (key,)))) is not None]
    if len(keys) > 1 and (total := total_of(without_margin_balls(colours, keys))) is not None:
        found.append(Cheaper("all margins", "", "", total))
    return found
