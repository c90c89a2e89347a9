"""Plan -> rows: every row of one size, as it is worked."""

from collections.abc import Iterator

from gaugewright.grading.blocks import with_blocks
from gaugewright.grading.buttonholes import with_holes
from gaugewright.grading.model import (
    ChainStart,
    DivideStart,
    EdgeStart,
    Join,
    Operation,
    Row,
    Run,
    Strip,
    decrease,
    increase,
    join_to_edge,
    pick_up,
    work,
)
from gaugewright.grading.dividing import dividing_round
from gaugewright.grading.mitre import mitred_rows
from gaugewright.grading.motif_rows import motif_steps
from gaugewright.grading.patterned_rows import with_patterns
from gaugewright.grading.plan import (
    Cloth, DividedPlan, EvenPlan, MitredPlan, MotifPlan, PiecePlan, ProfilePlan, RoundYokePlan, SectionPlan, ShouldersPlan, SpreadPlan, TaperPlan,
    TrianglePlan,
)
from gaugewright.grading.raglan_rows import RaglanPlan, raglan_rounds
from gaugewright.grading.rising_rows import rising_top
from gaugewright.grading.runs import Runs, joined, makes_of, opening
from gaugewright.grading.shape_rows import shaped_rows, sides_of
from gaugewright.grading.slits import SlitPlan, slit_row, works_back
from gaugewright.grading.spread import Spread
from gaugewright.grading.triangle_rows import triangle_rows
from gaugewright.grading.wedge_rows import closing_row, short_rows
from gaugewright.vocabulary import Side, Worked



def expand(plan: PiecePlan) -> Strip:
    """The strip from the start up to where a piece divides, or to its end; rows in the order of working."""
    rows: list[Row] = []
    for section in plan.sections:
        if isinstance(section, DividedPlan):
            break
        colours = [plan.colour_of(number) for number in range(len(rows) + 1, len(rows) + section.rows + 1)]
        for runs in _section(plan, section, len(rows) + 1, colours):
            held = plan.holes is not None and plan.holes.row == len(rows) + 1
            rows.append(Row(with_holes(runs, plan.holes, makes_of(runs)) if held and plan.holes else runs, row_side(plan, len(rows) + 1)))
    short = []
    for after, wedge in plan.wedges():
        short.append(short_rows(wedge, after, plan.colour_of(after + 1), lambda number: row_side(plan, number)))
        rows[after] = closing_row(wedge, rows[after])
    return Strip(plan.piece, plan.start, plan.worked, with_blocks(tuple(rows), plan.blocks), tuple(short))


def expand_all(plan: PiecePlan) -> tuple[Strip, ...]:
    """All strips of a piece: one, or the one below the division and both sides above it."""
    main, last = expand(plan), plan.sections[-1]
    cloths = {section.cloth.fabric: section.cloth for section in plan.sections}
    if not isinstance(last, DividedPlan):
        return (with_patterns(main, cloths),)
    first = len(main.rows) + 1
    colours = [plan.colour_of(number) for number in range(first, first + last.rows)]
    return tuple(with_patterns(strip, cloths) for strip in (main, *sides_of(main.name, last, first, colours, joined)))


def row_side(plan: PiecePlan, number: int) -> Side:
    """RS on odd rows, or as a yoke's last round has left it; rounds that are not turned keep the right side to the worker."""
    if plan.worked in ("joined rounds", "spiral rounds"):
        return "RS"
    begins = plan.start.side if isinstance(plan.start, DivideStart) else "RS"
    return begins if number % 2 else "WS" if begins == "RS" else "RS"


def _section(plan: PiecePlan, section: SectionPlan, first: int, colours: list[str]) -> Iterator[tuple[Run, ...]]:
    """The runs of each row of a section; stitches picked up are their piece's first row."""
    match section:
        case EvenPlan(cloth=cloth, stitches=stitches) if isinstance(plan.start, ChainStart) and plan.start.join and not plan.start.join.sewn:
            rows = (joined(runs) for runs in _edge_joined_rows(cloth, stitches, colours[0], plan.start.join))
        case EvenPlan(cloth=cloth, stitches=stitches):
            alike = {colour: joined(_even_row(cloth, stitches, colour)) for colour in dict.fromkeys(colours)}
            rows = (alike[colour] for colour in colours)
        case MitredPlan():
            turned = plan.worked in ("rows", "turned rounds")
            rows = (joined(runs) for runs in mitred_rows(section, turned, colours))
        case TaperPlan(edges="sides"):
            rows = (joined(runs) for runs in _tip_rounds(section, first, colours, plan.worked))
        case TaperPlan():
            rows = (joined(runs) for runs in _taper_rows(section, first, colours))
        case SpreadPlan() | RoundYokePlan():
            rows = (joined(runs) for runs in _spread_rounds(section, colours))
        case SlitPlan():
            rows = (joined(slit_row(section, colour)) for colour in colours)
        case MotifPlan(cloth=cloth):
            steps = zip(motif_steps(section), colours, strict=True)
            rows = (joined(Run(operation, times, colour, cloth.fabric) for operation, times in one) for one, colour in steps)
        case TrianglePlan():
            rows = (joined(runs) for runs in triangle_rows(section, colours))
        case RaglanPlan():
            rows = (joined(runs) for runs in raglan_rounds(section, colours, [row_side(plan, first + row) for row in range(len(colours))]))
        case ProfilePlan(cloth=cloth, stitches=stitches, starting=starting, far=far):
            rows = (joined(runs) for runs in shaped_rows(cloth, stitches, starting, far, colours, first, section.rising))
        case ShouldersPlan(cloth=cloth) if section.rising:
            rows = (joined(rising_top(cloth, section.rising, section.neck, colour)) for colour in colours)
        case ShouldersPlan(cloth=cloth, stitches=stitches, slope=slope) if section.rows:
            rows = (joined(runs) for runs in shaped_rows(cloth, stitches, slope, slope, colours, first))
        case _:
            return
    yield from _begun(plan, section.cloth, rows, colours[0]) if first == 1 else rows


