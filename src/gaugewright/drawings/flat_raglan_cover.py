"""A garment with raglan edges sewn from flat pieces: body and sleeves laid together along their raglan lines."""

import math
from dataclasses import replace
from typing import NamedTuple

from gaugewright.design.flat_raglans import is_raglan_sleeve
from gaugewright.design.model import Design, Piece, RaglanEdge
from gaugewright.drawings.garment import GarmentFigure, GarmentPart
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.primitives import Point
from gaugewright.tolerances import SAME_LENGTH


class RaglanPieces(NamedTuple):
    """What is joined along raglan lines."""

    sleeve: Piece
    back: Piece
    fronts: list[Piece]


def raglan_pieces(design: Design) -> RaglanPieces | None:
    """The sleeve, the back and the front or fronts; None where it is another garment.

    The back is the first piece shaped at both edges that isn't a sleeve: what else has a raglan edge is a front.
    """
    shaped = [piece for piece in design.pieces if any(isinstance(section, RaglanEdge) for section in piece.sections)]
    sleeve = next((piece for piece in shaped if is_raglan_sleeve(piece)), None)
    body = [piece for piece in shaped if not is_raglan_sleeve(piece)]
    back = next((piece for piece in body if all(section.at == "both" for section in piece.sections if isinstance(section, RaglanEdge))), None)
    if sleeve is None or back is None:
        return None
    return RaglanPieces(sleeve, back, [piece for piece in body if piece is not back])


def with_raglan_sleeves(garment: GarmentFigure, back: PieceFigure, sleeve: PieceFigure) -> GarmentFigure:
    """The sleeves behind the body, each folded and turned so that its raglan line lies along the body's."""
    left, _, right, _ = box_around(back.outline)
    foot, tip = _line(back, 1)
    own_foot, own_tip = _line(sleeve, -1)
    turn = _slope(foot, tip) - _slope(own_foot, own_tip)
    at = (foot[0] - (left + right) / 2, foot[1])
    parts = (GarmentPart(sleeve.title, sleeve.outline, sleeve.bands, own_foot, at, turn, mirrored) for mirrored in (False, True))
    return replace(garment, parts=(*parts, *garment.parts))


def _line(figure: PieceFigure, inwards: int) -> tuple[Point, Point]:
    """A raglan line from the stitches left at the underarm to the neck: of a body the one at its left, of a sleeve
    the one at its right."""
    left, _, right, top = box_around(figure.outline)
    edge = min((point for _, point in figure.marks), key=lambda point: inwards * point[0])
    level = [(x, y) for x, y in figure.outline if abs(y - edge[1]) < SAME_LENGTH and inwards * (x - (left + right) / 2) < 0]
    foot = max((edge, *level), key=lambda point: inwards * point[0])
    tip = min((point for point in figure.outline if point[1] == top), key=lambda point: inwards * point[0])
    return foot, tip


def _slope(start: Point, end: Point) -> float:
    return math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))
