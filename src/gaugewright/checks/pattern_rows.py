"""Are the stitches of patterns worked into what is there: spaces under their chains, posts round stitches?"""

from collections.abc import Iterator

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import problem
from gaugewright.grading.model import Row, Strip

CHAINS = ("chain",)


def check_patterns(subject: Subject) -> Found:
    """Every row in a stitch pattern, stitch by stitch over the row before it."""
    faults: dict[tuple[str, str], list[str]] = {}
    rows = 0
    for piece in subject.design.pieces:
        for label, graded in subject.grading.pieces[piece.key].items():
            for strip in graded.strips:
                rows += sum(row.placed is not None for row in strip.rows)
                for text in pattern_faults_of(strip):
                    faults.setdefault((piece.key, text), []).append(label)
    problems = tuple(
        problem("pattern-row-astray", f"{key}: {text}", subject.design.piece(key).origin, "change the pattern's rows, or the count it is worked over", labels)
        for (key, text), labels in faults.items()
    )
    return Found(problems, f"{rows} rows in stitch patterns followed stitch by stitch" if rows else "no stitch patterns")


def pattern_faults_of(strip: Strip) -> Iterator[str]:
    """What is astray in a strip's rows; a row is met from its other end where the work is turned."""
    before: list[bool] | None = None
    turned = strip.worked in ("rows", "turned rounds")
    for number, row in enumerate(strip.rows, start=1):
        if row.placed is not None and before is not None:
            yield from (f"row {number} {text}" for text in _astray(row, before))
        made = [run.operation.kind in CHAINS for run in row.runs for _ in range(run.operation.makes * run.times)]
        before = made[::-1] if turned else made


def _astray(row: Row, chains: list[bool]) -> Iterator[str]:
    """`chains` says of each stitch of the row before, in the order in which this row meets it, whether it is a chain."""
    at = 0
    for run in row.runs:
        uses = run.operation.uses
        for _ in range(run.times):
            under = chains[at : at + uses]
            if run.operation.kind == "space":
                whole = all(under) and not any(chains[max(0, at - 1) : at]) and not any(chains[at + uses : at + uses + 1])
                if not whole:
                    yield f"works in a space of {uses} chains where the row before has none"
            elif "post" in run.operation.loop and any(under):
                yield "works round the post of a chain"
            at += uses
