"""Shaped sections that no size could work: out of place, or at edges that aren't there."""

from collections.abc import Iterator

from gaugewright.design.model import TOPS, Armhole, Cap, Design, Even, Neck, NeckEdge, Piece, Section, Shoulders
from gaugewright.errors import Problem
from gaugewright.grading.take_up import SIDES
from gaugewright.grading.tops import has_top_rows


def top_edges(piece: Piece) -> tuple[str, ...]:
    """The names of the edges that a piece's last section gives it."""
    if any(isinstance(section, TOPS) for section in piece.sections):
        return "shoulder", "neck"
    return ("cap",) if any(isinstance(section, Cap) for section in piece.sections) else ()


def shape_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Everything about a piece's shaped sections that is wrong in every size."""
    for index, section in enumerate(piece.sections):
        if not isinstance(section, (Armhole, Cap)) and not has_top_rows(section):
            continue
        below = piece.sections[index - 1] if index else None
        yield from _place(piece, section, below, index)
        yield from _edges(piece, section, below)


def _place(piece: Piece, section: Section, below: Section | None, index: int) -> Iterator[Problem]:
    name = _name(section)
    if piece.start.in_rounds:
        if isinstance(section, (Armhole, Cap)):
            message = f"{piece.key} is worked in rounds, and {name} is shaped at edges of row ends"
            yield Problem("edges-in-rounds", message, section.origin, "start the piece with a chain")
    elif below is None:
        message = f"{name} of {piece.key} has no rows below it to be shaped on"
        yield Problem("nothing-below", message, section.origin, "put a section such as `even: {length: 10 cm}` before it")
    elif has_top_rows(section) and not isinstance(below, (Even, Armhole)):
        message = f"{name} of {piece.key} takes its rows from the section below it, which is not worked even or as an armhole"
        yield Problem("no-rows-below", message, section.origin, "put an `even` or `armhole` section up to the shoulder before it")
    elif has_top_rows(section) and isinstance(below, Even) and below.colour:
        message = f"the section below {name} of {piece.key} has a colour of its own, and the neck's rows are some of its rows"
        yield Problem("no-rows-below", message, section.origin, "give the piece `colours` instead")
    if isinstance(section, Cap) and index < len(piece.sections) - 1:
        message = f"{piece.key} has sections above its cap, and a cap ends a sleeve"
        yield Problem("shoulders-not-last", message, section.origin, "put the cap last")


def _edges(piece: Piece, section: Section, below: Section | None) -> Iterator[Problem]:
    at = section.at if isinstance(section, (Armhole, NeckEdge)) else "both"
    if at not in ("both", *SIDES) or (at == "both" and isinstance(section, NeckEdge)):
        message = f"{at} is not one edge of row ends of {piece.key}"
        yield Problem("no-such-side", message, section.origin, "write `at: starting` or far, or the name of a side edge")
    elif isinstance(section, (Neck, Shoulders)) and isinstance(below, Armhole) and below.at != "both":
        message = f"{piece.key} has an armhole at one edge, and {_name(section)} between two"
        yield Problem("no-such-side", message, section.origin, "shape the armhole `at: both`, or use `neck_edge`")
    elif isinstance(section, NeckEdge) and isinstance(below, Armhole) and below.at in ("both", at):
        message = f"the armhole of {piece.key} is shaped at the edge of its neck"
        yield Problem("no-such-side", message, section.origin, "name the other edge with `at` in the armhole")


def _name(section: Section) -> str:
    match section:
        case Armhole():
            return "the armhole"
        case Cap():
            return "the cap"
        case Shoulders():
            return "the shoulders' slope"
    return "the neck"
