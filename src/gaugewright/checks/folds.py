"""Edges folded in half and sewn to themselves: do the two halves meet? And seams in an order in which they can be sewn.

A row of stitches is alike from both ends; row ends are only where they are shaped alike. Measured anew from the rows.
"""

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.remeasure import side_edges, span_of
from gaugewright.checks.row_ends import along, row_ends
from gaugewright.checks.terms import fabrics_of
from gaugewright.checks.wording import by_size, cm, problem
from gaugewright.design.model import NamedEdge, NeckEdge, Seam
from gaugewright.design.sides import is_folded
from gaugewright.grading.waiting import seams_too_early
from gaugewright.tolerances import SAME_LENGTH, seam_tolerance

SIDES = ("starting", "far")


def check_folds(subject: Subject) -> Found:
    """Both halves of a folded edge are equally long, within a row or 3 %, and each has something to sew."""
    problems = []
    figures = []
    for seam in subject.design.seams:
        if not is_folded(subject.design, seam) or any(seam.join.edge not in one.edges for one in subject.grading.pieces[seam.join.piece]):
            continue
        halves = {size: _halves(subject, seam, size) for size in subject.sizes}
        height = max(subject.design.fabric(key).gauge.row_height for key in fabrics_of(subject.design.piece(seam.join.piece)))
        off = [
            (size, f"{cm(first)} meets {cm(second)}") for size, (first, second) in halves.items()
            if abs(first - second) > seam_tolerance(max(first, second), height) + SAME_LENGTH or not min(first, second)
        ]
        figures.append(f"{seam.join}: halves up to {cm(max(abs(first - second) for first, second in halves.values()))} apart")
        if off:
            problems.append(problem(
                "fold-uneven", f"{seam.join} is folded in half, and its halves don't meet: {by_size(off)}", seam.origin,
                f"shape {seam.join} alike from both its ends, or give its two parts names of their own and sew those", [size for size, _ in off],
            ))
    return Found(tuple(problems), "; ".join(figures) or "no edge is folded")


def check_seam_order(subject: Subject) -> Found:
    """A seam is told once the pieces it sews are made: none of them waits for that seam or a later one."""
    problems = []
    for index, last in seams_too_early(subject.design):
        seam, later = subject.design.seams[index], subject.design.seams[last]
        if index == last:
            message, hint = f"{seam.join} is sewn by a seam that its own piece waits for", "sew that piece's edges to other pieces, or to itself along another edge"
        else:
            message = f"{seam.join} is sewn before {later.join}, and what it belongs to is worked only after that"
            hint = f"put this seam after that of {later.join}"
        problems.append(problem("seam-too-early", message, seam.origin, hint, subject.sizes))
    return Found(tuple(problems), f"{len(subject.design.seams)} seams in the order they are sewn" if not problems else "seams out of order")


def _halves(subject: Subject, seam: Seam, size: str) -> tuple[float, float]:
    """The lengths that meet, without what lies in the fold where the number is odd."""
    piece, name = subject.design.piece(seam.join.piece), seam.join.edge
    graded = subject.grading.pieces[piece.key][size]
    whole = [NamedEdge(side, side, None, None) for side in SIDES]  # type: ignore[arg-type]
    edge = next((one for one in (*side_edges(piece), *whole) if one.name == name), None)
    if edge is None:
        length = subject.remade[piece.key][size].edges[name]
        if name == "neck" and isinstance(piece.sections[-1], NeckEdge):
            return length, 0.0  # it has one end at a shoulder and one at a front: nothing of it is alike
        stitches = graded.edges[name].stitches
        half = length / 2 if graded.edges[name].rows else length * (stitches // 2) / stitches
        return half, half
    gauges = {fabric.key: fabric.gauge for fabric in subject.design.fabrics}
    low, high = span_of(edge, subject.grading.plans[piece.key][size])
    ends, half_rows = getattr(row_ends(graded.strips, gauges), edge.side), (high - low) // 2
    return along(ends[low : low + half_rows]), along(ends[high - half_rows : high])
