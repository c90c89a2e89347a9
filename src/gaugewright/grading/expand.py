"""Plan -> rows: every row of one size, as it is worked."""

from collections.abc import Iterator

from gaugewright.grading.model import (
    EdgeStart,
    Operation,
    Row,
    Run,
    Strip,
    decrease,
    increase,
    turning_chain,
    work,
)
from gaugewright.grading.plan import Cloth, EvenPlan, PiecePlan, ShouldersPlan, SpreadPlan, TaperPlan
from gaugewright.grading.spread import Spread
from gaugewright.vocabulary import Side


def expand(plan: PiecePlan) -> Strip:
    """The strip of an undivided piece, its rows in the order of working."""
    rows: list[Row] = []
    for section in plan.sections:
        for within in range(1, section.rows + 1):
            number = len(rows) + 1
            colour = plan.colour_of(number)
            runs = tuple(run for run in _runs(plan, section, within, number, colour) if run.times)
            rows.append(Row(runs, row_side(plan, number)))
    return Strip(plan.piece, plan.start, plan.worked, tuple(rows))


def row_side(plan: PiecePlan, number: int) -> Side:
    """RS on odd rows; rounds worked without turning keep the right side to the worker."""
    if plan.worked in ("joined rounds", "spiral rounds"):
        return "RS"
    return "RS" if number % 2 else "WS"


def has_turning_chain(plan: PiecePlan) -> bool:
    """A spiral climbs on by itself and needs no chain."""
    return plan.worked != "spiral rounds"


def _runs(plan: PiecePlan, section: object, within: int, number: int, colour: str) -> Iterator[Run]:
    if number == 1 and isinstance(plan.start, EdgeStart):
        cloth = section.cloth  # type: ignore[attr-defined]
        yield Run(Operation("picked up", cloth.stitch, 0, 1), plan.start.stitches, colour, cloth.fabric)
        return
    match section:
        case EvenPlan(cloth=cloth, stitches=stitches):
            yield from _even_row(plan, cloth, stitches, colour)
        case TaperPlan():
            yield from _taper_row(plan, section, within, number, colour)
        case SpreadPlan():
            yield from _spread_round(plan, section, within, colour)
        case _:
            raise TypeError(f"no rows can be made of {section!r}")


def _opening(plan: PiecePlan, cloth: Cloth, colour: str) -> tuple[tuple[Run, ...], int]:
    """The turning chain's run, and how many stitches it takes the place of."""
    if not has_turning_chain(plan):
        return (), 0
    return (Run(turning_chain(cloth.stitch, cloth.counts), 1, colour, cloth.fabric),), int(cloth.counts)


def _even_row(plan: PiecePlan, cloth: Cloth, stitches: int, colour: str) -> Iterator[Run]:
    opening, taken = _opening(plan, cloth, colour)
    yield from opening
    yield Run(work(cloth.stitch, cloth.loop), stitches - taken, colour, cloth.fabric)


def _taper_row(plan: PiecePlan, section: TaperPlan, within: int, number: int, colour: str) -> Iterator[Run]:
    cloth = section.cloth
    positions = section.shaping_rows()
    before = [step for step, position in zip(section.steps, positions, strict=True) if position < within]
    stitches = section.stitches + section.sign * section.edge_count * sum(before)
    if within not in positions:
        yield from _even_row(plan, cloth, stitches, colour)
        return
    step = section.steps[positions.index(within)]
    change = increase(cloth.stitch, loop=cloth.loop) if section.sign > 0 else decrease(cloth.stitch, loop=cloth.loop)
    at_start = section.edges in ("both", "pairs") or (section.edges == "starting") == bool(number % 2)
    at_end = section.edges in ("both", "pairs") or not at_start
    opening, taken = _opening(plan, cloth, colour)
    yield from opening
    # Where the chain counts as a stitch the shaping stands one stitch in, at both edges alike.
    used = change.uses * step * (at_start + at_end)
    yield Run(change, step * at_start, colour, cloth.fabric)
    yield Run(work(cloth.stitch, cloth.loop), stitches - used - 2 * taken, colour, cloth.fabric)
    yield Run(change, step * at_end, colour, cloth.fabric)
    yield Run(work(cloth.stitch, cloth.loop), taken, colour, cloth.fabric)


def _spread_round(plan: PiecePlan, section: SpreadPlan, within: int, colour: str) -> Iterator[Run]:
    spread = section.spreads[within - 1]
    before = section.stitches if within == 1 else section.counts[within - 2]
    if spread is None:
        yield from _even_row(plan, section.cloth, before, colour)
        return
    opening, _ = _opening(plan, section.cloth, colour)
    yield from opening
    yield from spread_runs(spread, section.cloth, section.sign, colour)


def spread_runs(spread: Spread, cloth: Cloth, sign: int, colour: str) -> Iterator[Run]:
    """The runs of one spread, in working order."""
    change = increase(cloth.stitch, loop=cloth.loop) if sign > 0 else decrease(cloth.stitch, loop=cloth.loop)
    plain = work(cloth.stitch, cloth.loop)
    yield Run(plain, spread.leading, colour, cloth.fabric)
    for group in spread.groups:
        for _ in range(group.times):
            parts = ((plain, group.plain), (change, group.changes))
            for operation, times in reversed(parts) if spread.change_first else parts:
                yield Run(operation, times, colour, cloth.fabric)
    yield Run(plain, spread.trailing, colour, cloth.fabric)
