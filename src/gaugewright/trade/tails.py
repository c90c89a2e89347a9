"""Lengths of tails and seaming strands, from the trade's published advice."""

from functools import cache

from gaugewright.datafiles import read_table
from gaugewright.trade.stitches import DATA


def tail(key: str) -> float:
    """A tail's length in mm ("weave in", "sewing"), or the "seam factor" (times the seam's length).

    >>> tail("weave in"), tail("seam factor")
    (152.4, 3.5)
    """
    return _tails()[key]


@cache
def _tails() -> dict[str, float]:
    return {row["key"]: float(row["value"]) for row in read_table(DATA / "tails.csv")}