def _begun(plan: PiecePlan, cloth: Cloth, rows: Iterator[tuple[Run, ...]], colour: str) -> Iterator[tuple[Run, ...]]:
    """The rows from a piece's first on, which is what was picked up or divided where it starts so."""
    if isinstance(plan.start, EdgeStart):
        next(rows)
        yield (Run(pick_up(cloth.stitch), plan.start.stitches, colour, cloth.fabric),)
    elif isinstance(plan.start, DivideStart):
        next(rows)
        yield joined(dividing_round(plan.start, cloth, colour))
    yield from rows


def _even_row(cloth: Cloth, stitches: int, colour: str) -> Runs:
    yield from opening(cloth, colour)
    yield Run(work(cloth.stitch, cloth.loop), stitches - int(cloth.counts), colour, cloth.fabric)


def _edge_joined_rows(cloth: Cloth, stitches: int, colour: str, join: Join) -> Iterator[Runs]:
    """Rows of a band joined along edges: every second one ends there in slip stitches, which the next row begins from."""
    for places in join.takes():
        yield iter((*_even_row(cloth, stitches, colour), Run(join_to_edge(), places, colour, cloth.fabric)))
        yield iter((Run(work(cloth.stitch, cloth.loop), stitches, colour, cloth.fabric),))


def _taper_rows(section: TaperPlan, first: int, colours: list[str]) -> Iterator[Runs]:
    steps = dict(zip(section.shaping_rows(), section.steps, strict=True))
    stitches = section.stitches
    for within, colour in enumerate(colours, start=1):
        step = steps.get(within, 0)
        yield _taper_row(section, stitches, step, first + within - 1, colour) if step else _even_row(section.cloth, stitches, colour)
        stitches += section.sign * section.edge_count * step


def _taper_row(section: TaperPlan, stitches: int, step: int, number: int, colour: str) -> Runs:
    """A shaping row. Where the turning chain counts, the shaping stands one stitch in, at both edges alike."""
    cloth, taken = section.cloth, int(section.cloth.counts)
    change, times = _change(cloth, section.sign), step
    if section.in_one:
        change, times = increase(cloth.stitch, step + 1, cloth.loop), 1
    at_start = section.edges in ("both", "pairs") or (section.edges == "starting") == bool(number % 2)
    at_end = section.edges in ("both", "pairs") or not at_start
    used = section.uses(step) * (at_start + at_end)
    yield from opening(cloth, colour)
    yield Run(change, times * at_start, colour, cloth.fabric)
    yield Run(work(cloth.stitch, cloth.loop), stitches - used - 2 * taken, colour, cloth.fabric)
    yield Run(change, times * at_end, colour, cloth.fabric)
    yield Run(work(cloth.stitch, cloth.loop), taken, colour, cloth.fabric)


def _tip_rounds(section: TaperPlan, first: int, colours: list[str], worked: Worked) -> Iterator[Runs]:
    """Rounds shaped at both ends of each half: at the beginning of the round and opposite it."""
    steps = dict(zip(section.shaping_rows(), section.steps, strict=True))
    halves = section.half, section.stitches - section.half
    for within, colour in enumerate(colours, start=1):
        step = steps.get(within, 0)
        back = works_back(worked, first + within - 1)
        yield _tip_round(section, halves[::-1] if back else halves, step, colour) if step else _even_row(section.cloth, sum(halves), colour)
        halves = halves[0] + 2 * section.sign * step, halves[1] + 2 * section.sign * step


def _tip_round(section: TaperPlan, halves: tuple[int, ...], step: int, colour: str) -> Runs:
    cloth, change = section.cloth, _change(section.cloth, section.sign)
    yield from opening(cloth, colour)
    for half in halves:
        yield Run(change, step, colour, cloth.fabric)
        yield Run(work(cloth.stitch, cloth.loop), half - 2 * change.uses * step, colour, cloth.fabric)
        yield Run(change, step, colour, cloth.fabric)


def _change(cloth: Cloth, sign: int) -> Operation:
    return increase(cloth.stitch, loop=cloth.loop) if sign > 0 else decrease(cloth.stitch, loop=cloth.loop)


def _spread_rounds(section: SpreadPlan | RoundYokePlan, colours: list[str]) -> Iterator[Runs]:
    before = (section.stitches, *section.counts)
    for spread, stitches, colour in zip(section.spreads, before, colours, strict=False):
        yield _even_row(section.cloth, stitches, colour) if spread is None else _spread_round(spread, section, colour)


def _spread_round(spread: Spread, section: SpreadPlan | RoundYokePlan, colour: str) -> Runs:
    yield from opening(section.cloth, colour)
    yield from spread_runs(spread, section.cloth, section.sign, colour)


def spread_runs(spread: Spread, cloth: Cloth, sign: int, colour: str) -> Runs:
    """The runs of one spread, in working order."""
    change, plain = _change(cloth, sign), work(cloth.stitch, cloth.loop)
    yield Run(plain, spread.leading, colour, cloth.fabric)
    for group in spread.groups:
        for _ in range(group.times):
            parts = ((plain, group.plain), (change, group.changes))
            for operation, times in reversed(parts) if spread.change_first else parts:
                yield Run(operation, times, colour, cloth.fabric)
    yield Run(plain, spread.trailing, colour, cloth.fabric)
