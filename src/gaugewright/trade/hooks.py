"""Hook labels: millimetres rule; a US size is added where published charts agree on it."""

from collections.abc import Mapping
from functools import cache

from gaugewright.datafiles import read_table
from gaugewright.trade.stitches import DATA


def hook_label(mm: float) -> str:
    """A hook as it is printed.

    >>> hook_label(10), hook_label(2.25), hook_label(4.5), hook_label(10.5)
    ('10 mm (US N/P-15)', '2.25 mm (US B-1)', '4.5 mm (US 7)', '10.5 mm')
    """
    us = us_hook(mm)
    return f"{mm:g} mm (US {us})" if us else f"{mm:g} mm"


def us_hook(mm: float) -> str:
    """The US size of a hook; empty where there is none in common use, or copies disagree.

    A size made as a regular and as a steel hook has its regular name: steel sizes are for thread.
    """
    return _sizes().get(f"{mm:g}", "")


def next_hook(mm: float, larger: bool) -> float | None:
    """The nearest regular hook that is larger, or smaller; None beyond the list.

    >>> next_hook(10, True), next_hook(10, False), next_hook(0.1, False)
    (11.5, 9.0, None)
    """
    sizes = sorted({float(row["mm"]) for row in read_table(DATA / "hooks.csv") if row["type"] == "regular"})
    beyond = [size for size in sizes if (size > mm if larger else size < mm)]
    return (min(beyond) if larger else max(beyond)) if beyond else None


@cache
def _sizes() -> Mapping[str, str]:
    rows = [row for row in read_table(DATA / "hooks.csv") if row["source"] == "found" and row["us_label"]]
    steel = {f"{float(row['mm']):g}": row["us_label"] for row in rows if row["type"] == "steel"}
    regular = {f"{float(row['mm']):g}": row["us_label"] for row in rows if row["type"] == "regular"}
    return {**steel, **regular}
