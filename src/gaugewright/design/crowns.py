"""Crowns as designed: rounds that add or take away alike, out from a closed centre or in to one."""

from dataclasses import dataclass

from gaugewright.design.formula import Formula
from gaugewright.errors import Origin
from gaugewright.vocabulary import Direction


@dataclass(frozen=True, slots=True)
class Crown:
    """Rounds up to a girth (`target` or `stitches`), or, where it is to `close`, down to a few stitches
    drawn together. `each` is how many stitches a round changes; None: as many as lie flat.

    Its rows follow from its counts, so it has no extent of its own.
    """

    target: Formula | None
    stitches: int | None
    close: bool
    each: int | None
    direction: Direction
    fabric: str
    colour: str
    origin: Origin
    extent: None = None
