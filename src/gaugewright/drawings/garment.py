"""Draws a garment as it lies flat, seen from the front: the picture on the cover.

In: a `GarmentFigure`, parts in their places on the body. Out: a `Drawing` in true proportion.
Parts are painted in order, so what lies behind comes first. `garment_layout.py` puts the
pieces of common garments in their places.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from gaugewright.drawings.canvas import cut_canvas
from gaugewright.drawings.colour_bands import assign_hatches, hatched, write_colour_key
from gaugewright.drawings.drawn_size import in_size
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.model import ColourBand, PieceFigure
from gaugewright.drawings.primitives import Drawing, Hatch, Point, Polygon
from gaugewright.drawings.scale import fit_to_room
from gaugewright.drawings.scene import Scene
from gaugewright.drawings.strips import clip_block

OUTLINE_WIDTH = 0.3
_PAPER = "#ffffff"
BUTTON = "button"
"""The name of a part that is a button."""


@dataclass(frozen=True, slots=True)
class GarmentPart:
    """A piece in its place: mm, y up, x = 0 the middle of the body, y = 0 its lower edge.

    The outline and its bands are given as on the piece itself. The piece is turned by `turn`
    degrees counter-clockwise about its `pivot`, the pivot is put `at` its place, and where
    `mirrored` the whole is flipped left to right.
    """

    name: str
    outline: tuple[Point, ...]
    bands: tuple[ColourBand, ...] = ()
    pivot: Point = (0.0, 0.0)
    at: Point = (0.0, 0.0)
    turn: float = 0.0
    mirrored: bool = False

    def placed(self, points: Iterable[Point]) -> tuple[Point, ...]:
        """Points of the piece where they lie on the body."""
        cos, sin = math.cos(math.radians(self.turn)), math.sin(math.radians(self.turn))
        sign = -1 if self.mirrored else 1
        moved = []
        for x, y in points:
            dx, dy = x - self.pivot[0], y - self.pivot[1]
            moved.append((sign * (self.at[0] + dx * cos - dy * sin), self.at[1] + dx * sin + dy * cos))
        return tuple(moved)


def centred(figure: PieceFigure) -> GarmentPart:
    """A piece with its middle on the body's."""
    left, _, right, _ = box_around(figure.outline)
    return GarmentPart(figure.title, figure.outline, figure.bands, ((left + right) / 2, 0.0))


@dataclass(frozen=True, slots=True)
class GarmentFigure:
    """A garment in one size: parts from back to front."""

    title: str
    drawn_size: str
    parts: tuple[GarmentPart, ...]
    seen_from: str = "front"


def draw_garment(
    garment: GarmentFigure,
    max_width: float = 120.0,
    max_height: float = 90.0,
    hatches: Mapping[str, Hatch] | None = None,
    colour_key: bool = True,
) -> Drawing:
    """The garment in true proportion, with a key of its colours below unless unwanted.

    `hatches` should be the assignment used for the schematics.
    """
    bands = [band for part in garment.parts for band in part.bands]
    chosen = hatches or assign_hatches(band.name for band in bands)
    paints = {band.name: hatched((), band.colour, chosen[band.name]) for band in bands}
    key = paints if colour_key else {}

    def lay_out(scale: float) -> Scene:
        scene = Scene()
        for part in garment.parts:
            scene = _paint(scene, part, scale, paints)
        return write_colour_key(scene, key, max_width) if key else scene

    left, bottom, right, top = box_around(p for part in garment.parts for p in part.placed(part.outline))
    scene = fit_to_room(lay_out, (right - left, top - bottom), (max_width, max_height))
    return cut_canvas(scene, garment.title, _describe(garment))


def _paint(scene: Scene, part: GarmentPart, scale: float, paints: Mapping[str, Polygon]) -> Scene:
    """Paper under the part hides what lies behind it; then its bands; then its outline."""
    outline = _on_paper(part, part.outline, scale)
    scene = scene.fill(Polygon(outline, 0.0, fill=_PAPER))
    for band in part.bands:
        paint = paints[band.name]
        for strip in clip_block(part.outline, (band.bottom, band.top), band.left, band.right):
            points = _on_paper(part, strip, scale)
            scene = scene.fill(Polygon(points, 0.0, paint.colour, paint.fill, paint.hatch))
    return scene.draw(Polygon(outline, OUTLINE_WIDTH))


def _on_paper(part: GarmentPart, points: Iterable[Point], scale: float) -> tuple[Point, ...]:
    return tuple((x * scale, -y * scale) for x, y in part.placed(points))


def _describe(garment: GarmentFigure) -> str:
    """What the drawing shows, for those who can't see it."""
    sentences = [f"{garment.title} seen from the {garment.seen_from}, drawn in true proportion{in_size(garment.drawn_size)}."]
    coloured = {part.name: sorted(part.bands, key=lambda band: (band.bottom, band.left or 0.0)) for part in garment.parts if part.bands}
    if coloured:
        sentences.append("Colours of each piece from its lower edge up:")
    sentences += [f"{name}: {', '.join(band.name for band in bands)}." for name, bands in coloured.items()]
    buttons = sum(part.name == BUTTON for part in garment.parts)
    sentences += [f"Closed with {buttons} buttons." if buttons > 1 else "Closed with a button."] if buttons else []
    return " ".join(sentences)
