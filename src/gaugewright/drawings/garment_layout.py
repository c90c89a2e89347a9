"""Puts the pieces of a garment in their places on the body, for `draw_garment`.

Pieces are given as they look from outside when worn: the right front has its front edge on
the right of its outline, and stands on the left of the drawing.
"""

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from gaugewright.drawings.garment import BUTTON, GarmentFigure, GarmentPart, centred
from gaugewright.drawings.geometry import box_around, direction
from gaugewright.drawings.model import ColourBand, PieceFigure
from gaugewright.drawings.primitives import Point

SLEEVE_TURN = 62.0
"""Degrees by which sleeves are spread from hanging straight down."""


class Edging(NamedTuple):
    """A band along front edges and neck: its title, its depth in mm, its colour (no name: plain).

    One with buttons lies closed, the front that has the buttonholes on top: `buttons` gives each button's height
    on the straight part of that front's edge, as a share of it, `button` its width in mm.
    """

    title: str
    depth: float
    colour_name: str = ""
    colour: str = "#ffffff"
    buttons: tuple[float, ...] = ()
    button: float = 0.0
    on_left: bool = False


def open_front(
    title: str,
    back: PieceFigure,
    right_front: PieceFigure,
    left_front: PieceFigure,
    sleeve: PieceFigure | None = None,
    edging: Edging | None = None,
    sleeve_turn: float = SLEEVE_TURN,
) -> GarmentFigure:
    """A jacket or cardigan whose fronts, or the bands along them, meet in the middle or lie over one another there.

    The left front is given in its own right, its front edge on the left of its outline; see
    `turned_over` for one that is worked as the right front is.
    """
    depth = 0.0 if edging is None else edging.depth / 2 if edging.buttons else edging.depth
    right = _from_middle(right_front, depth, mirrored=False)
    left = _from_middle(turned_over(left_front), depth, mirrored=True)
    behind: tuple[GarmentPart, ...] = (centred(back),)
    before: tuple[GarmentPart, ...] = ()
    if edging:
        behind += (_neck_edging(right, left, edging),)
        bands = (_front_edging(right, edging), _front_edging(left, edging))
        before = (*(bands[::-1] if edging.buttons and not edging.on_left else bands), *_buttons(right, edging))
    sleeves = _sleeves(sleeve, (right, left), sleeve_turn)
    return GarmentFigure(title, back.drawn_size, (*sleeves, *behind, right, left, *before))


def pullover(
    title: str,
    back: PieceFigure,
    front: PieceFigure,
    sleeve: PieceFigure | None = None,
    sleeve_turn: float = SLEEVE_TURN,
) -> GarmentFigure:
    """A garment with one front; without sleeves a vest."""
    body = centred(front)
    sleeves = _sleeves(sleeve, (body, replace(body, mirrored=True)), sleeve_turn)
    return GarmentFigure(title, back.drawn_size, (*sleeves, centred(back), body))


def turned_over(figure: PieceFigure) -> PieceFigure:
    """The piece flipped left to right, with all that is measured and named on it.

    >>> turned_over(PieceFigure("p", "P", ("S",), "S", ((0, 0), (3, 0), (3, 1)))).outline
    ((3, 0), (0, 0), (0, 1))
    """
    left, _, right, _ = box_around(figure.outline)

    def flip(point: Point) -> Point:
        return left + right - point[0], point[1]

    return replace(
        figure,
        outline=tuple(flip(point) for point in figure.outline),
        bands=tuple(_flipped(band, left + right) for band in figure.bands),
        measures=tuple(replace(m, start=flip(m.start), end=flip(m.end)) for m in figure.measures),
        edge_names=tuple((name, flip(point)) for name, point in figure.edge_names),
        marks=tuple((name, flip(point)) for name, point in figure.marks),
        slits=tuple((name, flip(start), flip(end)) for name, start, end in figure.slits),
        holes=tuple((flip(start), flip(end)) for start, end in figure.holes),
    )


def _flipped(band: ColourBand, width: float) -> ColourBand:
    ends = (None if x is None else width - x for x in (band.right, band.left))
    return replace(band, left=next(ends), right=next(ends))


def _from_middle(figure: PieceFigure, depth: float, mirrored: bool) -> GarmentPart:
    """A right front with its front edge `depth` left of the middle, or its mirror image."""
    _, _, right, _ = box_around(figure.outline)
    return GarmentPart(
        figure.title, figure.outline, figure.bands, (right, 0.0), (-depth, 0.0), mirrored=mirrored
    )


