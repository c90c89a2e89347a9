"""Along the rows: a stack of sections rounded once, in order of what matters to the wearer.

The total comes first, then what is measured down from the shoulder (armhole, neck); one stretch,
the lowest that ends at a level unless the spec says `rest`, takes what is left. Errors never add up,
and pieces that share levels share rows.
"""

from dataclasses import dataclass

from gaugewright.design.model import Design, ForLength, ForRows, Piece, Rest, Section, Shoulders, ToLevel
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.rounding import half_up
from gaugewright.sizing.environment import Environment


@dataclass(frozen=True, slots=True)
class Stack:
    """Rows of each section (0 for shoulders) and the wanted total in mm; None where nothing fixes it."""

    rows: tuple[int, ...]
    wanted: float | None


def stack_rows(piece: Piece, design: Design, env: Environment, known: tuple[int | None, ...]) -> Stack:
    """Rows of each section. `known` gives rows that follow from counts (target and stitches per round).

    Raises located problems: `no-room` where the sections leave nothing for the stretch that takes the
    rest, `too-short` where a section is less than one row.
    """
    gauges = tuple(design.fabric(section.fabric).gauge for section in piece.sections)
    taker = _rest_section(piece)
    rows = [_own_rows(piece, i, gauges[i], env, known[i], i == taker) for i in range(len(piece.sections))]
    wanted = _wanted_total(piece, env)
    _down_from_the_top(piece, gauges, env, taker, rows)
    if taker is not None:
        if wanted is None:
            raise ProblemsFound([Problem(
                "total-missing", f"piece {piece.key} has a section that takes the rest, but no total",
                piece.sections[taker].origin, "give the piece a total:, or end its last section at a level", env.size,
            )])
        others = sum(gauge.height_of(count or 0) for gauge, count in zip(gauges, rows, strict=True))
        rows[taker] = half_up(gauges[taker].rows_in(wanted - others))
    _check(piece, env, rows, gauges, taker, wanted)
    return Stack(tuple(count or 0 for count in rows), wanted)


def _rest_section(piece: Piece) -> int | None:
    for index, section in enumerate(piece.sections):
        if isinstance(_extent(section), Rest):
            return index
    return next((i for i, section in enumerate(piece.sections) if isinstance(_extent(section), ToLevel)), None)


def _extent(section: Section) -> object:
    return None if isinstance(section, Shoulders) else section.extent


def _own_rows(piece: Piece, index: int, gauge: Gauge, env: Environment, known: int | None, rest: bool) -> int | None:
    extent = _extent(piece.sections[index])
    if rest:
        return None
    if isinstance(extent, ForRows):
        return extent.rows
    if isinstance(extent, ForLength):
        return half_up(gauge.rows_in(env.length(extent.length)))
    return known


def _wanted_total(piece: Piece, env: Environment) -> float | None:
    if piece.total is not None:
        return env.length(piece.total)
    ends = [section for section in piece.sections if isinstance(_extent(section), ToLevel)]
    return env.length(_extent(ends[-1]).height) if ends else None  # type: ignore[attr-defined]


def level_height(level: str, env: Environment) -> float:
    """A level's wanted height above the hem, mm."""
    return env.length(env.formulas[level])


def _down_from_the_top(
    piece: Piece, gauges: tuple[Gauge, ...], env: Environment, taker: int | None, rows: list[int | None]
) -> None:
    """Gives sections that end at levels their rows, each depth rounded from the top level down."""
    ends = [i for i, section in enumerate(piece.sections) if isinstance(_extent(section), ToLevel)]
    if not ends:
        return
    top = env.length(_extent(piece.sections[ends[-1]]).height)  # type: ignore[attr-defined]
    above = 0.0
    for below, index in reversed(list(zip(ends, ends[1:], strict=False))):
        depth = top - env.length(_extent(piece.sections[below]).height)  # type: ignore[attr-defined]
        between = sum(gauges[i].height_of(rows[i] or 0) for i in range(below + 1, index))
        if index != taker:
            rows[index] = half_up(gauges[index].rows_in(depth - above - between))
        above += between + gauges[index].height_of(rows[index] or 0)


def _check(
    piece: Piece, env: Environment, rows: list[int | None], gauges: tuple[Gauge, ...], taker: int | None, wanted: float | None
) -> None:
    problems = []
    for index, (section, count) in enumerate(zip(piece.sections, rows, strict=True)):
        if isinstance(section, Shoulders) or (count is not None and count >= 1):
            continue
        if index == taker:
            others = sum(g.height_of(c or 0) for i, (g, c) in enumerate(zip(gauges, rows, strict=True)) if i != index)
            problems.append(Problem(
                "no-room", f"the other sections of {piece.key} are {others / 10:.1f} cm together and the total is "
                f"{(wanted or 0) / 10:.1f} cm: nothing is left for this one",
                section.origin, "make the total longer or another section shorter", env.size,
            ))
        else:
            problems.append(Problem(
                "too-short", f"this section of {piece.key} is less than one row ({gauges[index].row_height / 10:.1f} cm)",
                section.origin, "make it at least one row long, or leave it out", env.size,
            ))
    if problems:
        raise ProblemsFound(problems)


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
