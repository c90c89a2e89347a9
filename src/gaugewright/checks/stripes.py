"""Stripes: do they follow their sequence, do they meet across seams and where they are matched, are they cut in vain?

Read from the rows: each row has the colour of its first run. The sequence is worked out from the design once more.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.remeasure import side_edges, span_of
from gaugewright.checks.wording import by_size, count_of, problem
from gaugewright.design.colours import Stripes
from gaugewright.design.model import UNSTACKED, EdgeName, Formula, Piece
from gaugewright.errors import Problem
from gaugewright.grading.strands import strands_of
from gaugewright.rounding import half_up

NEAR = 1
"""Two pieces whose row heights differ may be matched a row apart: a height falls on whole rows of each."""


def check_stripes(subject: Subject) -> Found:
    """Whole stripes have the rows their sequence gives them, and matched pieces agree beside each other."""
    problems: list[Problem] = []
    striped = [(piece, piece.colours.stripes) for piece in subject.design.pieces if piece.colours.stripes]
    for piece, stripes in striped:
        uneven = [(size, fault) for size in subject.sizes for fault in _uneven(subject, piece, stripes, size)]
        if uneven:
            problems.append(problem(
                "stripes-uneven", f"the stripes of {piece.key} don't follow their sequence: {by_size(uneven)}", stripes.origin,
                "they can't be worked as they are told; please report it with this spec", [size for size, _ in uneven],
            ))
        problems += _unmatched(subject, piece, stripes)
        problems += _in_vain(subject, piece, stripes)
    problems += _across_seams(subject)
    changes = sum(len(_changes(colours_of(subject, piece, size))) for piece, _ in striped for size in subject.sizes)
    return Found(tuple(problems), f"{count_of(changes, 'change')} of colour in {count_of(len(striped), 'striped piece')} over all sizes" if striped else "no stripes")


def colours_of(subject: Subject, piece: Piece, size: str) -> tuple[str, ...]:
    """The colour of each row, up one side where the piece is divided."""
    strips = subject.grading.pieces[piece.key][size].strips
    return tuple(row.runs[0].colour for row in (*strips[0].rows, *(strips[-1].rows if len(strips) > 1 else ())))


def _changes(colours: Sequence[str]) -> list[int]:
    """The rows after which the colour changes."""
    return [row for row in range(1, len(colours)) if colours[row] != colours[row - 1]]


def sequence_of(subject: Subject, piece: Piece, stripes: Stripes, size: str) -> tuple[str, ...]:
    """The sequence with a colour for each of its rows."""
    gauge, env = subject.design.fabric(piece.fabric).gauge, subject.environments[size]
    found: list[str] = []
    for stripe in stripes.sequence:
        rows = stripe.rows if stripe.length is None else half_up(env.length(stripe.length) / (gauge.height / gauge.rows))
        found += [stripe.colour] * (rows or 0)
    return tuple(found)


def _uneven(subject: Subject, piece: Piece, stripes: Stripes, size: str) -> Iterator[str]:
    """Rows outside sections with a colour of their own must be a stretch of the sequence repeated."""
    colours, sequence = colours_of(subject, piece, size), sequence_of(subject, piece, stripes, size)
    own = _own_rows(subject, piece, size)
    rows = [row for row in range(len(colours)) if row not in own]
    if not any(all(colours[row] == sequence[(shift + row) % len(sequence)] for row in rows) for shift in range(len(sequence))):
        yield f"rows in {', '.join(str(row) for row in _changes(colours)[:6])} change colour"


def _own_rows(subject: Subject, piece: Piece, size: str) -> set[int]:
    plan, found, first = subject.grading.plans[piece.key][size], set[int](), 0
    for section, planned in zip(piece.sections, plan.sections, strict=True):
        if not isinstance(section, UNSTACKED) and section.colour:
            found |= set(range(first, first + planned.rows))
        first += planned.rows
    return found


def _unmatched(subject: Subject, piece: Piece, stripes: Stripes) -> Iterator[Problem]:
    """A matched piece has the colours of the other on both sides of the height at which they lie together."""
    match = stripes.match
    if match is None:
        return
    off = []
    for size in subject.sizes:
        own, other = _beside(subject, piece, match.own, 0, size), _beside(subject, subject.design.piece(match.piece), match.at, None, size)
        if not any(_agree(Rows(own.colours, own.at + shift), other) for shift in range(-NEAR, NEAR + 1)):
            off.append((size, f"{_told(own)} beside {_told(other)}"))
    if off:
        yield problem(
            "stripes-do-not-meet", f"the stripes of {piece.key} don't stand as those of {match.piece}: {by_size(off)}", match.origin,
            "give both pieces fabrics with one row height, and sections without a colour of their own there", [size for size, _ in off],
        )


class Rows(NamedTuple):
    """A piece's colours row by row ("" where a section's own hides them) and the rows below the height matched."""

    colours: tuple[str, ...]
    at: int


def _beside(subject: Subject, piece: Piece, height: Formula | None, unless: int | None, size: str) -> Rows:
    """The piece's rows from a height up and down; without one from row `unless`, or its end."""
    colours, hidden = colours_of(subject, piece, size), _own_rows(subject, piece, size)
    at = len(colours) if unless is None else unless
    if height is not None:
        heights, wanted = subject.grading.pieces[piece.key][size].outline.heights, subject.environments[size].length(height)
        at = min(range(len(heights)), key=lambda row: abs(heights[row] - wanted))
    return Rows(tuple("" if row in hidden else colour for row, colour in enumerate(colours)), at)


