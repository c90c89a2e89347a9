"""Pieces whose rows don't hang one below the other, in fabrics that are said to grow when they hang."""

from collections.abc import Iterator

from gaugewright.design.model import Crown, Design, Motif, Piece, Triangle
from gaugewright.errors import Problem


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
