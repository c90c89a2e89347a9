"""How many motifs come nearest to a width and a length once they are joined."""

from dataclasses import replace

from gaugewright.design.model import TAKE_UP_STITCHES, Design, Even, Grid, Motif, Piece
from gaugewright.design.rims import border_of
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.layout_model import Layout, with_border
from gaugewright.grading.motifs import corner_chains, width_across
from gaugewright.grading.plan import PiecePlan
from gaugewright.grading.stack import stack_rows
from gaugewright.rounding import half_up
from gaugewright.sizing.environment import Environment


def layout_of(piece: Piece, design: Design, rounds: int, gauge: Gauge, env: Environment) -> Layout | None:
    """The layout of one size, None without a grid: as many motifs across and down as come nearest with their border, at least one.

    Raises a located problem where the motif is more than twice as wide or long as the whole.
    """
    grid, section = piece.grid, piece.sections[0]
    if grid is None or not isinstance(section, Motif):
        return None
    width = joined_width(section.sides, rounds, gauge, TAKE_UP_STITCHES[grid.take_up])
    one = Layout(section.sides, 1, 1, width)
    border = border_depth(piece, design, env)
    own_width, own_length = with_border(one, border)
    across = 1 + half_up((env.length(grid.across) - own_width) / width)
    down = 1 + half_up((env.length(grid.down) - own_length) / one.rise)
    for count, formula, what, own in ((across, grid.across, "wide", own_width), (down, grid.down, "long", own_length)):
        if not 1 <= count <= MOST_ALONG:
            raise ProblemsFound([_no_motif(piece, count, env.length(formula), what, own, bool(border), env.size)])
    if section.sides == 6 and across == 1 and down > 1:
        message = f"one hexagon across leaves none for every second row of {piece.key}, which lies half a motif in"
        hint = f"make it at least {(own_width + width / 2) / 10:.1f} cm wide, or make the motif smaller"
        raise ProblemsFound([Problem("grid-too-small", message, grid.across.origin, hint, env.size)])
    return Layout(section.sides, across, down, width, grid.turns, grid.plan, border, bool(corner_chains(section, design.fabric(section.fabric))))


MOST_ALONG = 200
"""No throw has more motifs side by side: a unit was mistaken."""


def layout_worked(piece: Piece, plan: PiecePlan, gauge: Gauge) -> Layout | None:
    """How planned motifs lie once worked at a gauge, which may be another than they were planned for."""
    grid, section = piece.grid, piece.sections[0]
    if plan.layout is None or grid is None or not isinstance(section, Motif):
        return None
    return replace(plan.layout, width=joined_width(section.sides, plan.rows, gauge, TAKE_UP_STITCHES[grid.take_up]))


def border_depth(piece: Piece, design: Design, env: Environment) -> float:
    """How deep the border round a grid will be, mm: its rounds follow from its lengths alone."""
    border = border_of(piece, design)
    if border is None or not all(isinstance(section, Even) for section in border.sections):
        return 0.0  # what is shaped otherwise is a fault of its own
    inside = env if border.total is None else env.within({"total": env.length(border.total)})
    rows = stack_rows(border, design, inside, (None,) * len(border.sections)).rows
    return sum(design.fabric(section.fabric).gauge.height_of(count) for section, count in zip(border.sections, rows, strict=True))


def joined_width(sides: int, rounds: int, gauge: Gauge, take_up: float) -> float:
    """A motif from side to side, less what its joins take: a share of a stitch of its last round is so much of its height.

    >>> joined_width(4, 6, Gauge(stitches=20, width=200, rows=20, height=200), 0.5)
    110.0
    """
    return width_across(sides, (rounds - take_up) * gauge.row_height)


def _no_motif(piece: Piece, count: int, wanted: float, what: str, own: float, border: bool, size: str) -> Problem:
    assert piece.grid is not None  # only a grid has motifs side by side
    grid = piece.grid
    motif = "one motif with its border" if border else "one motif"
    if count < 1:
        message = f"{piece.key} is to be {wanted / 10:.1f} cm {what}, and {motif} is {own / 10:.1f} cm: no motif comes nearest"
        return Problem("grid-too-small", message, grid.origin, f"make it at least {own / 10:.1f} cm {what}, or make the motif smaller", size)
    message = f"{piece.key} would have {count} motifs, more than {MOST_ALONG}, to be {wanted / 10:.0f} cm {what}"
    return Problem("grid-too-large", message, grid.origin, "make it smaller, or the motif larger: a unit may be mistaken", size)
