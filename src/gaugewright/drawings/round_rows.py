"""The rounds of a disc or a motif from its centre out, stitch by stitch as they are worked, for its chart.

In: the rows of a piece and its plan. Out: rounds of stitches, each with the stitch of the round before that it is
worked into. Nothing is placed here, and nothing is taken from the words.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.errors import InternalError
from gaugewright.grading.model import Operation, Row
from gaugewright.grading.plan import MotifPlan, PiecePlan, SpreadPlan
from gaugewright.trade.stitches import stitch
from gaugewright.vocabulary import Hold, Worked


@dataclass(frozen=True, slots=True)
class RoundStitch:
    """One stitch, or a corner space under some `chains`, which counts as one. `base` is the stitch of the round before
    that it is worked into, counted from 0 as that round was worked; None in the ring."""

    name: str
    base: int | None
    hold: Hold = "both"
    chains: int = 0


@dataclass(frozen=True, slots=True)
class ChartRound:
    """One round in the order of working: the chain it opens with, which never counts; whether a slip stitch joins it;
    whether it goes back the way the round before came; `corners` are the places of its corners' middles."""

    number: int
    stitches: tuple[RoundStitch, ...]
    turn: int
    joined: bool
    backward: bool
    corners: tuple[int, ...] = ()


def centre_plan(plan: PiecePlan) -> MotifPlan | SpreadPlan | None:
    """What a piece that begins at a closed centre makes there: a motif, or a crown that widens."""
    first = plan.sections[0]
    if isinstance(first, MotifPlan) or (isinstance(first, SpreadPlan) and first.sign > 0):
        return first
    return None


def chart_rounds(rows: tuple[Row, ...], plan: PiecePlan) -> tuple[ChartRound, ...]:
    """The rounds of a piece's motif or disc."""
    section = centre_plan(plan)
    assert section is not None  # the caller asks for what has a chart
    motif = section if isinstance(section, MotifPlan) else None
    chains = motif.chains if motif else 0
    found: list[ChartRound] = []
    for number, row in enumerate(rows[: section.rows], start=1):
        before = len(found[-1].stitches) if found else 0
        backward = plan.worked == "turned rounds" and number % 2 == 0
        stitches = tuple(_stitches(row, _met(before, plan.worked, motif is not None), chains))
        joined = plan.worked != "spiral rounds"
        turn = sum(stitch(run.operation.stitch).chains for run in row.runs if run.operation.kind == "turning chain" and joined)
        corners = _corners(motif, number) if motif else ()
        found.append(ChartRound(number, stitches, turn, joined, backward, corners))
    return tuple(found)


def _met(before: int, worked: Worked, motif: bool) -> range | tuple[int, ...]:
    """The stitches of the round before in the order in which this one meets them. Where rounds are turned the first
    goes into the stitch of the join; in a motif, whose corners tell each place, that stitch comes last."""
    if worked != "turned rounds" or not before:
        return range(before)
    return range(before - 1, -1, -1) if motif else (0, *range(before - 1, 0, -1))


def _stitches(row: Row, met: range | tuple[int, ...], chains: int) -> Iterator[RoundStitch]:
    at = 0
    for run in row.runs:
        operation = run.operation
        for _ in range(run.times):
            base = met[at] if met else None
            yield from _made(operation, base, chains)
            at += operation.uses
    if met and at != len(met):
        raise InternalError(f"a round of a chart uses {at} stitches of {len(met)}")


def _made(operation: Operation, base: int | None, chains: int) -> Iterator[RoundStitch]:
    match operation.kind:
        case "turning chain":
            return
        case "chain":
            yield RoundStitch("ch", base, chains=chains)
        case "stitch" | "increase" | "corner increase":
            spaced = operation.kind == "corner increase" and chains > 0
            for index in range(operation.makes):
                middle = spaced and index == operation.makes // 2
                yield RoundStitch("ch", base, chains=chains) if middle else RoundStitch(operation.stitch, base, operation.loop)
        case _:
            raise TypeError(f"no sign for {operation.kind!r} in a chart of rounds")


def _corners(plan: MotifPlan, number: int) -> tuple[int, ...]:
    """Where the middles of a round's corners are among its stitches."""
    one = plan.rounds[number - 1]
    return tuple(one.lead + one.half + corner * plan.along(number) for corner in range(plan.sides))
