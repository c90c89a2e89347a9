"""Raglans of all sizes: counts, schedules that meet at the same round, and what is wrong where they can't.

In: the designed section, stitches at the neck and rounds of each size. Out: plans of one structure.
"""

from collections.abc import Iterator, Sequence

from gaugewright.design.raglans import Raglan
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.cloth import Cloth
from gaugewright.grading.gather import gather
from gaugewright.grading.raglan import FEWEST, SLEEVE_SHARE, RaglanCounts, raglan_counts
from gaugewright.grading.raglan_rows import RaglanPlan
from gaugewright.grading.schedule import schedule_sizes, schedules_by
from gaugewright.grading.yokes import checked
from gaugewright.sized import Sized
from gaugewright.sizing.environment import Environment
from gaugewright.vocabulary import Schedules


def counts_of(section: Raglan, neck: int, gauge: Gauge, env: Environment) -> RaglanCounts:
    """The counts of one size; a located problem where a part has no stitches left."""
    body, sleeve, underarm = (gauge.stitches_in(env.length(f)) for f in (section.body, section.sleeve, section.underarm))
    share = neck * SLEEVE_SHARE if section.neck_sleeve is None else gauge.stitches_in(env.length(section.neck_sleeve))
    if neck % 2:
        message = f"the raglan begins with {neck} stitches: back and front are alike, and so are the sleeves, which takes an even number"
        raise _unmet(section, message, f"let the section above it end with {neck - 1} or {neck + 1} stitches", env.size)
    counts = raglan_counts(neck, body, sleeve, underarm, share)
    checked(counts.division, section, gauge, env.size)
    if counts.neck.body < FEWEST:
        message = f"each sleeve takes {counts.neck.sleeve} of {neck} stitches at the neck, which leaves no back and front"
        raise _unmet(section, message, f"make the neck wider than {gauge.width_of(2 * counts.neck.sleeve + 4) / 10:.1f} cm, or give the sleeves less of it with `neck_sleeve`", env.size)
    return counts


def _unmet(section: Raglan, message: str, hint: str, size: str) -> ProblemsFound:
    return ProblemsFound([Problem("raglan-does-not-meet", message, section.origin, hint, size)])


def raglan_plans(
    section: Raglan, cloth: Cloth, gauge: Gauge, necks: Sized[int], rows: Sized[int], envs: Sized[Environment], lead: int, habit: Schedules,
    centred: bool,
) -> Sized[RaglanPlan]:
    """A plan for each size; body and sleeves have their own schedules over the same rounds."""

    def counted(label: str) -> RaglanCounts:
        counts = counts_of(section, necks[label], gauge, envs[label])
        if centred and counts.neck.body <= FEWEST:
            message = f"the back has {counts.neck.body} stitches at the neck, and rounds that are turned begin in its middle"
            raise _unmet(section, message, f"make the neck at least {gauge.width_of(necks[label] + 2) / 10:.1f} cm wide, or `neck_sleeve` smaller", label)
        problems = list(_faults(section, counts, rows[label] - lead, lead, gauge, label))
        if problems:
            raise ProblemsFound(problems)
        return counts

    counts = gather(necks.labels, counted)
    body, sleeve = increase_rounds([(c.body_increases, c.sleeve_increases, r - lead) for c, r in zip(counts, rows, strict=True)], habit)

    def one(label: str) -> RaglanPlan:
        place = counts.labels.index(label)
        bodies, sleeves = (tuple(lead + row for row in part[place]) for part in (body, sleeve))
        return RaglanPlan(cloth, section.colour, rows[label], counts[label], bodies, sleeves, lead, centred)

    return gather(counts.labels, one)


Rounds = tuple[int, ...]


def increase_rounds(sizes: Sequence[tuple[int, int, int]], habit: Schedules = "straightest") -> tuple[tuple[Rounds, ...], tuple[Rounds, ...]]:
    """The rounds of a raglan, from 1, on which the body and the sleeves increase, of each size.

    `sizes` are increases of the body, increases of the sleeves, and rounds. Whichever increases more
    often is spread over the rounds, the other over its increase rounds, so that they increase together
    where they can; both meet on the last round.

    >>> increase_rounds([(5, 3, 9)])
    (((1, 3, 5, 7, 9),), ((1, 5, 9),))
    >>> increase_rounds([(2, 4, 7)])
    (((3, 7),), ((1, 3, 5, 7),))
    >>> increase_rounds([(5, 3, 11)], "shorter gap first")
    (((2, 4, 6, 8, 11),), ((2, 6, 11),))
    """
    often = [max(body, sleeve) for body, sleeve, _ in sizes]
    seldom = [min(body, sleeve) for body, sleeve, _ in sizes]
    all_rounds = _to_last(often, [rounds for _, _, rounds in sizes], habit)
    some = _to_last(seldom, often, habit)
    fewer = [tuple(rows[place - 1] for place in places) for rows, places in zip(all_rounds, some, strict=True)]
    bodies = tuple(a if body >= sleeve else b for (body, sleeve, _), a, b in zip(sizes, all_rounds, fewer, strict=True))
    sleeves = tuple(b if body >= sleeve else a for (body, sleeve, _), a, b in zip(sizes, all_rounds, fewer, strict=True))
    return bodies, sleeves


def _to_last(changes: Sequence[int], rounds: Sequence[int], habit: Schedules) -> list[Rounds]:
    """A schedule of each size, the last change on the last round: counted back from it unless every change comes after a gap."""
    if habit != "straightest":
        return [made.positions() for made in schedules_by(habit, tuple(zip(changes, rounds, strict=True)))]
    schedules = schedule_sizes(tuple(zip(changes, rounds, strict=True)), first="on first row", per_change=2)
    return [
        tuple(count + 1 - position for position in reversed(schedule.positions()))
        for count, schedule in zip(rounds, schedules, strict=True)
    ]


def _faults(section: Raglan, counts: RaglanCounts, rounds: int, lead: int, gauge: Gauge, size: str) -> Iterator[Problem]:
    """A part that can't get from the neck to the underarm: it would have to shrink, or grow faster than a raglan does."""
    parts = (
        ("the back", counts.neck.body, counts.end.body, counts.body_increases, 2 * (counts.neck.body + counts.underarm), 4, "body"),
        ("each sleeve", counts.neck.sleeve, counts.end.sleeve, counts.sleeve_increases, counts.neck.sleeve + counts.underarm, 2, "sleeve"),
    )
    for name, neck, end, needed, least, each, key in parts:
        origin = section.body.origin if key == "body" else section.sleeve.origin
        if needed < 0:
            message = f"{name} has {neck} stitches at the neck and {end} at the underarm, and a raglan only widens downwards"
            hint = f"make `{key}` at least {gauge.width_of(least) / 10:.1f} cm, the underarm smaller, or the neck narrower"
            yield Problem("raglan-does-not-meet", message, origin, hint, size)
        elif needed > rounds:
            message = f"{name} needs {needed} increase rounds to get from {neck} to {end} stitches, and there are {max(rounds, 0)}"
            deep, wide = gauge.height_of(needed + lead), gauge.width_of(least + each * max(rounds, 0))
            hint = f"make the raglan at least {deep / 10:.1f} cm deep ({needed + lead} rounds), or `{key}` at most {wide / 10:.1f} cm"
            yield Problem("raglan-does-not-meet", message, origin, hint, size)
