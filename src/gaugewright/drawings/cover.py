"""The garment on the cover, from the pieces themselves.

What a piece is in the garment follows from how it is joined: the back has the shoulders, fronts are
sewn to them, a sleeve is a tube whose top meets an armhole, a band is picked up along the fronts.
"""

from collections.abc import Mapping
from dataclasses import replace

from gaugewright.design.model import Cap, Crown, Design, Neck, Piece, Shoulders
from gaugewright.design.sides import is_folded
from gaugewright.drawings.crown_figures import upside_down
from gaugewright.drawings.flat_raglan_cover import raglan_pieces, with_raglan_sleeves
from gaugewright.drawings.garment import GarmentFigure, GarmentPart, draw_garment
from gaugewright.drawings.garment_layout import Edging, open_front, pullover, turned_over
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.hood_cover import with_hood
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.primitives import Drawing, Hatch
from gaugewright.drawings.raglan_cover import raglan_garment
from gaugewright.drawings.tube_covers import mittens, slipper
from gaugewright.drawings.strips import clip_strip
from gaugewright.grading.rings import along_rows


def draw_cover(design: Design, figures: Mapping[str, PieceFigure], insets: Mapping[str, tuple[float, float]], hatches: Mapping[str, Hatch]) -> Drawing | None:
    """The garment seen from the front; None where the pieces make no body with a back and
    fronts, nor a yoke with a body, a hand with a thumb or a foot with a heel, and are no single piece with a crown.

    `insets` gives each attached piece's place in mm: above the hem, and in from its edge.
    """
    raglan = raglan_pieces(design)
    back = raglan.back if raglan else next((p for p in design.pieces if any(isinstance(s, (Shoulders, Neck)) for s in p.sections)), None)
    if back is None:
        whole = raglan_garment(design, figures) or mittens(design, figures) or slipper(design, figures)
        return draw_garment(whole, hatches=hatches) if whole else _alone(design, figures, hatches)
    fronts = raglan.fronts if raglan else _sewn_to(design, back.key, "shoulder")
    garment = _body(design, figures, back, fronts, None if raglan else _sleeve(design, figures), insets)
    if garment and raglan:
        garment = with_raglan_sleeves(garment, figures[back.key], folded(figures[raglan.sleeve.key]))
    return draw_garment(garment, hatches=hatches) if garment else None


def _body(
    design: Design, figures: Mapping[str, PieceFigure], back: Piece, fronts: list[Piece], sleeve: PieceFigure | None,
    insets: Mapping[str, tuple[float, float]],
) -> GarmentFigure | None:
    """The back with one front or two, and sleeves that hang from its shoulders."""
    title = design.about.title
    if len(fronts) == 1:
        return pullover(title, figures[back.key], figures[fronts[0].key], sleeve)
    if len(fronts) != 2:
        return None
    left = next((p for p in fronts if p.mirrored), fronts[1])
    right = next(p for p in fronts if p.key != left.key)
    worn_left = figures[left.key] if left.mirrored else turned_over(figures[left.key])
    garment = open_front(title, figures[back.key], figures[right.key], worn_left, sleeve, _edging(design, right, figures))
    garment = _with_pockets(_with_hood(garment, design, figures, back, right), design, figures, insets)
    return _with_ribbing(garment, design, figures, back)


def _sleeve(design: Design, figures: Mapping[str, PieceFigure]) -> PieceFigure | None:
    """The sleeve as it hangs: a tube sewn in or picked up, or a flat one with a cap, folded down its middle."""
    for piece in design.pieces:
        if piece.start.ring and all(along_rows(design, edge) for edge in piece.start.edges):
            left, bottom, right, top = box_around(figures[piece.key].outline)
            if top - bottom > right - left:  # a band at an armhole is broader than it is deep
                return upside_down(figures[piece.key])
        sewn = any(piece.key in (seam.join.piece, *(edge.piece for edge in seam.to)) for seam in design.seams)
        if sewn and any(isinstance(section, Cap) for section in piece.sections):
            return folded(figures[piece.key])
        if piece.start.kind == "ring" and any(seam.join.piece == piece.key for seam in design.seams):
            return figures[piece.key]
    return None


def folded(figure: PieceFigure) -> PieceFigure:
    """A piece folded down its middle: the half right of it.

    >>> folded(PieceFigure("p", "P", ("S",), "S", ((0, 0), (4, 0), (4, 3), (0, 3)))).outline
    ((2.0, 0.0), (4, 0), (4, 3), (2.0, 3.0))
    """
    left, _, right, _ = box_around(figure.outline)
    (half,) = clip_strip(tuple((y, x) for x, y in figure.outline), (left + right) / 2, right)
    return replace(figure, outline=tuple((x, y) for y, x in half))


