"""Draws the schematic of a piece: outline, bands of colour, dimensions, names.

In: a `PieceFigure`. Out: a `Schematic` that fits the room given, in true proportion. Lines and
text keep their size on paper while the piece shrinks to make room for them, so the scale is
found by laying the drawing out a few times.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from gaugewright.drawings.canvas import cut_canvas
from gaugewright.drawings.colour_bands import PaintedBand, assign_hatches, fills_of, hatched, name_bands, outlines_of, paint_bands, write_colour_key
from gaugewright.drawings.crown_figures import circle
from gaugewright.drawings.dimension_layout import Wanted, add_dimensions
from gaugewright.drawings.dimension_lines import INK, THIN
from gaugewright.drawings.drawn_size import in_size
from gaugewright.drawings.edge_labels import mark_point, name_edge
from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.model import ColourBand, KeyEntry, PieceFigure, Schematic, Units, are_alike
from gaugewright.drawings.primitives import Drawing, Hatch, Point, Polygon, Polyline
from gaugewright.drawings.scale import fit_to_room
from gaugewright.drawings.slit_lines import draw_slit, listed_openings
from gaugewright.drawings.scene import TEXT, Scene, level_label, text_room
from gaugewright.units import cm_text, inches_text

OUTLINE_WIDTH = 0.36
"""Twice a dimension line."""
IN_ROUNDS = "worked in rounds; width shown is half the round"
OPENED = "worked in rounds; drawn cut open where rounds begin"


class _Request(NamedTuple):
    figure: PieceFigure
    units: Units
    hatches: Mapping[str, Hatch]
    max_width: float
    max_height: float


def draw_schematic(
    figure: PieceFigure,
    units: Units,
    max_width: float = 160.0,
    max_height: float = 110.0,
    hatches: Mapping[str, Hatch] | None = None,
) -> Schematic:
    """The schematic of one piece with its key.

    With several sizes each dimension carries a letter, and the key gives the values; with one
    size it carries the value too. `hatches` should be one assignment for all drawings of a
    pattern. A drawing is larger than asked only where its texts alone need more room.
    """
    chosen = hatches or assign_hatches(band.name for band in (*figure.bands, *figure.rings))
    request = _Request(figure, units, chosen, max_width, max_height)
    left, bottom, right, top = box_around(figure.outline)
    scene = fit_to_room(
        lambda scale: _lay_out(request, scale), (right - left, top - bottom), (max_width, max_height)
    )
    key = key_of(figure)
    drawing = cut_canvas(scene, figure.title, _describe(figure, units, key))
    return Schematic(drawing, key)


def key_of(figure: PieceFigure) -> tuple[KeyEntry, ...]:
    """Letter, name and values in mm of each measure, in the order given."""
    return tuple((_letter(i), m.name, m.values) for i, m in enumerate(figure.measures))


def _letter(index: int) -> str:
    """A to Z, then AA, AB and so on.

    >>> _letter(0), _letter(25), _letter(26)
    ('A', 'Z', 'AA')
    """
    letter = chr(ord("A") + index % 26)
    return letter if index < 26 else _letter(index // 26 - 1) + letter


def _lay_out(request: _Request, scale: float) -> Scene:
    figure = request.figure
    outline = tuple(_on_paper(point, scale) for point in figure.outline)
    bands = paint_bands(figure.bands, outline, (0.0, scale), request.hatches)
    scene = Scene().fill(*fills_of(bands), *_rings(request, outline, scale)).draw(*outlines_of(bands), Polygon(outline, OUTLINE_WIDTH))
    scene = scene.draw(*(Polyline(tuple(_on_paper(end, scale) for end in hole), OUTLINE_WIDTH) for hole in figure.holes))
    scene = scene.draw(*(Polyline(tuple(_on_paper(point, scale) for point in row), THIN, INK) for row in figure.rows))
    scene = add_dimensions(scene, outline, _wanted(request, scale))
    for name, point in figure.marks:
        scene = mark_point(scene, outline, name, _on_paper(point, scale))
    for name, start, end in figure.slits:
        scene = draw_slit(scene, outline, name, (_on_paper(start, scale), _on_paper(end, scale)))
    scene = _name_colours(request, scene, outline, bands)
    if figure.rings:
        scene = write_colour_key(scene, {ring.name: hatched((), ring.colour, request.hatches[ring.name]) for ring in figure.rings}, request.max_width)
    for name, point in figure.edge_names:
        scene = name_edge(scene, outline, name, _on_paper(point, scale))
    note = _note(figure)
    return _write_note(scene, note, request.max_width) if note else scene


def _name_colours(request: _Request, scene: Scene, outline: Sequence[Point], bands: Sequence[PaintedBand]) -> Scene:
    """Colours by name where a piece has several; one colour alone stands in a key, and has no name where the pattern has no other.

    Why: beside a piece of one colour its name reads as that of an edge.
    """
    names = {band.name: band.paint for band in bands}
    if len(names) > 1:
        return name_bands(scene, outline, bands, _quieter_side_first(scene, outline, request.figure), request.max_width)
    return write_colour_key(scene, names, request.max_width) if len(request.hatches) > 1 else scene


def _rings(request: _Request, outline: Sequence[Point], scale: float) -> tuple[Polygon, ...]:
    """The rings of a disc or a motif, each full under those within it."""
    sides = request.figure.ring_sides
    middle = sum(x for x, _ in outline) / len(outline), sum(y for _, y in outline) / len(outline)
    if not sides:
        left, top, right, bottom = box_around(outline)
        middle = (left + right) / 2, (top + bottom) / 2
    paints = ((ring, hatched((), ring.colour, request.hatches[ring.name])) for ring in reversed(request.figure.rings))
    return tuple(replace(paint, points=_ring(outline, middle, ring.top * scale, sides)) for ring, paint in paints)


def _ring(outline: Sequence[Point], middle: Point, reach: float, sides: int) -> tuple[Point, ...]:
    """A circle, or the motif's own outline drawn in until its sides lie so far from the middle."""
    if not sides:
        return circle(reach, middle)
    share = reach / (math.dist(outline[0], middle) * math.cos(math.pi / sides))
    return tuple((middle[0] + share * (x - middle[0]), middle[1] + share * (y - middle[1])) for x, y in outline)


