"""The figure of a triangle as it is worn: its long edge up, its point down, some of its rows drawn."""

import math

from gaugewright.design.model import Piece
from gaugewright.drawings.crown_figures import upside_down
from gaugewright.drawings.model import Measure, PieceFigure
from gaugewright.drawings.primitives import Point
from gaugewright.grading.model import GradedPiece, Outline
from gaugewright.grading.plan import PiecePlan
from gaugewright.sized import Sized

DRAWN_ROWS = 5
"""Rows shown, so that their direction is seen and they aren't taken for stripes."""


def triangle_figure(piece: Piece, plans: Sized[PiecePlan], graded: Sized[GradedPiece], drawn: str) -> PieceFigure:
    """A triangle in the size drawn. Its colours are told in words: bands are level, and hatching would hide its rows."""
    outline, last = graded[drawn].outline, plans[drawn].rows
    long, depth = (graded.map(lambda one, name=name: one.worked[name]) for name in ("width", "length"))  # type: ignore[misc]
    lower = graded.map(lambda one: lower_half(one.outline))
    bottom, top = (name.replace("_", " ") for name in (piece.bottom, piece.top))
    figure = PieceFigure(
        piece.key, piece.title, plans.labels, drawn, outline.polygon(),
        measures=(
            Measure(_named(bottom), "across", outline.starting[-1], outline.far[-1], long.values),
            Measure("From its middle to the point", "up", outline.starting[0], outline.spine[-1], depth.values),
            Measure(f"Half of the {top}", "edge", outline.far[-1], outline.spine[-1], lower.values),
        ),
        rows=tuple(row_line(outline, last * part // (DRAWN_ROWS + 1)) for part in range(1, DRAWN_ROWS + 1)),
    )
    return upside_down(figure)


def lower_half(outline: Outline) -> float:
    """Half of the last row as it lies flat, from the end of the long edge to the point, in mm."""
    return math.dist(outline.far[-1], outline.spine[-1])


def row_line(outline: Outline, row: int) -> tuple[Point, ...]:
    """A row as it lies: up one half to the spine, and down the other."""
    return outline.starting[row], outline.spine[row], outline.far[row]


def _named(edge: str) -> str:
    return edge[:1].upper() + edge[1:]