def _alone(design: Design, figures: Mapping[str, PieceFigure], hatches: Mapping[str, Hatch]) -> Drawing | None:
    """A single piece with a closed end is the whole thing: a hat, a bag, a mat."""
    piece = design.pieces[0]
    if len(design.pieces) > 1 or not any(isinstance(section, Crown) for section in piece.sections):
        return None
    figure = figures[piece.key]
    left, _, right, _ = box_around(figure.outline)
    part = GarmentPart(figure.title, figure.outline, figure.bands, ((left + right) / 2, 0.0))
    return draw_garment(GarmentFigure(design.about.title, figure.drawn_size, (part,)), hatches=hatches)


def _sewn_to(design: Design, piece: str, edge: str) -> list[Piece]:
    keys = []
    for seam in design.seams:
        ends = (seam.join, *seam.to)
        if any(end.piece == piece and end.edge == edge for end in ends):
            keys += [end.piece for end in ends if end.piece != piece]
    return [design.piece(key) for key in dict.fromkeys(keys)]


def _edging(design: Design, front: Piece, figures: Mapping[str, PieceFigure]) -> Edging | None:
    for piece in design.pieces:
        on_front = any(edge[0] == front.key and along_rows(design, edge) for edge in piece.start.edges)
        if on_front and piece.start.kind == "pick up" and not piece.start.ring:
            figure = figures[piece.key]
            _, bottom, _, top = box_around(figure.outline)
            band = figure.bands[0] if figure.bands else None
            shares = _shares_up(figure, piece)
            size = piece.buttonholes.size if piece.buttonholes else 0.0
            on_left = piece.buttonholes is not None and piece.buttonholes.edge[0] != front.key
            return Edging(piece.title, top - bottom, band.name if band else "", band.colour if band else "#ffffff", shares, size, on_left)
    return None


def _shares_up(figure: PieceFigure, piece: Piece) -> tuple[float, ...]:
    """Each buttonhole's height as a share of the edge it lies along, counted from the band's end there."""
    left, _, right, _ = box_around(figure.outline)
    from_start = piece.buttonholes is not None and piece.buttonholes.edge == piece.start.edges[0]
    middles = [(start[0] + end[0]) / 2 for start, end in figure.holes]
    return tuple((x - left if from_start else right - x) / figure.along for x in middles)


def _with_hood(garment: GarmentFigure, design: Design, figures: Mapping[str, PieceFigure], back: Piece, front: Piece) -> GarmentFigure:
    """A hood picked up along the neck and folded to itself, if there is one."""
    hood = next((p for p in design.pieces if (back.key, "neck") in p.start.edges and any(is_folded(design, s) and s.join.piece == p.key for s in design.seams)), None)
    if hood is None:
        return garment
    edging = _edging(design, front, figures)
    round_face = edging if edging and any(p.title == edging.title and any(key == hood.key for key, _ in p.start.edges) for p in design.pieces) else None
    return with_hood(garment, figures[hood.key], _neck_height(figures[back.key]), front.title, round_face)


def _neck_height(back: PieceFigure) -> float:
    """How high the back is at the middle of its neck: the lowest point there of its upper half."""
    left, bottom, right, top = box_around(back.outline)
    middle, near = (left + right) / 2, (right - left) / 4
    return min((y for x, y in back.outline if abs(x - middle) < near and y > (bottom + top) / 2), default=top)


def _with_ribbing(garment: GarmentFigure, design: Design, figures: Mapping[str, PieceFigure], back: Piece) -> GarmentFigure:
    """A band worked sideways along the hem, as wide as the back less what it pulls in."""
    for piece in design.pieces:
        if piece.start.joined and (back.key, back.bottom) in piece.start.edges:
            figure = figures[piece.key]
            left, _, depth, _ = box_around(figure.outline)
            (x0, _), (x1, _) = (min(figures[back.key].outline), max(figures[back.key].outline))
            half = (x1 - x0) / 2 * (1 - piece.start.gather)
            outline = ((-half, left - depth), (half, left - depth), (half, 0.0), (-half, 0.0))
            bands = tuple(replace(band, bottom=left - depth, top=0.0) for band in figure.bands[:1])
            return replace(garment, parts=(*garment.parts, GarmentPart(figure.title, outline, bands)))
    return garment


def _with_pockets(garment: GarmentFigure, design: Design, figures: Mapping[str, PieceFigure], insets: Mapping[str, tuple[float, float]]) -> GarmentFigure:
    parts = list(garment.parts)
    for one in design.attachments:
        host = next((part for part in parts if part.name == design.piece(one.to).title), None)
        if host is not None:
            up, inset = insets[one.piece]
            figure = figures[one.piece]
            _, _, right, _ = box_around(figure.outline)
            place = (host.at[0] - inset, host.at[1] + up)
            parts.append(GarmentPart(figure.title, figure.outline, figure.bands, (right, 0.0), place, mirrored=host.mirrored))
    return replace(garment, parts=tuple(parts))
