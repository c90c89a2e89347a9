"""The sizes to make, whose bodies they are for, and the ease on each measure."""

from dataclasses import dataclass
from typing import Literal

from gaugewright.errors import Origin


@dataclass(frozen=True, slots=True)
class Ease:
    """Ease on one body measure in mm for each size, and how it was read."""

    measure: str
    values: tuple[float, ...]
    words: str


ONE_SIZE = "One size"
"""The label of the only size of a design that names none."""


@dataclass(frozen=True, slots=True)
class SizeList:
    """The sizes to make and where their body measures come from.

    `own` holds measures in mm for sizes of the spec's own; `dimensions` those of things that fit no body.
    """

    table: str
    labels: tuple[str, ...]
    read: Literal["lower", "middle", "upper"]
    own: tuple[tuple[str, tuple[tuple[str, float], ...]], ...]
    ease: tuple[Ease, ...]
    origin: Origin
    dimensions: tuple[tuple[str, tuple[tuple[str, float], ...]], ...] = ()

    def dimensions_of(self, label: str) -> dict[str, float]:
        """A size's dimensions in mm, by name."""
        return dict(dict(self.dimensions).get(label, ()))
