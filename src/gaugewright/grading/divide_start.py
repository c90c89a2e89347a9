"""How a body and its sleeves begin: from the parts of a yoke's last round."""

from dataclasses import dataclass
from typing import Literal

Part = Literal["body", "sleeve"]


@dataclass(frozen=True, slots=True)
class DivideStart:
    """A part of a yoke's last round and the chains under the arm, in round 1.

    The body passes over both sleeves and adds a chain under each arm; a sleeve works its own
    stitches and into that chain. `back` is also the front's count.
    """

    piece: str
    part: Part
    back: int
    sleeve: int
    underarm: int

    @property
    def stitches(self) -> int:
        """Stitches of round 1.

        >>> DivideStart("yoke", "body", 24, 16, 4).stitches, DivideStart("yoke", "sleeve", 24, 16, 4).stitches
        (56, 20)
        """
        return 2 * (self.back + self.underarm) if self.part == "body" else self.sleeve + self.underarm

    @property
    def takes(self) -> int:
        """Stitches of the yoke that round 1 works over: the body passes over all of them.

        >>> DivideStart("yoke", "body", 24, 16, 4).takes, DivideStart("yoke", "sleeve", 24, 16, 4).takes
        (80, 16)
        """
        return 2 * (self.back + self.sleeve) if self.part == "body" else self.sleeve

    @property
    def works(self) -> int:
        """Stitches of the yoke that are worked into."""
        return 2 * self.back if self.part == "body" else self.sleeve

    @property
    def halves(self) -> tuple[int, int]:
        """The chain under a sleeve, before its stitches and after them: its rounds begin in the middle."""
        return self.underarm - self.underarm // 2, self.underarm // 2
