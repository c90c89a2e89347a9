"""A yoke's last round divided: body and sleeves must take it whole, stitch for stitch."""

from collections.abc import Iterator, Mapping

from gaugewright.checks.wording import count_of
from gaugewright.grading.model import DivideStart, GoOnStart, GradedPiece, Row


def division_faults(graded: GradedPiece, others: Mapping[str, GradedPiece]) -> Iterator[str]:
    """A body passes over as many stitches as its sleeves take, and together they take all of the yoke."""
    start = graded.main.start
    if isinstance(start, GoOnStart):
        shared = graded.main.rows[0].uses + start.left
        if shared != others[start.piece].main.last_count:
            yield f"row 1 and the {start.edge} take {shared} stitches, and {start.piece} ends with {others[start.piece].main.last_count}"
    if not isinstance(start, DivideStart):
        return
    yoke, first = others[start.piece].main, graded.main.rows[0]
    worked, passed = worked_and_passed(first)
    if first.makes != start.stitches:
        yield f"row 1 makes {count_of(first.makes, 'stitch', 'stitches')}, and the start {start.stitches}"
    if start.part == "body" and worked + passed != yoke.last_count:
        yield f"row 1 goes over {worked + passed} stitches, and {start.piece} ends with {yoke.last_count}"
    if start.part == "sleeve" and 2 * (worked + start.back) != yoke.last_count:
        yield f"two sleeves of {worked} and the body's {2 * start.back} stitches aren't the {yoke.last_count} of {start.piece}"


def worked_and_passed(row: Row) -> tuple[int, int]:
    """Stitches of the row before that are worked into, and those that are skipped."""
    passed = sum(run.times for run in row.runs if run.operation.kind == "skip")
    return row.uses - passed, passed
