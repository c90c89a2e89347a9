"""The armhole's edge: stitches left at the underarm, a curve, and even rows up to the shoulder."""

from functools import lru_cache

from gaugewright.gauge.model import Gauge
from gaugewright.grading.curves import Curve, ProfileImpossible, curve_profile, quarter_ellipse
from gaugewright.grading.profile import EdgeStep, Profile
from gaugewright.rounding import down, half_up, up

BLOCK_SHARE = 0.5
"""The first step takes half of the stitches to remove at a side (30 Day Sweater, day 24)."""

PHRASES_AFTER_BLOCK = 3
"""With the block an edge so has four phrases at most, as published armholes do (Espace Tricot, 2013)."""

CURVE_HEIGHT = 1.5
"""The curve is half as high again as wide where the depth allows it (common practice, no source)."""


@lru_cache(maxsize=256)
def armhole(stitches: int, rows: int, block: int | None, curve_rows: int | None, gauge: Gauge) -> Profile:
    """`stitches` go at one side over `rows`: `block` left on row 1, the rest by a curve, then even.

    At the row's start the block is slip-stitched over and at its end left, so both sides step on one row.
    Without a block half of the stitches go at once; without `curve_rows` the curve ends between a third
    and a half of the depth, which leaves room for the arm and keeps the cross back straight.

    >>> made = armhole(8, 20, None, None, Gauge(14, 100.0, 10, 100.0))
    >>> made.steps[0], made.stitches, made.rows
    (EdgeStep(row=1, stitches=4, way='leave'), 8, 20)
    """
    first = default_block(stitches) if block is None else block
    if not 0 <= first <= stitches:
        raise ProfileImpossible(f"{first} stitches can't be left of {stitches} that go")
    if not stitches:
        return Profile(rows, ())
    curved = default_curve_rows(stitches, rows, gauge) if curve_rows is None else curve_rows
    if not 1 <= curved <= rows:
        raise ProfileImpossible(f"a curve of {curved} rows doesn't fit into {rows} rows")
    rest, _ = curve_profile(armhole_curve(stitches - first, curved - 1), stitches - first, curved - 1, PHRASES_AFTER_BLOCK)
    return Profile(rows, with_block(first, rest))


def default_block(stitches: int) -> int:
    """Half of the stitches that go, halves up.

    >>> default_block(9), default_block(1), default_block(0)
    (5, 1, 0)
    """
    return half_up(stitches * BLOCK_SHARE)


def default_curve_rows(stitches: int, rows: int, gauge: Gauge) -> int:
    """The rows of the curve: within the lower third to half of the depth."""
    wanted = half_up(gauge.rows_in(CURVE_HEIGHT * gauge.width_of(stitches)))
    lowest = min(rows, up(rows / 3))
    return min(max(wanted, lowest), max(lowest, down(rows / 2)))


def armhole_curve(stitches: int, rows: int) -> Curve:
    """The curve after the block, in a corner of its own: level as it leaves the block, upright at its end."""
    return quarter_ellipse(stitches, max(1, rows))


def with_block(block: int, rest: Profile) -> tuple[EdgeStep, ...]:
    """The steps of a profile that goes on after a block left on row 1."""
    later = tuple(step._replace(row=step.row + 1) for step in rest.steps)
    return (EdgeStep(1, block, "leave"), *later) if block else later
