"""Bands of colour in a piece: fills cut to its outline, each with a hatch and its name.

A hatch belongs to a colour name, so that a print in black and white can still be read. Names
stand where all of them fit in the same way: beside the piece, on white plates in the bands,
or, where bands are too narrow for either, in a key of colours below.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from gaugewright.drawings.colour import INK, line_colour_on
from gaugewright.drawings.geometry import box_around, contains
from gaugewright.drawings.model import ColourBand
from gaugewright.drawings.placing import write_first_free
from gaugewright.drawings.primitives import Hatch, Label, Point, Polygon
from gaugewright.drawings.scene import CLEAR, Scene, centred_label, level_label, text_room
from gaugewright.drawings.strips import clip_block, clip_strip

HATCHES: tuple[Hatch, ...] = (
    "diagonal", "dots", "back-diagonal", "horizontal", "cross", "vertical", "none",
)  # fmt: skip
_BESIDE = 1.5
_SLIDES = (0.0, -1.5, 1.5, -3.0, 3.0, -5.0, 5.0, -8.0, 8.0)
_SWATCH = (6.0, 3.4)
_KEY_GAP, _KEY_LINE = 4.0, 5.0


class PaintedBand(NamedTuple):
    """A band on the paper (y down): its colour's name, its paint, the parts of the outline it fills, its label.

    A block has an outline drawn round it and is labelled inside it.
    """

    name: str
    paint: Polygon
    parts: tuple[tuple[Point, ...], ...]
    label: str = ""
    is_block: bool = False


def assign_hatches(names: Iterable[str]) -> dict[str, Hatch]:
    """A hatch for each colour name, in order of first appearance.

    Use one assignment for all drawings of a pattern. From the eighth colour on hatches come round
    again, and only the name tells such colours apart in black and white.

    >>> assign_hatches(["oat", "kelp", "oat"])
    {'oat': 'diagonal', 'kelp': 'dots'}
    """
    ordered = list(dict.fromkeys(names))
    return {name: HATCHES[index % len(HATCHES)] for index, name in enumerate(ordered)}


def paint_bands(
    bands: Sequence[ColourBand],
    outline: Sequence[Point],
    paper_y: tuple[float, float],
    hatches: Mapping[str, Hatch],
) -> tuple[PaintedBand, ...]:
    """The bands that show in an outline on the paper; `paper_y` is the bottom edge's y and the scale."""
    base, scale = paper_y
    painted = []
    for band in bands:
        left, right = (None if x is None else x * scale for x in (band.left, band.right))
        parts = clip_block(outline, (base - band.top * scale, base - band.bottom * scale), left, right)
        if parts:
            paint = hatched((), band.colour, hatches[band.name])
            painted.append(PaintedBand(band.name, paint, parts, band.label, bool(band.number)))
    return tuple(painted)


def hatched(points: tuple[Point, ...], colour: str, hatch: Hatch) -> Polygon:
    """A fill without outline, its hatch in ink or white, whichever shows."""
    return Polygon(points, width=0.0, colour=line_colour_on(colour), fill=colour, hatch=hatch)


def fills_of(bands: Iterable[PaintedBand]) -> tuple[Polygon, ...]:
    """The polygons that paint the bands."""
    return tuple(replace(band.paint, points=part) for band in bands for part in band.parts)


def outlines_of(bands: Iterable[PaintedBand]) -> tuple[Polygon, ...]:
    """The lines round blocks: two of one colour may touch at a corner, and hatches alone don't part them."""
    return tuple(Polygon(part, 0.18, INK) for band in bands if band.is_block for part in band.parts)


def name_bands(
    scene: Scene, outline: Sequence[Point], bands: Sequence[PaintedBand], sides: Sequence[int], width: float
) -> Scene:
    """Writes every band's name; `sides` says which side to try first (1 right, -1 left)."""
    blocks = any(band.is_block for band in bands)
    for side in () if blocks else sides:
        named = _name_all(scene, [_beside(outline, band, side) for band in bands])
        if named:
            return named
    named = _name_all(scene, [_inside(band, band.label) for band in bands], plate=True)
    if named:
        return named
    key = {band.name: band.paint for band in bands}
    numbered = _name_all(scene, [_inside(band, band.label.split()[0]) for band in bands if band.is_block], plate=True)
    return write_colour_key(numbered or scene, key, width)


def _name_all(scene: Scene, places: Sequence[list[Label]], plate: bool = False) -> Scene | None:
    for choices in places:
        written = write_first_free(scene, choices, plate)
        if written is None:
            return None
        scene = written
    return scene


def _beside(outline: Sequence[Point], band: PaintedBand, side: int) -> list[Label]:
    """Places beside a band, as long as the name's middle stays level with it."""
    _, top, _, bottom = _box_of(band)
    _, height = text_room(band.name)
    places = []
    for slide in _SLIDES:
        middle = (top + bottom) / 2 + slide
        if bottom - top < height * 0.7 or not top + height / 3 <= middle <= bottom - height / 3:
            continue
        strip = clip_strip(outline, middle - height / 2, middle + height / 2)
        xs = [x * side for part in strip for x, _ in part]
        if xs:
            edge = max(xs) + _BESIDE
            places.append(level_label(edge * side, middle, band.name, "start" if side > 0 else "end"))
    return places


def _inside(band: PaintedBand, text: str) -> list[Label]:
    """Places on the widest stretch of a band."""
    _, top, _, bottom = _box_of(band)
    width, height = text_room(text)
    places = []
    for slide in _SLIDES:
        middle = (top + bottom) / 2 + slide
        if not top + height / 2 + CLEAR <= middle <= bottom - height / 2 - CLEAR:
            continue
        stretches = [box_around(part) for b in band.parts for part in clip_strip(b, middle, middle + 0.01)]
        if stretches:
            left, _, right, _ = max(stretches, key=lambda box: box[2] - box[0])
            label = centred_label(((left + right) / 2, middle), text)
            fits = not band.is_block or right - left >= width + 2 * CLEAR
            if fits and any(contains(part, ((left + right) / 2, middle)) for part in band.parts):
                places.append(label)
    return places


def _box_of(band: PaintedBand) -> tuple[float, float, float, float]:
    return box_around(point for part in band.parts for point in part)


def write_colour_key(scene: Scene, paints: Mapping[str, Polygon], width: float) -> Scene:
    """A swatch and a name for each colour, in rows under all that is drawn."""
    left, _, right, bottom = scene.extent()
    right = max(right, left + width / 2)
    x, y = left, bottom + _KEY_GAP
    for name, paint in paints.items():
        room = _SWATCH[0] + _BESIDE + text_room(name)[0]
        if x > left and x + room > right:
            x, y = left, y + _KEY_LINE
        corners = ((x, y), (x + _SWATCH[0], y), (x + _SWATCH[0], y + _SWATCH[1]), (x, y + _SWATCH[1]))
        scene = scene.fill(replace(paint, points=corners)).draw(Polygon(corners, 0.18, INK))
        middle = y + _SWATCH[1] / 2
        scene = scene.write(level_label(x + _SWATCH[0] + _BESIDE, middle, name, "start"))
        x += room + _KEY_GAP
    return scene
