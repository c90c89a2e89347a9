"""Counts and rows of one piece in one size.

In: the designed piece, one size's environment, the count it starts with, and where each taper is
shaped. Out: each section's rows and end stitches. Rows that follow from counts come first, then the
stack of all rows, then counts that follow from rows.
"""

from dataclasses import dataclass, replace

from gaugewright.design.model import TOPS, UNSTACKED, Armhole, Cap, Crown, Design, Even, Motif, Piece, Raglan, RaglanEdge, RoundYoke, Shoulders, Slit, Taper, Triangle
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.counts import CountRule
from gaugewright.grading.allowed import Asked, allowed_count, even_by, of_parity, stated_count, stepped_count
from gaugewright.grading.cap_fit import cap_of
from gaugewright.grading.crowns import crown_end, crown_rounds
from gaugewright.grading.motifs import motif_end, rounds_of
from gaugewright.grading.plan import PLACES, ShapedEdges
from gaugewright.grading.raglan_plans import counts_of
from gaugewright.grading.rising import extra_height
from gaugewright.grading.round_yoke_plans import division_of
from gaugewright.grading.stack import end_heights, fixed_rows, stack_rows
from gaugewright.grading.starts import is_edge_length
from gaugewright.grading.take_up import TakeUps, side_take_up
from gaugewright.grading.tops import Shape, Stacked, shape_all
from gaugewright.grading.triangles import triangle_cycle, triangle_extent
from gaugewright.grading.triangle_rows import after_rows
from gaugewright.rounding import up
from gaugewright.sizing.environment import Environment

Shaped = tuple[ShapedEdges | None, ...]
"""For each section the edges it shapes, or None: spread round the rounds, or no taper at all."""


@dataclass(frozen=True, slots=True)
class Measured:
    """One size of a piece: stitches at the start, then rows and end stitches of each section.

    `necks` holds the neck stitches of a section that ends in shoulders, 0 elsewhere; `shapes` what is
    shaped at the edges of armholes, necks, slopes and caps; `wanted_total` is the height wanted in mm,
    before rows were rounded; `taller` is what the last row is higher than a row of its fabric.
    """

    start: int
    rows: tuple[int, ...]
    ends: tuple[int, ...]
    necks: tuple[int, ...]
    wanted_total: float
    shapes: tuple[Shape | None, ...] = ()
    taller: float = 0.0

    def before(self, index: int) -> int:
        """Stitches with which a section begins."""
        return self.ends[index - 1] if index else self.start

    def change(self, index: int) -> int:
        """Stitches that a section gains, or loses if negative."""
        return self.ends[index] - self.before(index)


@dataclass(frozen=True, slots=True)
class _Size:
    """What the counts of one size of one piece are worked out from."""

    piece: Piece
    design: Design
    env: Environment
    taken: TakeUps
    shaped: Shaped
    heights: tuple[float | None, ...]


def measure_piece(piece: Piece, design: Design, env: Environment, taken: TakeUps, start: int, shaped: Shaped) -> Measured:
    """Counts and rows of one size; `env` knows the piece's total."""
    size = _Size(piece, design, env, taken, shaped, end_heights(piece, design, env))
    taller = extra_height(piece, design, env)
    stack = stack_rows(piece, design, env, _rows_from_counts(size, start), taller)
    ends: list[int] = []
    necks: list[int] = []
    before = start
    for index, section in enumerate(piece.sections):
        necks.append(_neck(section, size, before) if isinstance(section, Shoulders) and section.slope is None else 0)
        end = _end_count(size, index, before, stack.rows[index])
        assert end is not None  # rows and the count before are known now
        ends.append(end)
        before = end
    stacked = Stacked(start, list(stack.rows), ends, necks, [None] * len(ends))
    shape_all(piece, design, env, stacked)
    return Measured(start, tuple(stacked.rows), tuple(ends), tuple(necks), stack.wanted, tuple(stacked.shapes), taller)


def lead_rows(index: int) -> int:
    """Rows worked even before a section may shape: row 1 goes into the foundation, or is picked up."""
    return 1 if index == 0 else 0


def step_of(section: Taper, shaped: ShapedEdges | None) -> int:
    """Stitches by which every shaping row changes the count, where the spec fixes it, else 0.

    A round's changes are spread, and its last round may take a smaller rest: only edges fix it.
    """
    return abs(section.each) if section.each is not None and shaped is not None else 0