def _sleeves(
    sleeve: PieceFigure | None, fronts: tuple[GarmentPart, GarmentPart], turn: float
) -> tuple[GarmentPart, ...]:
    """Both sleeves, each hung by the outer corner of its top from the tip of a shoulder."""
    if sleeve is None:
        return ()
    placed = []
    for front in fronts:
        tip = _outer_corner(replace(front, mirrored=False).placed(front.outline))
        corner = _outer_corner(sleeve.outline)
        placed.append(
            GarmentPart(sleeve.title, sleeve.outline, sleeve.bands, corner, tip, -turn, front.mirrored)
        )
    return tuple(placed)


def _outer_corner(outline: Sequence[Point]) -> Point:
    """The corner that lies farthest up and to the left, each in its share of the whole."""
    left, bottom, right, top = box_around(outline)
    return max(outline, key=lambda p: (p[1] - bottom) / (top - bottom) + (right - p[0]) / (right - left))


def _front_edge(front: GarmentPart) -> tuple[Point, ...]:
    """The edge of a right front in its place, from the hem up to the neck end of the shoulder."""
    points = replace(front, mirrored=False).placed(front.outline)
    start = max(points, key=lambda p: (-p[1], p[0]))
    end = max(points, key=lambda p: (p[1], p[0]))
    first, last = points.index(start), points.index(end)
    forwards = _run(points, first, last)
    backwards = _run(points[::-1], len(points) - 1 - first, len(points) - 1 - last)
    return max(forwards, backwards, key=lambda path: sum(x for x, _ in path) / len(path))


def _run(points: Sequence[Point], first: int, last: int) -> tuple[Point, ...]:
    count = (last - first) % len(points) + 1
    return tuple(points[(first + step) % len(points)] for step in range(count))


def straight_edge(front: GarmentPart) -> tuple[Point, ...]:
    """The ends of the edge of a right front in its place, from the hem up to where the neck begins."""
    edge = _front_edge(front)
    return edge[0], (edge[0][0], max(point[1] for point in edge if abs(point[0] - edge[0][0]) < 1.0))


def _front_edging(front: GarmentPart, edging: Edging) -> GarmentPart:
    """A band along the front edge, running on over the shoulder to the height of the neck's band."""
    edge = _front_edge(front)
    top = edge[-1][1] + edging.depth
    inner = beside(edge, edging.depth)
    (ax, ay), (bx, by) = inner[-2], inner[-1]
    end = (bx + (bx - ax) * (top - by) / (by - ay), top) if by > ay else (bx, top)
    outline = (*edge, (edge[-1][0], top), end, *reversed(inner[:-1]))
    return GarmentPart(edging.title, outline, painted(edging, outline), mirrored=front.mirrored)


CORNERS = 12
"""A button is drawn as a dozen chords: at its size nobody sees them."""


def _buttons(front: GarmentPart, edging: Edging) -> tuple[GarmentPart, ...]:
    """Buttons in the middle, where the bands lie over one another."""
    straight = straight_edge(front)[-1][1]
    turns = [2 * math.pi * number / CORNERS for number in range(CORNERS)]
    circle = tuple((edging.button / 2 * math.cos(turn), edging.button / 2 * math.sin(turn)) for turn in turns)
    return tuple(GarmentPart(BUTTON, circle, at=(0.0, share * straight)) for share in edging.buttons)


def _neck_edging(right: GarmentPart, left: GarmentPart, edging: Edging) -> GarmentPart:
    """The band that stands above the back neck, between the two shoulders."""
    start, y = _front_edge(right)[-1]
    end = -_front_edge(left)[-1][0]
    outline = ((start, y), (end, y), (end, y + edging.depth), (start, y + edging.depth))
    return GarmentPart(edging.title, outline, painted(edging, outline))


def painted(edging: Edging, outline: Sequence[Point]) -> tuple[ColourBand, ...]:
    """An outline in the edging's colour."""
    if not edging.colour_name:
        return ()
    _, bottom, _, top = box_around(outline)
    return (ColourBand(edging.colour_name, edging.colour, bottom, top),)


def beside(path: Sequence[Point], distance: float) -> list[Point]:
    """A line beside another, to the right of its direction, with mitred corners."""
    normals = [(dy, -dx) for dx, dy in (direction(a, b) for a, b in zip(path, path[1:], strict=False))]
    result = []
    for point, before, after in zip(path, [normals[0], *normals], [*normals, normals[-1]], strict=True):
        share = distance / (1 + before[0] * after[0] + before[1] * after[1])
        result.append((point[0] + (before[0] + after[0]) * share, point[1] + (before[1] + after[1]) * share))
    return result
