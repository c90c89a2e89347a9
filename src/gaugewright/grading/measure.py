"""Counts and rows of one piece in one size, before its structure is chosen.

In: the designed piece, one size's environment, what was graded before. Out: the start count and
each section's rows and stitches.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from gaugewright.design.model import Design, Even, Formula, Piece, Section, Shoulders, Taper
from gaugewright.errors import Origin, Problem, ProblemsFound
from gaugewright.formulas.names import calls_in
from gaugewright.gauge.counts import CountImpossible, CountRule, count_for, spacing
from gaugewright.grading.model import EdgeLength, EdgeStart, PickUp
from gaugewright.grading.stack import Stack, stack_rows
from gaugewright.grading.take_up import TakeUps
from gaugewright.gauge.model import Gauge
from gaugewright.rounding import half_up, up
from gaugewright.sizing.environment import Environment


@dataclass(frozen=True, slots=True)
class Measured:
    """One size of a piece: stitches at the start, then rows and end stitches of each section.

    `necks` holds the neck stitches of a shoulders section, 0 elsewhere.
    """

    start: int
    rows: tuple[int, ...]
    ends: tuple[int, ...]
    necks: tuple[int, ...]
    wanted_total: float | None


def measure_piece(
    piece: Piece, design: Design, env: Environment, taken: TakeUps, start: int, coupled: tuple[bool, ...]
) -> Measured:
    """Counts and rows. `coupled[i]` says that section i changes stitches two at a time, so that its
    end has the parity of its start.
    """
    ends: list[int | None] = []
    known: list[int | None] = []
    necks: list[int] = []
    stitches: int | None = start
    for section, pair in zip(piece.sections, coupled, strict=True):
        necks.append(_neck(section, design, env, stitches) if isinstance(section, Shoulders) else 0)
        end = _end_count(piece, section, design, env, taken, stitches, pair)
        known.append(_rows_from_counts(section, stitches, end))
        stitches = end
        ends.append(end)
    stack = stack_rows(piece, design, env, tuple(known))
    return Measured(start, stack.rows, _fill_ends(piece, start, ends, stack), tuple(necks), stack.wanted)


def start_count(piece: Piece, design: Design, env: Environment, taken: TakeUps) -> int:
    """Stitches of the foundation (finished width plus what seams take), worked in the start's fabric."""
    fabric = design.fabric(piece.start.fabric)
    width = piece.start.width
    assert width is not None  # only called for chains and rings
    exact = fabric.gauge.stitches_in(env.length(width))
    if piece.start.kind == "chain" and not is_edge_length(width):
        exact += _edge_take_up(piece, taken, bottom=True)
    return allowed_count(exact, fabric.rule, width.origin, env.size, f"{piece.key} starts with")


def pick_up_start(piece: Piece, design: Design, edges: Mapping[tuple[str, str], EdgeLength]) -> EdgeStart:
    """Stitches picked up along each edge of the pieces graded before."""
    gauge = design.fabric(piece.start.fabric).gauge
    return EdgeStart(tuple(
        PickUp(key, name, stitches_along(edges[key, name], gauge), edges[key, name].rows, edges[key, name].stitches)
        for key, name in piece.start.edges
    ))


# Stitch for stitch is what anyone does on a stitch edge; a gauge further off than this would ruffle or pull it.
ONE_TO_ONE_WITHIN = 0.10


def stitches_along(edge: EdgeLength, gauge: Gauge) -> int:
    """Stitches picked up along an edge: one to one on stitches, by true length on row ends and curves."""
    exact = gauge.stitches_in(edge.length)
    if not edge.rows and abs(exact - edge.stitches) <= ONE_TO_ONE_WITHIN * edge.stitches:
        return edge.stitches
    return max(1, half_up(exact))


def allowed_count(exact: float, rule: CountRule, origin: Origin, size: str, what: str) -> int:
    """The count the rule gives; a located problem where no allowed count comes near the exact one."""
    try:
        count = count_for(exact, rule)
    except CountImpossible as fault:
        raise ProblemsFound([Problem("count-impossible", f"{what} a count that cannot be: {fault}", origin, "change the multiple or the parity", size)]) from None
    limit = spacing(rule) / 2 if rule.direction == "nearest" else spacing(rule)
    if exact < 0.5 or abs(count - exact) > limit + 1e-6:
        raise ProblemsFound([Problem(
            "multiple-does-not-fit", f"{what} {exact:.1f} stitches; the nearest count its rule allows is {count}", origin,
            f"make it at least {count} stitches wide, or use a smaller multiple or minimum", size,
        )])
    return count


def is_edge_length(formula: Formula) -> bool:
    """A length made of edges is met stitch for stitch: no take-up is added to it."""
    return any(call.function == "edge" for call in calls_in(formula.node))


def _edge_take_up(piece: Piece, taken: TakeUps, bottom: bool) -> float:
    """Stitches that seams take off the width at the bottom (or top) of both row-end edges."""
    total = 0.0
    for side in ("starting", "far"):
        parts = [edge for edge in piece.edges if edge.side == side]
        if parts:
            total += taken.get((piece.key, parts[0 if bottom else -1].name), 0.0)
    return total


def _end_count(
    piece: Piece, section: Section, design: Design, env: Environment, taken: TakeUps, stitches: int | None, pair: bool
) -> int | None:
    if not isinstance(section, Taper):
        return stitches
    if section.stitches is not None:
        return section.stitches
    if section.target is None:
        return None
    fabric = design.fabric(section.fabric)
    exact = fabric.gauge.stitches_in(env.length(section.target))
    if piece.start.kind != "ring" and not is_edge_length(section.target):
        exact += _edge_take_up(piece, taken, bottom=False)
    rule = replace(fabric.rule, direction=section.direction)
    if pair and stitches is not None:
        rule = replace(rule, parity="odd" if stitches % 2 else "even")
    return allowed_count(exact, rule, section.target.origin, env.size, f"{piece.key} is shaped to")


def _rows_from_counts(section: Section, before: int | None, end: int | None) -> int | None:
    """Rows that follow from a target and the stitches changed per row."""
    if not isinstance(section, Taper) or section.each is None or section.extent is not None:
        return None
    if before is None or end is None:
        return None
    return up(abs(end - before) / abs(section.each))


def _fill_ends(piece: Piece, start: int, ends: list[int | None], stack: Stack) -> tuple[int, ...]:
    """Counts that follow from rows and stitches per row, now that the rows are known."""
    stitches, found = start, []
    for section, end, rows in zip(piece.sections, ends, stack.rows, strict=True):
        if isinstance(section, Taper) and section.each is not None and section.extent is not None:
            stitches = stitches + section.each * rows
        elif isinstance(section, Taper):
            assert end is not None
            stitches = end
        found.append(stitches)
    return tuple(found)


def _neck(section: Shoulders, design: Design, env: Environment, stitches: int | None) -> int:
    assert stitches is not None
    fabric = design.fabric(section.fabric)
    rule = CountRule(parity="odd" if stitches % 2 else "even", minimum=1)
    exact = fabric.gauge.stitches_in(env.length(section.neck))
    neck = allowed_count(exact, rule, section.neck.origin, env.size, "the neck has")
    if neck > stitches - 2:
        raise ProblemsFound([Problem(
            "neck-too-wide", f"the neck takes {neck} of {stitches} stitches and leaves no shoulders",
            section.origin, f"make the neck at most {fabric.gauge.width_of(stitches - 2) / 10:.1f} cm wide", env.size,
        )])
    return neck


def even_section(section: Section) -> bool:
    """A section that changes no stitches."""
    return isinstance(section, (Even, Shoulders))
