"""Yarn weight categories 0 to 7: names, and the ranges of gauge and hook printed for them."""

from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.errors import UserError
from gaugewright.trade.stitches import DATA

EDITION = "A"  # the one held to be current; B and C stand beside it in the data


class YarnWeight(NamedTuple):
    """One category; an open end of a range is None.

    Crochet stitches are counted over 4 in of single crochet, lace in double crochet.
    """

    category: int
    name: str
    uk_name: str
    types: str
    stitches: tuple[int | None, int]
    gauge_stitch: str
    hook_mm: tuple[float, float | None]
    metres_per_100g: tuple[int | None, int]
    note: str


def yarn_weight(category: int) -> YarnWeight:
    """A category's name and ranges.

    >>> bulky = yarn_weight(6)
    >>> bulky.name, bulky.stitches, bulky.hook_mm
    ('Super Bulky', (7, 9), (9.0, 15.0))
    """
    found = next((weight for weight in yarn_weights() if weight.category == category), None)
    if found is None:
        raise UserError(
            "unknown-yarn-weight",
            f"there is no yarn weight category {category}",
            hint="categories run from 0 (lace) to 7 (jumbo)",
        )
    return found


@cache
def yarn_weights() -> tuple[YarnWeight, ...]:
    """All categories of the current edition, finest first."""
    return tuple(
        YarnWeight(
            category=int(row["category"]),
            name=row["name"],
            uk_name=row["uk_name"],
            types=row["yarn_types"],
            stitches=(_whole(row["crochet_sts_min_4in"]), int(row["crochet_sts_max_4in"])),
            gauge_stitch=row["crochet_gauge_stitch"],
            hook_mm=(float(row["hook_mm_min"]), float(row["hook_mm_max"]) if row["hook_mm_max"] else None),
            metres_per_100g=(_whole(row["m_per_100g_min"]), int(row["m_per_100g_max"])),
            note=row["note"],
        )
        for row in read_table(DATA / "yarn_weights.csv")
        if row["edition"] == EDITION
    )


def category_of(metres_per_100g: float) -> int | None:
    """The category whose printed metres hold this yarn; None between the categories.

    >>> category_of(58), category_of(100), category_of(85)
    (6, 5, None)
    """
    for weight in yarn_weights():
        low, high = weight.metres_per_100g
        if (low or 0) <= metres_per_100g <= high:
            return weight.category
    return None


def _whole(text: str) -> int | None:
    return int(text) if text else None
