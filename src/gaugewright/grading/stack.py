"""Along the rows: a stack of sections rounded once, in order of what matters to the wearer.

The heights of levels and the total are fixed points. Between two of them one section takes what the
others leave; worked out from the top down, the total comes first, then what hangs from the shoulder
(armhole, neck), and the lowest stretch takes what is left. Errors never add up, and pieces that
share levels share rows.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.design.model import UNSTACKED, Armhole, Cap, Crown, Design, Even, ForLength, ForRows, Motif, Piece, Raglan, RaglanEdge, Rest, RoundYoke, Slit, Taper, ToLevel, Triangle
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.rounding import half_up
from gaugewright.sizing.environment import Environment
from gaugewright.tolerances import total_tolerance

Running = Even | Taper | Armhole | RaglanEdge | Cap | Crown | Raglan | RoundYoke | Slit | Motif | Triangle
"""Sections with rows of their own."""

MOST_ROWS = 10_000
"""No piece has more rows: ten metres of the finest thread. Above it a unit was mistaken."""

SAME_HEIGHT = 1e-6
"""Two formulas that come to the same height differ by less than this in mm: the last bits of a sum."""


@dataclass(frozen=True, slots=True)
class Stack:
    """Rows of each section (0 for shoulders) and the wanted height in mm."""

    rows: tuple[int, ...]
    wanted: float


@dataclass(frozen=True, slots=True)
class Stretch:
    """One section as the stack sees it: fixed `rows` and the `length` they stand for, or None of
    both where it takes what the others leave. `level` is the height it ends at, if it names one."""

    index: int
    section: Running
    gauge: Gauge
    rows: int | None
    length: float | None
    level: float | None


def stack_rows(piece: Piece, design: Design, env: Environment, known: tuple[int | None, ...], taller: float = 0.0) -> Stack:
    """Rows of each section. `known` gives rows that follow from counts (target and stitches per round);
    the last row of the piece is `taller` by so many mm than a row of its fabric.

    Raises located problems where sections leave no room, are less than a row, or contradict a total.
    """
    stretches = tuple(
        _stretch(index, section, design.fabric(section.fabric).gauge, env, known[index], taller if index == len(piece.sections) - 2 else 0.0)
        for index, section in enumerate(piece.sections)
        if not isinstance(section, UNSTACKED)
    )
    _check_levels(piece, stretches, env)
    wanted = _wanted_height(piece, stretches, env)
    rows = [0] * len(piece.sections)
    problems: list[Problem] = []
    above = taller
    for bottom, group in reversed(list(_groups(stretches))):
        takers = [stretch for stretch in group if stretch.rows is None]
        if len(takers) > 1:
            message = f"two sections of {piece.key} take what is left below the same height"
            hint = "give one of them a length, or let the upper one end at no level"
            raise ProblemsFound([Problem("rest-twice", message, takers[0].section.origin, hint, env.size)])
        fixed = sum(stretch.gauge.height_of(stretch.rows) for stretch in group if stretch.rows is not None)
        above += fixed
        left = wanted - bottom - above
        found: list[Problem] = []
        for stretch in group:
            rows[stretch.index] = half_up(stretch.gauge.rows_in(left)) if stretch.rows is None else stretch.rows
            found += _row_problems(piece, stretch, rows[stretch.index], left, env)
        problems = found + problems
        above += sum(stretch.gauge.height_of(rows[stretch.index]) for stretch in takers)
    if problems:
        raise ProblemsFound(problems)
    return Stack(tuple(rows), wanted)


def fixed_rows(section: Running, gauge: Gauge, env: Environment, taller: float = 0.0) -> int | None:
    """Rows of a section that states its own length or rows, its last row `taller`; None where they depend on other things."""
    match section.extent:
        case ForRows(rows=rows):
            return rows
        case ForLength(length=formula):
            return half_up(gauge.rows_in(env.length(formula) - taller))
        case _:
            return None


def _stretch(index: int, section: Running, gauge: Gauge, env: Environment, known: int | None, taller: float) -> Stretch:
    rows = fixed_rows(section, gauge, env, taller)
    match section.extent:
        case ForLength(length=formula):
            return Stretch(index, section, gauge, rows, env.length(formula), None)
        case ForRows(rows=rows):
            return Stretch(index, section, gauge, rows, gauge.height_of(rows) + taller, None)
        case ToLevel(height=formula):
            return Stretch(index, section, gauge, None, None, env.length(formula))
        case Rest():
            return Stretch(index, section, gauge, None, None, None)
        case None:
            assert known is not None
            return Stretch(index, section, gauge, known, gauge.height_of(known), None)


def _groups(stretches: tuple[Stretch, ...]) -> Iterator[tuple[float, tuple[Stretch, ...]]]:
    """Sections between two fixed heights, from the bottom up, each group with its lower height."""
    bottom, group = 0.0, []
    for stretch in stretches:
        group.append(stretch)
        if stretch.level is not None:
            yield bottom, tuple(group)
            bottom, group = stretch.level, []
    if group:
        yield bottom, tuple(group)


def _wanted_height(piece: Piece, stretches: tuple[Stretch, ...], env: Environment) -> float:
    """The stated total, or the last level and what is stacked on it."""
    reached = 0.0
    for stretch in stretches:
        if stretch.level is not None:
            reached = stretch.level
        elif stretch.length is not None:
            reached += stretch.length
    total = None if piece.total is None else env.length(piece.total)
    taker = next((stretch for stretch in stretches if isinstance(stretch.section.extent, Rest)), None)
    above_levels = taker is not None and all(stretch.level is None for stretch in stretches[taker.index :])
    if taker is not None and above_levels:
        if total is None:
            message = f"a section of {piece.key} takes the rest, but the piece has no total"
            hint = "give the piece a `total`"
            raise ProblemsFound([Problem("rest-without-total", message, taker.section.origin, hint, env.size)])
        return total
    within = total_tolerance(max(stretch.gauge.row_height for stretch in stretches))
    if total is not None and piece.total is not None and abs(total - reached) > within:
        message = f"the sections of {piece.key} come to {reached / 10:.1f} cm, but its total is {total / 10:.1f} cm"
        hint = "let one section take the rest (`length: rest`), or take out `total`"
        raise ProblemsFound([Problem("total-not-met", message, piece.total.origin, hint, env.size)])
    return reached if total is None else total


def _check_levels(piece: Piece, stretches: tuple[Stretch, ...], env: Environment) -> None:
    """Sections are worked upwards, so the heights they end at rise."""
    reached, problems = 0.0, []
    for stretch in stretches:
        if stretch.level is None:
            continue
        if stretch.level <= reached:
            below = f"at {reached / 10:.1f} cm" if reached else "at the bottom edge"
            message = f"this section of {piece.key} ends at {stretch.level / 10:.1f} cm, but it begins {below} or higher"
            least = reached + stretch.gauge.row_height
            hint = f"put the sections in the order of their heights, or raise this one's end to at least {least / 10:.1f} cm, {(least - stretch.level) / 10:.1f} cm higher"
            problems.append(Problem("levels-out-of-order", message, stretch.section.origin, hint, env.size))
        reached = max(reached, stretch.level)
    if problems:
        raise ProblemsFound(problems)


def _row_problems(piece: Piece, stretch: Stretch, rows: int, left: float, env: Environment) -> Iterator[Problem]:
    origin, row = stretch.section.origin, f"{stretch.gauge.row_height / 10:.1f} cm"
    if rows > MOST_ROWS:
        message = f"this section of {piece.key} comes to {rows} rows, more than {MOST_ROWS}"
        yield Problem("too-many-rows", message, origin, "check its length and the fabric's gauge", env.size)
    elif rows < 1 and stretch.rows is None:
        message = f"{max(left, 0.0) / 10:.1f} cm is left for this section of {piece.key}, and one row is {row}"
        yield Problem("no-room", message, origin, f"make the whole at least {(stretch.gauge.row_height - min(left, stretch.gauge.row_height)) / 10:.1f} cm longer, or another section so much shorter", env.size)
    elif rows < 1:
        message = f"this section of {piece.key} is less than one row ({row})"
        yield Problem("too-short", message, origin, f"make it at least one row long, {row}, or leave it out", env.size)


def end_heights(piece: Piece, design: Design, env: Environment) -> tuple[float | None, ...]:
    """The height at which each section is wanted to end, as far as it is known before any rows are."""
    reached: float | None = 0.0
    found: list[float | None] = []
    for section in piece.sections:
        match None if isinstance(section, UNSTACKED) else section.extent:
            case ToLevel(height=formula):
                reached = env.length(formula)
            case ForLength(length=formula) if reached is not None:
                reached += env.length(formula)
            case ForRows(rows=rows) if reached is not None:
                reached += design.fabric(section.fabric).gauge.height_of(rows)
            case _ if not isinstance(section, UNSTACKED):
                reached = None
        found.append(reached)
    return tuple(found)


def level_height(level: str, env: Environment) -> float:
    """A level's wanted height above the bottom edge, mm."""
    return env.length(env.formulas[level])


