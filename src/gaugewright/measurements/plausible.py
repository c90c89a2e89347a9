"""Is a body figure believable? Slips of the decimal point and of the unit are common."""

from collections.abc import Mapping
from functools import cache

from gaugewright.datafiles import read_table
from gaugewright.measurements.survey import DATA
from gaugewright.rounding import to_step

# A factor, and the unit the corrected figure is worded in.
SLIPS = ((10.0, "cm"), (0.1, "cm"), (2.54, "in"), (1 / 2.54, "cm"), (100.0, "cm"))


@cache
def _bounds() -> Mapping[str, tuple[float, float, float, float]]:
    return {
        row["measure"]: (
            float(row["min_cm"]),
            float(row["max_cm"]),
            float(row["adult_min_cm"]),
            float(row["adult_max_cm"]),
        )
        for row in read_table(DATA / "plausible.csv")
    }


def implausible(measure: str, mm: float, adult: bool = False) -> str:
    """What is wrong with a body figure and what was probably meant; empty when it is believable.

    >>> implausible("bust", 960.0)
    ''
    >>> implausible("bust", 96.0)
    '9.6 cm is not a likely bust (28 to 200 cm): 96 cm?'
    >>> implausible("upper_arm", 115.0, adult=True)
    '11.5 cm is not a likely upper arm (18 to 75 cm): 11.5 in?'
    """
    if measure not in _bounds():
        return ""
    low, high = _bounds()[measure][2:] if adult else _bounds()[measure][:2]
    found = mm / 10
    if low <= found <= high:
        return ""
    guess = likelier(mm, low * 10, high * 10)
    name = measure.replace("_", " ")
    return f"{_plain(found)} cm is not a likely {name} ({low:g} to {high:g} cm)" + (f": {guess}?" if guess else "")


def likelier(mm: float, low: float, high: float) -> str:
    """What was probably meant by a length outside its limits (mm), if it is a slip of the decimal point or the unit.

    >>> likelier(96.0, 700.0, 1400.0), likelier(460.0, 700.0, 1400.0), likelier(500.0, 700.0, 1000.0)
    ('96 cm', '46 in', '')
    """
    found = mm / 10
    return next((_worded(found, f, unit) for f, unit in SLIPS if low <= found * f * 10 <= high), "")


def _worded(found: float, factor: float, unit: str) -> str:
    """The corrected figure: inches keep the number that was typed."""
    return f"{_plain(found)} in" if unit == "in" else f"{_plain(found * factor)} cm"


def _plain(value: float) -> str:
    return f"{to_step(value, 0.1):.1f}".removesuffix(".0")
