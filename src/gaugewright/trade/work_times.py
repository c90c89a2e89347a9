"""How long things take: published paces, and the trade's usual figures for what nobody has published.

Each figure has a least, a usual and a greatest value, and its source in the data file.
"""

import re
from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.trade.stitches import DATA

_TOGETHER = re.compile(r"(.+?)([0-9]+)tog")


class WorkTime(NamedTuple):
    """One figure in the unit of its row (`s`, `s/cm`, `a minute`, `share`, `times`, `min` or `h`)."""

    low: float
    usual: float
    high: float


def work_time(key: str) -> WorkTime:
    """The figure of this name.

    >>> work_time("record").usual, work_time("end")
    (170.0, WorkTime(low=60.0, usual=120.0, high=180.0))
    """
    return _times()[key]


def movements(stitch: str) -> float:
    """The hook's movements in a stitch: each yarn over before it goes in, each loop drawn through. A stitch's time
    goes with them (common practice, no source; the yarn of published strips does too). Stitches worked together
    leave out each one's last draw and end in one.

    >>> movements("sc"), movements("hdc"), movements("sc2tog"), movements("dc4tog")
    (2.0, 3.0, 3.0, 13.0)
    """
    together = _TOGETHER.fullmatch(stitch)
    if together:
        return int(together[2]) * (_movements()[together[1]] - 1) + 1
    return _movements()[stitch]


class PaceFault(NamedTuple):
    """What is wrong with a pace: a problem's name, and what was found."""

    name: str
    message: str


def pace_fault(per_minute: float) -> PaceFault | None:
    """Whether so many stitches a minute can't be meant: faster than the record, or slower than anybody works.

    >>> pace_fault(14.0), pace_fault(200.0).name, pace_fault(0.125).name
    (None, 'pace-beyond-record', 'pace-too-slow')
    """
    if per_minute > work_time("record").usual:
        return PaceFault("pace-beyond-record", f"{per_minute:.0f} stitches a minute are more than the fastest published, {work_time('record').usual:.0f} with chains among them: likely a slip")
    if per_minute < work_time("slowest").usual:
        return PaceFault("pace-too-slow", f"a stitch in {1 / per_minute:.0f} minutes is slower than anybody works: likely one figure in place of the other")
    return None


@cache
def _times() -> dict[str, WorkTime]:
    return {row["key"]: WorkTime(float(row["low"]), float(row["usual"]), float(row["high"])) for row in read_table(DATA / "work_times.csv")}


@cache
def _movements() -> dict[str, float]:
    return {row["stitch"]: float(row["movements"]) for row in read_table(DATA / "movements.csv")}
