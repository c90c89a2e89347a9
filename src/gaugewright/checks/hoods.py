"""Does the head fit into the hood? A hood is a piece made on or sewn to a neck, with an edge folded and sewn over the head."""

from collections.abc import Iterator

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import by_size, cm, problem, span_cm
from gaugewright.design.model import Design, Piece, Seam
from gaugewright.design.sides import is_folded
from gaugewright.errors import Problem
from gaugewright.rounding import up
from gaugewright.tolerances import HOOD_EASE, HOOD_ROUND_HEAD, SAME_LENGTH


def check_hoods(subject: Subject) -> Found:
    """A hood reaches round the head from cheek to cheek, and over it from the neck to the crown."""
    problems: list[Problem] = []
    figures = []
    for seam, piece in hoods(subject.design):
        heads = {size: body.values["head"].mm for size, body in subject.bodies.items() if "head" in body.values}
        sizes = {size: _extents(subject, seam, piece, size) for size in subject.sizes}
        figures.append(f"{piece.key} {span_cm(around for around, _ in sizes.values())} round the face, {span_cm(height for _, height in sizes.values())} high")
        if len(heads) < len(subject.sizes):
            lacking = [size for size in subject.sizes if size not in heads]
            problems.append(problem(
                "opening-unchecked", f"whether {piece.key} covers the head can't be told: the body has no head", piece.origin,
                "give head for these sizes under sizes: own:", lacking, "note",
            ))
        needed = {size: (HOOD_ROUND_HEAD * head, head / 2 + HOOD_EASE) for size, head in heads.items()}
        for index, way, what in ((0, "wide", "from one front edge to the other"), (1, "high", "from the neck to the fold")):
            short = [size for size in heads if sizes[size][index] < needed[size][index] - SAME_LENGTH]
            if short:
                most = max(short, key=lambda size: needed[size][index] - sizes[size][index])
                problems.append(problem(
                    "hood-tight", f"{piece.key} is small for the head: "
                    + by_size((size, f"{cm(sizes[size][index])} {what}, for a head of {cm(heads[size])}") for size in short), piece.origin,
                    f"make it at least {up(needed[most][index]) / 10:.1f} cm {way} in {most}, rounded up to whole stitches and rows", short, "warning",
                ))
    return Found(tuple(problems), "; ".join(figures) or "no hood")


def hoods(design: Design) -> Iterator[tuple[Seam, Piece]]:
    """Pieces with a folded edge that are picked up along a neck or sewn to one, each with the seam that folds it."""
    for seam in design.seams:
        piece = design.piece(seam.join.piece)
        if is_folded(design, seam) and any(name == "neck" for name in _meets(design, piece)):
            yield seam, piece


def _meets(design: Design, piece: Piece) -> Iterator[str]:
    """The names of the edges that a piece is made on or sewn to."""
    yield from (name for _, name in piece.start.edges)
    for seam in design.seams:
        ends = (seam.join, *seam.to)
        if any(end.piece == piece.key for end in ends):
            yield from (end.edge for end in ends if end.piece != piece.key)


def _extents(subject: Subject, seam: Seam, piece: Piece, size: str) -> tuple[float, float]:
    """The folded edge from end to end, and how far it is from the neck; mm."""
    remade = subject.remade[piece.key][size]
    along_rows = subject.grading.pieces[piece.key][size].edges[seam.join.edge].rows > 0
    return remade.edges[seam.join.edge], remade.measures["widest" if along_rows else "length"]
