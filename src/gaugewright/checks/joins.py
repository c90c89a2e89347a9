"""Bands worked sideways along edges: as long as their edges, and joined to each of their places.

Read from the rows and from edges measured anew, apart from the engine that shared them out.
"""

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import by_size, cm, count_of, problem, span_cm
from gaugewright.design.model import Piece
from gaugewright.errors import Problem
from gaugewright.tolerances import PLAIN_JOIN_SHARE, SAME_LENGTH


def check_joins(subject: Subject) -> Found:
    """A band is as long as its edges less what it pulls in, to a row or a hundredth, and its joins take every place once."""
    problems: list[Problem] = []
    off: list[float] = []
    bands = [piece for piece in subject.design.pieces if piece.start.joined]
    for piece in bands:
        faults = []
        for size in subject.sizes:
            length, wanted, missed = _lengths(subject, piece, size)
            off.append(length - wanted)
            height = subject.design.fabric(piece.start.fabric).gauge.row_height
            if abs(length - wanted) > max(height, PLAIN_JOIN_SHARE * wanted) + SAME_LENGTH:
                faults.append((size, f"{cm(length)} for {cm(wanted)} of edge"))
            elif missed:
                faults.append((size, missed))
        if faults:
            problems.append(problem(
                "rib-off-edge", f"{piece.key} doesn't go along the edges it is joined to: {by_size(faults)}", piece.start.origin,
                "an edge shorter than two of the band's rows can't be joined to: use a fabric of lower rows, or join it to fewer and longer edges",
                [size for size, _ in faults],
            ))
    figures = f"{count_of(len(bands), 'band')}, {span_cm(off)} longer than wanted" if bands else "no band is worked sideways"
    return Found(tuple(problems), figures)


def _lengths(subject: Subject, piece: Piece, size: str) -> tuple[float, float, str]:
    """The band's rows, its edges less the gather, and what its joins miss; mm."""
    strip = subject.grading.pieces[piece.key][size].main
    edges = [subject.grading.pieces[key][size].edges[name] for key, name in piece.start.edges]
    length = sum(subject.remade[key][size].edges[name] for key, name in piece.start.edges)
    places = sum(edge.rows or edge.stitches for edge in edges)
    joined = sum(run.times for row in strip.rows for run in row.runs if run.operation.kind == "join")
    missed = "" if piece.start.sewn or joined == places else f"{joined} slip stitches for {places} stitches or row ends"
    return subject.remade[piece.key][size].rows_length, length * (1 - piece.start.gather), missed
