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
Move = tuple[Steps, State, float]
"""A phrase, where it ends, and how far it strayed at most."""

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
    """What may be worked within one band: each state's moves are found once, for every number of phrases.

    Of the last phrase only what takes all that is left is looked for: most states are reached by the phrase
    before it, and few of their many moves end where they must. `targets` never fall, so that of even rows
    the first and the last lie furthest off.
    """

    def __init__(self, targets: tuple[float, ...], stitches: int, limit: int, band: float) -> None:
        self.targets, self.stitches, self.limit, self.band = targets, stitches, limit, band
        self.tails = [0.0] * len(targets)
        self.rest = [0.0] * len(targets)
        for row in range(len(targets) - 2, -1, -1):
            off = abs(stitches - targets[row + 1])
            self.tails[row] = max(self.tails[row + 1], off)
            self.rest[row] = self.rest[row + 1] + off * off
        self.known: dict[State, list[Move]] = {}
        self.last: dict[State, list[Move]] = {}

    def moves(self, state: State, last: bool) -> list[Move]:
        """Every phrase that may follow; of the last one every phrase that takes what is left."""
        known = self.last if last and state not in self.known else self.known
        if state not in known:
            known[state] = list(self._moves(*state, last=last))
        return known[state]

    def least_by_number(self, most: int) -> dict[int, float]:
        """The least largest distance for each number of phrases that keeps within the band."""
        layer: dict[State, float] = {(0, 0): 0.0}
        best: dict[int, float] = {}
        for number in range(1, most + 1):
            reached: dict[State, float] = {}
            for state, before in layer.items():
                for _, end, strayed in self.moves(state, number == most):
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
        useful = self._useful(number, within)
        layer: dict[State, tuple[float, tuple[Steps, ...]]] = {(0, 0): (0.0, ())}
        for phrase_number in range(1, number + 1):
            reached: dict[State, tuple[float, tuple[Steps, ...]]] = {}
            for state, (before, phrases) in layer.items():
                for phrase, end, strayed in self.moves(state, phrase_number == number):
                    if strayed <= within and end in useful[phrase_number]:
                        squares = before + self._squares(state, phrase)
                        if end not in reached or squares < reached[end][0]:
                            reached[end] = (squares, (*phrases, phrase))
            layer = reached
        return min((squares + self.rest[row], phrases) for (row, _), (squares, phrases) in layer.items())[1]

    def _useful(self, number: int, within: float) -> list[set[State]]:
        """The states after each phrase that lie on a way from the start to an end, none of it further off."""
        layers: list[set[State]] = [{(0, 0)}]
        for done in range(1, number + 1):
            layers.append({end for state in layers[-1] for _, end, off in self.moves(state, done == number) if off <= within})
        layers[number] = {(row, gone) for row, gone in layers[number] if gone == self.stitches and self.tails[row] <= within}
        for done in range(number - 1, 0, -1):
            after, last = layers[done + 1], done + 1 == number
            layers[done] = {state for state in layers[done] if any(off <= within and end in after for _, end, off in self.moves(state, last))}
        return layers

    def _squares(self, state: State, phrase: Steps) -> float:
        """The squared distances of a phrase's rows together."""
        (row, gone), (step, every, times), squares = state, phrase, 0.0
        for _ in range(times):
            for between in range(1, every + 1):
                off = abs(gone + step * (between == every) - self.targets[row + between])
                squares += off * off
            row, gone = row + every, gone + step
        return squares

    def _moves(self, row: int, gone: int, last: bool) -> Iterator[Move]:
        worst = 0.0
        for every in range(1, len(self.targets) - row):
            target = self.targets[row + every]
            low = max(gone + 1, math.ceil(target - self.band))
            for landed in range(low, min(self.stitches, gone + self.limit, math.floor(target + self.band)) + 1):
                if last and (self.stitches - gone) % (landed - gone):
                    continue
                first = ((landed - gone, every, 1), (row + every, landed), max(worst, abs(landed - target)))
                yield first
                yield from self._repeats(first)
            off = abs(gone - target)
            if off > self.band:
                return
            worst = max(worst, off)

    def _repeats(self, first: Move) -> Iterator[Move]:
        """The same step again and again, as long as it keeps within the band."""
        (step, every, times), (row, gone), worst = first
        targets, band, end = self.targets, self.band, len(self.targets)
        while row + every < end and gone + step <= self.stitches:
            if every > 1:
                off = max(abs(gone - targets[row + 1]), abs(gone - targets[row + every - 1]))
                worst = off if off > worst else worst
            row, gone, times = row + every, gone + step, times + 1
            off = abs(gone - targets[row])
            worst = off if off > worst else worst
            if worst > band:
                return
            yield (step, every, times), (row, gone), worst