def _rows_from_counts(size: _Size, start: int) -> tuple[int | None, ...]:
    """Rows that follow from a target and the stitches changed each time; None for the others."""
    before: int | None = start
    found: list[int | None] = []
    for index, section in enumerate(size.piece.sections):
        rows = None
        if isinstance(section, Taper) and section.each is not None and section.extent is None:
            rows, before = _rows_to_target(size, index, section, before)
        elif isinstance(section, Cap):
            rows, before = _cap_rows(size, section, before)
        elif isinstance(section, Crown):
            fabric = size.design.fabric(section.fabric)
            end = crown_end(section, size.piece, fabric, size.env)
            rows, before = crown_rounds(section, fabric, (before, end), lead_rows(index), size.piece, size.env.size), end
        elif isinstance(section, Motif):
            fabric = size.design.fabric(section.fabric)
            rows = rounds_of(section, fabric, size.env)
            before = motif_end(section, fabric, rows)
        elif isinstance(section, Triangle):
            rows = triangle_extent(section, size.design.fabric(section.fabric), size.piece.key, size.env)
        else:
            own = None if isinstance(section, UNSTACKED) else _own_rows(size, section)
            before = _end_count(size, index, before, own)
        found.append(rows)
    return tuple(found)


def _cap_rows(size: _Size, section: Cap, before: int | None) -> tuple[int, int]:
    """A cap's rows and last stitches, which follow from what is wide below it."""
    if before is None:
        message = f"the cap of {size.piece.key} follows from the stitches below it, and those follow from rows not known yet"
        raise ProblemsFound([Problem("each-undecided", message, section.origin, "give the taper below it a `target`", size.env.size)])
    made = cap_of(section, size.piece, size.design.fabric(section.fabric).gauge, size.env, before)
    return made.rows, made.top


def _own_rows(size: _Size, section: Even | Taper | Armhole | RaglanEdge | Raglan | RoundYoke | Slit) -> int | None:
    return fixed_rows(section, size.design.fabric(section.fabric).gauge, size.env)


def _rows_to_target(size: _Size, index: int, section: Taper, before: int | None) -> tuple[int, int]:
    assert section.each is not None
    name, origin, label = size.piece.key, section.origin, size.env.size
    end = _end_count(size, index, before, None)
    if before is None or end is None:
        message = f"the rows of this taper of {name} follow from its stitches, and those follow from its rows"
        hint = "give this taper, or one below it, a number of rows"
        raise ProblemsFound([Problem("each-undecided", message, origin, hint, label)])
    if end == before:
        message = f"this taper of {name} begins and ends with {end} stitches: there is nothing to shape"
        raise ProblemsFound([Problem("nothing-to-shape", message, origin, "set its target further away, or work even", label)])
    return up(abs(end - before) / abs(section.each)) + lead_rows(index), end


def _end_count(size: _Size, index: int, before: int | None, rows: int | None) -> int | None:
    """Stitches at a section's end; None while the rows or stitches it follows from aren't known."""
    section = size.piece.sections[index]
    match section:
        case Taper(each=int() as each, extent=extent) if extent is not None:
            if before is None or rows is None:
                return None
            return _after_rows(size, section, before, each, rows - lead_rows(index))
        case Taper():
            return _target(size, index, section, before)
        case Armhole() | RaglanEdge():
            return _edges_end(size, index, section, before)
        case Cap() if before is not None:
            return _cap_rows(size, section, before)[1]
        case Crown():
            return crown_end(section, size.piece, size.design.fabric(section.fabric), size.env)
        case Motif() if rows is not None:
            return motif_end(section, size.design.fabric(section.fabric), rows)
        case Triangle() if rows is not None:
            return after_rows(rows, triangle_cycle(size.design.fabric(section.fabric).gauge))
        case Raglan() if before is not None:
            return counts_of(section, before, size.design.fabric(section.fabric).gauge, size.env).end.total
        case RoundYoke():
            return division_of(section, size.design.fabric(section.fabric), size.env).total
        case Even() | Slit() if before is not None and rows is not None:
            asked = Asked(f"{size.piece.key} is worked even over", section.origin, size.env.size)
            hint = f"let what comes before it end in the fabric {section.fabric}, whose counts are then used"
            return stated_count(before, size.design.fabric(section.fabric).rule, asked, hint)
        case _:
            return before


