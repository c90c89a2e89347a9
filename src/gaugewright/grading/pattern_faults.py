"""Pieces in stitch patterns that no size could work."""

from collections.abc import Iterator

from gaugewright.design.model import Design, Piece, Slit, Taper, Wedge
from gaugewright.errors import Problem


def pattern_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Short rows turn within a repeat, and an opening or a tip cuts one in two, so they are worked in a plain fabric;
    and no stitch's height follows from a pattern's."""
    for section in piece.sections:
        if isinstance(section, Slit) or (isinstance(section, Taper) and section.at == "sides"):
            if design.fabric(section.fabric).pattern is not None:
                what = f"the {section.edge} opening" if isinstance(section, Slit) else "a taper at both sides"
                message = f"{what} of {piece.key} would cut repeats of {design.fabric(section.fabric).key} in two"
                yield Problem("opening-in-pattern", message, section.origin, "give this section a `fabric` with a plain stitch")
        elif isinstance(section, Wedge) and design.fabric(section.fabric).pattern is not None:
            message = f"the short rows of this wedge would turn within repeats of {design.fabric(section.fabric).key}"
            yield Problem("wedge-in-pattern", message, section.origin, "work the sections below and above it in a fabric with a plain stitch")
        elif getattr(section, "rising", False) and design.fabric(section.fabric).pattern is not None:
            message = f"the slope of {piece.key} rises by stitches, and their heights don't follow from the pattern of {design.fabric(section.fabric).key}"
            yield Problem("rising-in-pattern", message, section.origin, "take out `as`: the slope is then worked in steps")
