"""Circular yokes as they are worn: between two rounds of increases the cloth spreads by itself.

By its rows alone a yoke would be a stair of tubes. Worn or laid down, each tube widens from the increases
above it to those below, so that half of what a round adds lies above it and half below.
"""

from dataclasses import replace

from gaugewright.grading.model import GradedPiece, Outline, Point
from gaugewright.grading.plan import PiecePlan, RoundYokePlan
from gaugewright.sized import Sized


def as_spread(plans: Sized[PiecePlan], graded: Sized[GradedPiece]) -> Sized[GradedPiece]:
    """The pieces with the outlines of their circular yokes, if they have any, smoothed."""
    if not isinstance(plans.values[0].sections[-1], RoundYokePlan):
        return graded
    return Sized(graded.labels, tuple(replace(piece, outline=_smoothed(piece.outline, plans[label])) for label, piece in graded.items()))


def _smoothed(outline: Outline, plan: PiecePlan) -> Outline:
    section = plan.sections[-1]
    assert isinstance(section, RoundYokePlan)
    widths = [far[0] - starting[0] for starting, far in zip(outline.starting, outline.far, strict=True)]
    first, last = plan.rows - section.rows, plan.rows
    falls = [first + row for row in section.increase_rows()]
    gap = falls[-1] - (falls[-2] if len(falls) > 1 else first)
    turns = [(first, widths[first]), *((row, (widths[row - 1] + widths[row]) / 2) for row in falls)]
    turns += [(row, widths[last]) for row in dict.fromkeys((min(last, falls[-1] + (gap + 1) // 2), last)) if row > falls[-1]]
    turns[-1] = (turns[-1][0], widths[last])
    for (low, narrow), (high, wide) in zip(turns, turns[1:], strict=False):
        for row in range(low, high + 1):
            widths[row] = narrow + (wide - narrow) * (row - low) / max(1, high - low)
    return replace(outline, starting=_moved(outline.starting, outline.far, widths, -1), far=_moved(outline.far, outline.starting, widths, 1))


def _moved(points: tuple[Point, ...], others: tuple[Point, ...], widths: list[float], side: int) -> tuple[Point, ...]:
    """Row ends moved so that each row is as wide as it lies, its middle where it was."""
    return tuple(((x + other) / 2 + side * width / 2, y) for (x, y), (other, _), width in zip(points, others, widths, strict=True))
