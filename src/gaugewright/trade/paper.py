"""Paper sizes, and the part of the sheet that two of them share."""

from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.errors import UserError
from gaugewright.trade.stitches import DATA


class Paper(NamedTuple):
    """A sheet, upright, in mm."""

    name: str
    width_mm: float
    height_mm: float
    standard: str


@cache
def papers() -> tuple[Paper, ...]:
    """Every sheet known."""
    return tuple(
        Paper(row["name"], float(row["width_mm"]), float(row["height_mm"]), row["standard"])
        for row in read_table(DATA / "paper.csv")
    )


def paper(name: str) -> Paper:
    """A sheet by name, whatever its capitals.

    >>> paper("letter").width_mm
    215.9
    """
    found = next((sheet for sheet in papers() if sheet.name.lower() == name.lower()), None)
    if found is None:
        names = ", ".join(sheet.name for sheet in papers())
        raise UserError("unknown-paper", f"there is no paper size {name!r}", hint=f"the sizes are {names}")
    return found


def shared_area(first: str, second: str) -> tuple[float, float]:
    """Width and height in mm that fit on both sheets, so that a page prints on either.

    >>> shared_area("A4", "Letter")
    (210.0, 279.4)
    """
    one, other = paper(first), paper(second)
    return min(one.width_mm, other.width_mm), min(one.height_mm, other.height_mm)
