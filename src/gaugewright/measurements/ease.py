"""Ease by fit: the published ranges, and the rule by which one figure is read from a range."""

from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.errors import UserError
from gaugewright.measurements.survey import DATA

TENTHS_PER_INCH = 254  # tenths of a millimetre, so that 34 in is 863.6 mm to the last bit
EDITION = "current"


class Ease(NamedTuple):
    """One figure of bust or chest ease for a fit, with the rule that chose it, worded."""

    fit: str
    mm: float
    rule: str
    source: str
    confirmed: bool


def _mm(inches: str) -> float:
    return float(inches) * TENTHS_PER_INCH / 10


@cache
def _rows() -> dict[str, tuple[float, float | None, str, bool]]:
    return {
        row["fit"]: (
            _mm(row["ease_min_in"]),
            _mm(row["ease_max_in"]) if row["ease_max_in"] else None,
            f"Craft Yarn Council, fit and ease chart, {row['edition']} edition ({row['note']})",
            row["source"] == "found",
        )
        for row in read_table(DATA / "ease.csv")
        if row["edition"] == EDITION
    }


def _key(fit: str) -> str:
    return fit.replace("-", "_").replace(" ", "_")


def _row(fit: str) -> tuple[float, float | None, str, bool]:
    key = _key(fit)
    if key not in _rows():
        names = ", ".join(name.replace("_", " ") for name in _rows())
        raise UserError("unknown-fit", f"there is no fit {fit!r}", hint=f"the fits are {names}")
    return _rows()[key]


def ease_range(fit: str) -> tuple[float, float | None, str]:
    """Least and most bust or chest ease of a fit in mm, and the source; None when open-ended.

    >>> ease_range("classic")[:2], ease_range("oversized")[:2]
    ((50.8, 101.6), (152.4, None))
    """
    low, high, source, _ = _row(fit)
    return low, high, source


def read_ease(fit: str) -> Ease:
    """One figure for a fit: the middle of its range; of an open-ended range its lower end.

    Why: a design needs one figure, and the middle is the least wrong for a maker who expects
    any of the range. The rule is worded because the pattern states it.
    """
    low, high, source, confirmed = _row(fit)
    name = _key(fit).replace("_", " ")
    if high is None:
        return Ease(name, low, "the least of an open-ended range", source, confirmed)
    if low == high:
        return Ease(name, low, "the chart's one figure", source, confirmed)
    return Ease(name, (low + high) / 2, "the middle of the range", source, confirmed)


FITS: tuple[str, ...] = tuple(_rows())
