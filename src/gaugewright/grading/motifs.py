"""Motifs: how many stitches each corner adds for the motif to lie flat, and how many rounds it has.

A regular polygon of n sides whose sides lie r row heights from its centre is 2 n tan(pi / n) r row heights round.
So each round is 2 tan(pi / n) row heights longer along each side than the one inside it, and as many stitches as
that is wide are added at each corner. An even number is the same in every round; an odd one is worked as one more
and one less by turns, since a corner is alike on both its sides.
"""

import math
from collections.abc import Iterator

from gaugewright.design.model import Design, Fabric, Motif, Piece
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.counts import CountRule
from gaugewright.gauge.model import Gauge
from gaugewright.grading.cloth import Cloth
from gaugewright.grading.stack import MOST_ROWS
from gaugewright.grading.motif_rows import MotifPlan, is_spaced, motif_rounds
from gaugewright.rounding import half_up
from gaugewright.sizing.environment import Environment

SQUARE = 4
"""Corners no sharper than a square's get one chain instead of two (common practice)."""


def flat_at_corner(sides: int, gauge: Gauge) -> float:
    """Stitches, not rounded, that each round adds at each corner.

    >>> square = Gauge(stitches=20, width=200, rows=20, height=200)
    >>> f"{flat_at_corner(4, square):.2f}", f"{flat_at_corner(6, square):.2f}"
    ('2.00', '1.15')
    """
    return 2 * math.tan(math.pi / sides) * gauge.row_height / gauge.stitch_width


def at_each_corner(sides: int, gauge: Gauge) -> int:
    """The same as a whole number, at least one: without an increase there is no corner."""
    return max(1, half_up(flat_at_corner(sides, gauge)))


def increases(each: int, rounds: int) -> tuple[int, ...]:
    """Stitches of the first round along a side, then what each round adds to a side.

    >>> increases(4, 3), increases(3, 4), increases(1, 4)
    ((4, 4, 4), (4, 2, 4, 2), (2, 0, 2, 0))
    """
    odd = each % 2
    return tuple(each + (odd if number % 2 == 0 else -odd) for number in range(rounds))


def motif_centre(section: Motif, fabric: Fabric) -> int:
    """Stitches of the first round."""
    return section.sides * increases(at_each_corner(section.sides, fabric.gauge), 1)[0]


def rounds_of(section: Motif, fabric: Fabric, env: Environment) -> int:
    """Rounds of a motif: as stated, or those that come nearest to its width. Raises a located problem where that is none."""
    if section.rounds is not None:
        return section.rounds
    assert section.target is not None  # a motif has one of both
    wanted = env.length(section.target)
    one = width_across(section.sides, fabric.gauge.row_height)
    rounds = half_up(wanted / one)
    if not 1 <= rounds <= MOST_ROWS:
        message = f"this motif is to be {wanted / 10:.1f} cm wide, and one round alone is {one / 10:.1f} cm"
        hint = f"make it at least {one / 10:.1f} cm wide" if rounds < 1 else "make it smaller: a unit may be mistaken"
        raise ProblemsFound([Problem("motif-size", message, section.target.origin, hint, env.size)])
    return rounds


def width_across(sides: int, apothem: float) -> float:
    """From side to side, or from a side to the corner opposite it, of a polygon whose sides lie so far from its centre.

    >>> width_across(4, 5.0), f"{width_across(3, 5.0):.1f}"
    (10.0, '15.0')
    """
    return 2 * apothem if sides % 2 == 0 else apothem * (1 + 1 / math.cos(math.pi / sides))


def motif_plan(section: Motif, fabric: Fabric, cloth: Cloth, rounds: int, turned: bool) -> MotifPlan:
    """The plan of so many rounds."""
    each = at_each_corner(section.sides, fabric.gauge)
    return MotifPlan(cloth, section.colour, section.sides, corner_chains(section, fabric), motif_rounds(increases(each, rounds), turned))


def corner_chains(section: Motif, fabric: Fabric) -> int:
    """Chains of a corner's space; none where a corner is a stitch."""
    spaced = at_each_corner(section.sides, fabric.gauge) > 1 and is_spaced(fabric.stitch)
    return (2 if section.sides <= SQUARE else 1) if spaced else 0


def motif_end(section: Motif, fabric: Fabric, rounds: int) -> int:
    """Stitches of the last round."""
    return section.sides * sum(increases(at_each_corner(section.sides, fabric.gauge), rounds))


def motif_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """A motif is all of its piece, and begins at a closed centre that holds what its first round needs."""
    for section in piece.sections:
        if not isinstance(section, Motif):
            continue
        fabric = design.fabric(section.fabric)
        first = motif_centre(section, fabric)
        if piece.start.kind != "centre":
            message = f"{piece.key} is a motif, and a motif begins at its centre"
            yield Problem("motif-start", message, piece.start.origin, "start the piece with `centre: flat`")
        elif piece.start.stitches not in (None, first):
            message = f"the centre of {piece.key} holds {piece.start.stitches} stitches, and {section.sides} sides that lie flat begin with {first}"
            yield Problem("motif-start", message, piece.start.origin, f"write `centre: flat`, or `centre: {first}`")
        if fabric.worked == "spiral rounds":
            message = f"{fabric.key} is worked in a spiral, whose rounds climb: the corners of {piece.key} would not meet"
            yield Problem("motif-spiral", message, section.origin, "give it a `fabric` in joined rounds")
        if len(piece.sections) > 1:
            message = f"{piece.key} has other sections beside its motif, whose corners nothing else goes on with"
            yield Problem("motif-alone", message, section.origin, "let the motif be its piece's only section")
        if fabric.pattern is not None or fabric.rule != CountRule():
            message = f"the corners of this motif would cut repeats of {fabric.key}"
            yield Problem("motif-in-pattern", message, section.origin, "give it a `fabric` with a plain stitch and no multiple")
    if piece.grid is not None and piece.make > 1:
        message = f"{piece.key} has a grid, which says how many are made, and {piece.make} to make from the piece it is like"
        yield Problem("grid-and-make", message, piece.grid.origin, "take out `grid`, or `make` from the other piece")
    if piece.grid is not None and not any(isinstance(section, Motif) and section.sides in TILING for section in piece.sections):
        message = f"{piece.key} is to be joined to a grid, which only motifs of {TILING[0]} or {TILING[1]} sides fill without gaps"
        yield Problem("grid-of-others", message, piece.grid.origin, "make it a motif of 4 or 6 sides, or take out `grid`")


TILING = (4, 6)
"""Sides of the regular motifs that are joined to a grid: squares in straight rows, hexagons in offset ones."""