def _on_paper(point: Point, scale: float) -> Point:
    return point[0] * scale, -point[1] * scale


def _wanted(request: _Request, scale: float) -> list[Wanted]:
    figure = request.figure
    wanted = []
    for index, measure in enumerate(figure.measures):
        text = _letter(index)
        if len(figure.sizes) == 1:
            text += " " + _length_text(measure.values[0], request.units)
        ends = _on_paper(measure.start, scale), _on_paper(measure.end, scale)
        wanted.append(Wanted(measure.along, *ends, text))
    return wanted


def _length_text(mm: float, units: Units) -> str:
    return f"{cm_text(mm)} cm" if units == "cm" else f"{inches_text(mm)} in"


def _quieter_side_first(scene: Scene, outline: Sequence[Point], figure: PieceFigure) -> tuple[int, int]:
    """The side of the piece with less on it: 1 the right, -1 the left; names still to come count."""
    left, _, right, _ = box_around(outline)
    inner, outer = box_around(figure.outline)[0], box_around(figure.outline)[2]
    third = (outer - inner) / 3
    to_come = [x for _, (x, _) in (*figure.edge_names, *figure.marks)]
    to_come += [x for _, (x, _), _ in figure.slits]
    on_right = sum(x > outer - third for x in to_come) + sum(box[0] > right for _, box in scene.texts)
    on_left = sum(x < inner + third for x in to_come) + sum(box[2] < left for _, box in scene.texts)
    return (1, -1) if on_right <= on_left else (-1, 1)


def _note(figure: PieceFigure) -> str:
    return "; ".join(part for part in (_way(figure), _numbering(figure.bands)) if part)


def _way(figure: PieceFigure) -> str:
    return IN_ROUNDS if figure.in_rounds else OPENED if figure.opened else figure.note


def _numbering(bands: Sequence[ColourBand]) -> str:
    """From where blocks are counted, since that edge lies on one side of the RS for one hand and on the other for the other."""
    numbered = [band for band in bands if band.number]
    if not numbered:
        return ""
    lefts = [-math.inf if band.left is None else band.left for band in numbered]
    first = lefts[min(range(len(numbered)), key=lambda index: numbered[index].number)]
    side = "left" if first == min(lefts) else "right"
    return f"blocks are counted from the edge where row 1 begins, here on the {side}; on the RS it is on the right if you are right-handed"


def _write_note(scene: Scene, note: str, max_width: float) -> Scene:
    """A note under all that is drawn, wrapped to the room."""
    left, _, right, bottom = scene.extent()
    lines: list[str] = []
    for word in note.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_room(longer)[0] <= max_width - 2:
            lines[-1] = longer
        else:
            lines.append(word)
    for index, line in enumerate(lines):
        middle = bottom + TEXT + index * TEXT * 1.4
        scene = scene.write(level_label((left + right) / 2, middle, line, "middle"))
    return scene


def _describe(figure: PieceFigure, units: Units, key: tuple[KeyEntry, ...]) -> str:
    """What the drawing shows, for those who can't see it."""
    drawn = figure.sizes.index(figure.drawn_size)
    sentences = [f"Outline of {figure.title}, drawn in true proportion{'' if are_alike(key) else in_size(figure.drawn_size)}."]
    if figure.bands:
        bands = ", ".join(band.label for band in sorted(figure.bands, key=lambda band: (band.bottom, band.left or 0.0)))
        across = ", and across from the edge where odd rows begin" if any(band.number for band in figure.bands) else ""
        sentences.append(f"Colours from the bottom edge up{across}: {bands}.")
    if figure.rings:
        sentences.append(f"Colours from the centre out: {', '.join(ring.name for ring in figure.rings)}.")
    sentences += [f"{letter}: {name}, {_length_text(values[drawn], units)}." for letter, name, values in key]
    if figure.slits:
        sentences.append(f"A line marks {listed_openings(figure)}.")
    if figure.rows and not figure.note:
        sentences.append("Thin lines show the direction of the rows.")
    if figure.holes:
        sentences.append(f"Buttonholes: {len(figure.holes)}.")
    if figure.edge_names or figure.marks:
        names = ", ".join(dict.fromkeys(name for name, _ in (*figure.edge_names, *figure.marks)))
        sentences.append(f"Named on the outline: {names}.")
    if _way(figure):
        sentences.append(f"This piece is {_way(figure)}.")
    if counted := _numbering(figure.bands):
        sentences.append(f"{counted[0].upper()}{counted[1:]}.")
    return " ".join(sentences)
