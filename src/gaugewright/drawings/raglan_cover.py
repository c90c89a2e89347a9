"""A raglan garment as it hangs: the yoke on the body, the sleeves straight down at its corners."""

from collections.abc import Mapping

from gaugewright.design.model import YOKES, Design
from gaugewright.drawings.garment import GarmentFigure, GarmentPart, centred
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.model import PieceFigure


def raglan_garment(design: Design, figures: Mapping[str, PieceFigure]) -> GarmentFigure | None:
    """The first yoke with a body; None where there is none. Laid flat a yoke is as wide as the back and one sleeve."""
    yoke = next((piece for piece in design.pieces if isinstance(piece.sections[-1], YOKES)), None)
    if yoke is None:
        return None
    parts = {piece.start.edges[0][1]: figures[piece.key] for piece in design.pieces if piece.start.kind == "divide" and piece.start.edges[0][0] == yoke.key}
    if "body" not in parts:
        return None
    body, top = parts["body"], figures[yoke.key]
    _, _, _, height = box_around(body.outline)
    left, bottom, right, _ = box_around(top.outline)
    hung = _sleeves(parts["sleeve"], (right - left) / 2, height) if "sleeve" in parts else ()
    middle = GarmentPart(top.title, top.outline, top.bands, ((left + right) / 2, bottom), (0.0, height))
    return GarmentFigure(design.about.title, body.drawn_size, (*hung, centred(body), middle))


def _sleeves(sleeve: PieceFigure, out: float, height: float) -> tuple[GarmentPart, ...]:
    """Both sleeves, the outer corner of each `out` from the middle, at the yoke's lower corner."""
    _, _, _, top = box_around(sleeve.outline)
    corner = (min(x for x, y in sleeve.outline if y == top), top)
    return tuple(GarmentPart(sleeve.title, sleeve.outline, sleeve.bands, corner, (-out, height), 0.0, mirrored) for mirrored in (False, True))
