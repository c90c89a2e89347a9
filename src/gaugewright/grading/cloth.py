"""What a plan needs to know of a fabric to work its rows."""

from dataclasses import dataclass

from gaugewright.stitch_patterns.pattern import StitchPattern
from gaugewright.vocabulary import Loop


@dataclass(frozen=True, slots=True)
class Cloth:
    """A fabric's stitch and loops, its turning chains, and whether they count as a stitch.

    In a stitch pattern these are of its plain rows, and `edge` are the plain stitches kept at each edge.
    """

    fabric: str
    stitch: str
    loop: Loop
    chains: int
    counts: bool
    pattern: StitchPattern | None = None
    edge: int = 0
