"""Pieces in stitch patterns that no size could work."""

from collections.abc import Iterator

from gaugewright.design.model import Design, Piece, Wedge
from gaugewright.errors import Problem


def pattern_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Short rows turn within a repeat, so a wedge is worked in a plain fabric."""
    for section in piece.sections:
        if isinstance(section, Wedge) and design.fabric(section.fabric).pattern is not None:
            message = f"the short rows of this wedge would turn within repeats of {design.fabric(section.fabric).key}"
            yield Problem("wedge-in-pattern", message, section.origin, "work the sections below and above it in a fabric with a plain stitch")