def section_end_at(height: float, piece: Piece, rows: tuple[int, ...], env: Environment) -> int | None:
    """The row on which a section ends that is worked up to this very height, if there is one."""
    for index, section in enumerate(piece.sections):
        if isinstance(section, (Even, Taper, Armhole, RaglanEdge)) and isinstance(section.extent, ToLevel):
            if abs(env.length(section.extent.height) - height) < SAME_HEIGHT:
                return sum(rows[: index + 1])
    return None


def row_at(height_from_top: float, rows: tuple[int, ...], gauges: tuple[Gauge, ...]) -> int:
    """The row at whose end a depth below the top is reached, the depth rounded to whole rows.

    Measured down from the top, because that is where armhole and neck hang from.
    """
    left, row = height_from_top, sum(rows)
    for count, gauge in zip(reversed(rows), reversed(gauges), strict=True):
        if left <= gauge.height_of(count):
            return row - half_up(gauge.rows_in(left))
        left -= gauge.height_of(count)
        row -= count
    return 0


def row_from_bottom(height: float, rows: tuple[int, ...], gauges: tuple[Gauge, ...]) -> int:
    """The row whose top is nearest to a height above the bottom edge: where a colour band ends."""
    row = 0
    for count, gauge in zip(rows, gauges, strict=True):
        if height <= gauge.height_of(count):
            return row + half_up(gauge.rows_in(height))
        height -= gauge.height_of(count)
        row += count
    return row


