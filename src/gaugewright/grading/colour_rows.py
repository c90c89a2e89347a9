"""Colours in rows: bands and blocks resolved once from the bottom edge, so that they meet across the seams."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from gaugewright.design.model import UNSTACKED, Formula, Piece, Triangle
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.measure import Measured
from gaugewright.grading.plan import ColourBandRows, StripePlan
from gaugewright.grading.stack import row_from_bottom
from gaugewright.sizing.environment import Environment

Gauges = tuple[Gauge, ...]


def colour_rows(piece: Piece, measured: Measured, gauges: Gauges, env: Environment, stripes: StripePlan | None) -> tuple[ColourBandRows, ...]:
    """The piece's colours from row 1 to its last row; a section's own colour wins over bands, stripes and blocks.

    A band that is less than a row high is a located problem.
    """
    total = sum(measured.rows)
    if piece.colours.blocks:
        by_row = [piece.colours.blocks[index].blocks[0].colour for index in _block_of_rows(piece, measured, gauges, env)]
    elif stripes is not None:
        by_row = [stripes.colour_at(row) for row in range(1, total + 1)]
    else:
        by_row = _band_colours(piece, measured, gauges, env)
    own = own_colours(piece, measured.rows)
    return tuple(
        ColourBandRows(colour, first, last) for colour, first, last in _runs([own.get(row, by_row[row - 1]) for row in range(1, total + 1)])
    )


def own_colours(piece: Piece, rows: tuple[int, ...]) -> dict[int, str]:
    """Rows of sections that have a colour of their own."""
    found: dict[int, str] = {}
    first = 1
    for section, count in zip(piece.sections, rows, strict=True):
        if not isinstance(section, UNSTACKED) and section.colour:
            found |= dict.fromkeys(range(first, first + count), section.colour)
        first += count
    return found


def _runs(values: Sequence[str]) -> Iterator[tuple[str, int, int]]:
    """Rows alike together: the value, the first and the last row."""
    first = 1
    for value, group in groupby(values):
        count = len(list(group))
        yield value, first, first + count - 1
        first += count


def block_ranges(piece: Piece, measured: Measured, gauges: Gauges, env: Environment) -> tuple[tuple[int, int, int], ...]:
    """First row, last row and number of each of the piece's rows in blocks, without rows that have a colour of their own."""
    own = own_colours(piece, measured.rows)
    of_rows = _block_of_rows(piece, measured, gauges, env)
    keyed = ["" if row in own else str(index) for row, index in enumerate(of_rows, start=1)]
    return tuple((first, last, int(key)) for key, first, last in _runs(keyed) if key)


def _block_of_rows(piece: Piece, measured: Measured, gauges: Gauges, env: Environment) -> list[int]:
    """For each row which of the piece's rows in blocks it is among: the last go up to the top."""
    total, last, found = sum(measured.rows), 0, list[int]()
    within = env.within({"total": measured.wanted_total})
    parts = piece.colours.blocks
    for index, part in enumerate(parts):
        top = total if index == len(parts) - 1 else min(total, row_from_bottom(_height(part.top, within, measured), measured.rows, gauges))
        if top <= last:
            raise ProblemsFound([Problem(
                "band-too-low", f"the rows of blocks {index + 1} of {piece.key} are less than one row high",
                part.origin, "let them go up higher, or leave them out", env.size,
            )])
        found += [index] * (top - last)
        last = top
    return found


def _height(formula: Formula | None, env: Environment, measured: Measured) -> float:
    return measured.wanted_total if formula is None else env.length(formula)


def _along_spine(measured: Measured, gauges: Gauges) -> tuple[Measured, Gauges]:
    """Bands of rows that lie in a V are as high as they reach along their spine."""
    slant = math.sqrt(2)
    return replace(measured, wanted_total=measured.wanted_total * slant), tuple(replace(gauge, height=gauge.height * slant) for gauge in gauges)


def _band_colours(piece: Piece, measured: Measured, gauges: Gauges, env: Environment) -> list[str]:
    if any(isinstance(section, Triangle) for section in piece.sections):
        measured, gauges = _along_spine(measured, gauges)
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
