"""All that is known about one purchase: what `shop` prints and the card shows."""

from dataclasses import dataclass
from decimal import Decimal

from gaugewright.shopping.budget import Budget
from gaugewright.shopping.model import Wanted
from gaugewright.shopping.needs import Colour, Make
from gaugewright.shopping.plan import Plan


@dataclass(frozen=True, slots=True)
class Outcome:
    """The purchase for some makes of one pattern.

    `plan` is None where nothing has a price; `unpriced` are hooks and notions that no shop sells, which the total
    therefore leaves out; `in_hand` what needn't be bought, with how many there are. `dearest` is the colour that
    costs most, by key, and what it costs; `least_total` the cheapest total at the lower end of an estimate, None where nothing
    is estimated.
    """

    makes: tuple[Make, ...]
    colours: tuple[Colour, ...]
    tools: tuple[Wanted, ...]
    unpriced: tuple[Wanted, ...]
    in_hand: tuple[tuple[str, int], ...]
    mixed: tuple[str, ...]
    currency: str
    plan: Plan | None
    budget: Budget | None
    dearest: tuple[str, Decimal] | None
    prices_as_of: str
    least_total: Decimal | None

    @property
    def estimated(self) -> bool:
        """Whether some of the yarn is an estimate with two ends; the plan is for the upper one."""
        return any(one.estimated for one in self.colours)

    def label(self, key: str) -> str:
        """A thing's printed name."""
        return next((one.label for one in self.colours if one.key == key), key)
