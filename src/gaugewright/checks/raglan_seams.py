"""Seams of raglan edges: slants that the cloth can give, and equal stitches left where they begin."""

import math
from collections.abc import Iterator

from gaugewright.checks.model import Subject
from gaugewright.checks.remeasure import side_edges, span_of
from gaugewright.checks.wording import by_size, problem
from gaugewright.design.flat_raglans import is_raglan_seam
from gaugewright.design.model import EdgeName, Seam
from gaugewright.errors import Problem
from gaugewright.rounding import up
from gaugewright.tolerances import RAGLAN_SHARE


def slants_apart(seam: Seam, off: list[tuple[str, str]], deeper: float) -> Problem:
    """Raglan edges whose slants differ too much; over more rows the same stitches slant less."""
    others = " + ".join(str(edge) for edge in seam.to)
    return problem(
        "seam-mismatch", f"the raglan edges {seam.join} and {others} slant too differently to be sewn row for row: {by_size(off)}; "
        "within a tenth of the longer is expected", seam.origin,
        f"make both raglans {up(deeper / 10)} cm deep, or let the edges lose stitches more alike: a wider `target` or `block` for the longer, "
        "a wider piece below the shorter", [size for size, _ in off],
    )


def raglan_depth(one: float, other: float, depth: float) -> float:
    """The depth in mm at which two straight edges that slant as these do would differ by a tenth.

    >>> up(raglan_depth(250.0, 200.0, 200.0))
    310
    """
    longer, shorter = (max(0.0, length**2 - depth**2) for length in (max(one, other), min(one, other)))
    share = (1 - RAGLAN_SHARE) ** 2
    return math.sqrt(max(0.0, share * longer - shorter) / (1 - share))


def blocks_differ(subject: Subject, seam: Seam) -> Iterator[Problem]:
    """At a raglan's underarm the stitches left on body and sleeve meet; where they differ the seams miss each other there."""
    off = []
    if is_raglan_seam(subject.design, seam) and len(seam.to) == 1:
        for size in subject.sizes:
            one, other = (_left_at_foot(subject, end, size) for end in (seam.join, seam.to[0]))
            if one != other:
                off.append((size, f"{one} stitches meet {other}"))
    if off:
        yield problem(
            "raglan-blocks-differ", f"at the underarm {seam.join} and {seam.to[0]} leave unequal blocks: {by_size(off)}", seam.origin,
            f"give {seam.join.piece} and {seam.to[0].piece} the same `block`", [size for size, _ in off], "warning",
        )


def _left_at_foot(subject: Subject, end: EdgeName, size: str) -> int:
    """Stitches left unworked or slip-stitched over on the first row of a row-end edge."""
    named = next(edge for edge in side_edges(subject.design.piece(end.piece)) if edge.name == end.edge)
    low, _ = span_of(named, subject.grading.plans[end.piece][size])
    rows = [row for strip in subject.grading.pieces[end.piece][size].strips[:2] for row in strip.rows]
    kind = "slip over" if (named.side == "starting") == (rows[low].side == "RS") else "leave"
    return sum(run.times for run in rows[low].runs if run.operation.kind == kind)
