"""What a plan needs to know of a fabric to work its rows."""

from dataclasses import dataclass

from gaugewright.vocabulary import Loop


@dataclass(frozen=True, slots=True)
class Cloth:
    """A fabric's stitch and loops, its turning chains, and whether they count as a stitch."""

    fabric: str
    stitch: str
    loop: Loop
    chains: int
    counts: bool
