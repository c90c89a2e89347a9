"""What can't be picked up round joined motifs, told where it is written.

In: the designed piece. Out: located problems. A border's counts follow from the motifs' sides and its corners from
the rim, so it goes round alone, plain but for those corners.
"""

from collections.abc import Iterator

from gaugewright.design.model import Design, Even, Piece
from gaugewright.design.rims import RIM, border_of, names_rim
from gaugewright.errors import Problem
from gaugewright.gauge.counts import CountRule


def rim_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Faults of a border on a rim, and of a piece whose rim is used otherwise."""
    if piece.grid is not None:
        yield from _used_otherwise(piece, design)
    if names_rim(piece, design):
        yield from _begun(piece, design)
        yield from _worked(piece, design)


def _used_otherwise(piece: Piece, design: Design) -> Iterator[Problem]:
    rim = f"{piece.key}.{RIM}"
    if RIM in (piece.bottom, piece.top):
        message = f"{RIM} names an edge of each motif of {piece.key} and the edge round them all once they are joined"
        yield Problem("edge-twice", message, piece.origin, "give the motif's own edge another name")
    named = [edge for seam in design.seams for edge in (seam.join, *seam.to)]
    named += [edge for opening in design.openings for edge in opening.around]
    for edge in named:
        if (edge.piece, edge.edge) == (piece.key, RIM):
            message = f"{rim} goes all round the joined motifs, and is no edge to sew or to pass"
            yield Problem("rim-start", message, edge.origin, f"take it out; a border is a piece with `pick_up: {rim}`")


def _begun(piece: Piece, design: Design) -> Iterator[Problem]:
    start = piece.start
    rim = next(f"{key}.{name}" for key, name in start.edges if name == RIM)
    first = border_of(design.piece(rim.partition(".")[0]), design)
    for is_so, what, hint in (
        (start.kind != "pick up", "is joined along it row by row", f"pick it up: `start: {{pick_up: {rim}}}`"),
        (len(start.edges) > 1, "is made on other edges too", f"write `pick_up: {rim}` alone"),
        (start.kind == "pick up" and not start.ring, "is worked in rows", "give it a `fabric` in joined rounds"),
        (piece.make > 1, f"is made {piece.make} times", "take out `make`"),
        (start.take_up != "edge to edge", f"takes up a {start.take_up}", "take out `take_up`: it is worked into the sts themselves"),
        (first is not None and first.key != piece.key, f"comes after {first.key if first else ''}, which is picked up there", f"take it out, and give {first.key if first else ''} a section more"),
    ):
        if is_so:
            message = f"{rim} is the edge all round joined motifs, along which one border goes round alone, and {piece.key} {what}"
            yield Problem("rim-start", message, start.origin, hint)


def _worked(piece: Piece, design: Design) -> Iterator[Problem]:
    for section in piece.sections:
        if not isinstance(section, Even):
            message = f"{piece.key} goes round joined motifs, and is shaped at its corners only, by its gauge"
            yield Problem("rim-shaped", message, section.origin, "write `even` with its length")
    for key in dict.fromkeys((piece.start.fabric, *(section.fabric for section in piece.sections))):
        fabric = design.fabric(key)
        if fabric.pattern is not None or fabric.rule != CountRule():
            message = f"the corners of {piece.key} would cut repeats of {key}, and its counts follow from the motifs"
            yield Problem("rim-in-pattern", message, piece.start.origin, "give it a `fabric` with a plain stitch and no multiple")
