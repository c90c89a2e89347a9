"""The round that divides a yoke, as it is worked: the body's first, and each sleeve's."""

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.divide_start import DivideStart
from gaugewright.grading.model import Run, chain, pick_up, skip, work
from gaugewright.grading.runs import Runs, opening


def dividing_round(start: DivideStart, cloth: Cloth, colour: str) -> Runs:
    """Round 1 of the body, which skips the sleeves, or of a sleeve, which works into the chain under the arm."""
    plain = work(cloth.stitch, cloth.loop)
    yield from opening(cloth, colour)
    if start.part == "body":
        first, last = start.back_parts
        for stitches in (first, start.back):
            yield Run(plain, stitches, colour, cloth.fabric)
            yield Run(skip(), start.sleeve, colour, cloth.fabric)
            yield Run(chain(), start.underarm, colour, cloth.fabric)
        yield Run(plain, last, colour, cloth.fabric)
        return
    before, after = start.halves
    yield Run(pick_up(cloth.stitch), before, colour, cloth.fabric)
    yield Run(plain, start.sleeve, colour, cloth.fabric)
    yield Run(pick_up(cloth.stitch), after, colour, cloth.fabric)
