"""How a piece begins, as designed."""

from dataclasses import dataclass
from typing import Literal

from gaugewright.design.formula import Formula
from gaugewright.errors import Origin
from gaugewright.vocabulary import CornerKind, TakeUp


@dataclass(frozen=True, slots=True)
class PieceStart:
    """How a piece begins: a chain or ring of a wanted width, a closed centre of so many stitches (None: as
    many as lie flat), the middle of an edge from which rows fan out, a part of a yoke or of an opened tube (`edges` names it), or edges picked up; `ring` where those are worked in rounds.

    A band is shaped at its `corners`; None: at those that a maker would expect.
    A chain with `edges` is a band worked sideways along them, `gather` (a share) shorter than they are.
    """

    kind: Literal["chain", "ring", "centre", "middle", "pick up", "divide", "go on"]
    width: Formula | None
    edges: tuple[tuple[str, str], ...]
    take_up: TakeUp
    fabric: str
    origin: Origin
    stitches: int | None = None
    ring: bool = False
    gather: float = 0.0
    sewn: bool = False
    corners: tuple[CornerKind, ...] | None = None

    @property
    def joined(self) -> bool:
        """Whether its rows lie across edges that it is joined or sewn to."""
        return self.kind == "chain" and bool(self.edges)

    @property
    def in_rounds(self) -> bool:
        """Whether the piece goes round, without row ends."""
        return self.ring or self.kind in ("ring", "centre", "divide")
