"""Tapers spread round the rounds: counts after each round, and where in it the changes stand."""

from gaugewright.design.model import Taper
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.grading.gather import gather
from gaugewright.grading.measure import Measured, lead_rows
from gaugewright.grading.plan import Cloth, SpreadPlan
from gaugewright.grading.spread import SpreadImpossible, ramp, spreads_of
from gaugewright.grading.taper_plans import common_sign
from gaugewright.sized import Sized
from gaugewright.vocabulary import Spreading


def spread_plans(section: Taper, cloth: Cloth, index: int, measured: Sized[Measured], habit: Spreading) -> Sized[SpreadPlan]:
    """A plan for each size, spread by the pattern's habit; raises located problems where a size has too few rounds."""
    sign, lead = common_sign(section, cloth, index, measured), lead_rows(index)

    def one(label: str) -> SpreadPlan:
        m = measured[label]
        start, rounds = m.before(index), m.rows[index] - lead
        try:
            counts = (start,) * lead + _counts(section, start, m.ends[index], rounds, int(cloth.counts))
            spreads = tuple(spreads_of((start, *counts), int(cloth.counts), habit))
        except SpreadImpossible:
            raise ProblemsFound([_too_steep(section, start, m.ends[index], rounds, label)]) from None
        return SpreadPlan(cloth, section.colour, m.rows[index], start, sign, spreads, counts)

    return gather(measured.labels, one)


def _counts(section: Taper, start: int, end: int, rounds: int, chain: int) -> tuple[int, ...]:
    """Counts after each shaping round: so many each, the last round taking the rest, or a ramp.

    A turning chain that counts is a stitch that nothing is worked into twice: the ramp leaves it out.
    """
    if section.each is None:
        if start == end:
            return (end,) * rounds
        if min(start, end) <= chain:
            raise SpreadImpossible(start, end, rounds)
        return tuple(count + chain for count in ramp(start - chain, end - chain, rounds))
    step, sign = abs(section.each), 1 if end >= start else -1
    return tuple(start + sign * min(step * done, abs(end - start)) for done in range(1, rounds + 1))


def _too_steep(section: Taper, start: int, end: int, rounds: int, label: str) -> Problem:
    message = f"{start} stitches can't become {end} in {rounds} shaping rounds: one round at most doubles or halves them"
    needed = next(number for number in range(1, 99) if -(-start // 2**number) <= end <= start * 2**number)
    hint = f"give it at least {needed} shaping rounds, or a nearer target" if section.each is None else f"write `each: {start // 2 if end < start else start}` or less"
    return Problem("taper-too-steep", message, section.origin, hint, label)
