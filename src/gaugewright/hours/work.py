"""What a piece is worked of, counted from its rows: stitches' worth of work by fabric, and rows.

One is the time of a fabric's own stitch; others count by the hook's movements. What is left, passed over or waits
takes none. Picked-up stitches are counted apart, since finding their places is what takes the time.
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from gaugewright.design.model import Design
from gaugewright.grading.model import ChainStart, GradedPiece, Row, Run
from gaugewright.trade.work_times import movements

UNTIMED = ("leave", "skip", "wait", "picked up")
TOGETHER = ("decrease", "corner decrease")


@dataclass(frozen=True, slots=True)
class Work:
    """One make of a piece: stitches' worth and rows by fabric, and stitches picked up."""

    stitches: Mapping[str, float]
    rows: Mapping[str, int]
    picked_up: int


def work_of(design: Design, piece: GradedPiece, measured: Collection[str]) -> Work:
    """The work of a piece made once. In a stitch pattern a row of a `measured` fabric counts the stitches by which
    it is measured, as its timed rows do; of any other its stitches count by their movements.
    """
    stitches: dict[str, float] = {}
    rows: dict[str, int] = {}
    picked = 0
    own = {fabric.key: movements(fabric.stitch) for fabric in design.fabrics}
    for strip in piece.strips:
        if isinstance(strip.start, ChainStart) and strip.rows:
            fabric = strip.rows[0].runs[0].fabric
            stitches[fabric] = stitches.get(fabric, 0.0) + strip.start.chains * movements("ch") / own[fabric]
        for row in strip.all_rows():
            rows[row.fabric] = rows.get(row.fabric, 0) + 1
            picked += sum(run.times for run in row.runs if run.operation.kind == "picked up")
            for fabric, worth in _worth_of(row, own, measured):
                stitches[fabric] = stitches.get(fabric, 0.0) + worth
    return Work(stitches, rows, picked)


def _worth_of(row: Row, own: Mapping[str, float], measured: Collection[str]) -> list[tuple[str, float]]:
    if row.placed is not None and row.fabric in measured:
        return [(row.fabric, float(row.across))]
    return [(run.fabric, movements_of(run) / own[run.fabric]) for run in row.runs]


def movements_of(run: Run) -> float:
    """The hook's movements in a run; a turning chain that is no stitch is part of the turn.

    >>> from gaugewright.grading.model import decrease, increase, leave, slip_over, work
    >>> [movements_of(Run(kind, 2, "oat", "body")) for kind in (work("hdc"), increase("hdc"), decrease("hdc"), leave(), slip_over())]
    [6.0, 12.0, 10.0, 0.0, 2.0]
    """
    operation = run.operation
    if operation.kind in UNTIMED or not run.times:
        return 0.0
    if operation.kind in TOGETHER:
        each = movements(f"{operation.stitch}{operation.uses}tog")
    elif operation.kind == "turning chain":
        each = movements(operation.stitch) * operation.makes
    elif operation.kind in ("increase", "corner increase"):
        each = movements(operation.stitch) * operation.makes
    else:
        each = movements(operation.stitch)
    return each * run.times
