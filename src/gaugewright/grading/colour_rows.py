"""Colour bands in rows: resolved once from the bottom edge, so that they meet across the seams."""

from gaugewright.design.model import UNSTACKED, Piece
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.measure import Measured
from gaugewright.grading.plan import ColourBandRows
from gaugewright.grading.stack import row_from_bottom
from gaugewright.sizing.environment import Environment


def colour_rows(piece: Piece, measured: Measured, gauges: tuple[Gauge, ...], env: Environment) -> tuple[ColourBandRows, ...]:
    """The piece's colours from row 1 to its last row; a section's own colour wins over the bands.

    A band that is less than a row high is a located problem.
    """
    by_row = _band_colours(piece, measured, gauges, env)
    first = 0
    for section, count in zip(piece.sections, measured.rows, strict=True):
        if not isinstance(section, UNSTACKED) and section.colour:
            by_row[first : first + count] = [section.colour] * count
        first += count
    bands: list[ColourBandRows] = []
    for number, colour in enumerate(by_row, start=1):
        if bands and bands[-1].colour == colour:
            bands[-1] = ColourBandRows(colour, bands[-1].first, number)
        else:
            bands.append(ColourBandRows(colour, number, number))
    return tuple(bands)


def _band_colours(piece: Piece, measured: Measured, gauges: tuple[Gauge, ...], env: Environment) -> list[str]:
    total = sum(measured.rows)
    bands = piece.colours.bands
    if bands is None:
        return [piece.colours.order[0]] * total
    env = env.within({"total": measured.wanted_total})
    height = measured.wanted_total if bands.top is None else env.length(bands.top)
    own = [None if share is None else env.share_or_length(share, height) for share in bands.heights]
    rest = height - sum(length for length in own if length is not None)
    reached, last, colours = 0.0, 0, []
    for index, (length, colour) in enumerate(zip(own, piece.colours.order, strict=True)):
        reached += rest if length is None else length
        top = total if index == len(own) - 1 else min(total, row_from_bottom(reached, measured.rows, gauges))
        if top <= last:
            raise ProblemsFound([Problem(
                "band-too-low", f"colour band {index + 1} of {piece.key} ({colour}) is less than one row high",
                bands.origin, "make the band higher, or leave it out", env.size,
            )])
        colours += [colour] * (top - last)
        last = top
    return colours
