"""Does a crown lie flat, and does a closed end close?

A round is 2 pi row heights longer than the one inside it. Rounds that add more than fills that ruffle,
rounds that add less draw the disc into a cup.
"""

import math
from collections.abc import Iterator

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import by_size, count_of, problem
from gaugewright.design.model import Crown, Fabric, Piece, Taper
from gaugewright.errors import Problem
from gaugewright.rounding import half_up
from gaugewright.tolerances import CLOSED_STITCHES, crown_tolerance


def check_crowns(subject: Subject) -> Found:
    """Each crown's stitches to a round against those that lie flat, and what is left to draw together."""
    problems: list[Problem] = []
    figures: list[str] = []
    for piece in subject.design.pieces:
        for index, section in enumerate(piece.sections):
            if isinstance(section, Taper) and section.close:
                problems += _closing(subject, piece, section)
            if isinstance(section, Crown):
                fabric = subject.design.fabric(section.fabric)
                worked = {size: changed for size in subject.sizes if (changed := _each(subject, piece, index, size)) is not None}
                figures += [f"{piece.key}: {by_size((size, str(each)) for size, each in worked.items())} to a round, {flat(fabric):.1f} lie flat"] if worked else []
                problems += _flatness(piece, section, fabric, worked)
                problems += _closing(subject, piece, section)
    return Found(tuple(problems), "; ".join(figures) or "no crowns")


def flat(fabric: Fabric) -> float:
    """Stitches by which a flat disc's round is longer than the one inside it, from the printed gauge."""
    gauge = fabric.gauge
    return 2 * math.pi * (gauge.height / gauge.rows) / (gauge.width / gauge.stitches)


def _each(subject: Subject, piece: Piece, index: int, size: str) -> int | None:
    """Stitches that most rounds of a crown change, read from its rows: a single shaped round may be the rest alone."""
    plan = subject.grading.plans[piece.key][size]
    first = sum(section.rows for section in plan.sections[:index])
    rows = subject.grading.pieces[piece.key][size].main.rows[first : first + plan.sections[index].rows]
    changes = [change for row in rows if (change := abs(row.makes - row.uses))]
    return max(changes) if len(changes) > 1 else None


def _flatness(piece: Piece, section: Crown, fabric: Fabric, worked: dict[str, int]) -> Iterator[Problem]:
    exact = flat(fabric)
    limit = crown_tolerance(exact)
    for name, does, off in (
        ("crown-ruffles", "ruffles", [size for size, each in worked.items() if each > exact + limit]),
        ("crown-cups", "draws into a cup", [size for size, each in worked.items() if each < exact - limit]),
    ):
        if off:
            texts = by_size((size, f"{count_of(worked[size], 'stitch', 'stitches')} to a round") for size in off)
            yield problem(
                name, f"the crown of {piece.key} {does}: {texts}, and {exact:.1f} lie flat at the gauge of {fabric.key}", section.origin,
                f"write `each: {max(1, half_up(exact))}`, or leave `each` out", off, "warning",
            )


def _closing(subject: Subject, piece: Piece, section: Crown | Taper) -> Iterator[Problem]:
    left = {size: subject.grading.pieces[piece.key][size].main.last_count for size in subject.sizes}
    open_ = [size for size, stitches in left.items() if stitches > CLOSED_STITCHES]
    if section.close and open_:
        yield problem(
            "crown-open", f"{piece.key} is drawn shut over {by_size((size, count_of(left[size], 'stitch', 'stitches')) for size in open_)}: "
            f"more than {CLOSED_STITCHES} leave a hole", section.origin, "end it with a handful of `stitches`", open_, "warning",
        )
