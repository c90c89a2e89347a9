"""Motifs as polygons: one for its schematic, many where they lie joined. A hexagon stands on a corner, others on a side."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace

from gaugewright.design.model import Motif, Piece
from gaugewright.drawings.canvas import cut_canvas
from gaugewright.drawings.colour_bands import hatched, write_colour_key
from gaugewright.drawings.drawn_size import in_size
from gaugewright.drawings.model import ColourBand, Measure, PieceFigure
from gaugewright.drawings.primitives import Drawing, Hatch, Point, Polygon
from gaugewright.drawings.scale import fit_to_room
from gaugewright.drawings.scene import Scene
from gaugewright.grading.layout_model import Layout
from gaugewright.grading.model import GradedPiece
from gaugewright.grading.motifs import width_across
from gaugewright.grading.plan import PiecePlan
from gaugewright.grading.rim import offset, rim_of
from gaugewright.sized import Sized

Yarns = Mapping[str, tuple[str, str]]
Border = tuple[PiecePlan, GradedPiece]
WIDEST, HIGHEST = 110.0, 112.0
"""Millimetres of paper for a layout."""
ROUNDS = "shown with a thin line between its rounds"


def motif_of(piece: Piece) -> Motif | None:
    """The motif that a piece is."""
    first = piece.sections[0]
    return first if isinstance(first, Motif) else None


def polygon(sides: int, apothem: float, middle: Point = (0.0, 0.0)) -> tuple[Point, ...]:
    """Corners of a regular polygon whose sides lie so far from its middle.

    >>> [(f"{x:.0f}", f"{y:.0f}") for x, y in polygon(4, 5.0)]
    [('5', '-5'), ('5', '5'), ('-5', '5'), ('-5', '-5')]
    """
    first = -math.pi / 2 + (0.0 if sides == 6 else math.pi / sides)
    radius = apothem / math.cos(math.pi / sides)
    angles = [first + 2 * math.pi * corner / sides for corner in range(sides)]
    return tuple((middle[0] + radius * math.cos(angle), middle[1] + radius * math.sin(angle)) for angle in angles)


def motif_figure(piece: Piece, motif: Motif, graded: Sized[GradedPiece], yarns: Yarns, drawn: str) -> PieceFigure:
    """A motif in the size drawn, from side to side, with its rounds and their colours."""
    apothem = graded[drawn].worked["length"]
    corners = polygon(motif.sides, apothem)
    left, low = min(x for x, _ in corners), min(y for _, y in corners)
    outline = tuple((x - left, y - low) for x, y in corners)
    top = max(y for _, y in outline)
    across = tuple(width_across(motif.sides, one.worked["length"]) for one in graded)
    sides = tuple(one.edges["top"].length / motif.sides for one in graded)
    if motif.sides % 2:
        middle = Measure("From a side to the corner opposite", "up", (-left, 0.0), (-left, top), across)
    else:
        middle = Measure("From side to side", "across", (-left - apothem, -low), (-left + apothem, -low), across)
    # A square's side is what it measures across.
    side = () if motif.sides == 4 else (Measure("Along one side", "edge", outline[0], outline[1], sides),)
    heights = graded[drawn].outline.heights[1:-1]
    rounds = tuple(tuple((x - left, y - low) for x, y in (*ring, ring[0])) for ring in (polygon(motif.sides, height) for height in heights))
    rings = _colour_rings(graded[drawn], piece, yarns)
    note = ROUNDS if len(piece.grid.turns if piece.grid else ()) < 2 else f"{ROUNDS}, and with {rings[0].name} as the first colour"
    return PieceFigure(piece.key, piece.title, graded.labels, drawn, outline, measures=(middle, *side), rows=rounds, rings=rings, ring_sides=motif.sides, note=note)


def _colour_rings(graded: GradedPiece, piece: Piece, yarns: Yarns) -> tuple[ColourBand, ...]:
    """The colours of a motif from its middle out, each as far as its rounds go."""
    found: list[ColourBand] = []
    first, turns = graded.main.rows[0].colours[0], piece.grid.turns if piece.grid else ()
    for row, below, above in zip(graded.main.rows, graded.outline.heights, graded.outline.heights[1:], strict=False):
        name, colour = yarns[turns[0] if turns and row.colours[0] == first else row.colours[0]]
        if found and found[-1].name == name:
            found[-1] = replace(found[-1], top=above)
        else:
            found.append(ColourBand(name, colour, below, above))
    return tuple(found)


def draw_layout(piece: Piece, plan: PiecePlan, graded: GradedPiece, yarns: Yarns, drawn: str, hatches: Mapping[str, Hatch], border: Border | None = None) -> Drawing | None:
    """The motifs of one size as they are joined, each with its rings of colour, and the border round them; None where none are."""
    layout = plan.layout
    if layout is None:
        return None
    rings = (*_border_rings(layout, border), *_rings(plan, layout, graded.outline.heights))
    used = dict.fromkeys(colour for _, colour in rings)
    paints = {yarns[key][0]: hatched((), yarns[key][1], hatches[yarns[key][0]]) for key in used}

    def lay_out(scale: float) -> Scene:
        scene = Scene()
        for ring, colour in rings:
            points = tuple((x * scale, -y * scale) for x, y in ring)
            paint = paints[yarns[colour][0]]
            scene = scene.fill(Polygon(points, 0.15, paint.colour, paint.fill, paint.hatch))
        return write_colour_key(scene, paints, WIDEST)

    scene = fit_to_room(lay_out, layout.with_border, (WIDEST, HIGHEST))
    return cut_canvas(scene, f"{piece.title}: layout", _describe(layout, piece, yarns, drawn))


def _border_rings(layout: Layout, border: Border | None) -> Iterator[tuple[tuple[Point, ...], str]]:
    """Of a border its colours from the outermost in."""
    if border is not None:
        plan, graded = border
        rim = rim_of(layout)
        yield from ((offset(rim, graded.outline.heights[band.last]), band.colour) for band in reversed(plan.bands))


def _rings(plan: PiecePlan, layout: Layout, heights: tuple[float, ...]) -> Iterator[tuple[tuple[Point, ...], str]]:
    """Of each motif its colours from the outermost in, as polygons; what joins take up is left off the outermost."""
    most = layout.width / 2
    for place in layout.places():
        for band in reversed(plan.bands):
            colour = (layout.colour(place) if band.colour == plan.start_colour else "") or band.colour
            yield polygon(layout.sides, min(most, heights[band.last]), (place.x, place.y)), colour


def _describe(layout: Layout, piece: Piece, yarns: Yarns, drawn: str) -> str:
    """What the drawing shows, for those who can't see it."""
    text = f"{layout.motifs} of the {piece.title} in {layout.down} rows of {layout.across}{in_size(drawn)}{', with a border round them' if layout.border else ''}."
    if len(layout.turns) > 1:
        names = " and ".join(yarns[key][0] for key in layout.turns)
        text += f" They begin in {names} by turns, {'as a checkerboard' if layout.plan == 'checkerboard' else 'a row each'}."
    return text
