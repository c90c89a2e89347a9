"""Lengths of tails and seaming strands, and how far a yarn is carried, from the trade's advice."""

from functools import cache

from gaugewright.datafiles import read_table
from gaugewright.trade.stitches import DATA


def tail(key: str) -> float:
    """A tail's length in mm ("weave in", "sewing"), the "seam factor" (times the seam's length), or rows to "carry" over.

    >>> tail("weave in"), tail("seam factor")
    (152.4, 3.5)
    """
    return _tails()[key]


@cache
def _tails() -> dict[str, float]:
    return {row["key"]: float(row["value"]) for row in read_table(DATA / "tails.csv")}
