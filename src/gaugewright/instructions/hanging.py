"""Lengths where a fabric grows when it hangs: which are measured flat, which hung, and what the page says of it.

A piece in the hand is laid flat to be measured, since it doesn't yet carry the weight that will stretch it; the
finished table and the drawings are of the garment as it hangs. Where nothing grows, nothing of this shows.
"""

import math
from collections.abc import Iterable, Iterator

from gaugewright.checks.terms import terms_of
from gaugewright.design.model import Design, Fabric, FinishedMeasure
from gaugewright.grading.grade import Grading
from gaugewright.grading.hanging import Fabrics, flat_height, grows
from gaugewright.grading.model import EdgeLength, GradedPiece
from gaugewright.instructions.wording import Book, Mm, Spans
from gaugewright.rounding import to_step
from gaugewright.sized import Sized

ALONG = ("length",)
"""Measures of a piece that run along its rows' height."""


def flat_heights(graded: Sized[GradedPiece], fabrics: Fabrics, rows: Sized[int]) -> Mm:
    """Heights above the bottom edge after those rows, of a piece that lies flat."""
    if not any(grows(one, fabrics) for one in graded):
        return Mm(Sized(rows.labels, tuple(graded[label].outline.heights[row] for label, row in rows.items())))
    return Mm(Sized(rows.labels, tuple(flat_height(graded[label], fabrics, row) for label, row in rows.items())), "flat")


def edge_length(edges: Sized[EdgeLength], pieces: Iterable[GradedPiece], fabrics: Fabrics) -> Mm:
    """Lengths of edges, told to be hung where rows that grow lie along them."""
    longer = any(edge.rows for edge in edges) and any(grows(piece, fabrics) for piece in pieces)
    return Mm(edges.map(lambda edge: edge.length), "hung" if longer else "")


def flat_slant(edge: EdgeLength, fabric: Fabric) -> float:
    """The length of a straight edge that rises with its rows, laid flat: its rows shrink back, its width stays."""
    if not fabric.lying:
        return edge.length
    rise = fabric.gauge.height_of(edge.rows)
    return math.hypot(math.sqrt(max(edge.length**2 - rise**2, 0.0)), fabric.flat.height_of(edge.rows))


def is_hung(measure: FinishedMeasure, design: Design, grading: Grading) -> bool:
    """Whether a finished measurement runs along rows that grow."""
    fabrics = {fabric.key: fabric for fabric in design.fabrics}
    for term in terms_of(measure.measure, design):
        graded = grading.pieces[term.piece].values[0]
        along = graded.edges[term.name].rows > 0 if term.is_edge else term.name in ALONG
        if along and grows(graded, fabrics):
            return True
    return False


def hanging_notes(book: Book, fabrics: Iterable[Fabric]) -> Iterator[Spans]:
    """What a growing fabric means for measuring, told once; nothing where none grows."""
    if any(fabric.lying for fabric in fabrics):
        yield book.front_text("hanging-note")


def percent(share: float) -> str:
    """
    >>> percent(0.05), percent(0.0952)
    ('5', '9.5')
    """
    return f"{to_step(share * 100, 0.5):.1f}".removesuffix(".0")
