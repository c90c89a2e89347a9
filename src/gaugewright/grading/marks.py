"""Levels found on a piece's rows, and the edges that lie between them."""

from gaugewright.design.model import Piece
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.measure import Measured
from gaugewright.grading.plan import Mark
from gaugewright.grading.stack import level_height, row_at, section_end_at
from gaugewright.grading.take_up import SIDES
from gaugewright.sizing.environment import Environment


def marks_of(piece: Piece, measured: Measured, gauges: tuple[Gauge, ...], env: Environment) -> tuple[Mark, ...]:
    """Where one edge of a side ends and the next begins, from the bottom up on each side."""
    found = []
    for side in SIDES:
        edges = [edge for edge in piece.edges if edge.side == side]
        reached = 0
        for below, above in zip(edges, edges[1:], strict=False):
            assert below.top is not None  # the reader has made sure that a level stands between two edges
            row = mark_row(piece, below.top, measured, gauges, env)
            if row <= reached:
                message = f"{below.name} of {piece.key} ends at the level {below.top}, no row above where it begins"
                hint = "name the levels from the bottom up, at least one row apart"
                raise ProblemsFound([Problem("levels-out-of-order", message, piece.origin, hint, env.size)])
            found.append(Mark(below.top, row, below.name, above.name, side))
            reached = row
    return tuple(found)


def mark_row(piece: Piece, level: str, measured: Measured, gauges: tuple[Gauge, ...], env: Environment) -> int:
    """The row at whose end a level is reached: a section's last row if one ends at this height, else
    measured down from the top."""
    height = level_height(level, env)
    row = section_end_at(height, piece, measured.rows, env)
    if row is None:
        depth = measured.wanted_total - height
        row = row_at(depth - measured.taller, measured.rows, gauges) if depth > 0 else 0
    if not 0 < row < sum(measured.rows):
        message = f"the level {level} ({height / 10:.1f} cm) does not lie between the bottom and the top of {piece.key}"
        hint = f"set {level} at least one row below the top and above the bottom edge"
        raise ProblemsFound([Problem("level-outside", message, piece.origin, hint, env.size)])
    return row
