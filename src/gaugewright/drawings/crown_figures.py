"""Figures of what begins at a closed centre or is drawn shut: discs as circles, hats as they are worn.

A piece that is a crown and nothing else lies as a circle. On a tube a flat crown can't lie with its rounds
halved, since they are longer than the cloth reaches: it bulges, and its edge shows as a rounded top. Only a
crown deeper than half as wide as the tube lies flat, as a point.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import replace
from itertools import takewhile

from gaugewright.design.model import Crown, Design, Opened, Piece, Section
from gaugewright.drawings.model import ColourBand, Measure, PieceFigure
from gaugewright.drawings.primitives import Point
from gaugewright.grading.model import GradedPiece, Outline
from gaugewright.grading.plan import PiecePlan, SectionPlan
from gaugewright.sized import Sized

ARC = 18
"""Lines that stand for a quarter of a round."""

CORNERS = 4 * ARC
"""Corners of the polygon that stands for a circle: finer than the line is wide."""


def is_disc(piece: Piece) -> bool:
    """Whether the piece is a flat disc: crowns from a centre, never drawn shut."""
    return piece.start.kind == "centre" and all(isinstance(s, Crown) and not s.close for s in piece.sections)


def disc_figure(piece: Piece, plan: PiecePlan, graded: Sized[GradedPiece], yarns: Mapping[str, tuple[str, str]], drawn: str) -> PieceFigure:
    """A disc as a circle of its own radius: one colour fills it, several lie on it as rings."""
    radius, heights = graded[drawn].worked["length"], graded[drawn].outline.heights
    outline = circle(radius, (radius, radius))
    alone = len(plan.bands) == 1
    bands = tuple(ColourBand(*yarns[band.colour], 0.0, 2 * radius) for band in plan.bands) if alone else ()
    rings = () if alone else tuple(ColourBand(*yarns[band.colour], heights[band.first - 1], heights[band.last]) for band in plan.bands)
    across = tuple(2 * one.worked["length"] for one in graded)
    measures = (Measure("Across", "across", (0.0, radius), (2 * radius, radius), across),)
    return PieceFigure(piece.key, piece.title, graded.labels, drawn, outline, bands, measures, rings=rings)


def circle(radius: float, middle: Point) -> tuple[Point, ...]:
    """A circle as a polygon."""
    angles = [2 * math.pi * corner / CORNERS for corner in range(CORNERS)]
    return tuple((middle[0] + radius * math.cos(angle), middle[1] + radius * math.sin(angle)) for angle in angles)


def lying(outline: Outline, piece: Piece, plan: PiecePlan) -> tuple[Point, ...]:
    """The outline as the piece lies flat, its crowns rounded where they bulge."""
    far, starting = outline.far, outline.starting
    closing = len(far) - 1 - _crown_rows(reversed(piece.sections), plan.sections[::-1]) if piece.is_shut else 0
    if closing and _bulges(outline, closing, -1):
        middle = tuple(_arc(outline, closing, -1, side) for side in (1, -1))
        far, starting = (*far[:closing], *middle[0][::-1]), (*starting[:closing], *middle[1][:0:-1])
    opening = _crown_rows(piece.sections, plan.sections) if piece.start.kind == "centre" else 0
    if opening and _bulges(outline, opening, 0):
        far, starting = (*_arc(outline, opening, 0, 1), *far[opening + 1 :]), (*_arc(outline, opening, 0, -1)[1:], *starting[opening + 1 :])
    return (*far, *reversed(starting))


def _crown_rows(sections: Iterable[Section], plans: tuple[SectionPlan, ...]) -> int:
    """Rows of the crowns at one end of a piece."""
    crowns = takewhile(lambda pair: isinstance(pair[0], Crown), zip(sections, plans, strict=True))
    return sum(plan.rows for _, plan in crowns)


def _bulges(outline: Outline, edge: int, centre: int) -> bool:
    """Whether a crown's edge lies further out than its cloth reaches from the centre."""
    (left, y), (right, _) = outline.starting[edge], outline.far[edge]
    return (right - left) / 2 > abs(outline.heights[centre] - y)


def _arc(outline: Outline, edge: int, centre: int, side: int) -> tuple[Point, ...]:
    """A quarter of an ellipse from the crown's centre to its edge on one side."""
    (left, y), (right, _) = outline.starting[edge], outline.far[edge]
    middle, half, depth = (left + right) / 2, (right - left) / 2, outline.heights[centre] - y
    angles = [math.pi / 2 * step / ARC for step in range(ARC + 1)]
    return tuple((middle + side * half * math.sin(angle), y + depth * math.cos(angle)) for angle in angles)


def from_centre(figure: PieceFigure, piece: Piece) -> PieceFigure:
    """The figure without the girth of a closed centre or end, its heights named from the centre."""
    if piece.start.kind != "centre" and not piece.is_shut:
        return figure
    bottom, top = piece.bottom.replace("_", " "), piece.top.replace("_", " ")
    shut = {f"Around at the {bottom}"} if piece.start.kind == "centre" else set()
    shut |= {"Around at the top"} if piece.is_shut else set()
    named = {"Around at the top": f"Around at the {top}"}
    if piece.start.kind == "centre":
        named["Whole height"] = f"From the {bottom} to the {'closed end' if piece.is_shut else top}"
        named["Height below the first decrease"] = f"From the {bottom} to the first decrease"
    measures = []
    for measure in figure.measures:
        if measure.name not in shut:
            name = named.get(measure.name, measure.name)
            name = name.replace("Height to", f"From the {bottom} to") if piece.start.kind == "centre" else name
            measures.append(replace(measure, name=name))
    return replace(figure, measures=tuple(measures))


def as_worn(figure: PieceFigure, piece: Piece, design: Design) -> PieceFigure:
    """What begins at a closed centre and goes over a head or a hand hangs with its opening down."""
    over = any(edge.piece == piece.key for opening in design.openings for edge in opening.around)
    closed = piece.start.kind == "centre" and not is_disc(piece) and not isinstance(piece.sections[-1], Opened)
    return upside_down(figure) if over and closed else figure


def upside_down(figure: PieceFigure) -> PieceFigure:
    """The same figure with its lower edge up."""
    top = max(y for _, y in figure.outline)

    def turned(point: Point) -> Point:
        return point[0], top - point[1]

    return replace(
        figure,
        outline=tuple(turned(point) for point in reversed(figure.outline)),
        bands=tuple(replace(band, bottom=top - band.top, top=top - band.bottom) for band in reversed(figure.bands)),
        measures=tuple(replace(one, start=turned(one.start), end=turned(one.end)) for one in figure.measures),
        edge_names=tuple((name, turned(point)) for name, point in figure.edge_names),
        marks=tuple((name, turned(point)) for name, point in figure.marks),
        rows=tuple(tuple(turned(point) for point in row) for row in figure.rows),
        slits=tuple((name, turned(start), turned(end)) for name, start, end in figure.slits),
    )
