"""Picked-up bands: do they fit the edges they are on, and do their buttonholes add up to the band?

Read from the rows and from edges measured anew, apart from the engine that placed them.
"""

from collections.abc import Iterator

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.slits import holes_in
from gaugewright.checks.wording import by_size, cm, count_of, problem, span_cm
from gaugewright.design.model import Buttonholes, Piece
from gaugewright.errors import Problem
from gaugewright.grading.model import EdgeStart, PickUp, Strip
from gaugewright.tolerances import SEAM_SHARE

STITCH_FOR_STITCH = 0.10
"""A stitch edge picked up stitch for stitch may be this share off at the band's gauge before it ruffles (common practice)."""


def check_bands(subject: Subject) -> Found:
    """What is picked up is as long as its edges: a stitch for each edge, or what a seam takes up unseen."""
    problems: list[Problem] = []
    off: list[float] = []
    bands = [piece for piece in subject.design.pieces if piece.start.kind == "pick up"]
    for piece in bands:
        faults = []
        for size in subject.sizes:
            wide, edges, allowed = _lengths(subject, piece, size)
            off.append(wide - edges)
            if abs(wide - edges) > allowed:
                faults.append((size, f"{cm(wide)} on edges of {cm(edges)}"))
        if faults:
            problems.append(problem(
                "band-off-edge", f"{piece.key} isn't as long as the edges it is picked up on: {by_size(faults)}", piece.start.origin,
                "use a fabric whose multiple is smaller, or whose gauge is nearer to that of the edges", [size for size, _ in faults], "warning",
            ))
    figures = f"{count_of(len(bands), 'band')}, {span_cm(off)} longer than their edges" if bands else "nothing is picked up"
    return Found(tuple(problems), figures)


def _lengths(subject: Subject, piece: Piece, size: str) -> tuple[float, float, float]:
    """The band's length, its edges', and how far apart they may be; mm."""
    strip = subject.grading.pieces[piece.key][size].main
    width = _stitch_width(subject, piece)
    edges = wide = allowed = 0.0
    for up in _pick_ups(strip):
        length = subject.remade[up.piece][size].edges[up.edge]
        edges, wide = edges + length, wide + up.stitches * width
        allowed += max(width, length * (SEAM_SHARE if up.rows or up.rim else STITCH_FOR_STITCH))
    return wide, edges, allowed


def _pick_ups(strip: Strip) -> tuple[PickUp, ...]:
    return strip.start.pick_ups if isinstance(strip.start, EdgeStart) else ()


def _stitch_width(subject: Subject, piece: Piece) -> float:
    gauge = subject.design.fabric(piece.start.fabric).gauge
    return gauge.width / gauge.stitches


def check_buttonholes(subject: Subject) -> Found:
    """Buttonholes as counted in the rows: all there, alike, evenly spaced, and with both ends as long as their edge."""
    problems: list[Problem] = []
    made = 0
    for piece in subject.design.pieces:
        if piece.buttonholes is None:
            continue
        faults = [(size, text) for size in subject.sizes for text in _faults(subject, piece, piece.buttonholes, size)]
        made += piece.buttonholes.count * piece.make
        if faults:
            problems.append(problem(
                "buttonholes-uneven", f"the buttonholes of {piece.key} don't add up to its edge: {by_size(faults)}", piece.buttonholes.origin,
                "they can't be worked as they are spaced; please report it with this spec", [size for size, _ in faults],
            ))
    return Found(tuple(problems), f"{count_of(made, 'buttonhole')} in each size" if made else "no buttonholes")


def _faults(subject: Subject, piece: Piece, holes: Buttonholes, size: str) -> Iterator[str]:
    strip, width = subject.grading.pieces[piece.key][size].main, _stitch_width(subject, piece)
    numbered = [(number, holes_in(row)) for number, row in enumerate(strip.rows, start=1) if holes_in(row)]
    if len(numbered) != 1:
        yield f"{count_of(len(numbered), 'row')} of buttonholes"
        return
    number, found = numbered[0]
    ups = _pick_ups(strip)
    from_start = holes.edge == (ups[0].piece, ups[0].edge)
    if bool(number % 2) != from_start:
        found = [(strip.rows[number - 1].across - last, strip.rows[number - 1].across - first) for first, last in reversed(found)]
    if len(found) != holes.count or len({last - first for first, last in found}) != 1:
        yield f"{len(found)} of {holes.count} alike"
        return
    along = ups[0 if from_start else -1].stitches * width
    middles = [(first + last) / 2 * width for first, last in found]
    env = subject.environments[size]
    ends = [(middles[0], env.length(holes.first))] + ([(along - middles[-1], env.length(holes.last))] if holes.count > 1 else [])
    yield from (f"{cm(actual)} for {cm(wanted)} at an end" for actual, wanted in ends if abs(actual - wanted) > width)
    gaps = [after - before for before, after in zip(middles, middles[1:], strict=False)]
    if gaps and max(gaps) - min(gaps) > 1.5 * width:
        yield f"{cm(min(gaps))} to {cm(max(gaps))} between them"
