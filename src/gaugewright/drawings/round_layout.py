"""Where the stitches of a disc's or a motif's rounds stand: each with its foot on the round before and its top.

In: rounds as they are worked. Out: placed rounds in units of a stitch, x to the right and y up, the centre at the
origin, counterclockwise as right-handed makers see the right side. A disc's round is a circle, a motif's a polygon;
a spiral climbs as it goes. The rounds begin below the centre, those of a motif in its lowest side.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from gaugewright.drawings.chart_layout import HEIGHTS, Point
from gaugewright.drawings.geometry import direction, moved
from gaugewright.drawings.round_rows import ChartRound, RoundStitch

RING = 0.55
"""Radius of the ring."""
CLEAR = 0.4
"""What a round is further out than its stitches are high, so that signs of two rounds don't touch."""
GAP, CHAIN_GAP, NUMBER_GAP = 0.95, 0.65, 1.1
"""Least room along a round for a stitch, for a chain, and for the number beside its beginning."""
FOOT, DOT_FOOT, CORNER_FOOT = 0.16, 0.3, 0.3
"""How far above a stitch, a slip stitch, or the chains of a corner the feet of what is worked into it stand."""
NUMBER_IN = 0.6
"""How far inside a round's head its number stands."""
INSIDE = 0.3
"""How far inside the corner's point its chains lie, where there are several."""


@dataclass(frozen=True, slots=True)
class PlacedStitch:
    """A stitch with its foot and its top; `up` is the direction away from the centre there."""

    stitch: RoundStitch
    foot: Point
    top: Point
    up: Point


@dataclass(frozen=True, slots=True)
class PlacedRound:
    """One round: its stitches in order of working; the foot and head of the chain it opens with, at whose head it is
    joined too; where its number stands; how far out it lies, a spiral where it begins."""

    round: ChartRound
    stitches: tuple[PlacedStitch, ...]
    chain: tuple[Point, Point]
    number: Point
    radius: float


@dataclass(frozen=True, slots=True)
class _Outline:
    """A circle, or a polygon of so many sides, at a distance from the centre; places on it run from 0 to 1 from the
    bottom, counterclockwise, or from where a circle `begins`; in a polygon from the corner at the left of its lowest
    side. A spiral is `climb` further out at 1 than at 0."""

    sides: int
    out: float
    climb: float = 0.0
    begins: float = 0.0

    def at(self, place: float) -> Point:
        if not self.sides:
            angle = 2 * math.pi * (place + self.begins) - math.pi / 2
            out = self.out + self.climb * place
            return out * math.cos(angle), out * math.sin(angle)
        side, within = divmod(place * self.sides, 1.0)
        start, end = self._corner(side), self._corner(side + 1)
        return start[0] + (end[0] - start[0]) * within, start[1] + (end[1] - start[1]) * within

    def up(self, place: float) -> Point:
        if not self.sides:
            return direction((0.0, 0.0), self.at(place))
        side = math.floor(place * self.sides + 1e-9)
        if abs(place * self.sides - side) < 1e-6:
            return direction((0.0, 0.0), self._corner(side))
        angle = 2 * math.pi * side / self.sides - math.pi / 2
        return math.cos(angle), math.sin(angle)

    def _corner(self, number: float) -> Point:
        angle = math.pi * (2 * number - 1) / self.sides - math.pi / 2
        out = self.out / math.cos(math.pi / self.sides)
        return out * math.cos(angle), out * math.sin(angle)

    @property
    def around(self) -> float:
        return self.out * (2 * self.sides * math.tan(math.pi / self.sides) if self.sides else 2 * math.pi)


def place_rounds(rounds: Sequence[ChartRound]) -> tuple[PlacedRound, ...]:
    """Every round with its stitches in their places."""
    found: list[PlacedRound] = []
    for one in rounds:
        found.append(_placed(one, found[-1] if found else None))
    return tuple(found)


