"""A hood on the cover: up, as it is worn, with the band of the fronts going on round the face."""

from dataclasses import replace

from gaugewright.drawings.garment import GarmentFigure, GarmentPart
from gaugewright.drawings.garment_layout import Edging, beside, painted, straight_edge
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.model import PieceFigure

CHIN = 0.3
"""The share of a hood's height over which its face edge leaves the middle (common practice, no source)."""


def with_hood(garment: GarmentFigure, hood: PieceFigure, neck: float, right_front: str, edging: Edging | None) -> GarmentFigure:
    """The hood folded, half as wide as it is, behind all else, on a neck `neck` mm high; its band before all else.

    The band along the fronts ends where their straight edges do and goes on round the hood's face, not round the neck.
    """
    left, bottom, right, _ = box_around(hood.outline)
    outline = tuple(((x - left) / 2, y) for x, y in hood.outline)
    part = GarmentPart(hood.title, outline, hood.bands, ((right - left) / 4, bottom), (0.0, neck))
    front = next((one for one in garment.parts if one.name == right_front), None)
    if edging is None or front is None:
        return replace(garment, parts=(part, *garment.parts))
    straight = straight_edge(front)
    bands = tuple(_strip(straight, edging, mirrored) for mirrored in (False, True))
    others = tuple(one for one in garment.parts if one.name != edging.title)
    return replace(garment, parts=(part, *others, *bands, _round_face(part, straight[-1], edging)))


def _strip(straight: tuple[tuple[float, float], ...], edging: Edging, mirrored: bool) -> GarmentPart:
    outline = (*straight, *reversed(beside(straight, edging.depth)))
    return GarmentPart(edging.title, outline, painted(edging, outline), mirrored=mirrored)


def _round_face(hood: GarmentPart, chin: tuple[float, float], edging: Edging) -> GarmentPart:
    """From the top of one front's straight edge out to the hood's side, over its top and down again."""
    points = hood.placed(hood.outline)
    _, bottom, _, top = box_around(points)
    side = sorted({point for point in points if point[0] < 0 and point[1] > bottom + CHIN * (top - bottom)}, key=lambda point: (point[1], point[0]))
    up = (chin, *_rising(side))
    rim = (*up, *((-x, y) for x, y in reversed(up)))
    outline = (*rim, *reversed(beside(rim, edging.depth)))
    return GarmentPart(edging.title, outline, painted(edging, outline))


def _rising(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """The outermost point of each height, so that the steps of single stitches don't show in the band."""
    if not points:
        return []
    first, last = points[0], max(points, key=lambda point: (point[1], -point[0]))
    return [first] if first == last else [first, last]
