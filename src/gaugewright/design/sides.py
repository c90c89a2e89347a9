"""Seams that a spec names once and a maker sews twice: on both sides of the garment."""

from gaugewright.design.model import Design, EdgeName, Seam, Shoulders
from gaugewright.design.shapes import Neck


def on_both_sides(design: Design, seam: Seam) -> bool:
    """Whether all edges of a seam are there twice: pieces made twice, or edges on both sides of a piece."""
    return all(_there_twice(design, end) for end in (seam.join, *seam.to))


def _there_twice(design: Design, end: EdgeName) -> bool:
    piece = design.piece(end.piece)
    if piece.make == 2:
        return True
    if end.edge == "shoulder" and piece.sections and isinstance(piece.sections[-1], (Shoulders, Neck)):
        return True
    return len({edge.side for edge in piece.edges if edge.name == end.edge}) == 2
