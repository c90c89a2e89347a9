"""How a piece in rows goes on from a tube: over part of its last round."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class GoOnStart:
    """The first `stitches` of a tube's last round, over which row 1 is worked; the last `left` stay as they are."""

    piece: str
    edge: str
    stitches: int
    left: int
