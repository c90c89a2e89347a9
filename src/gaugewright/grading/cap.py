"""The set-in sleeve's cap: as high as it takes for its edge to fill the armhole.

Top-stitches and first step come from what suits the wearer, so the height is what is looked for: the
edge grows with it. Where whole rows don't meet the armhole, top and first step give two stitches.
"""

import math
from collections.abc import Iterator
from typing import NamedTuple

from gaugewright.gauge.model import Gauge
from gaugewright.grading.armhole import PHRASES_AFTER_BLOCK, with_block
from gaugewright.grading.curves import BELL_STEEPEST, ProfileImpossible, bell, curve_profile, profile_length
from gaugewright.grading.profile import EdgeStep, Profile
from gaugewright.rounding import down, half_up, nearest_of_series, up
from gaugewright.tolerances import CAP_STRAY_STITCHES, MOST_DECREASED, MOST_STITCHES_PER_EDGE, SAME_LENGTH

USUAL_SHARE = (0.6, 0.8)
"""A cap is three fifths to four fifths as high as its armhole is deep: 5.5 in of 8.5 in (Slipped Stitches, 2014)."""

POSSIBLE_SHARE = (0.35, 1.0)
"""Lower it is a drop shoulder's straight top, higher it stands above the shoulder (common practice)."""

TOP_RANGE = (50.0, 75.0)
"""A cap's top is 2 to 3 in wide (30 Day Sweater, days 8 and 24)."""

GIVE = 2
"""Top and first step may give so many stitches each before anyone sees it."""

FURTHEST_ALTERNATIVE = 24
"""At least so many stitches wider or narrower an upper sleeve is tried, to say what would fit."""

MOST_TRIES = 16
"""So many choices are worked out row by row; what comes later gives far more than two stitches."""


class Cap(NamedTuple):
    """A cap: each edge's profile, the stitches at the top, the whole edge in mm and what it is over the wanted one.

    `usual` says whether its height is within the usual share of the armhole's depth.
    """

    profile: Profile
    top: int
    rows: int
    edge_length: float
    residual: float
    usual: bool


class CapImpossible(ProfileImpossible):
    """No cap of this upper sleeve fills the armhole; `fits` is the nearest count of stitches that does."""

    def __init__(self, message: str, fits: int | None) -> None:
        super().__init__(message)
        self.fits = fits


class _Want(NamedTuple):
    """What the cap is to fill, and between which lengths its edge may come out, all in mm."""

    gauge: Gauge
    length: float
    least: float
    most: float
    depth: float


class _Try(NamedTuple):
    """One choice of first step, top and height, with its edge as the drawn curve has it."""

    block: int
    top: int
    rows: int
    drawn: float


def cap(
    upper_stitches: int,
    edge_length: float,
    gauge: Gauge,
    block: int,
    ease: float,
    depth: float,
    top_range: tuple[float, float] = TOP_RANGE,
) -> Cap:
    """The cap of a sleeve `upper_stitches` wide, for an armhole of `edge_length` mm in all, `depth` mm deep.

    Its edge (both sides and the top) is the armhole and `ease`, to a row, and never shorter than the
    armhole. `block` is the armhole's own first step, which the cap's lies on. A usual height goes before
    an unusual one, then a first step and top as wanted, then the nearest edge.
    """
    want = _want(edge_length, gauge, ease, depth)
    found = _best(upper_stitches, want, block, top_range)
    if found:
        return found
    for number in range(1, max(FURTHEST_ALTERNATIVE, upper_stitches) + 1):
        for other in (upper_stitches + number, upper_stitches - number):
            if _best(other, want, block, top_range):
                raise _impossible(upper_stitches, edge_length, other)
    raise _impossible(upper_stitches, edge_length, None)


def _want(edge_length: float, gauge: Gauge, ease: float, depth: float) -> _Want:
    wanted, row = edge_length + ease, gauge.row_height
    return _Want(gauge, wanted, max(edge_length - SAME_LENGTH, wanted - row), wanted + row, depth)


def _impossible(stitches: int, edge_length: float, fits: int | None) -> CapImpossible:
    return CapImpossible(f"no cap of {stitches} stitches has an edge of {edge_length / 10:.1f} cm", fits)


def _best(stitches: int, want: _Want, block: int, top_range: tuple[float, float]) -> Cap | None:
    """The first cap that fills the armhole, in the order of what matters."""
    top = _wanted_top(stitches, want.gauge, top_range)
    ordered = sorted(_tries(stitches, want, block, top), key=lambda one: _order(one, want, block, top))
    for one in ordered[:MOST_TRIES]:
        made = _made(stitches, want, one)
        if made and want.least <= made.edge_length <= want.most:
            return made
    return None


