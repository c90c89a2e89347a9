"""Does a motif lie flat, and do joined motifs come to their size?

A regular polygon's side is 2 tan(pi / n) times as long as it is far from the centre. Sides with more stitches than
that ruffle, sides with fewer cup. Both are measured anew, from the rounds and from where the motifs lie.
"""

import math
from collections.abc import Iterator

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import by_size, cm, count_of, problem
from gaugewright.design.model import TAKE_UP_STITCHES, Motif, Piece
from gaugewright.errors import Problem
from gaugewright.tolerances import SAME_LENGTH, crown_tolerance


def check_motifs(subject: Subject) -> Found:
    """Each motif's sides against those of a flat one, round by round; each grid's motifs against their neighbours."""
    problems: list[Problem] = []
    figures: list[str] = []
    for piece in subject.design.pieces:
        for section in piece.sections:
            if isinstance(section, Motif):
                problems += _flatness(subject, piece, section)
                figures.append(_sides(subject, piece, section))
        if piece.grid is not None:
            problems += _gaps(subject, piece)
            figures.append(f"{piece.key}: {by_size((size, count_of(_made(subject, piece, size), 'motif')) for size in subject.sizes)}")
    return Found(tuple(problems), "; ".join(figures) or "no motifs")


def _gain(subject: Subject, piece: Piece, section: Motif, size: str) -> float:
    """Stitches that a round adds in the mean, read from the rounds."""
    counts = list(subject.grading.pieces[piece.key][size].main.counts())
    return counts[-1] / len(counts)


def _flat(subject: Subject, section: Motif) -> float:
    gauge = subject.design.fabric(section.fabric).gauge
    return 2 * section.sides * math.tan(math.pi / section.sides) * (gauge.height / gauge.rows) / (gauge.width / gauge.stitches)


def _sides(subject: Subject, piece: Piece, section: Motif) -> str:
    worked = by_size((size, f"{_gain(subject, piece, section, size):.1f}") for size in subject.sizes)
    return f"{piece.key}: {worked} to a round, {_flat(subject, section):.1f} lie flat"


def _flatness(subject: Subject, piece: Piece, section: Motif) -> Iterator[Problem]:
    flat, last = _flat(subject, section), {size: _gain(subject, piece, section, size) for size in subject.sizes}
    for name, does, off in (
        ("motif-ruffles", "ruffles", [size for size, gain in last.items() if gain - flat > crown_tolerance(flat)]),
        ("motif-cups", "draws into a cup", [size for size, gain in last.items() if flat - gain > crown_tolerance(flat)]),
    ):
        if off:
            texts = by_size((size, f"{last[size]:.1f} stitches to a round") for size in off)
            yield problem(
                name, f"{piece.key} {does}: {texts}, and {flat:.1f} lie flat at the gauge of {section.fabric}", section.origin,
                "whole stitches at each corner come no nearer: another stitch, hook or number of sides may", off, "warning",
            )


def _made(subject: Subject, piece: Piece, size: str) -> int:
    layout = subject.grading.pieces[piece.key][size].layout
    return layout.motifs if layout else 0


def motif_width(subject: Subject, piece: Piece, size: str) -> float:
    """A motif from side to side once joined, from its rounds and the printed gauge."""
    rounds = subject.grading.pieces[piece.key][size].main.rows
    gauge = subject.design.fabric(rounds[-1].fabric).gauge
    lost = TAKE_UP_STITCHES[piece.grid.take_up] if piece.grid else 0.0
    return 2 * (len(rounds) - lost) * gauge.height / gauge.rows


def _gaps(subject: Subject, piece: Piece) -> Iterator[Problem]:
    """Each motif has a neighbour one motif's width away, and none lies nearer."""
    wrong = []
    for size in subject.sizes:
        layout, width = subject.grading.pieces[piece.key][size].layout, motif_width(subject, piece, size)
        middles = [(place.x, place.y) for place in layout.places()] if layout else []
        nearest = [min((math.dist(one, other) for other in middles if other != one), default=width) for one in middles]
        off = max((abs(distance - width) for distance in nearest), default=0.0)
        wrong += [(size, f"by {cm(off)}")] if off > SAME_LENGTH else []
    if wrong:
        yield problem(
            "grid-open", f"the motifs of {piece.key} don't meet: {by_size(wrong)}", piece.grid.origin if piece.grid else piece.origin,
            "where they lie can't be trusted; please report it with this spec", [size for size, _ in wrong],
        )
