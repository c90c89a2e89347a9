"""Divided tops of any width, depth and slope: the checks are the oracles."""

from hypothesis import given, settings
from hypothesis import strategies as st
from tiny_specs import HEAD, designed

from gaugewright.checks import run_checks
from gaugewright.checks.lengths import mirror_fault
from gaugewright.errors import ProblemsFound
from gaugewright.grading.grade import grade
from gaugewright.sizing.bodies import bodies, environments

SHAPES = st.sampled_from(("round", "v", "boat", "square"))


@settings(max_examples=60, deadline=None)
@given(
    chain=st.integers(16, 70), taken=st.integers(0, 24), below=st.integers(1, 9), above=st.integers(6, 40), shape=SHAPES,
    width=st.integers(3, 40), depth=st.integers(1, 30), slope=st.integers(0, 6), fabric=st.sampled_from(("plain", "tall")),
)
def test_a_divided_top_is_refused_with_a_place_or_passes_every_check(
    chain: int, taken: int, below: int, above: int, shape: str, width: int, depth: int, slope: int, fabric: str
) -> None:
    middle = f"armhole: {{length: {above} cm, target: {chain - taken} cm}}" if taken > 1 else f"even: {{length: {above} cm}}"
    sloped = f", slope: {slope} cm" if slope else ""
    text = HEAD + "sizes: {own: {M: {bust: 100 cm}}}\n" + (
        f"pieces:\n  piece:\n    fabric: {fabric}\n    colours: oat\n    start: {{chain: {chain} cm}}\n"
        f"    sections: [even: {{rows: {below}}}, {middle}, neck: {{shape: {shape}, width: {width} cm, depth: {depth} cm{sloped}}}]\n"
        "finished: {top: {measure: finished(piece.top_width) + finished(piece.length) + edge(piece.neck) + edge(piece.shoulder) + edge(piece.far)}}\n"
    )
    design = designed(text)
    of_sizes = bodies(design)
    try:
        grading = grade(design, environments(design, of_sizes))
    except ProblemsFound as found:
        assert all(problem.origin is not None and problem.hint for problem in found.problems)
        return
    faults = [p for result in run_checks(design, of_sizes, grading) for p in result.problems if p.severity == "error"]
    # A taper or step in cloth only a few stitches wide may draw it together too fast, which is told and no fault of the engine.
    assert [fault.name for fault in faults if fault.name != "gather-too-strong"] == []
    assert mirror_fault(grading.pieces["piece"]["M"]) == ""