def _wanted_top(stitches: int, gauge: Gauge, top_range: tuple[float, float]) -> int:
    """The top nearest the middle of its range, with the upper sleeve's parity, so that both edges are alike."""
    return nearest_of_series(gauge.stitches_in(sum(top_range) / 2), stitches % 2 or 2, 2)


def _tries(stitches: int, want: _Want, block: int, top: int) -> Iterator[_Try]:
    """Heights whose drawn edge comes near the wanted one, for each first step and top."""
    for own_top in range(max(1 + (top + 1) % 2, top - GIVE), top + GIVE + 1, 2):
        for own_block in range(max(1, block - GIVE), block + GIVE + 1):
            rest = (stitches - own_top) // 2 - own_block
            if rest > 0:
                yield from _heights(want, own_block, own_top, rest)


def _heights(want: _Want, block: int, top: int, rest: int) -> Iterator[_Try]:
    """The drawn edge grows with the height, so the first height that is long enough is found by halving."""
    lowest = max(1 + up(rest / MOST_STITCHES_PER_EDGE), up(want.gauge.rows_in(POSSIBLE_SHARE[0] * want.depth)))
    low, high = lowest, down(want.gauge.rows_in(POSSIBLE_SHARE[1] * want.depth))
    last = high
    while low < high:
        middle = (low + high) // 2
        if _drawn(want.gauge, block, top, rest, middle) < want.length:
            low = middle + 1
        else:
            high = middle
    for rows in range(max(lowest, low - 2), min(last, low + 1) + 1):
        drawn = _drawn(want.gauge, block, top, rest, rows)
        if abs(drawn - want.length) <= 2 * want.gauge.row_height:
            yield _Try(block, top, rows, drawn)


def _drawn(gauge: Gauge, block: int, top: int, rest: int, rows: int) -> float:
    """The whole edge along the curve itself, from row end to row end."""
    curve = bell(rest, rows - 1)
    points = [(gauge.width_of(curve(row)), gauge.height_of(row)) for row in range(rows)]
    side = sum(math.dist(one, other) for one, other in zip(points, points[1:], strict=False))
    return 2 * (gauge.width_of(block) + gauge.row_height + side) + gauge.width_of(top)


def _order(one: _Try, want: _Want, block: int, top: int) -> tuple[bool, bool, int, float, int, int]:
    outside = not want.least <= one.drawn <= want.most
    changes = abs(one.block - block) + abs(one.top - top) // 2
    return outside, not _usual(one.rows, want), changes, abs(one.drawn - want.length), one.block, one.top


def _usual(rows: int, want: _Want) -> bool:
    share = want.gauge.height_of(rows) / want.depth
    return USUAL_SHARE[0] <= share <= USUAL_SHARE[1]


def _made(stitches: int, want: _Want, one: _Try) -> Cap | None:
    """The cap as worked; None where its curve can't be worked in few phrases."""
    later = _curve((stitches - one.top) // 2 - one.block, one.rows - 1)
    if later is None:
        return None
    profile = Profile(one.rows, with_block(one.block, later))
    if not _edges_apart(profile, stitches):
        return None
    edge = 2 * profile_length(profile, want.gauge) + want.gauge.width_of(one.top)
    return Cap(profile, one.top, one.rows, edge, edge - want.length, _usual(one.rows, want))


def _edges_apart(profile: Profile, stitches: int) -> bool:
    """Whether each row has two stitches for every decrease at both of its edges.

    >>> _edges_apart(Profile(1, (EdgeStep(1, 2, "decrease"),)), 7), _edges_apart(Profile(1, (EdgeStep(1, 2, "decrease"),)), 8)
    (False, True)
    """
    for step in profile.steps:
        if step.way == "decrease" and stitches < 4 * step.stitches:
            return False
        stitches -= 2 * step.stitches
    return True


def _curve(stitches: int, rows: int) -> Profile | None:
    """The curve after the block, in the smallest steps that keep to it: single stitches make the smoothest edge.

    Steps that would be left, a stair each, are made only where the rows are too few for smaller ones.
    """
    smallest = min(MOST_STITCHES_PER_EDGE, max(1, half_up(BELL_STEEPEST * stitches / rows)))
    found: list[tuple[float, Profile]] = []
    for at_once in range(smallest, MOST_STITCHES_PER_EDGE + 1):
        if found and (at_once > MOST_DECREASED or found[-1][0] <= CAP_STRAY_STITCHES):
            break
        try:
            profile, off = curve_profile(bell(stitches, rows), stitches, rows, PHRASES_AFTER_BLOCK, at_once)
        except ProfileImpossible:
            continue
        found.append((off, profile))
    return min(found)[1] if found else None
