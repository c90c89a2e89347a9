"""Joined motifs measured anew, with the border round them: from rounds, the printed gauge and how many motifs lie where.

Written apart from the engine's outline: sides are counted from the motifs and their joins, corners from where motifs lie.
"""

import math
from collections import Counter
from collections.abc import Mapping
from dataclasses import replace

from gaugewright.checks.model import Remade, Subject
from gaugewright.design.model import TAKE_UP_STITCHES, Design, Piece
from gaugewright.design.rims import RIM, on_rim
from gaugewright.gauge.model import Gauge
from gaugewright.grading.layout_model import Layout
from gaugewright.grading.plan import PiecePlan
from gaugewright.sized import Sized, join


def joined_measures(piece: Piece, plan: PiecePlan, across: float, gauge: Gauge) -> dict[str, float]:
    """Joined motifs from side to side and from top to bottom, from their rounds and how many lie along each."""
    if piece.grid is None or plan.layout is None:
        return {}
    width = 2 * (across - TAKE_UP_STITCHES[piece.grid.take_up] * gauge.height / gauge.rows)
    across_rows, down = max(plan.layout.in_row(row) for row in range(plan.layout.down)), plan.layout.down
    # Hexagons stand on their corners, and each row lies half a side into the one above it.
    high = width * (down if plan.layout.sides == 4 else (3 * down + 1) / (2 * math.sqrt(3)))
    return {"joined_width": across_rows * width, "joined_length": high, RIM: _round_it(plan.layout) * width * math.tan(math.pi / plan.layout.sides)}


def _round_it(layout: Layout) -> int:
    """Sides of motifs that lie outside: each join hides two."""
    return layout.sides * layout.motifs - 2 * (layout.in_rows + layout.between_rows)


def with_borders(design: Design, remade: Mapping[str, Sized[Remade]]) -> dict[str, Sized[Remade]]:
    """The pieces measured anew, those round joined motifs with what they come to together."""
    found = dict(remade)
    for piece in design.pieces:
        if on_rim(piece, design):
            under = design.piece(piece.start.edges[0][0])
            # A corner of 120 degrees lies further out than the edges beside it.
            over = 1.0 if getattr(under.sections[0], "sides", 4) == 4 else 2 / math.sqrt(3)
            found[piece.key] = join(lambda own, joined, over=over: _added(own, joined, over), remade[piece.key], remade[under.key])
    return found


def _added(own: Remade, joined: Remade, over: float) -> Remade:
    depth = own.measures["length"]
    more = {"joined_width": joined.measures["joined_width"] + 2 * depth, "joined_length": joined.measures["joined_length"] + 2 * depth * over}
    return replace(own, measures={**own.measures, **more})


def rim_rate(subject: Subject, key: str, kind: str, size: str) -> float:
    """What a mm of a border's depth takes off its rows at all corners of one kind together: outer corners are those of
    a single motif, valleys those of two.
    """
    layout = subject.grading.pieces[key][size].layout
    assert layout is not None  # what goes round a rim goes round a grid
    half, radius = layout.width / 2, layout.width / 2 / math.cos(math.pi / layout.sides)
    first = math.pi / 4 if layout.sides == 4 else math.pi / 2
    corners = Counter(
        (math.floor((place.x + radius * math.cos(angle)) / half * 4 + 0.5), math.floor((place.y + radius * math.sin(angle)) / half * 4 + 0.5))
        for place in layout.places() for angle in (first + 2 * math.pi * number / layout.sides for number in range(layout.sides))
    )
    wanted, way = (1, -1) if kind == "outer" else (2, 1)
    return way * sum(met == wanted for met in corners.values()) * 2 * math.tan(math.pi / layout.sides)
