"""Raglans of all sizes: counts, schedules that meet at the same round, and what is wrong where they can't.

In: the designed section, stitches at the neck and rounds of each size. Out: plans of one structure.
"""

from collections.abc import Iterator, Sequence

from gaugewright.design.model import Design, Piece
from gaugewright.design.raglans import Raglan
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.cloth import Cloth
from gaugewright.grading.divide_start import DivideStart, Part
from gaugewright.grading.gather import gather
from gaugewright.grading.model import EdgeLength
from gaugewright.grading.raglan import FEWEST, SLEEVE_SHARE, RaglanCounts, raglan_counts
from gaugewright.grading.raglan_rows import RaglanPlan
from gaugewright.grading.schedule import schedule_sizes, schedules_by
from gaugewright.sized import Sized
from gaugewright.sizing.environment import Environment
from gaugewright.vocabulary import Schedules

PARTS: tuple[Part, ...] = ("body", "sleeve")


def counts_of(section: Raglan, neck: int, gauge: Gauge, env: Environment) -> RaglanCounts:
    """The counts of one size; a located problem where a part has no stitches left."""
    body, sleeve, underarm = (gauge.stitches_in(env.length(f)) for f in (section.body, section.sleeve, section.underarm))
    share = neck * SLEEVE_SHARE if section.neck_sleeve is None else gauge.stitches_in(env.length(section.neck_sleeve))
    counts = raglan_counts(neck, body, sleeve, underarm, share)
    if counts.neck.body < FEWEST:
        message = f"each sleeve takes {counts.neck.sleeve} of {neck} stitches at the neck, which leaves no back and front"
        raise _unmet(section, message, f"make the neck wider than {gauge.width_of(2 * counts.neck.sleeve + 4) / 10:.1f} cm, or give the sleeves less of it with `neck_sleeve`", env.size)
    return counts


def _unmet(section: Raglan, message: str, hint: str, size: str) -> ProblemsFound:
    return ProblemsFound([Problem("raglan-does-not-meet", message, section.origin, hint, size)])


def raglan_plans(
    section: Raglan, cloth: Cloth, gauge: Gauge, necks: Sized[int], rows: Sized[int], envs: Sized[Environment], lead: int, habit: Schedules
) -> Sized[RaglanPlan]:
    """A plan for each size; body and sleeves have their own schedules over the same rounds."""

    def counted(label: str) -> RaglanCounts:
        counts = counts_of(section, necks[label], gauge, envs[label])
        problems = list(_faults(section, counts, rows[label] - lead, lead, gauge, label))
        if problems:
            raise ProblemsFound(problems)
        return counts

    counts = gather(necks.labels, counted)
    body, sleeve = increase_rounds([(c.body_increases, c.sleeve_increases, r - lead) for c, r in zip(counts, rows, strict=True)], habit)

    def one(label: str) -> RaglanPlan:
        place = counts.labels.index(label)
        bodies, sleeves = (tuple(lead + row for row in part[place]) for part in (body, sleeve))
        return RaglanPlan(cloth, section.colour, rows[label], counts[label], bodies, sleeves, lead)

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


def raglan_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Raglans out of place, whatever the size; and pieces that begin from something that isn't divided."""
    for index, section in enumerate(piece.sections):
        if not isinstance(section, Raglan):
            continue
        if piece.start.kind != "ring" or design.fabric(piece.fabric).worked == "turned rounds":
            message = f"the raglan of {piece.key} is worked from the neck down in rounds that are not turned"
            yield Problem("raglan-not-in-rounds", message, section.origin, "start the piece with a `ring`, in a fabric worked in joined or spiral rounds")
        if index < len(piece.sections) - 1:
            message = f"{piece.key} has sections after its raglan, whose last round is divided"
            yield Problem("raglan-not-last", message, section.origin, "give what is worked on from it a piece that starts with `divide`")
    yield from _start_faults(piece, design)


def _start_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    if piece.start.kind != "divide":
        return
    (key, name), origin = piece.start.edges[0], piece.start.origin
    if name not in PARTS or not isinstance(design.piece(key).sections[-1], Raglan):
        hint = "write the piece that ends in a raglan, with .body or .sleeve"
        yield Problem("nothing-to-divide", f"{key}.{name} is no part that a raglan is divided into", origin, hint)
    elif design.fabric(piece.fabric).worked == "turned rounds":
        message = f"{piece.key} goes on from a yoke whose rounds are not turned"
        yield Problem("raglan-not-in-rounds", message, origin, "give it a fabric worked in joined or spiral rounds")


def divide_start(piece: Piece, plan: RaglanPlan) -> DivideStart:
    """How the piece begins from the yoke's plan in the same size."""
    key, name = piece.start.edges[0]
    counts = plan.counts
    return DivideStart(key, "body" if name == "body" else "sleeve", counts.end.body, counts.end.sleeve, counts.underarm)


def raglan_edges(section: object, gauge: Gauge) -> dict[str, EdgeLength]:
    """The girths that a yoke is divided into, the chain under the arm included."""
    if not isinstance(section, RaglanPlan):
        return {}
    counts = section.counts
    return {
        "body": EdgeLength(gauge.width_of(counts.body_girth), 0, counts.body_girth),
        "sleeve": EdgeLength(gauge.width_of(counts.sleeve_girth), 0, counts.sleeve_girth),
    }
