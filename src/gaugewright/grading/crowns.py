"""Crowns: how many stitches a round of a disc adds, and the counts from a centre to a girth.

A round lies one row height further out than the one before, so it is 2 pi row heights longer. As many
stitches as that is wide keep the disc flat; where the first round holds as many, every round divides
evenly. A closing crown is the same disc from its edge in.
"""

import math
from collections.abc import Iterator
from dataclasses import replace

from gaugewright.design.model import Crown, Design, Fabric, Piece, PieceStart, Section, Taper
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.allowed import Asked, allowed_count, stated_count
from gaugewright.rounding import half_up, up
from gaugewright.sizing.environment import Environment
from gaugewright.tolerances import CLOSED_STITCHES, crown_tolerance

FEWEST = 3
"""Fewer stitches in a ring leave no round thing (common practice, no source)."""


def flat_stitches(gauge: Gauge) -> float:
    """Stitches, not rounded, by which a round is longer than the one inside it.

    >>> square = Gauge(stitches=20, width=200, rows=20, height=200)
    >>> f"{flat_stitches(square):.2f}"
    '6.28'
    """
    return 2 * math.pi * gauge.row_height / gauge.stitch_width


def each_of(section: Crown, start: PieceStart, gauge: Gauge) -> int:
    """Stitches that each round adds: as stated; as many as the centre holds, where they lie flat; or the
    nearest whole number that does."""
    flat = flat_stitches(gauge)
    if section.each is not None:
        return section.each
    if start.stitches is not None and abs(start.stitches - flat) <= crown_tolerance(flat):
        return start.stitches
    return max(FEWEST, half_up(flat))


def centre_count(start: PieceStart, first: Section, fabric: Fabric) -> int:
    """Stitches of a centre's first round: as stated, or as many as the rounds after it add."""
    if start.stitches is not None:
        return start.stitches
    if isinstance(first, Crown) and first.each is not None:
        return first.each
    return max(FEWEST, half_up(flat_stitches(fabric.gauge)))


def drawn_together(each: int) -> int:
    """Stitches that a closing crown ends with: those of a disc's first round, halved while they are too many.

    >>> drawn_together(8), drawn_together(13)
    (8, 7)
    """
    while each > CLOSED_STITCHES:
        each = up(each / 2)
    return each


def outward(first: int, end: int, each: int) -> Iterator[int]:
    """Counts of the rounds after the first: so many more each, at most twice as many, the last round what is left.

    >>> list(outward(6, 26, 6)), list(outward(4, 20, 8))
    ([12, 18, 24, 26], [8, 16, 20])
    """
    count = first
    while count < end:
        count = min(count + each, 2 * count, end)
        yield count


def crown_counts(before: int, end: int, each: int) -> tuple[int, ...]:
    """Counts after each round, outward or inward; inward the first round takes away the odd ones.

    >>> crown_counts(6, 20, 6), crown_counts(20, 6, 6), crown_counts(6, 6, 6)
    ((12, 18, 20), (18, 12, 6), ())
    """
    if end >= before:
        return tuple(outward(before, end, each))
    return tuple(reversed((end, *outward(end, before, each))))[1:]


def crown_end(section: Crown, piece: Piece, fabric: Fabric, env: Environment) -> int:
    """The count of a crown's last round."""
    asked = Asked(f"the crown of {piece.key} ends with", section.origin, env.size)
    if section.close:
        return section.stitches or drawn_together(each_of(section, piece.start, fabric.gauge))
    if section.stitches is not None:
        return stated_count(section.stitches, fabric.rule, asked)
    assert section.target is not None  # a crown closes, or states where it ends
    exact = fabric.gauge.stitches_in(env.length(section.target))
    return allowed_count(exact, replace(fabric.rule, direction=section.direction), replace(asked, origin=section.target.origin))


def crown_rounds(section: Crown, fabric: Fabric, ends: tuple[int | None, int], lead: int, piece: Piece, size: str) -> int:
    """Rounds of a crown between its two counts, with `lead` even ones before them; where nothing is left to
    change, one even round."""
    before, end = ends
    if before is None:
        message = f"the rounds of this crown of {piece.key} follow from its stitches, and those follow from the rows below it"
        raise ProblemsFound([Problem("each-undecided", message, section.origin, "give the section below it a number of rounds", size)])
    if section.close and end >= before:
        message = f"this crown of {piece.key} begins with {before} stitches and is drawn together from {end}: there is nothing to close"
        raise ProblemsFound([Problem("nothing-to-shape", message, section.origin, f"begin it with at least {end + 1} stitches, or write `stitches: {max(1, before - 1)}` or less", size)])
    if lead and not section.close and end < before:
        width = fabric.gauge.width_of(before) / 10
        message = f"this crown of {piece.key} starts from a centre of {before} stitches and ends with {end}: there is nothing to widen"
        hint = f"make it at least {width:.1f} cm around, or start with fewer stitches"
        raise ProblemsFound([Problem("crown-too-small", message, section.origin, hint, size)])
    rounds = len(crown_counts(before, end, each_of(section, piece.start, fabric.gauge)))
    return max(1, rounds + lead)


def crown_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """A crown and a closed end go round, and nothing can be worked on what is drawn shut."""
    for index, section in enumerate(piece.sections):
        if not isinstance(section, (Crown, Taper)):
            continue
        if not piece.start.in_rounds:
            if isinstance(section, Crown):
                message = f"{piece.key} is worked in rows: a crown goes round"
                yield Problem("crown-in-rows", message, section.origin, "start the piece with `centre: flat`, or with a ring")
            elif section.close:
                message = f"{piece.key} is worked in rows, whose stitches close no ring when they are drawn together"
                yield Problem("close-in-rows", message, section.origin, "take out `close`, or start the piece with a ring")
        elif section.close and index < len(piece.sections) - 1:
            message = f"{piece.key} has sections after one that is drawn shut"
            yield Problem("close-not-last", message, section.origin, "put the closing section last, or give it `stitches` without `close`")
