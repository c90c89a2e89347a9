"""At any gauge and width a triangle's counts are odd, its halves mirror, and it is as wide as wanted within a row."""

import math

from hypothesis import given, settings
from hypothesis import strategies as st
from properties.test_plans import Drawn, graded_or_told

from gaugewright.checks.rows import row_faults
from gaugewright.grading.plan import TrianglePlan


@st.composite
def shawls(draw: st.DrawFn) -> Drawn:
    """A triangle in one to four sizes."""
    stitches, rows = draw(st.integers(3, 40)), draw(st.integers(3, 40))
    widths = sorted(draw(st.lists(st.integers(100, 2400), min_size=1, max_size=4, unique=True)))
    sizes = ", ".join(f"n{width}: {{width: {width} mm}}" for width in widths)
    return Drawn(
        "gaugewright: 1\npattern: {title: Drawn, workshop: Ferry Lane Workshop}\nyarns: {oat: {colour: \"#d9c9a8\"}}\nfabrics:\n"
        f"  main: {{stitch: {draw(st.sampled_from(['sl st', 'sc', 'hdc', 'dc', 'tr']))}, gauge: \"{stitches} sts, {rows} rows / 10 cm\"}}\n"
        f"sizes: {{make: [{', '.join(f'n{width}' for width in widths)}], dimensions: {{{sizes}}}}}\n"
        "pieces:\n  piece: {start: {middle: flat}, sections: [triangle: {width: size.width}]}\n"
    )


@settings(max_examples=60, deadline=None)
@given(shawls())
def test_rows_follow_counts_are_odd_and_halves_mirror(drawn: Drawn) -> None:
    grading = graded_or_told(drawn)
    if grading is None:
        return
    cycles = set()
    for label, one in grading.pieces["piece"].items():
        assert [fault for strip in one.strips for fault in row_faults(strip, one.strips)] == []
        [plan] = grading.plans["piece"][label].sections
        assert isinstance(plan, TrianglePlan)
        cycles.add(plan.cycle)
        for number, row in enumerate(one.main.rows, start=1):
            assert row.makes % 2 == 1 and row.makes == plan.after(number)
            worked = [(run.operation, run.times) for run in row.runs if run.operation.uses]
            if number > 1 and plan.gain(number):
                assert worked == worked[::-1]
                assert row.makes - row.uses == 4 * plan.gain(number)
        height, wanted = one.finished["length"] / math.sqrt(2) / len(one.main.rows), float(label.removeprefix("n"))
        assert abs(one.finished["width"] - wanted) <= math.sqrt(2) * height + 1e-6
        assert one.finished["width"] == 2 * one.finished["length"]
    assert len(cycles) == 1
