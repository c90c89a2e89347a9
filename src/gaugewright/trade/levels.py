"""Project levels: they rate the project, not the maker (adopted 2018)."""

from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.errors import UserError
from gaugewright.trade.stitches import DATA


class ProjectLevel(NamedTuple):
    """A level, its place among the four, and what it means."""

    order: int
    name: str
    meaning: str


@cache
def project_levels() -> tuple[ProjectLevel, ...]:
    """The four levels in use, easiest first."""
    return tuple(
        ProjectLevel(int(row["order"]), row["level"], row["meaning"])
        for row in read_table(DATA / "project_levels.csv")
        if row["edition"] == "current"
    )


def project_level(name: str) -> ProjectLevel:
    """A level by name, whatever its capitals.

    >>> project_level("easy").order
    2
    """
    found = next((level for level in project_levels() if level.name.lower() == name.lower()), None)
    if found is None:
        names = ", ".join(level.name for level in project_levels())
        raise UserError("unknown-level", f"there is no project level {name!r}", hint=f"the levels are {names}")
    return found
