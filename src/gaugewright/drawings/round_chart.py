"""A chart of the rounds of a disc or a motif: its signs round the centre, each round's number beside its beginning, and
a key.

In: rounds as they are worked, the terms and the hand of the maker. Out: a drawing. A left-handed maker's chart is the
mirror image.
"""

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from gaugewright.drawings.chart_key import Entry, draw_key, extent, key_entries, mirrored, moved
from gaugewright.drawings.chart_layout import ChartStitch, Point
from gaugewright.drawings.primitives import Drawing, Item, Label, Polygon, Polyline
from gaugewright.drawings.round_layout import RING, PlacedRound, place_rounds
from gaugewright.drawings.round_rows import ChartRound
from gaugewright.drawings.round_signs import chain_sign, join_sign, round_sign
from gaugewright.trade.stitches import Terms

UNIT = 3.1
"""Millimetres of a stitch in a chart of rounds."""
NUMBER = 2.3
MARGIN = 1.0
WIDEST, LONGEST_SIDE = 118.0, 165.0
"""Millimetres that a whole chart is wide at most, and one side of a motif where only one is drawn."""


class Shown(NamedTuple):
    """What of a piece's rounds a chart shows: so many of them, all round or `one_side` of a motif only."""

    rounds: int
    one_side: bool


def shown(rounds: Sequence[ChartRound]) -> Shown:
    """All rounds that fit round the centre; of a motif that has more, as many as fit in one side."""
    placed = place_rounds(rounds)
    whole = sum(_width(one) <= WIDEST for one in placed)
    if whole == len(placed) or not placed[0].round.corners:
        return Shown(whole, False)
    long = sum(_side(one) <= LONGEST_SIDE for one in placed)
    return Shown(long, True) if long > whole else Shown(whole, False)


def _width(one: PlacedRound) -> float:
    return 2 * max(abs(along) for stitch in one.stitches for along in stitch.top) * UNIT


def _side(one: PlacedRound) -> float:
    return 2 * one.radius * math.tan(math.pi / len(one.round.corners)) * UNIT


def draw_round_chart(title: str, rounds: Sequence[ChartRound], terms: Terms, left_handed: bool = False) -> Drawing:
    """The chart with its key below it."""
    part = shown(rounds)
    placed = place_rounds(rounds[: part.rounds])
    items = [item for one in placed for item in _round(one, part.one_side)]
    items += list(_one_side(placed[-1])) if part.one_side else [_ring()]
    if left_handed:
        items = [mirrored(item) for item in items]
    left, _, right, bottom = extent(items)
    whole = [*items, *draw_key(_entries(placed, terms), left, bottom, right)]
    left, top, right, bottom = extent(whole)
    hand = " for left-handed makers" if left_handed else ""
    name = f"Chart of {title}{hand}"
    some = f"rounds 1 to {part.rounds}" if part.rounds > 1 else "round 1"
    side = f", one of its {len(placed[0].round.corners)} sides with the corners at its ends" if part.one_side else ""
    description = f"{name}: {some} from the centre out{side}. The words say the same."
    shift = tuple(moved(item, MARGIN - left, MARGIN - top) for item in whole)
    return Drawing(right - left + 2 * MARGIN, bottom - top + 2 * MARGIN, shift, name, description)


def _round(one: PlacedRound, one_side: bool) -> Iterator[Item]:
    """The signs of a round, or of its first side with the corners at its ends."""
    shared = [stitch.foot for stitch in one.stitches]
    for index, stitch in enumerate(one.stitches):
        if not one_side or _on_first_side(one.round, index):
            yield from round_sign(stitch, shared.count(stitch.foot) > 1, UNIT)
    if one.round.turn:
        yield from chain_sign(one.chain, one.round.turn, UNIT)
    if one.round.joined:
        yield join_sign(one.chain, UNIT)
    x, y = one.number
    yield Label(x * UNIT, -y * UNIT + NUMBER / 3, str(one.round.number), NUMBER, "middle")


def _on_first_side(one: ChartRound, index: int) -> bool:
    """Whether a stitch is on the side where the round begins, or one of those worked at the corners at its ends."""
    first, last = (one.stitches[corner].base for corner in (one.corners[0], one.corners[-1]))
    base = one.stitches[index].base
    at_ends = base is not None and base in (first, last)
    return at_ends or index <= one.corners[0] or index >= one.corners[-1]


def _ring() -> Polygon:
    radius = RING * UNIT
    return Polygon(tuple((radius * math.cos(step * math.pi / 16), radius * math.sin(step * math.pi / 16)) for step in range(32)), 0.3)


def _one_side(outer: PlacedRound) -> Iterator[Item]:
    """A bracket under the side drawn, which is repeated."""
    y = (outer.radius + 0.9) * UNIT
    half = _side(outer) / 2
    yield Polyline(((-half, y - 1.2), (-half, y), (half, y), (half, y - 1.2)), 0.25)
    yield Label(0.0, y + 3.2, f"one of {len(outer.round.corners)} sides", NUMBER, "middle")


def _entries(placed: Sequence[PlacedRound], terms: Terms) -> list[Entry]:
    """The signs used: stitches by height, the slip stitch of the joins and the chains among them, then the ring."""
    upright: Point = (0.0, 0.0)
    signs = [ChartStitch(s.stitch.name, () if s.stitch.chains else (upright,), (0.0, 1.0), (), s.stitch.hold) for one in placed for s in one.stitches]
    signs += [ChartStitch("ch", (), upright, ()) for one in placed if one.round.turn]
    signs += [ChartStitch("sl st", (upright,), upright, ()) for one in placed if one.round.joined]
    return [*key_entries(signs, terms, UNIT), ((_ring(),), "ring")]
