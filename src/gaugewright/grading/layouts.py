"""How many motifs come nearest to a width and a length once they are joined."""

from gaugewright.design.model import TAKE_UP_STITCHES, Grid, Motif, Piece
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.layout_model import Layout
from gaugewright.grading.motifs import width_across
from gaugewright.rounding import half_up
from gaugewright.sizing.environment import Environment


def layout_of(piece: Piece, rounds: int, gauge: Gauge, env: Environment) -> Layout | None:
    """The layout of one size, None without a grid: as many motifs across and down as come nearest, at least one.

    Raises a located problem where the motif is more than twice as wide or long as the whole.
    """
    grid, section = piece.grid, piece.sections[0]
    if grid is None or not isinstance(section, Motif):
        return None
    width = joined_width(section.sides, rounds, gauge, TAKE_UP_STITCHES[grid.take_up])
    one = Layout(section.sides, 1, 1, width)
    across = half_up(env.length(grid.across) / width)
    down = 1 + half_up((env.length(grid.down) - one.joined_length) / one.rise)
    for count, formula, what, own in ((across, grid.across, "wide", width), (down, grid.down, "long", one.joined_length)):
        if not 1 <= count <= MOST_ALONG:
            raise ProblemsFound([_no_motif(piece, count, env.length(formula), what, own, grid, env.size)])
    if section.sides == 6 and across == 1 and down > 1:
        message = f"one hexagon across leaves none for every second row of {piece.key}, which lies half a motif in"
        hint = f"make it at least {1.5 * width / 10:.1f} cm wide, or make the motif smaller"
        raise ProblemsFound([Problem("grid-too-small", message, grid.across.origin, hint, env.size)])
    return Layout(section.sides, across, down, width, grid.turns, grid.plan)


MOST_ALONG = 200
"""No throw has more motifs side by side: a unit was mistaken."""


def joined_width(sides: int, rounds: int, gauge: Gauge, take_up: float) -> float:
    """A motif from side to side, less what its joins take: a share of a stitch of its last round is so much of its height.

    >>> joined_width(4, 6, Gauge(stitches=20, width=200, rows=20, height=200), 0.5)
    110.0
    """
    return width_across(sides, (rounds - take_up) * gauge.row_height)


def _no_motif(piece: Piece, count: int, wanted: float, what: str, own: float, grid: Grid, size: str) -> Problem:
    if count < 1:
        message = f"{piece.key} is to be {wanted / 10:.1f} cm {what}, and one motif is {own / 10:.1f} cm: no motif comes nearest"
        return Problem("grid-too-small", message, grid.origin, f"make it at least {own / 10:.1f} cm {what}, or make the motif smaller", size)
    message = f"{piece.key} would have {count} motifs, more than {MOST_ALONG}, to be {wanted / 10:.0f} cm {what}"
    return Problem("grid-too-large", message, grid.origin, "make it smaller, or the motif larger: a unit may be mistaken", size)
