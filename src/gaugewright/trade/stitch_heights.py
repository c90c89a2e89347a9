"""How high the stitches are beside one another, from published gauges.

Makers differ by a fifth, so a fabric's own row height is always its swatch's; only the ratio to another
stitch is taken from here.
"""

from functools import cache

from gaugewright.datafiles import read_table
from gaugewright.trade.stitches import DATA


def times_as_high(stitch: str, as_stitch: str) -> float:
    """How many times as high one stitch's row is as another's.

    >>> times_as_high("dc", "sc"), times_as_high("sl st", "hdc")
    (2.4, 0.0)
    """
    return _aspects()[stitch] / _aspects()[as_stitch]


@cache
def _aspects() -> dict[str, float]:
    """Row height over stitch width."""
    return {row["stitch"]: float(row["aspect"]) for row in read_table(DATA / "stitch_heights.csv")}
