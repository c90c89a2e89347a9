"""What is done to the stitches of a row: each operation uses some of the row before and makes some of this one."""

from dataclasses import dataclass
from typing import Literal

from gaugewright.vocabulary import Hold, Loop

OperationKind = Literal[
    "stitch", "increase", "decrease", "turning chain", "chain", "leave", "slip over", "skip", "picked up", "wait", "anchor", "join",
    "corner decrease", "corner increase",
    "together", "cluster", "same place", "space",
]
"""The last four are of stitch patterns: several over as many stitches, several in one, one more in the place
of the one before it, and the first one in the space under chains. None of them shapes the piece."""

CORNERS = ("corner decrease", "corner increase")
"""Changes at the corners of a band, which move no edge of it: they turn it."""


@dataclass(frozen=True, slots=True)
class Operation:
    """What one working does: `uses` stitches of the row before, `makes` stitches of this one, so many rows of its fabric high."""

    kind: OperationKind
    stitch: str
    uses: int
    makes: int
    loop: Hold = "both"
    height: float = 1.0

    @property
    def change(self) -> int:
        """Stitches gained (or lost, if negative)."""
        return self.makes - self.uses


def work(stitch: str, loop: Hold = "both", height: float = 1.0) -> Operation:
    """One plain stitch; of another height than the fabric's own where a row rises."""
    return Operation("stitch", stitch, 1, 1, loop, height)


def increase(stitch: str, into: int = 2, loop: Loop = "both") -> Operation:
    """`into` stitches worked in one."""
    return Operation("increase", stitch, 1, into, loop)


def decrease(stitch: str, of: int = 2, loop: Loop = "both") -> Operation:
    """`of` stitches worked together."""
    return Operation("decrease", stitch, of, 1, loop)


def at_corner(stitch: str, uses: int, makes: int, loop: Loop = "both") -> Operation:
    """A decrease or increase at a corner of a band."""
    return Operation("corner decrease" if uses > makes else "corner increase", stitch, uses, makes, loop)


def turning_chain(stitch: str, counts: bool) -> Operation:
    """The chain at a row's start: in the place of the first stitch if it counts, else beside it."""
    return Operation("turning chain", stitch, 1 if counts else 0, 1 if counts else 0)


def chain() -> Operation:
    """A chain added to the row, such as under an arm: it is a stitch of this row."""
    return Operation("chain", "ch", 0, 1)


def bridge() -> Operation:
    """A chain over a stitch passed over, in whose place it stands: a buttonhole's."""
    return Operation("chain", "ch", 1, 1)


def leave() -> Operation:
    """A stitch left unworked at a row's end: crochet's way of casting off there."""
    return Operation("leave", "", 1, 0)


def slip_over() -> Operation:
    """A stitch slip-stitched over at a row's start: crochet's way of casting off there."""
    return Operation("slip over", "sl st", 1, 0)


def skip() -> Operation:
    """A stitch passed over within a row, for another strip to begin from."""
    return Operation("skip", "", 1, 0)


def join_to_edge() -> Operation:
    """A slip stitch at a row's end into the next place of an edge: it is no stitch of the row."""
    return Operation("join", "sl st", 0, 0)


def pick_up(stitch: str) -> Operation:
    """A stitch worked into an edge of rows or of another strip: it uses no stitch of the row before."""
    return Operation("picked up", stitch, 0, 1)


def wait() -> Operation:
    """A stitch that a short row leaves for a later row: it stays a stitch of the edge that is worked on."""
    return Operation("wait", "", 1, 1)


def anchor() -> Operation:
    """A slip stitch where a short row turns, in a stitch that waits: it eases the step and is no stitch of the row."""
    return Operation("anchor", "sl st", 0, 0)
