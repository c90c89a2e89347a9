"""Mittens and slippers on the cover: a hand with its thumb, a pair of them, a foot with its heel seen from the side."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from gaugewright.design.model import Design, Opened, Piece
from gaugewright.design.slits import slit_edges
from gaugewright.drawings.garment import GarmentFigure, GarmentPart
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.strips import clip_strip

THUMB_TURN = 32.0
"""Degrees by which a thumb is spread from its hand."""

APART = 0.12
"""Between two of a pair, as a share of their width."""

Figures = Mapping[str, PieceFigure]


def mittens(design: Design, figures: Figures) -> GarmentFigure | None:
    """Pieces in rounds with an opening that another piece is picked up round; a pair where two are made."""
    hands = [piece for piece in design.pieces if piece.start.in_rounds and slit_edges(piece.sections) and _thumbs(design, piece)]
    if not hands:
        return None
    first, *others = hands
    twin = next((piece for piece in others if piece.mirrored and piece.like == first.key), None)
    one = tuple(_hand(design, first, figures))
    if twin is None and first.make == 1:
        return GarmentFigure(design.about.title, figures[first.key].drawn_size, one)
    left, _, right, _ = box_around(point for part in one for point in part.placed(part.outline))
    away = (right - left) * (0.5 + APART / 2) - (left + right) / 2
    moved = tuple(replace(part, at=(part.at[0] + away, part.at[1])) for part in one)
    return GarmentFigure(design.about.title, figures[first.key].drawn_size, (*(_mirror(part) for part in moved), *moved))


def _mirror(part: GarmentPart) -> GarmentPart:
    return replace(part, mirrored=not part.mirrored)


def _thumbs(design: Design, hand: Piece) -> list[tuple[Piece, str]]:
    """Pieces picked up round an opening of a hand, or of the one it mirrors."""
    named = {(key, edge) for key in (hand.key, hand.like if hand.mirrored else hand.key) for edge in slit_edges(hand.sections)}
    return [(piece, piece.start.edges[0][1]) for piece in design.pieces if piece.start.edges and piece.start.edges[0] in named]


def _hand(design: Design, hand: Piece, figures: Figures) -> Iterator[GarmentPart]:
    """The hand with its opening's face to the front, and a thumb from the middle of each opening."""
    figure = figures[hand.key]
    left, _, right, _ = box_around(figure.outline)
    middle = (left + right) / 2
    yield GarmentPart(figure.title, figure.outline, figure.bands, (middle, 0.0))
    lines = {name.removesuffix(" opening"): (start, end) for name, start, end in figure.slits}
    for thumb, edge in _thumbs(design, hand):
        (start, y), (end, _) = lines[edge.replace("_", " ")]
        drawn = figures[thumb.key]
        low, bottom, high, _ = box_around(drawn.outline)
        at = (start + end) / 2 - middle
        yield GarmentPart(drawn.title, drawn.outline, drawn.bands, ((low + high) / 2, bottom), (at, y), -THUMB_TURN if at > 0 else THUMB_TURN)


def slipper(design: Design, figures: Figures) -> GarmentFigure | None:
    """An opened tube with the piece in rows that goes on from it, folded along the middle of the sole: the toe at the left."""
    foot = next((piece for piece in design.pieces if isinstance(piece.sections[-1], Opened)), None)
    heel = next((piece for piece in design.pieces if foot and piece.start.kind == "go on" and piece.start.edges[0][0] == foot.key), None)
    if foot is None or heel is None:
        return None
    tube, rows = figures[foot.key], figures[heel.key]
    _, bottom, right, top = box_around(tube.outline)
    left, low, end, _ = box_around(rows.outline)
    (half,) = clip_strip(tuple((y, x) for x, y in rows.outline), left, (left + end) / 2)
    folded = tuple((x, y) for y, x in half)
    parts = (
        GarmentPart(tube.title, tube.outline, tube.bands, (right, bottom), (0.0, 0.0), -90.0),
        GarmentPart(rows.title, folded, rows.bands, ((left + end) / 2, low), (top - bottom, 0.0), -90.0),
    )
    return GarmentFigure(design.about.title, tube.drawn_size, parts, "side")