def _placed(one: ChartRound, below: PlacedRound | None) -> PlacedRound:
    """A round as far out as its stitches are high, or further where they need more room along it."""
    sides = len(one.corners)
    step = max(HEIGHTS[stitch.name] for stitch in one.stitches if not stitch.chains) + CLEAR
    foot = below.radius if below else RING
    slots = _slots(one)
    needed = max(sum(room for _, room in side) for side in slots) * len(slots)
    out = max(foot + step, needed / _Outline(sides, 1.0).around)
    outline = _Outline(sides, out, 0.0 if one.joined else step, _beginning(one, below))
    places = _places(slots)
    order = range(len(one.stitches) - 1, -1, -1) if one.backward else range(len(one.stitches))
    stitches = tuple(_stand(stitch, outline, places[index], below) for stitch, index in zip(one.stitches, order, strict=True))
    seam = places[SEAM]
    turned, share = (-1 if one.backward else 1), 0.5 / max(sum(room for _, room in side) for side in slots) / len(slots)
    chain = seam + NUMBER_GAP * share * turned if one.joined else seam
    number = seam - GAP * share * turned if one.joined else seam
    top, beside = outline.at(chain), outline.at(number)
    up, inwards = (outline.up(chain), outline.up(number)) if below else (direction((0.0, 0.0), top), direction((0.0, 0.0), beside))
    column = moved((0.0, 0.0), up, RING + CLEAR) if below is None else moved(top, up, foot - out + CLEAR)
    return PlacedRound(one, stitches, (column, top), moved(beside, inwards, -NUMBER_IN), out)


def _beginning(one: ChartRound, below: PlacedRound | None) -> float:
    """Where on a circle a round begins: at its bottom; where rounds are turned, beside the first stitch of the round
    before, into which its own first stitch goes, on that stitch's other side."""
    if below is None or one.corners or not (one.backward or below.round.backward):
        return 0.0
    first, second = (below.stitches[place].up for place in (0, 1))
    x, y = first[0] + second[0], first[1] + second[1]
    return math.atan2(x, -y) / (2 * math.pi)


SEAM = -1
"""The key of the place where a round begins."""

Slot = tuple[int, float]
"""A stitch by its place counterclockwise (or `SEAM`), and the room it takes along the outline."""


def _slots(one: ChartRound) -> list[list[Slot]]:
    """The slots along each side, counterclockwise, the beginning in the first. A corner's middle has half its room on
    each of its two sides; a circle is one side from the beginning round to it."""
    stitches = one.stitches[::-1] if one.backward else one.stitches
    last = len(stitches) - 1
    corners = sorted(last - place for place in one.corners) if one.backward else list(one.corners)
    seam = (SEAM, NUMBER_GAP + (GAP if one.joined else 0.0))
    slots = [(index, _room(stitch)) for index, stitch in enumerate(stitches)]
    if not corners:
        return [[(SEAM, seam[1] / 2), *slots, (SEAM, seam[1] / 2)]]
    halves = {corner: (corner, _room(stitches[corner]) / 2) for corner in corners}
    begun = [halves[corners[-1]], *slots[corners[-1] + 1 :], seam, *slots[: corners[0]], halves[corners[0]]]
    return [begun, *([halves[low], *slots[low + 1 : high], halves[high]] for low, high in zip(corners, corners[1:], strict=False))]


def _room(stitch: RoundStitch) -> float:
    return max(GAP, CHAIN_GAP * stitch.chains) if stitch.chains else GAP


def _places(slots: Sequence[Sequence[Slot]]) -> dict[int, float]:
    """The middle of each slot on the outline; halves at the ends of sides stand at those ends."""
    found: dict[int, float] = {}
    for number, side in enumerate(slots):
        total, at = sum(room for _, room in side), 0.0
        for index, (key, room) in enumerate(side):
            within = 0.0 if index == 0 else 1.0 if index == len(side) - 1 else (at + room / 2) / total
            found.setdefault(key, (number + within) / len(slots))
            at += room
    return found


def _stand(stitch: RoundStitch, outline: _Outline, place: float, below: PlacedRound | None) -> PlacedStitch:
    top, up = outline.at(place), outline.up(place)
    if below is None or stitch.base is None:
        return PlacedStitch(stitch, moved((0.0, 0.0), direction((0.0, 0.0), top), RING + FOOT), top, up)
    ground = below.stitches[stitch.base]
    if ground.stitch.chains:
        return PlacedStitch(stitch, moved(ground.top, ground.up, CORNER_FOOT - (INSIDE if ground.stitch.chains > 1 else 0.0)), top, up)
    return PlacedStitch(stitch, moved(ground.top, ground.up, DOT_FOOT if ground.stitch.name == "sl st" else FOOT), top, up)
