"""Structure once for all sizes, then a plan for each.

Whether a taper in rounds is worked in pairs or spread, which edges it shapes, how many rates its
schedule has and in which order: chosen here from the counts of all sizes together.
"""

from collections.abc import Callable

from gaugewright.design.model import Design, Even, Piece, Section, Shoulders, Taper
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.colour_rows import colour_rows
from gaugewright.grading.measure import Measured
from gaugewright.grading.model import ChainStart, EdgeStart
from gaugewright.grading.plan import (
    Cloth,
    EvenPlan,
    Mark,
    PiecePlan,
    SectionPlan,
    ShapedEdges,
    ShouldersPlan,
    SpreadPlan,
    TaperPlan,
)
from gaugewright.grading.schedule import Schedule, schedule_sizes, taper_steps
from gaugewright.grading.spread import Spread, SpreadImpossible, ramp, spread
from gaugewright.grading.stack import level_height, row_at
from gaugewright.sized import Sized
from gaugewright.sizing.environment import Environment
from gaugewright.tolerances import MOST_STITCHES_PER_EDGE
from gaugewright.trade.foundation import foundation
from gaugewright.vocabulary import Worked


def worked_in(piece: Piece, design: Design) -> Worked:
    """How the piece is worked: a ring goes round as its fabric says, everything else in rows."""
    fabric = design.fabric(piece.fabric)
    if piece.start.kind != "ring":
        return "rows"
    return fabric.worked if fabric.worked != "rows" else "joined rounds"


def shaped_edges(piece: Piece, section: Taper, measured: Sized[Measured], index: int) -> ShapedEdges | None:
    """Which edges a taper shapes; None when it is spread round the rounds.

    In rounds a taper is worked in pairs at the underarm line wherever every size has the rounds for
    it; a balloon, which gains or loses more, is spread.
    """
    if piece.start.kind != "ring":
        return section.at or "both"  # type: ignore[return-value]
    if section.at == "all round":
        return None
    starts = measured.map(lambda m: m.start if index == 0 else m.ends[index - 1])
    fits = all(
        abs(m.ends[index] - start) <= 2 * m.rows[index] for m, start in zip(measured, starts, strict=True)
    )
    return "pairs" if fits or section.at == "pairs" else None


def cloth_of(design: Design, fabric_key: str) -> Cloth:
    """The part of a fabric that rows need."""
    fabric = design.fabric(fabric_key)
    return Cloth(fabric.key, fabric.stitch, fabric.loop, fabric.chains, fabric.counts)


def plan_piece(piece: Piece, design: Design, measured: Sized[Measured], envs: Sized[Environment], starts: Sized[EdgeStart] | None) -> Sized[PiecePlan]:
    """Plans of one piece for all sizes, of one structure."""
    per_section = [
        _plan_section(piece, design, section, index, measured) for index, section in enumerate(piece.sections)
    ]
    gauges = tuple(design.fabric(section.fabric).gauge for section in piece.sections)
    plans = []
    for position, (label, m) in enumerate(measured.items()):
        start = starts[label] if starts else _chain_start(piece, design, m.start)
        plans.append(PiecePlan(
            piece.key, start, worked_in(piece, design),
            tuple(sized[label] for sized in per_section),
            colour_rows(piece, m, gauges, envs.values[position]),
            _marks(piece, m, gauges, envs.values[position]),
            piece.sections[0].colour if isinstance(piece.sections[0], Even) and piece.sections[0].colour else piece.colours.order[0],
            cloth_of(design, piece.start.fabric),
        ))
    return Sized(measured.labels, tuple(plans))


def _chain_start(piece: Piece, design: Design, stitches: int) -> ChainStart:
    fabric = design.fabric(piece.start.fabric)
    if piece.start.kind == "ring":
        return ChainStart(stitches, stitches, ring=True)
    return ChainStart(stitches, foundation(fabric.stitch, stitches, fabric.chains, fabric.counts).chain)


def _marks(piece: Piece, measured: Measured, gauges: tuple[Gauge, ...], env: Environment) -> tuple[Mark, ...]:
    found = []
    for below, above in zip(piece.edges, piece.edges[1:], strict=False):
        if below.side == above.side and below.top is not None:
            found.append(Mark(below.top, mark_row(piece, below.top, measured, gauges, env), below.name, above.name, below.side))
    return tuple(found)


