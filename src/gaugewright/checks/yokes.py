"""Does a circular yoke lie over the shoulders?

A flat disc's girth grows by 2 pi times its depth. Shoulders slope, so a yoke needs no more than that; one whose
increases come faster stands in waves round the neck.
"""

import math

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import by_size, problem
from gaugewright.design.model import Piece, RoundYoke
from gaugewright.errors import Problem
from gaugewright.tolerances import CROWN_SHARE


def check_round_yokes(subject: Subject) -> Found:
    """How fast each circular yoke widens, down to its last round of increases, against a flat disc."""
    problems: list[Problem] = []
    figures: list[str] = []
    for piece in subject.design.pieces:
        section = piece.sections[-1]
        if not isinstance(section, RoundYoke):
            continue
        fullness = {size: _fullness(subject, piece, size) for size in subject.sizes}
        figures.append(f"{piece.key} widens by {min(fullness.values()):.2f} to {max(fullness.values()):.2f} of a flat disc")
        full = [size for size, share in fullness.items() if share > 1 + CROWN_SHARE]
        if full:
            texts = by_size((size, f"{fullness[size]:.2f} times as fast as a flat disc") for size in full)
            problems.append(problem(
                "yoke-ruffles", f"{piece.key} widens so fast that it stands in waves: {texts}", section.origin,
                "make the yoke deeper, the neck wider or the underarm wider, or let the last share under `at` be larger" if section.at else "make the yoke deeper, the neck wider or the underarm wider",
                full, "warning",
            ))
    return Found(tuple(problems), "; ".join(figures) or "no circular yokes")


def _fullness(subject: Subject, piece: Piece, size: str) -> float:
    """Growth of the girth over that of a flat disc as deep as the last increase round, from the rows and the printed gauge."""
    plan, rows = subject.grading.plans[piece.key][size], subject.grading.pieces[piece.key][size].main.rows
    own = rows[len(rows) - plan.sections[-1].rows :]
    gauge = subject.design.fabric(piece.sections[-1].fabric).gauge
    last = max(number for number, row in enumerate(own, start=1) if row.makes > row.uses)
    grown = (own[-1].makes - own[0].uses) * gauge.width / gauge.stitches
    return grown / (2 * math.pi * last * gauge.height / gauge.rows)
