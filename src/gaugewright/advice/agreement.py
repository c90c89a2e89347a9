"""Do several makers agree that the same thing is off? A t test with few readings, and an allowance for looking at many things.

In: for each thing (a measure, a yarn) by how much each maker's is off, as a share of what was predicted. Out: the mean, its
95 % range, and how likely makers so far apart would come to it if nothing were off. One maker's gauge, tape or hand puts
single readings off in either direction; a mistake of the design puts all of them off in one.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

FEWEST = 3
"""Of two makers both are off in the same direction every other time: three are the fewest that tell anything."""

LEVEL = 0.05
"""What would come about less often by chance is taken to be the design (the usual level of 5 %)."""


@dataclass(frozen=True, slots=True)
class Agreement:
    """How far off so many makers are, as shares. `chance` is the p value of the mean, `among` the same allowing for how many
    things were looked at (Holm); low, high and both chances are 0, 0, 1 and 1 below `FEWEST`.
    """

    makers: int
    mean: float
    low: float
    high: float
    chance: float
    among: float

    @property
    def enough(self) -> bool:
        """Whether there are makers enough to say anything."""
        return self.makers >= FEWEST


def agreements(shares: Mapping[str, Sequence[float]], blur: Mapping[str, float]) -> dict[str, Agreement]:
    """Each thing's agreement. `blur` is how far one reading of it may be off unseen, as a share: makers who happen to agree to
    the hair are not taken to be surer than their tapes.
    """
    alone = {name: _alone(values, blur[name]) for name, values in shares.items() if values}
    among = holm({name: one.chance for name, one in alone.items() if one.enough})
    return {name: Agreement(one.makers, one.mean, one.low, one.high, one.chance, among.get(name, 1.0)) for name, one in alone.items()}


def _alone(values: Sequence[float], blur: float) -> Agreement:
    number = len(values)
    mean = sum(values) / number
    if number < FEWEST:
        return Agreement(number, mean, 0.0, 0.0, 1.0, 1.0)
    spread = math.sqrt(sum((value - mean) ** 2 for value in values) / (number - 1))
    error = max(spread, blur) / math.sqrt(number)
    half = t_with_chance(LEVEL, number - 1) * error
    return Agreement(number, mean, mean - half, mean + half, chance_beyond(mean / error, number - 1), 1.0)


def chance_beyond(t: float, freedom: int) -> float:
    """How likely Student's t is as far from 0 as this, in either direction; exact for whole degrees of freedom (Abramowitz
    and Stegun, Handbook of Mathematical Functions, 1964, 26.7.3 and 26.7.4; from memory).

    >>> round(chance_beyond(12.706, 1), 3), round(chance_beyond(2.776, 4), 3)
    (0.05, 0.05)
    """
    angle = math.atan(abs(t) / math.sqrt(freedom))
    sine, cosine = math.sin(angle), math.cos(angle)
    odd = freedom % 2
    term = cosine if odd else 1.0
    total = term if freedom > 1 else 0.0
    for step in range(2 + odd, freedom - 1, 2):
        term *= cosine**2 * (step - 1) / step
        total += term
    inside = (2 / math.pi) * (angle + sine * total) if odd else sine * total
    return max(0.0, 1 - inside)


def t_with_chance(chance: float, freedom: int) -> float:
    """The t that is exceeded in either direction with this chance.

    >>> round(t_with_chance(0.05, 4), 3)
    2.776
    """
    low, high = 0.0, 1.0
    while chance_beyond(high, freedom) > chance:
        high *= 2
    while high - low > 1e-9 * high:
        middle = (low + high) / 2
        low, high = (middle, high) if chance_beyond(middle, freedom) > chance else (low, middle)
    return high


def holm(chances: Mapping[str, float]) -> dict[str, float]:
    """Chances allowing for their number, so that 5 % hold for all of them together (Holm, 1979; from memory): the least is
    taken as often as there are, the next once less, and none becomes likelier than the one before.

    >>> holm({"bust": 0.01, "cuff": 0.04, "hem": 0.03})
    {'bust': 0.03, 'hem': 0.06, 'cuff': 0.06}
    """
    found: dict[str, float] = {}
    most = 0.0
    for place, (name, chance) in enumerate(sorted(chances.items(), key=lambda one: one[1])):
        most = max(most, min(1.0, chance * (len(chances) - place)))
        found[name] = most
    return found