def mark_row(piece: Piece, level: str, measured: Measured, gauges: tuple[Gauge, ...], env: Environment) -> int:
    """The row at whose end a level is reached, measured down from the top."""
    assert measured.wanted_total is not None
    depth = measured.wanted_total - level_height(level, env)
    row = row_at(depth, measured.rows, gauges) if depth > 0 else 0
    if not 0 < row < sum(measured.rows):
        raise ProblemsFound([Problem(
            "level-outside", f"the level {level} does not lie between the hem and the top of {piece.key}",
            piece.origin, f"set {level} lower than the top by at least one row and above the hem", env.size,
        )])
    return row


def _plan_section(piece: Piece, design: Design, section: Section, index: int, measured: Sized[Measured]) -> Sized[SectionPlan]:
    cloth = cloth_of(design, section.fabric)
    colour = "" if isinstance(section, Shoulders) else section.colour

    def before(m: Measured) -> int:
        return m.start if index == 0 else m.ends[index - 1]

    match section:
        case Even():
            return measured.map(lambda m: EvenPlan(cloth, colour, m.rows[index], before(m)))
        case Shoulders():
            return measured.map(lambda m: ShouldersPlan(cloth, colour, before(m), (before(m) - m.necks[index]) // 2, m.necks[index]))
        case Taper():
            edges = shaped_edges(piece, section, measured, index)
            if edges is None:
                return Sized(measured.labels, tuple(_spread_plan(section, cloth, before(m), m, index, label) for label, m in measured.items()))
            return _taper_plans(section, cloth, edges, index, measured, before)


def _taper_plans(
    section: Taper, cloth: Cloth, edges: ShapedEdges, index: int, measured: Sized[Measured], before: Callable[[Measured], int]
) -> Sized[SectionPlan]:
    lead = 1 if index == 0 else 0
    places = 2 if edges in ("both", "pairs") else 1
    sign = _common_sign(section, index, measured, before)
    steps: list[tuple[int, ...]] = []
    problems = []
    for label, m in measured.items():
        change, room = abs(m.ends[index] - before(m)) // places, m.rows[index] - lead
        needed = -(-change // MOST_STITCHES_PER_EDGE)
        if needed > room:
            problems.append(Problem(
                "taper-too-steep", f"{change} stitches at each edge do not fit in {m.rows[index]} rows, at most "
                f"{MOST_STITCHES_PER_EDGE} a row", section.origin, f"give it at least {needed + lead} rows, or a nearer target", label,
            ))
        else:
            steps.append(taper_steps(change, room))
    if problems:
        raise ProblemsFound(problems)
    per_change = max((max(step, default=1) for step in steps), default=1)
    schedules = schedule_sizes([(len(step), m.rows[index] - lead) for step, m in zip(steps, measured, strict=True)], per_change=per_change)
    return Sized(measured.labels, tuple(
        TaperPlan(cloth, section.colour, m.rows[index], before(m), sign, edges, step, schedule, lead)
        for m, step, schedule in zip(measured, steps, schedules, strict=True)
    ))


def _common_sign(section: Taper, index: int, measured: Sized[Measured], before: Callable[[Measured], int]) -> int:
    """+1 or -1 for all sizes: a taper that widens in one size and narrows in another is no design."""
    changes = {label: m.ends[index] - before(m) for label, m in measured.items()}
    up = [label for label, change in changes.items() if change > 0]
    down = [label for label, change in changes.items() if change < 0]
    if up and down:
        raise ProblemsFound([Problem(
            "taper-both-ways", f"this taper widens in {', '.join(up)} and narrows in {', '.join(down)}",
            section.origin, "set its target so that it goes one way in every size", down[0],
        )])
    return -1 if down else 1


def _spread_plan(section: Taper, cloth: Cloth, start: int, m: Measured, index: int, label: str) -> SpreadPlan:
    end, rounds = m.ends[index], m.rows[index]
    taken = int(cloth.counts)
    try:
        counts = ramp(start, end, rounds)
        spreads = []
        for number, (before, after) in enumerate(zip((start, *counts), counts, strict=False)):
            spreads.append(_one_spread(before - taken, after - before, bool(number % 2)))
    except SpreadImpossible as fault:
        raise ProblemsFound([Problem(
            "taper-too-steep", f"from {start} to {end} stitches in {rounds} rounds: {fault}", section.origin,
            "give it more rounds, or a nearer target", label,
        )]) from None
    return SpreadPlan(cloth, section.colour, rounds, start, 1 if end >= start else -1, tuple(spreads), counts)


def _one_spread(stitches: int, change: int, shifted: bool) -> Spread | None:
    if not change:
        return None
    return spread(stitches, abs(change), "increase" if change > 0 else "decrease", shifted)
