"""Sizes that never fall: what falls, and which size is a row off its length so that nothing does."""

import math
from collections.abc import Mapping

from gaugewright.checks.model import Measured, Subject
from gaugewright.checks.terms import fabrics_of, terms_of
from gaugewright.checks.wording import cm
from gaugewright.design.model import Piece
from gaugewright.grading.plan import TaperPlan
from gaugewright.rounding import half_up
from gaugewright.sized import Sized, join
from gaugewright.tolerances import SAME_LENGTH

Falls = list[tuple[str, str]]


def falls_of(lengths: Sized[float]) -> Falls:
    """Neighbouring sizes of which the larger is smaller.

    >>> falls_of(Sized(("S", "M", "L"), (40.0, 39.0, 41.0)))
    [('S', 'M')]
    """
    pairs = list(lengths.items())
    return [(before, after) for (before, was), (after, now) in zip(pairs, pairs[1:], strict=False) if now < was - SAME_LENGTH]


def moved_to_rise(reach: Sized[float], off: Mapping[str, float], row: float) -> tuple[str, ...]:
    """Sizes more than half a row off that would fall, or make the next one fall, if put a row nearer.

    >>> reach, off = Sized(("S", "M"), (829.0, 834.0)), {"S": -9.0, "M": -4.0}
    >>> moved_to_rise(reach, off, row=14.0), moved_to_rise(reach, {"S": 9.0, "M": -4.0}, row=14.0)
    (('S',), ())
    """
    found = []
    for size in reach.labels:
        if row / 2 < abs(off[size]) <= 1.5 * row + SAME_LENGTH:
            back = Sized(reach.labels, tuple(value - math.copysign(row, off[size]) * (label == size) for label, value in reach.items()))
            if any(size in pair for pair in falls_of(back)):
                found.append(size)
    return tuple(found)


def row_of(piece: Piece, subject: Subject) -> float:
    """Height of a piece's tallest rows, mm."""
    return max(subject.design.fabric(key).gauge.row_height for key in fabrics_of(piece))


def lengthened(one: Measured, subject: Subject) -> Piece | None:
    """The piece whose rows alone set how far a measurement reaches, if there is one such."""
    along = [term for term in terms_of(one.measure.measure, subject.design) if not term.is_edge and term.name == "length"]
    return subject.design.piece(along[0].piece) if len(along) == 1 and along[0].factor == 1 else None


def rising_hint(one: Measured, subject: Subject, falls: Falls) -> str:
    """What keeps the measurement from falling.

    Where a fall is only that of rounding to whole rows, all sizes made a little longer or shorter
    round another way; the least such change is looked for. Shaping in pairs keeps a count odd or
    even, so that sizes of unlike parity round apart.
    """
    piece = lengthened(one, subject)
    if one.wanted is not None and piece is not None:
        row = row_of(piece, subject)
        changes = sorted(range(-int(row / 2), int(row / 2) + 1), key=lambda mm: (abs(mm), mm))
        change = next((mm for mm in changes if mm and not falls_of(_rounded_anew(one, one.wanted, mm, row))), 0)
        if change:
            word = "longer" if change > 0 else "shorter"
            return f"make {piece.key} {cm(abs(change))} {word} in all sizes, and `wanted` here alike: the sizes then round to rising rows"
    for term in terms_of(one.measure.measure, subject.design):
        plans = subject.grading.plans[term.piece][falls[0][0]].sections
        for designed, plan in zip(subject.design.piece(term.piece).sections, plans, strict=True):
            if isinstance(plan, TaperPlan) and plan.edge_count == 2 and subject.design.fabric(designed.fabric).rule.parity == "any":
                return (
                    f"give the fabric {designed.fabric} `parity: even`: shaped at two places at once a count stays odd or even, "
                    "and so all sizes round alike"
                )
    before, after = falls[0]
    return f"make {after} larger by {cm(one.actual[before] - one.actual[after])} than its formula does, or leave {before} or {after} out"


def _rounded_anew(one: Measured, wanted: Sized[float], change: float, row: float) -> Sized[float]:
    """The measurement in all sizes once its wanted length is changed: it moves by whole rows."""
    def anew(actual: float, aim: float) -> float:
        return actual + half_up((aim + change - actual) / row) * row

    return join(anew, one.actual, wanted)
