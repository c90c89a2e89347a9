"""The search behind a worked curve: every few phrases that keep within a band about the curve.

First the least band that some phrases keep to, then, of those that keep to it, the ones that lie nearest
all along. States are (row, stitches gone) after a phrase; only those within the band are ever reached.
"""

import math
from collections.abc import Iterator

from gaugewright.tolerances import STRAY_STITCHES, UNSEEN_STITCHES

Steps = tuple[int, int, int]
"""Stitches, every so many rows, times."""

State = tuple[int, int]
Move = tuple[Steps, State, float, float]
"""A phrase, where it ends, and how far it strayed: at most, and the squares of all its rows together."""

HAIR = 1e-9

WIDENING = 1.25
"""A band in which nothing fits is soon searched; one twice too wide takes four times as long."""


def fewest_phrases(
    targets: tuple[float, ...], stitches: int, limit: int, most_phrases: int
) -> tuple[tuple[Steps, ...], float] | None:
    """The phrases and their largest distance from `targets` (stitches gone after each row, from row 0).

    A phrase less may cost half a stitch, but not take the edge further than a stitch from its line.
    """
    if not stitches:
        return (), max(map(abs, targets))
    band, furthest = UNSEEN_STITCHES, stitches + max(map(abs, targets))
    while True:
        field = _Field(targets, stitches, limit, band)
        best = field.least_by_number(most_phrases)
        nearest = min(best.values(), default=math.inf)
        enough = max(nearest, min(nearest + UNSEEN_STITCHES, STRAY_STITCHES))
        if enough <= band:
            number = min(number for number, worst in best.items() if worst <= enough)
            return field.smoothest(number, best[number] + HAIR), best[number]
        if band > furthest:
            return None
        band = enough if best else WIDENING * band


class _Field:
    """What may be worked within one band: each state's moves are found once, for every number of phrases."""

    def __init__(self, targets: tuple[float, ...], stitches: int, limit: int, band: float) -> None:
        self.targets, self.stitches, self.limit, self.band = targets, stitches, limit, band
        self.tails = [0.0] * len(targets)
        self.rest = [0.0] * len(targets)
        for row in range(len(targets) - 2, -1, -1):
            off = abs(stitches - targets[row + 1])
            self.tails[row] = max(self.tails[row + 1], off)
            self.rest[row] = self.rest[row + 1] + off * off
        self.known: dict[State, list[Move]] = {}

    def moves(self, state: State) -> list[Move]:
        """Every phrase that may follow."""
        if state not in self.known:
            self.known[state] = list(self._moves(*state))
        return self.known[state]

    def least_by_number(self, most: int) -> dict[int, float]:
        """The least largest distance for each number of phrases that keeps within the band."""
        layer: dict[State, float] = {(0, 0): 0.0}
        best: dict[int, float] = {}
        for number in range(1, most + 1):
            reached: dict[State, float] = {}
            for state, before in layer.items():
                for _, end, strayed, _ in self.moves(state):
                    worst = before if before > strayed else strayed
                    if end not in reached or worst < reached[end]:
                        reached[end] = worst
            ends = [max(worst, self.tails[row]) for (row, gone), worst in reached.items() if gone == self.stitches]
            if min(ends, default=math.inf) <= self.band:
                best[number] = min(ends)
            layer = reached
        return best

    def smoothest(self, number: int, within: float) -> tuple[Steps, ...]:
        """Of all so many phrases that stray no further, those with the least sum of squared distances."""
        layer: dict[State, tuple[float, tuple[Steps, ...]]] = {(0, 0): (0.0, ())}
        for _ in range(number):
            reached: dict[State, tuple[float, tuple[Steps, ...]]] = {}
            for state, (before, phrases) in layer.items():
                for phrase, end, strayed, squares in self.moves(state):
                    if strayed <= within and (end not in reached or before + squares < reached[end][0]):
                        reached[end] = (before + squares, (*phrases, phrase))
            layer = reached
        return min(
            (squares + self.rest[row], phrases)
            for (row, gone), (squares, phrases) in layer.items()
            if gone == self.stitches and self.tails[row] <= within
        )[1]

    def _moves(self, row: int, gone: int) -> Iterator[Move]:
        worst = squares = 0.0
        for every in range(1, len(self.targets) - row):
            target = self.targets[row + every]
            low = max(gone + 1, math.ceil(target - self.band))
            for landed in range(low, min(self.stitches, gone + self.limit, math.floor(target + self.band)) + 1):
                off = abs(landed - target)
                first = ((landed - gone, every, 1), (row + every, landed), max(worst, off), squares + off * off)
                yield first
                yield from self._repeats(first)
            off = abs(gone - target)
            if off > self.band:
                return
            worst, squares = max(worst, off), squares + off * off

    def _repeats(self, first: Move) -> Iterator[Move]:
        """The same step again and again, as long as it keeps within the band."""
        (step, every, times), (row, gone), worst, squares = first
        while row + every < len(self.targets) and gone + step <= self.stitches:
            for between in range(1, every + 1):
                off = abs(gone + step * (between == every) - self.targets[row + between])
                if off > self.band:
                    return
                worst, squares = max(worst, off), squares + off * off
            row, gone, times = row + every, gone + step, times + 1
            yield (step, every, times), (row, gone), worst, squares
