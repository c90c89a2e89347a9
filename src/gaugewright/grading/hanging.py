"""Fabrics that grow when they hang: what a graded piece measures laid flat, and pieces in which they have no place."""

from collections.abc import Iterator, Mapping

from gaugewright.design.model import Crown, Design, Fabric, Motif, Piece, Triangle
from gaugewright.errors import Problem
from gaugewright.grading.model import GradedPiece

Fabrics = Mapping[str, Fabric]


def grows(graded: GradedPiece, fabrics: Fabrics) -> bool:
    """Whether any row of the piece is longer hung than flat."""
    return any(fabrics[row.fabric].lying for strip in graded.strips for row in strip.rows)


def flat_height(graded: GradedPiece, fabrics: Fabrics, last: int) -> float:
    """Height after that row of the piece laid flat, mm: what each row up to there grows taken off; where a piece is divided, by the
    rows of its first side.
    """
    if not grows(graded, fabrics):
        return graded.outline.heights[last]
    main, *sides = graded.strips
    rows = (*main.rows, *(sides[0].rows if sides else ()))[:last]
    hung = sum(row.height * fabrics[row.fabric].gauge.row_height for row in rows)
    lying = sum(row.height * fabrics[row.fabric].flat.row_height for row in rows)
    return graded.outline.heights[last] * (lying / hung if hung else 1.0)


def hanging_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """A growing fabric in a piece that is worked from a centre, or sideways: its rows would have to grow every way."""
    for section in piece.sections:
        fabric = design.fabric(section.fabric)
        round_about = piece.start.kind in ("centre", "middle") or isinstance(section, (Crown, Motif, Triangle))
        if not fabric.lying or not (round_about or piece.start.joined):
            continue
        way = "has its rows across the edge it is joined to" if piece.start.joined else "is worked round a centre"
        message = f"{fabric.key} grows along its rows when it hangs, but {piece.key} {way}"
        yield Problem("growth-misplaced", message, piece.origin if piece.start.joined else section.origin, f"give {piece.key} a fabric of its own, like {fabric.key} but with `growth: 0 %`")
        return