def _agree(one: Rows, other: Rows) -> bool:
    """Whether rows beside each other have one colour; where one piece has no row, or a hidden one, all agree."""
    reach = range(-min(one.at, other.at), min(len(one.colours) - one.at, len(other.colours) - other.at))
    pairs = [(one.colours[one.at + row], other.colours[other.at + row]) for row in reach if one.at + row >= 0]
    return all(a == b for a, b in pairs if a and b)


def _told(rows: Rows) -> str:
    """The rows next to the height: "oat oat | kelp kelp"."""
    below, above = rows.colours[max(0, rows.at - 2) : rows.at], rows.colours[rows.at : rows.at + 2]
    return f"{' '.join(below) or 'nothing'} | {' '.join(above) or 'nothing'}"


def _in_vain(subject: Subject, piece: Piece, stripes: Stripes) -> Iterator[Problem]:
    """Yarns cut though their colour comes again soon: at the other edge, after an odd number of rows."""
    cut: dict[str, int] = {}
    for size in subject.sizes:
        strips = subject.grading.pieces[piece.key][size].strips
        strands = strands_of(strips[:1], stripes.carry)
        for strand in strands:
            again = [other.first for other in strands if other.colour == strand.colour and other.first > strand.last]
            rested = min(again) - 1 - strand.last if again else 0
            if rested % 2 and rested <= stripes.carry:
                cut[size] = cut.get(size, 0) + 1
    if cut and strips[0].worked == "rows":
        told = by_size((size, count_of(number, "time")) for size, number in cut.items())
        yield problem(
            "stripes-cut", f"the yarns of {piece.key} are cut where their colour comes again soon, at the other edge: {told}", stripes.origin,
            "give each stripe an even number of rows, and the yarn can be carried up the edge", cut, "note",
        )


def _across_seams(subject: Subject) -> Iterator[Problem]:
    """Row ends sewn row to row, of pieces with one sequence, have one colour in each row."""
    for seam in subject.design.seams:
        off = []
        for size in subject.sizes:
            sides = [_edge_colours(subject, edge, size) for edge in (seam.join, *seam.to)] if len(seam.to) == 1 else []
            if len(sides) == 2 and all(sides) and _one_sequence(subject, seam.join, seam.to[0], size):
                apart = [row for row, (one, other) in enumerate(zip(*sides, strict=False), start=1) if one and other and one != other]
                if apart:
                    off.append((size, f"{count_of(len(apart), 'row')}, the first {apart[0]} up the seam"))
        if off:
            yield problem(
                "stripes-do-not-meet", f"stripes don't meet across {seam.join} and {seam.to[0]}: {by_size(off)}", seam.origin,
                f"add `match: {{to: {seam.to[0].piece}, at: HEIGHT, own: HEIGHT}}` to the stripes of {seam.join.piece}, with the heights that lie together",
                [size for size, _ in off], "warning",
            )


def _edge_colours(subject: Subject, edge: EdgeName, size: str) -> tuple[str, ...]:
    """The colours along a side edge, hidden rows as nothing; nothing at all where it isn't row ends of a striped piece."""
    piece = subject.design.piece(edge.piece)
    named = next((one for one in side_edges(piece) if one.name == edge.edge), None)
    if named is None or piece.colours.stripes is None or piece.start.in_rounds:
        return ()
    low, high = span_of(named, subject.grading.plans[piece.key][size])
    hidden = _own_rows(subject, piece, size)
    return tuple("" if row in hidden else colour for row, colour in enumerate(colours_of(subject, piece, size)))[low:high]


def _one_sequence(subject: Subject, join: EdgeName, to: EdgeName, size: str) -> bool:
    pieces = [subject.design.piece(edge.piece) for edge in (join, to)]
    sequences = [sequence_of(subject, piece, piece.colours.stripes, size) for piece in pieces if piece.colours.stripes]
    return len(sequences) == 2 and sequences[0] == sequences[1]
