"""Tapers at edges and in pairs: on which rows how many stitches change, of one structure in all sizes."""

from gaugewright.design.model import Crown, Taper
from gaugewright.errors import Problem, ProblemsFound, UserError
from gaugewright.grading.gather import gather
from gaugewright.grading.measure import Measured, lead_rows, step_of
from gaugewright.grading.plan import PLACES, Cloth, ShapedEdges, TaperPlan
from gaugewright.grading.schedule import schedules_by, taper_steps
from gaugewright.sized import Sized
from gaugewright.tolerances import MOST_STITCHES_PER_EDGE
from gaugewright.trade.stitches import decrease_of
from gaugewright.vocabulary import Schedules


def taper_plans(
    section: Taper, cloth: Cloth, edges: ShapedEdges, index: int, measured: Sized[Measured], habit: Schedules
) -> Sized[TaperPlan]:
    """A plan for each size, on rows by the pattern's habit; raises located problems where a size has too few rows or stitches."""
    sign, lead = common_sign(section, cloth, index, measured), lead_rows(index)
    steps = gather(measured.labels, lambda label: _steps(section, edges, index, label, measured[label]))
    per_change = max(max(step, default=1) for step in steps)
    pairs = [(len(step), m.rows[index] - lead) for step, m in zip(steps, measured, strict=True)]
    # At a tip the decreases come closer towards the end, which rounds it.
    schedules = schedules_by("longer gap first" if edges == "sides" and sign < 0 else habit, pairs, per_change)

    def one(label: str) -> TaperPlan:
        m, schedule = measured[label], schedules[measured.labels.index(label)]
        plan = TaperPlan(cloth, section.colour, m.rows[index], m.before(index), sign, edges, steps[label], schedule, lead, section.in_one and sign > 0)
        _check_width(section, plan, label)
        return plan

    return gather(measured.labels, one)


def common_sign(section: Taper | Crown, cloth: Cloth, index: int, measured: Sized[Measured]) -> int:
    """+1 or -1 for all sizes: shaping that widens in one size and narrows in another is no design."""
    changes = measured.map(lambda m: m.change(index))
    widening = [label for label, change in changes.items() if change > 0]
    narrowing = [label for label, change in changes.items() if change < 0]
    if widening and narrowing:
        message = f"this section widens in {', '.join(widening)} and narrows in {', '.join(narrowing)}"
        begun = ", ".join(f"{measured[size].before(index)} in {size}" for size in (*widening, *narrowing))
        hint = f"set its target so that it goes one way in every size; its stitches begin at {begun}"
        raise ProblemsFound([Problem("taper-both-ways", message, section.origin, hint, ", ".join(measured.labels))])
    if narrowing:
        try:
            decrease_of(cloth.stitch)
        except UserError as fault:
            message, hint = f"this section narrows, and {fault.message}", "work it in another stitch"
            raise ProblemsFound([Problem(fault.name, message, section.origin, hint, ", ".join(narrowing))]) from None
    return -1 if narrowing else 1


def _steps(section: Taper, edges: ShapedEdges, index: int, label: str, m: Measured) -> tuple[int, ...]:
    """Stitches at each shaped edge on each shaping row."""
    places = PLACES[edges]
    change, room = abs(m.change(index)), m.rows[index] - lead_rows(index)
    assert change % places == 0  # counts changed at two places keep their parity
    each_place, each_row = change // places, step_of(section, edges) // places
    if each_row:
        needed = each_place // each_row if each_row <= MOST_STITCHES_PER_EDGE else room + 1
    else:
        needed = -(-each_place // MOST_STITCHES_PER_EDGE)
    if needed > room:
        most = f"at most {MOST_STITCHES_PER_EDGE} a row"
        message = f"{each_place} stitches at each edge do not fit in {room} shaping rows, {most}"
        rows = -(-each_place // MOST_STITCHES_PER_EDGE) + lead_rows(index)
        hint = f"give it at least {rows} rows, or a nearer target"
        hint = hint if each_row <= MOST_STITCHES_PER_EDGE else f"write `each: {MOST_STITCHES_PER_EDGE * places}` or less"
        raise ProblemsFound([Problem("taper-too-steep", message, section.origin, hint, label)])
    return (each_row,) * needed if each_row else taper_steps(each_place, room)


def _check_width(section: Taper, plan: TaperPlan, label: str) -> None:
    """Every shaping row must hold its changes, and the stitch beside them where a turning chain counts."""
    before = plan.stitches
    for number, step in enumerate(plan.steps):
        needed = plan.uses(step) * plan.edge_count + 2 * plan.cloth.counts
        needed += plan.edges == "sides" and before % 2  # the smaller half must hold its two
        if before < needed:
            message = f"{before} stitches are too few to shape: such a row takes {needed}"
            hint = f"end the taper with {before} stitches or more, after at most {number} shaping rows" if number else f"make the piece at least {needed} stitches wide there"
            if plan.sign > 0 and step > 1 and plan.edges in ("both", "starting", "far") and not plan.in_one:
                hint = "write `in_one: true`, so that several increases go into the edge stitch, or begin with more stitches"
            raise ProblemsFound([Problem("taper-too-narrow", message, section.origin, hint, label)])
        before += plan.sign * plan.edge_count * step
