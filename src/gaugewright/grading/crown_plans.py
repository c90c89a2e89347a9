"""Crowns of all sizes: counts after each round, and where in it the changes stand."""

from gaugewright.design.model import Crown
from gaugewright.grading.crowns import crown_counts
from gaugewright.grading.measure import Measured
from gaugewright.grading.plan import Cloth, SpreadPlan
from gaugewright.grading.spread import spreads_of
from gaugewright.grading.taper_plans import common_sign
from gaugewright.sized import Sized


def crown_plans(section: Crown, cloth: Cloth, each: int, index: int, measured: Sized[Measured]) -> Sized[SpreadPlan]:
    """A plan for each size; `each` round changes so many stitches."""
    sign = common_sign(section, cloth, index, measured)

    def one(m: Measured) -> SpreadPlan:
        start, end = m.before(index), m.ends[index]
        changed = crown_counts(start, end, each)
        counts = (start,) * (m.rows[index] - len(changed)) + changed
        return SpreadPlan(cloth, section.colour, m.rows[index], start, sign, tuple(spreads_of((start, *counts), 0)), counts)

    return measured.map(one)
