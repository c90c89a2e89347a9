"""At any gauge and girth a crown can be worked, doubles a round at most, and ends where it should."""

import math
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st
from properties.test_plans import Drawn, graded_or_told

from gaugewright.checks.rows import row_faults
from gaugewright.grading.crowns import crown_counts
from gaugewright.grading.plan import SpreadPlan
from gaugewright.rounding import half_up

WORKED = ("joined rounds", "turned rounds", "spiral rounds")


@st.composite
def tubes(draw: st.DrawFn) -> Drawn:
    """A disc, a hat from its centre, a ball, or a cap from its brim."""
    stitches, rows = draw(st.integers(2, 40)), draw(st.integers(2, 40))
    each = draw(st.one_of(st.just(""), st.integers(1, 20).map(lambda count: f", each: {count}")))
    begin = draw(st.sampled_from(["centre: flat", f"centre: {draw(st.integers(1, 20))}", f"ring: {draw(st.integers(100, 900))} mm"]))
    sections = [f"even: {{rounds: {draw(st.integers(1, 4))}}}"] if begin.startswith("ring") else []
    if not sections or draw(st.booleans()):
        sections.append(f"crown: {{target: body.bust * {draw(st.integers(5, 80)) / 100}{each}}}")
    if draw(st.booleans()):
        sections.append("even: {rounds: 2}")
    if draw(st.booleans()):
        sections.append(f"crown: {{close: true{each}}}")
    busts = sorted(draw(st.lists(st.integers(500, 1500), min_size=1, max_size=4, unique=True)))
    own = ", ".join(f"n{bust}: {{bust: {bust} mm}}" for bust in busts)
    lines = "".join(f"      - {one}\n" for one in sections)
    return Drawn(
        "gaugewright: 1\npattern: {title: Drawn, workshop: Ferry Lane Workshop}\nyarns: {oat: {colour: \"#d9c9a8\"}}\nfabrics:\n"
        f"  main: {{stitch: {draw(st.sampled_from(['sc', 'hdc', 'dc', 'tr']))}, worked: {draw(st.sampled_from(WORKED))}, "
        f'gauge: "{stitches} sts, {rows} rows / 10 cm"}}\n'
        f"sizes: {{own: {{{own}}}}}\npieces:\n  piece:\n    start: {{{begin}}}\n    sections:\n{lines}"
    )


@settings(max_examples=200, deadline=None)
@given(tubes())
def test_any_crown_can_be_worked_and_ends_at_its_count(drawn: Drawn) -> None:
    grading = graded_or_told(drawn)
    if grading is None:
        return
    for label, piece in grading.pieces["piece"].items():
        assert row_faults(piece.main, piece.strips) == ()
        counts = (piece.main.start.stitches, *piece.main.counts())
        assert all(-(-before // 2) <= after <= 2 * before for before, after in pairwise(counts))
        for section in grading.plans["piece"][label].sections:
            if isinstance(section, SpreadPlan):
                changes = [abs(after - before) for before, after in pairwise((section.stitches, *section.counts))]
                full = max(changes)
                assert section.rows == len(section.counts) and sum(0 < change < full for change in changes) <= 1 + halvings(section)


def halvings(section: SpreadPlan) -> int:
    """Rounds near the centre that hold fewer stitches than a full round changes: they double or halve."""
    return sum(
        max(before, after) <= 2 * min(before, after) and abs(after - before) == min(before, after)
        for before, after in pairwise((section.stitches, *section.counts))
    )


@settings(max_examples=200, deadline=None)
@given(st.integers(2, 40), st.integers(2, 40), st.floats(60, 1500))
def test_a_target_is_met_within_half_a_stitch(stitches: int, rows: int, target: float) -> None:
    grading = graded_or_told(Drawn(
        "gaugewright: 1\npattern: {title: Drawn, workshop: Ferry Lane Workshop}\nyarns: {oat: {colour: \"#d9c9a8\"}}\n"
        f'fabrics: {{main: {{stitch: sc, worked: joined rounds, gauge: "{stitches} sts, {rows} rows / 10 cm"}}}}\n'
        f"pieces: {{piece: {{start: {{centre: flat}}, sections: [crown: {{target: {target:.2f} mm}}]}}}}\n"
    ))
    wanted, first = half_up(float(f"{target:.2f}") * stitches / 100), max(3, half_up(2 * math.pi * stitches / rows))
    if wanted < first:
        assert grading is None, "a girth under the first round's is refused"
    else:
        assert grading is not None and grading.pieces["piece"].values[0].main.last_count == wanted


@given(st.integers(1, 60), st.integers(1, 900), st.integers(1, 40))
def test_counts_lead_from_one_to_the_other_both_ways_alike(first: int, end: int, each: int) -> None:
    out = (first, *crown_counts(first, end, each))
    assert out[-1] == end
    back = (end, *crown_counts(end, first, each))
    assert back == out[::-1]
    assert all(0 < abs(after - before) <= each for before, after in pairwise(out))
