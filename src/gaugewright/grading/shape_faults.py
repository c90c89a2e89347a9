"""Shaped sections that no size could work: out of place, or at edges that aren't there."""

from collections.abc import Iterator

from gaugewright.design.model import TOPS, Armhole, Cap, Design, Even, Formula, Neck, NeckEdge, Opened, Piece, RaglanEdge, Section, Shoulders
from gaugewright.errors import Problem
from gaugewright.grading.take_up import SIDES
from gaugewright.grading.tops import has_top_rows


def top_edges(piece: Piece) -> tuple[str, ...]:
    """The names of the edges that a piece's last section gives it."""
    if any(isinstance(section, RaglanEdge) for section in piece.sections):
        return ("neck",)
    if any(isinstance(section, TOPS) and not isinstance(section, Opened) for section in piece.sections):
        return "shoulder", "neck"
    return ("cap",) if any(isinstance(section, Cap) for section in piece.sections) else ()


def shape_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Everything about a piece's shaped sections that is wrong in every size."""
    for index, section in enumerate(piece.sections):
        below = piece.sections[index - 1] if index else None
        if isinstance(section, (*TOPS, RaglanEdge)):
            yield from _raglan(piece, section, below, index)
        if not isinstance(section, (Armhole, RaglanEdge, Cap)) and not has_top_rows(section):
            continue
        yield from _place(piece, section, below, index)
        if not piece.start.in_rounds:
            yield from _edges(piece, section, below)


def _place(piece: Piece, section: Section, below: Section | None, index: int) -> Iterator[Problem]:
    name = _name(section)
    if piece.start.in_rounds:
        if isinstance(section, (Armhole, RaglanEdge, Cap)):
            message = f"{piece.key} is worked in rounds, and {name} is shaped at edges of row ends"
            yield Problem("edges-in-rounds", message, section.origin, "start the piece with a chain")
    elif below is None:
        message = f"{name} of {piece.key} has no rows below it to be shaped on"
        yield Problem("nothing-below", message, section.origin, "put a section such as `even: {length: 10 cm}` before it")
    elif has_top_rows(section) and not isinstance(below, (Even, Armhole, RaglanEdge)):
        message = f"{name} of {piece.key} takes its rows from the section below it, which is not worked even or as an armhole"
        yield Problem("no-rows-below", message, section.origin, "put an `even` or `armhole` section up to the shoulder before it")
    elif has_top_rows(section) and isinstance(below, Even) and below.colour:
        message = f"the section below {name} of {piece.key} has a colour of its own, and the neck's rows are some of its rows"
        yield Problem("no-rows-below", message, section.origin, "give the piece `colours` instead")
    if isinstance(section, Cap) and index < len(piece.sections) - 1:
        message = f"{piece.key} has sections above its cap, and a cap ends a sleeve"
        yield Problem("shoulders-not-last", message, section.origin, "put the cap last")


def _raglan(piece: Piece, section: Section, below: Section | None, index: int) -> Iterator[Problem]:
    """Raglan edges end a piece or let a neck follow, which then takes all that they leave; other necks state their width."""
    if isinstance(section, RaglanEdge):
        if any(not isinstance(above, TOPS) for above in piece.sections[index + 1 :]):
            message = f"{piece.key} has sections above its raglan edges, which end it at the neck"
            yield Problem("shoulders-not-last", message, section.origin, "put `raglan_edge` last, or a `neck` alone after it")
    elif isinstance(below, RaglanEdge):
        stated: dict[str, Formula | None] = {"shoulders": section.neck} if isinstance(section, Shoulders) else {}
        if isinstance(section, (Neck, NeckEdge)):
            stated = {"width": section.width, "slope": section.slope}
        for key, formula in stated.items():
            if formula is not None:
                message = f"{piece.key} has `{key}` above its raglan edges, which leave no shoulders: the neck takes all that is between them"
                yield Problem("raglan-shoulder", message, formula.origin, f"take out `{key}`")
    elif isinstance(section, (Neck, NeckEdge)) and section.width is None:
        message = f"the neck of {piece.key} has no `width`, which only a neck above raglan edges can do without"
        yield Problem("missing-key", message, section.origin, "add `width: 18 cm`")


def _edges(piece: Piece, section: Section, below: Section | None) -> Iterator[Problem]:
    at = section.at if isinstance(section, (Armhole, RaglanEdge, NeckEdge)) else "both"
    if at not in ("both", *SIDES) or (at == "both" and isinstance(section, NeckEdge)):
        message = f"{at} is not one edge of row ends of {piece.key}"
        yield Problem("no-such-side", message, section.origin, "write `at: starting` or far, or the name of a side edge")
    elif isinstance(section, (Neck, Shoulders)) and isinstance(below, (Armhole, RaglanEdge)) and below.at != "both":
        message = f"{piece.key} has {_one(below)} at one edge, and {_name(section)} between two"
        yield Problem("no-such-side", message, section.origin, f"shape {_name(below)} `at: both`, or use `neck_edge`")
    elif isinstance(section, NeckEdge) and isinstance(below, (Armhole, RaglanEdge)) and below.at in ("both", at):
        message = f"{_name(below)} of {piece.key} is shaped at the edge of its neck"
        yield Problem("no-such-side", message, section.origin, f"name the other edge with `at` in {_name(below)}")


def _one(section: Armhole | RaglanEdge) -> str:
    return "an armhole" if isinstance(section, Armhole) else "a raglan edge"


def _name(section: Section) -> str:
    match section:
        case RaglanEdge():
            return "the raglan edge"
        case Armhole():
            return "the armhole"
        case Cap():
            return "the cap"
        case Shoulders():
            return "the shoulders' slope"
    return "the neck"
