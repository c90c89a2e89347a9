"""Shaping by the rows: does it balance, and can each row be worked without ruffling or puckering?"""

from collections.abc import Callable, Iterator

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.rows import section_origin
from gaugewright.checks.wording import by_size, count_of, problem
from gaugewright.errors import Origin, Problem
from gaugewright.grading.model import CORNERS, DivideStart, GradedPiece, Row
from gaugewright.grading.plan import DividedPlan, PiecePlan

CHANGES = ("increase", "decrease", *CORNERS)
WORKED = ("stitch", *CHANGES, "turning chain")
MOST_GAINED = 2.0
"""A row may at most double: two stitches worked in every one (common practice, no source)."""
MOST_LOST = 0.5
"""A row may at most halve: two stitches worked together throughout (common practice, no source)."""

Faults = Iterator[tuple[int, str]]


def gained_and_lost(row: Row) -> tuple[int, int]:
    """Stitches a row adds and stitches it takes away."""
    gained = lost = 0
    for run in row.runs:
        change = 0 if run.operation.kind == "picked up" else run.operation.change * run.times
        gained, lost = gained + max(change, 0), lost - min(change, 0)
    return gained, lost


def check_shaping_balances(subject: Subject) -> Found:
    """Increases less decreases give the end less the start, per section and piece and in each strip."""
    problems = _told(
        subject, _unbalanced, "shaping-unbalanced", "stitch counts of {piece} don't agree with its shaping",
        "the counts at the ends of this section can't be reached; please report it with this spec",
    )
    sections = sum(len(piece.sections) for piece in subject.design.pieces)
    return Found(problems, f"{count_of(sections, 'section')} in {count_of(len(subject.sizes), 'size')} balanced" if not problems else f"{count_of(sections, 'section')} looked at")


def _unbalanced(plan: PiecePlan, graded: GradedPiece) -> Faults:
    rows, first, stitches = graded.main.rows, 0, plan.start.stitches
    for section in plan.sections:
        if isinstance(section, DividedPlan):
            yield from _sides_unbalanced(section, graded, stitches)
            return
        begun = int(first == 0 and isinstance(plan.start, DivideStart))  # round 1 chains under the arm and skips
        changes = [gained_and_lost(row) for row in rows[first + begun : first + section.rows]]
        gained, lost = sum(change[0] for change in changes), sum(change[1] for change in changes)
        place = first + max(1, section.rows)
        if section.stitches != stitches:
            yield place, f"it starts with {section.stitches} stitches, and there are {stitches}"
        on_the_way = _on_the_way(rows, first + section.rows) - _on_the_way(rows, first)
        if gained - lost - on_the_way != section.end - section.stitches:
            yield place, f"{gained} gained less {lost} lost don't lead from {section.stitches} to {section.end}"
        first, stitches = first + section.rows, section.end
    if graded.main.last_count != stitches:
        yield len(rows), f"the piece ends with {graded.main.last_count} stitches, not {stitches}"
    for strip in graded.strips[1:]:
        balance = sum(gained_and_lost(row)[0] - gained_and_lost(row)[1] for row in strip.rows)
        if strip.start.stitches + balance != strip.last_count:
            yield len(rows), f"{strip.name} ends with {strip.last_count} stitches, not {strip.start.stitches + balance}"


def _on_the_way(rows: tuple[Row, ...], row: int) -> int:
    """How many stitches more a row has than it is measured by: a stitch pattern's count grows and comes back."""
    return rows[row - 1].makes - rows[row - 1].across if 0 < row <= len(rows) else 0


def _sides_unbalanced(section: DividedPlan, graded: GradedPiece, stitches: int) -> Faults:
    """A divided top takes all stitches below it, and each of its sides ends with half of what is left."""
    place = len(graded.main.rows) + 1
    if not section.stitches == stitches == graded.main.last_count:
        yield place, f"it starts with {section.stitches} stitches, and there are {graded.main.last_count}"
    for strip in graded.strips[1:]:
        if strip.start.stitches != section.side:
            yield place, f"{strip.name} starts with {strip.start.stitches} stitches, not {section.side}"
        balance = sum(gained_and_lost(row)[0] - gained_and_lost(row)[1] for row in strip.rows)
        if not strip.start.stitches + balance == strip.last_count == section.side_end:
            yield place, f"{strip.name} ends with {strip.last_count} stitches, not {section.side_end}"


def check_gathers(subject: Subject) -> Found:
    """No row or round loses more than half of its stitches or gains more than as many again."""
    ratios = [ratio for sized in subject.grading.pieces.values() for graded in sized for _, _, ratio in _changing_rows(graded)]
    problems = _told(
        subject, _too_strong, "gather-too-strong", "{piece} is gathered or widened faster than two for one",
        "give this section more rounds, or a nearer target",
    )
    figures = f"shaped rows make {min(ratios):.2f} to {max(ratios):.2f} times what they work into" if ratios else "nothing is shaped"
    return Found(problems, figures)


def _changing_rows(graded: GradedPiece) -> Iterator[tuple[int, Row, float]]:
    """Rows that increase or decrease, each with the stitches it makes for one it works into.

    Stitches left, slipped over or chained are not drawn together or spread, so they don't count; nor does an edge
    stitch that several go into, which fans out beyond the row.
    """
    for strip in graded.strips:
        for number, row in enumerate(strip.rows, start=1):
            if any(run.operation.kind in CHANGES for run in row.runs):
                worked = [run for run in row.runs if run.operation.kind in WORKED and run.operation.uses]
                ends = [run for run in (*worked[:2], *worked[-2:]) if run.operation.makes > 2 and run.times == 1]
                runs = [run for run in worked if run not in ends] or worked
                used = sum(run.operation.uses * run.times for run in runs)
                yield number, row, sum(run.operation.makes * run.times for run in runs) / used


def _too_strong(_plan: PiecePlan, graded: GradedPiece) -> Faults:
    for number, row, ratio in _changing_rows(graded):
        if not MOST_LOST <= ratio <= MOST_GAINED:
            yield number, f"row {number} goes from {row.uses} to {row.makes} stitches"


def _told(
    subject: Subject, find: Callable[[PiecePlan, GradedPiece], Faults], name: str, message: str, hint: str
) -> tuple[Problem, ...]:
    """One problem for each section with faults, with the sizes they are in."""
    found: dict[tuple[str, Origin], list[tuple[str, str]]] = {}
    for piece in subject.design.pieces:
        for label, graded in subject.grading.pieces[piece.key].items():
            plan = subject.grading.plans[piece.key][label]
            for row, text in find(plan, graded):
                found.setdefault((piece.key, section_origin(piece, plan, row)), []).append((label, text))
    return tuple(
        problem(name, f"{message.format(piece=key)}: {by_size(faults)}", origin, hint, [size for size, _ in faults])
        for (key, origin), faults in found.items()
    )
