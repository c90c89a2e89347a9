"""Circular yokes of all sizes: one number of increase rounds, spread and staggered, and what is wrong where they can't be.

In: the designed section, stitches at the neck and rounds of each size. Out: plans of one structure.
"""

from collections.abc import Iterator

from gaugewright.design.model import Fabric, RoundYoke
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.counts import CountRule, allows, count_for, spacing
from gaugewright.gauge.model import Gauge
from gaugewright.grading.allowed import Asked, allowed_count, of_parity
from gaugewright.grading.cloth import Cloth
from gaugewright.grading.divide_start import Division
from gaugewright.grading.gather import gather
from gaugewright.grading.raglan import FEWEST
from gaugewright.grading.round_yoke import RoundYokePlan, even_rows, fewest_rounds, is_gentle, rounds_over, rows_at, stage_counts, widened_share
from gaugewright.grading.spread import SpreadImpossible, spreads_of
from gaugewright.grading.yokes import checked
from gaugewright.rounding import half_up
from gaugewright.sized import Sized
from gaugewright.sizing.environment import Environment
from gaugewright.vocabulary import Spreading


def division_of(section: RoundYoke, fabric: Fabric, env: Environment) -> Division:
    """Body and sleeves nearest to their girths; where the fabric has a multiple, so that the whole yoke fits it.

    Each underarm's stitches are shared: the yoke ends with those of the body and both sleeves less four
    underarms. Back and front are alike, so the yoke's last count is even; the neck may have any. A sleeve has the
    parity that the fabric asks for, so that pairs of decreases can narrow it.
    """
    gauge = fabric.gauge
    body, sleeve, chained = (gauge.stitches_in(env.length(f)) for f in section.formulas)
    parity = CountRule(parity=fabric.rule.parity)
    half, arm, under = half_up(body / 2), count_for(sleeve, parity), max(FEWEST, half_up(chained))
    checked(Division(half - under, arm - under, under), section, gauge, env.size)
    asked = Asked("the yoke ends with", section.origin, env.size)
    sides = allowed_count(2 * (half + arm - 2 * under), of_parity(fabric.rule, 0), asked) // 2 + 2 * under
    reach = range(-spacing(fabric.rule), spacing(fabric.rule) + 1)
    halves = [half + step for step in reach if sides > half + step and allows(parity, sides - half - step)]
    _, half = min((abs(2 * h - body) + 2 * abs(sides - h - sleeve), h) for h in halves)
    return checked(Division(half - under, sides - half - under, under), section, gauge, env.size)


def round_yoke_plans(
    section: RoundYoke, cloth: Cloth, fabric: Fabric, necks: Sized[int], rows: Sized[int], envs: Sized[Environment], lead: int, habit: Spreading,
    centred: bool,
) -> Sized[RoundYokePlan]:
    """A plan for each size; all have as many increase rounds as the one that needs most."""
    divisions = gather(necks.labels, lambda label: division_of(section, fabric, envs[label]))
    needed = gather(necks.labels, lambda label: _fewest(section, fabric, necks[label], divisions[label].total, label))
    shares = gather(necks.labels, lambda label: _share(fabric.gauge, necks[label], divisions[label].total, rows[label]))
    rounds = _rounds(section, needed, [fabric.gauge.height_of(share * count) for share, count in zip(shares, rows, strict=True)])

    def one(label: str) -> RoundYokePlan:
        neck, division = necks[label], divisions[label]
        problems = list(_faults(section, fabric, neck, division.total, rounds, needed[label], rows[label], lead, shares[label], label))
        if problems:
            raise ProblemsFound(problems)
        stages = stage_counts(neck, division.total, rounds, fabric.rule)
        falls = dict(zip(_falls(section, rows[label], lead, rounds, shares[label]), stages, strict=True))
        counts, reached = [], neck
        for row in range(1, rows[label] + 1):
            reached = falls.get(row, reached)
            counts.append(reached)
        return RoundYokePlan(cloth, section.colour, rows[label], neck, division, tuple(spreads_of((neck, *counts), 0, habit)), tuple(counts), centred)

    return gather(necks.labels, one)


def _share(gauge: Gauge, neck: int, end: int, rows: int) -> float:
    """The share of its depth over which a yoke of so many rounds widens at even intervals."""
    return widened_share(gauge.width_of(end - neck), gauge.height_of(rows))


def _rounds(section: RoundYoke, needed: Sized[int], widened: list[float]) -> int:
    """How many increase rounds all sizes have: as stated, or enough for the widest and for the deepest yoke."""
    if section.at is not None:
        return len(section.at)
    return section.increases or max(*needed.values, *map(rounds_over, widened))


def _falls(section: RoundYoke, rows: int, lead: int, rounds: int, share: float) -> tuple[int, ...]:
    """The rounds of the section that increase."""
    return even_rows(rows, lead, rounds, share) if section.at is None else rows_at(rows, lead, section.at)


def _fewest(section: RoundYoke, fabric: Fabric, neck: int, end: int, size: str) -> int:
    """The fewest increase rounds from the neck to the end; a located problem where the yoke doesn't widen."""
    found = fewest_rounds(neck, end, fabric.rule)
    if found is None:
        least, widest = fabric.gauge.width_of(neck + spacing(fabric.rule)) / 10, fabric.gauge.width_of(end - spacing(fabric.rule)) / 10
        message = f"the yoke has {neck} stitches at the neck and {end} below the arms, and it only widens downwards"
        hint = f"make the neck at most {widest:.1f} cm, or body and sleeves together, without the underarms, more than {least:.1f} cm"
        raise ProblemsFound([Problem("yoke-does-not-meet", message, section.origin, hint, size)])
    return found


def _faults(
    section: RoundYoke, fabric: Fabric, neck: int, end: int, rounds: int, needed: int, rows: int, lead: int, share: float, size: str
) -> Iterator[Problem]:
    """Too few increase rounds for the widening, or more of them than the depth has room for."""
    gentle, gauge = _gentle(neck, end, rounds, fabric), fabric.gauge
    if not gentle:
        message = f"{rounds} increase rounds can't lead from {neck} to {end} stitches with at most one increase in two stitches each"
        fits = f"`increases: {needed}`" if section.at is None else f"{needed} shares under `at`"
        wider = gauge.width_of(next(count for count in range(neck, end, spacing(fabric.rule)) if _gentle(count, end, rounds, fabric))) / 10
        hint = f"write {fits}, or make the neck at least {wider:.1f} cm" if needed > rounds else f"write {fits}"
        yield Problem("yoke-does-not-meet", message, section.origin, hint, size)
    elif _falls(section, rows, lead, rounds, share)[-1] > rows:
        deep = next(count for count in range(rows, rows + lead + rounds + 1) if _falls(section, count, lead, rounds, share)[-1] <= count)
        message = f"the yoke needs {rounds} increase rounds, and it is {rows} rounds deep{', the first of them worked even' if lead else ''}"
        hint = f"make it at least {gauge.height_of(deep) / 10:.1f} cm deep ({deep} rounds), or the neck wider"
        yield Problem("yoke-does-not-meet", message, section.origin, hint, size)


def _gentle(neck: int, end: int, rounds: int, fabric: Fabric) -> bool:
    try:
        return is_gentle(neck, stage_counts(neck, end, rounds, fabric.rule))
    except SpreadImpossible:
        return False
