"""Wedges of any depth in pieces of any width: the checks are the oracles, and each stitch is followed by itself."""

from hypothesis import given, settings
from hypothesis import strategies as st
from tiny_specs import HEAD, designed

from gaugewright.checks import run_checks
from gaugewright.errors import ProblemsFound
from gaugewright.grading.grade import grade
from gaugewright.grading.model import GradedPiece
from gaugewright.sizing.bodies import bodies, environments


def heights(piece: GradedPiece) -> list[int]:
    """Rows over each stitch from the starting edge on, row by row as they are worked."""
    strip = piece.main
    found = [0] * strip.start.stitches
    for row in strip.all_rows():
        places = iter(range(len(found)) if row.side == "RS" else range(len(found) - 1, -1, -1))
        for run in row.runs:
            for _ in range(run.times * max(run.operation.uses, run.operation.makes)):
                found[next(places)] += run.operation.kind != "wait"
    return found


@settings(max_examples=80, deadline=None)
@given(
    chain=st.integers(6, 70), below=st.integers(1, 7), above=st.integers(2, 9), depth=st.integers(0, 24), point=st.integers(1, 14),
    shortest=st.integers(1, 30), at=st.sampled_from(("middle", "starting", "far")), fabric=st.sampled_from(("plain", "tall")),
)
def test_a_wedge_is_refused_with_a_place_or_takes_up_every_stitch(
    chain: int, below: int, above: int, depth: int, point: int, shortest: int, at: str, fabric: str
) -> None:
    text = HEAD + "sizes: {own: {M: {bust: 100 cm}}}\n" + (
        f"pieces:\n  piece:\n    fabric: {fabric}\n    colours: oat\n    start: {{chain: {chain} cm}}\n    sections:\n"
        f"      - even: {{rows: {below}}}\n      - wedge: {{depth: {depth} cm, point: {point} cm, shortest: {shortest} cm, at: {at}}}\n"
        f"      - even: {{rows: {above}}}\n"
        "finished: {all: {measure: finished(piece.longest) + edge(piece.starting) + edge(piece.far)}}\n"
    )
    design = designed(text)
    of_sizes = bodies(design)
    try:
        grading = grade(design, environments(design, of_sizes))
    except ProblemsFound as found:
        assert all(problem.origin is not None and problem.hint for problem in found.problems)
        return
    assert [p.name for result in run_checks(design, of_sizes, grading) for p in result.problems if p.severity == "error"] == []
    piece, rows = grading.pieces["piece"]["M"], below + above
    over, short = heights(piece), sum(len(group.rows) for group in piece.main.short)
    assert min(over) == rows and max(over) == rows + short
    assert abs(short - depth * (1 if fabric == "plain" else 0.5)) <= 1
    assert (over[0] - rows, over[-1] - rows) == (short if at == "starting" else 0, short if at == "far" else 0)
    assert (piece.edges["starting"].rows, piece.edges["far"].rows) == (over[0], over[-1])
    if at == "middle":
        assert over == over[::-1]
        assert over[: len(over) // 2] == sorted(over[: len(over) // 2])
    else:
        assert over == sorted(over, reverse=at == "starting")
