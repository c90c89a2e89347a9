"""Raglan edges of any width, depth and block: mirrored, straight, and passed by every check or refused with a place."""

from hypothesis import given, settings
from hypothesis import strategies as st
from tiny_specs import HEAD, designed

from gaugewright.checks import run_checks
from gaugewright.checks.lengths import mirror_fault
from gaugewright.design.model import Design
from gaugewright.errors import ProblemsFound
from gaugewright.grading.flat_raglan import least_rows, raglan_profile
from gaugewright.grading.grade import Grading, grade
from gaugewright.grading.schedule_model import Schedule, blocks_of
from gaugewright.measurements.model import Body
from gaugewright.sized import Sized
from gaugewright.sizing.bodies import bodies, environments


@given(stitches=st.integers(1, 90), block=st.integers(0, 20), more=st.integers(0, 60))
def test_an_edge_loses_what_it_should_and_never_more_than_two_on_a_row(stitches: int, block: int, more: int) -> None:
    block = min(block, stitches - 1)
    rows = least_rows(stitches, block) + more
    profile = raglan_profile(stitches, rows, block)
    assert profile.stitches == stitches and profile.rows == rows
    first, slope = int(bool(block)), [step for step in profile.steps if step.way == "decrease"]
    assert all(step.stitches <= 2 for step in slope)
    assert sum(step.stitches for step in profile.steps if step.way == "leave") == block or block <= 2
    assert [step.row for step in profile.steps] == sorted({step.row for step in profile.steps})
    off = [abs(gone - block - (stitches - block) * (row - first) / (rows - first)) for row, gone in enumerate(profile.after(), start=1) if row > first]
    assert max(off, default=0.0) < 3  # two rates bend a line of seventy rows by more than two stitches


@given(st.lists(st.integers(1, 4), min_size=1, max_size=40))
def test_blocks_are_the_gaps_they_were_made_of(gaps: list[int]) -> None:
    blocks = blocks_of(gaps)
    assert [gap for block in blocks for gap in block.each_gap()] == gaps
    assert Schedule(blocks, 0).changes == len(gaps)


def _graded(text: str) -> tuple[Design, Sized[Body], Grading] | None:
    design = designed(text)
    of_sizes = bodies(design)
    try:
        return design, of_sizes, grade(design, environments(design, of_sizes))
    except ProblemsFound as found:
        assert all(problem.origin is not None and problem.hint for problem in found.problems)
        return None


@settings(max_examples=60, deadline=None)
@given(
    half=st.integers(20, 60), neck=st.integers(6, 30), sleeve=st.integers(14, 50), top=st.integers(3, 12), block=st.integers(0, 6),
    depth=st.integers(5, 40), lower=st.integers(1, 30), shape=st.sampled_from(("round", "v", "boat", "square")), fabric=st.sampled_from(("plain", "tall")),
)
def test_a_garment_is_refused_with_a_place_or_its_raglans_meet_row_for_row(
    half: int, neck: int, sleeve: int, top: int, block: int, depth: int, lower: int, shape: str, fabric: str
) -> None:
    raglan = f"raglan_edge: {{length: raglan, target: %d cm, block: {block} cm}}"
    text = HEAD + "sizes: {own: {M: {bust: 100 cm}}}\n" + (
        f"lengths: {{raglan: {depth} cm}}\nlevels: {{underarm: 8 cm}}\npieces:\n"
        f"  back:\n    fabric: {fabric}\n    colours: oat\n    start: {{chain: {half} cm}}\n"
        f"    sections: [even: {{to: underarm}}, {raglan % neck}]\n    edges: {{both: [side, underarm, raglan]}}\n"
        f"  front:\n    like: back\n    sections: [even: {{to: underarm}}, {raglan % neck}, neck: {{shape: {shape}, depth: {lower} cm}}]\n"
        f"  sleeve:\n    like: back\n    make: 2\n    start: {{chain: {sleeve} cm}}\n    sections: [even: {{to: underarm}}, {raglan % top}]\n"
        "seams: [{join: back.raglan, to: sleeve.raglan}, {join: front.raglan, to: sleeve.raglan}]\n"
        "finished: {neck: {measure: edge(back.neck) + edge(front.neck) + edge(sleeve.neck) + finished(front.top_width)}}\n"
    )
    made = _graded(text)
    if made is None:
        return
    design, of_sizes, grading = made
    faults = {p.name for result in run_checks(design, of_sizes, grading) for p in result.problems if p.severity == "error"}
    # Edges may slant too differently, and narrow cloth may be drawn together: both are told, and neither is the engine's fault.
    assert faults <= {"seam-mismatch", "gather-too-strong"}
    assert mirror_fault(grading.pieces["front"]["M"]) == ""
    assert len({grading.pieces[key]["M"].edges["raglan"].rows for key in ("back", "front", "sleeve")}) == 1
