"""Slopes of rising stitches of any height: near their line, in order, and passing every check."""

from hypothesis import given, settings
from hypothesis import strategies as st
from tiny_specs import HEAD, designed

from gaugewright.checks import run_checks
from gaugewright.checks.lengths import mirror_fault
from gaugewright.errors import ProblemsFound
from gaugewright.grading.grade import grade
from gaugewright.grading.rising import heights_beside, rising
from gaugewright.sizing.bodies import bodies, environments


@settings(max_examples=200, deadline=None)
@given(stitches=st.integers(1, 80), share=st.floats(0.0, 1.0), stitch=st.sampled_from(("sc", "hdc", "dc", "tr")))
def test_each_stitch_is_within_half_a_single_crochet_of_the_line(stitches: int, share: float, stitch: str) -> None:
    heights = heights_beside(stitch)
    slope = share * heights["tr"]
    made = rising(stitches, slope, stitch)
    assert sum(each.stitches for each in made) == stitches
    order = [list(heights).index(each.stitch) for each in made]
    assert order == sorted(set(order))
    each = [group.height for group in made for _ in range(group.stitches)]
    line = [slope * (place + 0.5) / (stitches - 0.5) for place in range(stitches)]
    assert max(abs(got - wanted) for got, wanted in zip(each, line, strict=True)) <= heights["sc"] / 2 + 1e-9


@settings(max_examples=60, deadline=None)
@given(
    chain=st.integers(12, 60), length=st.integers(20, 40), width=st.integers(3, 30), depth=st.integers(2, 15), slope=st.integers(5, 40),
    top=st.sampled_from(("shoulders", "round", "v", "square")), fabric=st.sampled_from(("plain", "tall")),
)
def test_a_rising_top_is_refused_with_a_place_or_passes_every_check(
    chain: int, length: int, width: int, depth: int, slope: int, top: str, fabric: str
) -> None:
    sloped = f"slope: {slope} mm, as: rising stitches"
    last = f"shoulders: {{neck: {width} cm, {sloped}}}" if top == "shoulders" else f"neck: {{shape: {top}, width: {width} cm, depth: {depth} cm, {sloped}}}"
    text = HEAD + "sizes: {own: {M: {bust: 100 cm}}}\n" + (
        f"levels: {{shoulder: {length} cm, underarm: shoulder - 12 cm}}\n"
        f"pieces:\n  piece:\n    fabric: {fabric}\n    colours: oat\n    start: {{chain: {chain} cm}}\n    sections: [even: {{to: shoulder}}, {last}]\n"
        "    edges: {both: [side, underarm, armhole], bottom: hem}\n"
        "finished: {top: {measure: finished(piece.top_width) + finished(piece.length) + edge(piece.neck) + edge(piece.shoulder) + edge(piece.armhole)}}\n"
    )
    design = designed(text)
    of_sizes = bodies(design)
    try:
        grading = grade(design, environments(design, of_sizes))
    except ProblemsFound as found:
        assert all(problem.origin is not None and problem.hint for problem in found.problems)
        return
    assert [p.name for result in run_checks(design, of_sizes, grading) for p in result.problems if p.severity == "error"] == []
    piece = grading.pieces["piece"]["M"]
    if len(piece.strips) > 1:
        assert mirror_fault(piece) == ""
    tip = piece.edges["side"].length + piece.edges["armhole"].length
    row = 10.0 if fabric == "plain" else 20.0
    assert abs(piece.outline.heights[-1] - length * 10) <= row / 2 + 1e-6
    assert tip < piece.outline.heights[-1]
