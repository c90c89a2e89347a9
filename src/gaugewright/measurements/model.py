"""A body as plain data: what sizing receives."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

Read = Literal["lower", "middle", "upper"]
Which = Literal["women", "men", "child", "baby"]


@dataclass(frozen=True, slots=True)
class BodyValue:
    """One measure of one body, in mm.

    `mm` is the figure in use; `low_mm` to `high_mm` is the range it was read from (equal ends
    when a chart prints one figure). `confirmed` is False for a figure given from memory and not
    yet seen in print. `spread_mm` is the standard deviation among bodies of the same chest, for
    values from the survey (0 where the source gives none).
    """

    mm: float
    low_mm: float
    high_mm: float
    source: str
    confirmed: bool
    note: str = ""
    spread_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class Body:
    """The measures of one size, or of one person, by name."""

    label: str
    values: Mapping[str, BodyValue]
