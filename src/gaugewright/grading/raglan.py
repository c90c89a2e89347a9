"""The counts of a raglan yoke: how the neck is shared, and what each part has below the arm.

In: stitches at the neck and the exact girths. Out: whole stitches that increases in pairs can reach.
"""

from dataclasses import dataclass

from gaugewright.grading.divide_start import Division
from gaugewright.rounding import half_up

FEWEST = 2
"""A part that grows at both ends has a stitch at each; an underarm chain has a middle between two."""

SLEEVE_SHARE = 1 / 6
"""Back, front and both sleeves have a third of the neck each (common practice)."""


@dataclass(frozen=True, slots=True)
class Parts:
    """Stitches of the back (and of the front) and of each sleeve."""

    body: int
    sleeve: int

    @property
    def total(self) -> int:
        """All four parts.

        >>> Parts(9, 2).total
        22
        """
        return 2 * (self.body + self.sleeve)


@dataclass(frozen=True, slots=True)
class RaglanCounts:
    """The four parts at the neck and below the arm, and the chain under each arm."""

    neck: Parts
    end: Parts
    underarm: int

    @property
    def body_increases(self) -> int:
        """Rounds on which back and front gain a stitch at each of their ends; below 0 where they would lose."""
        return (self.end.body - self.neck.body) // 2

    @property
    def sleeve_increases(self) -> int:
        """The same of the sleeves."""
        return (self.end.sleeve - self.neck.sleeve) // 2

    @property
    def division(self) -> Division:
        """What the last round is divided into."""
        return Division(self.end.body, self.end.sleeve, self.underarm)


def girths(neck: int, body: float, sleeve: float) -> tuple[int, int]:
    """Half the body's girth and a sleeve's girth in stitches, nearest to the exact ones.

    Every increase adds two to a part, so their sum has the parity of half the neck, whatever
    the underarm; where the nearest counts haven't, that one moves which strays less by it.

    >>> girths(80, 200.0, 66.0)
    (100, 66)
    >>> girths(44, 75.6, 30.2)
    (38, 30)
    >>> girths(44, 75.6, 30.9)
    (38, 30)
    """
    half, arm = half_up(body / 2), half_up(sleeve)
    choices = [
        (abs(2 * h - body) + abs(a - sleeve), -h, -a)
        for h in (half - 1, half, half + 1) for a in (arm - 1, arm, arm + 1)
        if (h + a - neck // 2) % 2 == 0
    ]
    _, h, a = min(choices)
    return -h, -a


def raglan_counts(neck: int, body: float, sleeve: float, underarm: float, neck_sleeve: float) -> RaglanCounts:
    """Whole stitches of all parts; `neck` is even. Nothing is said yet of the rounds they need.

    The published percentages at 200 stitches: 84 to the back and front, 50 to a sleeve.

    >>> raglan_counts(80, 200.0, 66.0, 16.0, 2.0)
    RaglanCounts(neck=Parts(body=38, sleeve=2), end=Parts(body=84, sleeve=50), underarm=16)
    """
    half, arm = girths(neck, body, sleeve)
    under = max(FEWEST, half_up(underarm))
    end = Parts(half - under, arm - under)
    share = max(FEWEST, half_up(neck_sleeve))
    if (share - end.sleeve) % 2:
        share += 1 if share < neck_sleeve or share == FEWEST else -1
    return RaglanCounts(Parts(neck // 2 - share, share), end, under)