def _after_rows(size: _Size, section: Taper, before: int, each: int, rows: int) -> int:
    if rows < 1:
        message = f"this taper of {size.piece.key} has no row to shape: the first row is worked into the foundation as it is"
        raise ProblemsFound([Problem("nothing-to-shape", message, section.origin, "give it at least 2 rows", size.env.size)])
    end = before + each * rows
    if end < 1:
        message = f"{size.piece.key} has {before} stitches here, and {rows} rows that lose {-each} each leave none"
        hint = f"give it at most {(before - 1) // -each} shaping rows, or lose fewer stitches each time"
        raise ProblemsFound([Problem("nothing-left", message, section.origin, hint, size.env.size)])
    return end


def _target(size: _Size, index: int, section: Taper, before: int | None) -> int | None:
    """The count at a taper's end: as stated, or from a width, reached by what its edges allow."""
    shaped, rule = size.shaped[index], size.design.fabric(section.fabric).rule
    step = step_of(section, shaped)
    by, in_twos = PLACES[shaped] if shaped else 1, shaped in ("both", "pairs")
    if before is None and (step or by > 1):
        return None
    origin = section.origin if section.target is None else section.target.origin
    asked = Asked(f"{size.piece.key} is shaped to", origin, size.env.size)
    if section.stitches is not None:
        _check_reach(section, section.stitches - (before or 0), step or by, asked)
        return stated_count(section.stitches, rule, asked)
    exact = _exact_target(size, index, section)
    rule = replace(rule, direction=section.direction)
    if (step or by == PLACES["sides"]) and before is not None:
        return stepped_count(exact, before, step or by, rule, asked)
    if in_twos and before is not None:
        rule = even_by(size.design.conventions.taper_ends, of_parity(rule, before))
    return allowed_count(exact, rule, asked)


def _exact_target(size: _Size, index: int, section: Taper) -> float:
    assert section.target is not None  # a taper has two of extent, target or stitches, and each
    exact = size.design.fabric(section.fabric).gauge.stitches_in(size.env.length(section.target))
    if size.piece.start.in_rounds or is_edge_length(section.target):
        return exact
    return exact + _take_up_above(size, index)


def _take_up_above(size: _Size, index: int) -> float:
    """Stitches that seams take off the width at a section's end."""
    last = all(isinstance(above, TOPS) for above in size.piece.sections[index + 1 :])
    return side_take_up(size.piece, size.taken, None if last else size.heights[index], size.env)


def _edges_end(size: _Size, index: int, section: Armhole | RaglanEdge, before: int | None) -> int | None:
    """The count left above armholes, or by raglan edges at the neck: of the parity below them where both edges are shaped."""
    if before is None:
        return None
    gauge = size.design.fabric(section.fabric).gauge
    rule = of_parity(CountRule(), before) if section.at == "both" else CountRule()
    asked = Asked(f"{size.piece.key} is shaped to", section.target.origin, size.env.size)
    exact = gauge.stitches_in(size.env.length(section.target))
    return allowed_count(exact if is_edge_length(section.target) else exact + _take_up_above(size, index), rule, asked)


def _check_reach(section: Taper, change: int, by: int, asked: Asked) -> None:
    """A stated count must be reached in whole steps: two at a time at both edges, four at both sides of a round."""
    if change % by:
        message = f"{asked.what} {section.stitches} stitches, {abs(change)} away: steps of {by} do not reach that"
        low = (section.stitches or 0) - change % by
        hint = f"write {low} or {low + by} stitches"
        raise ProblemsFound([Problem("steps-miss-target", message, asked.origin, hint, asked.size)])


def _neck(section: Shoulders, size: _Size, stitches: int) -> int:
    fabric, label = size.design.fabric(section.fabric), size.env.size
    rule = of_parity(CountRule(), stitches)
    exact = fabric.gauge.stitches_in(size.env.length(section.neck))
    if stitches < 3:
        message = f"{stitches} stitches can't be divided into two shoulders and a neck"
        raise ProblemsFound([Problem("neck-too-wide", message, section.origin, f"make the piece at least {fabric.gauge.width_of(3) / 10:.1f} cm wide", label)])
    neck = allowed_count(exact, rule, Asked("the neck has", section.neck.origin, label))
    if neck > stitches - 2:
        message = f"the neck takes {neck} of {stitches} stitches and leaves no shoulders"
        hint = f"make the neck at most {fabric.gauge.width_of(stitches - 2) / 10:.1f} cm wide"
        raise ProblemsFound([Problem("neck-too-wide", message, section.origin, hint, label)])
    return neck


