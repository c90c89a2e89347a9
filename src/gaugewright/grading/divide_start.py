"""What a yoke is divided into, and how a body and its sleeves begin from the parts of its last round."""

from dataclasses import dataclass
from typing import Literal

from gaugewright.vocabulary import Side

Part = Literal["body", "sleeve"]


@dataclass(frozen=True, slots=True)
class Division:
    """A yoke's last round: stitches of the back (the front has as many) and of each sleeve, and the chain under each arm."""

    back: int
    sleeve: int
    underarm: int

    @property
    def total(self) -> int:
        """Stitches of the yoke's last round: body and sleeves without the chains under the arms.

        >>> Division(84, 50, 16).total
        268
        """
        return 2 * (self.back + self.sleeve)

    @property
    def body_girth(self) -> int:
        """Stitches round the body."""
        return 2 * (self.back + self.underarm)

    @property
    def sleeve_girth(self) -> int:
        """Stitches round each sleeve."""
        return self.sleeve + self.underarm


def halves_of_back(back: int, centred: bool, side: Side) -> tuple[int, int]:
    """Stitches of the back that a round works first and last; all of them first where it begins at the back's edge.

    Rounds that are turned begin in the middle of the back. The first stitch of each goes into the first one of
    the round before, so one worked on the wrong side begins with that stitch and goes back over the other half.

    >>> halves_of_back(25, False, "RS"), halves_of_back(25, True, "RS"), halves_of_back(25, True, "WS")
    ((25, 0), (13, 12), (13, 12))
    >>> halves_of_back(24, True, "RS"), halves_of_back(24, True, "WS")
    ((12, 12), (13, 11))
    """
    if not centred:
        return back, 0
    first = back - back // 2 if side == "RS" else back // 2 + 1
    return first, back - first


@dataclass(frozen=True, slots=True)
class DivideStart:
    """A part of a yoke's last round and the chains under the arm, in round 1.

    The body passes over both sleeves and adds a chain under each arm; a sleeve works its own
    stitches and into that chain. `back` is also the front's count. Rounds that are turned begin in the
    middle of the back (`centred`); `side` is then that of round 1.
    """

    piece: str
    part: Part
    back: int
    sleeve: int
    underarm: int
    centred: bool = False
    side: Side = "RS"

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
    def back_parts(self) -> tuple[int, int]:
        """Stitches of the back that the body's round 1 works before the first sleeve, and after the second one."""
        return halves_of_back(self.back, self.centred, self.side)

    @property
    def halves(self) -> tuple[int, int]:
        """The chain under a sleeve, before its stitches and after them: its rounds begin in the middle."""
        return self.underarm - self.underarm // 2, self.underarm // 2
