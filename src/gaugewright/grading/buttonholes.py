"""Buttonholes of a picked-up band: chains over skipped stitches in one row, worked into on the next.

Buttons don't grow with the body, so their number and width stay; only their places follow the edge.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from gaugewright.design.model import Buttonholes, Design, Even, Piece
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.mitre import Corner, beside, gaps
from gaugewright.grading.model import EdgeStart, Run, bridge
from gaugewright.rounding import half_up, up
from gaugewright.sizing.environment import Environment

LEAST_BETWEEN = 2
"""One stitch between two buttonholes tears; two hold (common practice, no source)."""

FEWEST_ROWS = 3
"""A row to work on, the chains, and a row into the chains."""


@dataclass(frozen=True, slots=True)
class HolePlan:
    """Buttonholes of one size: `each` stitches skipped on row `row`, from the stitches `firsts` on.

    Stitches are counted along the band from its end at the edge with the holes: from the end where row 1
    begins if `from_start`. `along` stitches were picked up on that edge.
    """

    row: int
    each: int
    firsts: tuple[int, ...]
    along: int
    from_start: bool

    def in_row(self, stitches: int) -> tuple[int, ...]:
        """The first stitch of each buttonhole in the order in which its row of so many stitches is worked.

        >>> HolePlan(2, 2, (3, 9), 12, True).in_row(20), HolePlan(3, 2, (3, 9), 12, True).in_row(20)
        ((11, 17), (3, 9))
        """
        if bool(self.row % 2) == self.from_start:
            return self.firsts
        return tuple(stitches + 2 - first - self.each for first in reversed(self.firsts))


def buttonhole_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Buttonholes on anything but an even band in rows, or along an edge inside it."""
    holes = piece.buttonholes
    if holes is None:
        return
    ends = {piece.start.edges[0], piece.start.edges[-1]} if piece.start.kind == "pick up" else set()
    message = hint = ""
    if not ends or piece.start.in_rounds:
        message, hint = "isn't a band picked up in rows", "give them to a piece with `pick_up` and a fabric worked in rows"
    elif any(not isinstance(section, Even) for section in piece.sections):
        message, hint = "is shaped", "work the band even"
    elif holes.edge not in ends:
        message = f"begins and ends at other edges than {'.'.join(holes.edge)}"
        hint = f"write `edge: {'.'.join(piece.start.edges[0])}`, where the band begins, or {'.'.join(piece.start.edges[-1])}, where it ends"
    if message:
        yield Problem("buttonholes-misplaced", f"{piece.key} has buttonholes and {message}", holes.origin, hint)


def plan_holes(piece: Piece, design: Design, start: EdgeStart, rows: int, env: Environment, corners: tuple[Corner, ...] = ()) -> HolePlan:
    """The buttonholes of one size; raises `buttonholes-do-not-fit` with what would."""
    holes = piece.buttonholes
    assert holes is not None
    gauge = design.fabric(piece.sections[0].fabric).gauge
    if rows < FEWEST_ROWS:
        hint = f"make the band at least {up(gauge.height_of(FEWEST_ROWS)) / 10:.1f} cm deep"
        raise _misfit(holes, env, f"buttonholes take {FEWEST_ROWS} rows, and {piece.key} has {rows}", hint)
    from_start = holes.edge == piece.start.edges[0]
    along = start.pick_ups[0 if from_start else -1].stitches
    each = max(1, half_up(gauge.stitches_in(holes.size)))
    firsts = _places(piece, holes, gauge, env, along, each)
    row = min(max(2, (rows + 1) // 2), rows - 1)
    plan = HolePlan(row, each, firsts, along, from_start)
    _clear_of_corners(piece, plan, corners, start.stitches, gauge, env)
    return plan


def _clear_of_corners(piece: Piece, plan: HolePlan, corners: tuple[Corner, ...], picked: int, gauge: Gauge, env: Environment) -> None:
    """The last buttonhole, and what a corner takes beside its marked stitch, lie apart on the buttonholes' row."""
    if not corners:
        return
    nearest = corners[0] if plan.from_start else corners[-1]
    free = gaps(corners, picked, plan.row - 1)[0 if plan.from_start else -1] - beside(nearest.changes[plan.row - 2])
    over = plan.firsts[-1] + plan.each - 1 - free
    if over > 0:
        assert piece.buttonholes is not None
        holes, least = piece.buttonholes, up(env.length(piece.buttonholes.last) + gauge.width_of(over + 0.5)) / 10
        message = f"the last buttonhole of {piece.key} runs into the corner at the end of {'.'.join(holes.edge)}"
        raise _misfit(holes, env, message, f"make `last` at least {least:.1f} cm")


def _places(piece: Piece, holes: Buttonholes, gauge: Gauge, env: Environment, along: int, each: int) -> tuple[int, ...]:
    first, last = (gauge.stitches_in(env.length(formula)) for formula in (holes.first, holes.last))
    firsts = spaced_evenly(along, holes.count, each, first, last)
    what = f"{holes.count} buttonholes of {each} {'stitch' if each == 1 else 'stitches'} along the {along} of {'.'.join(holes.edge)}"
    edge = f"{up(gauge.width_of(each / 2 + 1)) / 10:.1f} cm"
    if firsts[0] < 2:
        raise _misfit(holes, env, f"{what}: the first runs over the end of {piece.key}", f"make `first` at least {edge}")
    if holes.count > 1 and firsts[-1] + each > along:
        raise _misfit(holes, env, f"{what}: the last runs over the end of its edge", f"make `last` at least {edge}")
    if any(after - before < each + LEAST_BETWEEN for before, after in zip(firsts, firsts[1:], strict=False)):
        most = max(1, int((along - first - last) // (each + LEAST_BETWEEN)) + 1)
        between = f"with {LEAST_BETWEEN} stitches between them there is room for {most}"
        raise _misfit(holes, env, f"{what} stand too close: {between}", f"write `count: {most}`, or a smaller `size`, `first` or `last`")
    if firsts[-1] + each > along:
        raise _misfit(holes, env, f"{what}: the only one runs over the end of its edge", "make `first` smaller")
    return firsts


def spaced_evenly(along: int, count: int, each: int, first: float, last: float) -> tuple[int, ...]:
    """The first stitch of each buttonhole: middles spread evenly, each taken to the nearest whole stitch.

    >>> spaced_evenly(40, 4, 2, 4, 3)
    (4, 15, 26, 37)
    """
    gap = (along - first - last) / (count - 1) if count > 1 else 0.0
    return tuple(half_up(first + gap * number - each / 2) + 1 for number in range(count))


def with_holes(runs: tuple[Run, ...], plan: HolePlan, stitches: int) -> tuple[Run, ...]:
    """A row of so many stitches, plain where the buttonholes lie, with chains over the skipped stitches."""
    found: list[Run] = []
    spans = [(first, first + plan.each) for first in plan.in_row(stitches)]
    made = 0
    for run in runs:
        size = run.operation.makes * run.times
        at = made + 1
        for low, high in spans:
            if at <= low < made + 1 + size:
                found += [replace(run, times=low - at)] if low > at else []
                found.append(Run(bridge(), high - low, run.colour, run.fabric))
                at = high
        rest = made + 1 + size - at
        whole = rest == size  # nothing of the run was passed over
        found += [run] if whole else [replace(run, times=rest)] if rest else []
        made += size
    return tuple(found)


def _misfit(holes: Buttonholes, env: Environment, message: str, hint: str) -> ProblemsFound:
    return ProblemsFound([Problem("buttonholes-do-not-fit", message, holes.origin, hint, env.size)])
