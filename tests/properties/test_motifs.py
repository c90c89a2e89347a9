"""At any gauge a motif can be worked round by round, and joined motifs fill their grid without gaps."""

import math

import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from tiny_specs import graded

from gaugewright.checks.rows import row_faults
from gaugewright.drawings.motif_figures import polygon
from gaugewright.grading.layout_model import Layout
from gaugewright.grading.plan import MotifPlan


@settings(max_examples=40, deadline=None)
@given(
    st.integers(3, 8), st.integers(1, 12), st.integers(5, 40), st.integers(5, 40), st.sampled_from(["sl st", "sc", "hdc", "dc", "tr"]),
    st.sampled_from(["joined rounds", "turned rounds"]),
)
def test_every_round_uses_what_the_one_before_makes(sides: int, rounds: int, stitches: int, rows: int, stitch: str, worked: str) -> None:
    grading = graded(
        "gaugewright: 1\npattern: {title: Drawn}\nyarns: {oat: {colour: \"#d9c9a8\"}}\nfabrics:\n"
        f'  main: {{stitch: {stitch}, worked: {worked}, gauge: "{stitches} sts, {rows} rows / 10 cm"}}\n'
        f"pieces:\n  tile: {{start: {{centre: flat}}, sections: [motif: {{sides: {sides}, rounds: {rounds}}}]}}\n"
    )
    (piece,), (plan,) = grading.pieces["tile"], grading.plans["tile"]
    section = plan.sections[0]
    assert isinstance(section, MotifPlan)
    assert row_faults(piece.main, piece.strips) == ()
    counts = list(piece.main.counts())
    assert counts == [section.count(number) for number in range(1, rounds + 1)]
    assert all(count % sides == 0 for count in counts)
    assert max(after / before for before, after in zip(counts, counts[1:], strict=False)) <= 2 if rounds > 1 else True
    flat = 2 * math.tan(math.pi / sides) * stitches / rows
    assert abs(counts[-1] / sides - rounds * max(1, flat)) <= 0.5 * rounds + 1 + 1e-6


@settings(max_examples=60, deadline=None)
@given(st.sampled_from([4, 6]), st.integers(2, 9), st.integers(1, 9), st.floats(20, 300))
def test_joined_motifs_leave_no_gap_and_none_lies_on_another(sides: int, across: int, down: int, width: float) -> None:
    layout = Layout(sides, across, down, width)
    shapes = [shapely.Polygon(polygon(sides, width / 2, (place.x, place.y))) for place in layout.places()]
    whole = shapely.union_all([shape.buffer(width * 1e-6) for shape in shapes])
    assert isinstance(whole, shapely.Polygon) and not whole.interiors
    assert math.isclose(whole.area, sum(shape.area for shape in shapes), rel_tol=1e-4)
    left, low, right, high = whole.bounds
    assert math.isclose(right - left, layout.joined_width, rel_tol=1e-4) and math.isclose(high - low, layout.joined_length, rel_tol=1e-4)
    shared = sum(shape.length for shape in shapes) - shapely.union_all([shapely.set_precision(shape, width * 1e-6) for shape in shapes]).length
    side = width * math.tan(math.pi / sides)
    assert math.isclose(shared / 2 / side, layout.in_rows + layout.between_rows, rel_tol=1e-3, abs_tol=1e-3)


@given(st.sampled_from([4, 6]), st.integers(2, 9), st.integers(1, 9), st.integers(2, 4), st.sampled_from(["checkerboard", "rows"]))
def test_motifs_of_all_colours_are_all_motifs(sides: int, across: int, down: int, colours: int, plan: str) -> None:
    layout = Layout(sides, across, down, 100.0, tuple(f"y{number}" for number in range(colours)), plan)  # type: ignore[arg-type]
    assert sum(layout.by_colour().values()) == layout.motifs == len(list(layout.places()))
    if sides == 4 and plan == "checkerboard":
        colour = {(place.row, place.number): layout.colour(place) for place in layout.places()}
        assert all(colour[row, number] != colour.get((row, number + 1)) and colour[row, number] != colour.get((row + 1, number)) for row, number in colour)


@settings(max_examples=40, deadline=None)
@given(st.sampled_from([4, 6]), st.integers(2, 7), st.integers(1, 7), st.integers(8, 20), st.integers(5, 30), st.integers(5, 30), st.integers(1, 4))
def test_a_border_of_any_gauge_lies_flat_round_any_grid(sides: int, across: int, down: int, motif_rounds: int, stitches: int, rows: int, rounds: int) -> None:
    """Round by round as long as the outline set off by its depth, within a stitch at each corner and what a seam takes up."""
    width = 2 * motif_rounds * 10  # rounds of a centimetre
    text = (
        "gaugewright: 1\npattern: {title: Drawn}\nyarns: {oat: {colour: \"#d9c9a8\"}}\nfabrics:\n"
        '  main: {stitch: sc, worked: joined rounds, gauge: "10 sts, 10 rows / 10 cm"}\n'
        f'  edge: {{stitch: sc, worked: joined rounds, gauge: "{stitches} sts, {rows} rows / 10 cm"}}\n'
        f"sizes: {{dimensions: {{One: {{width: {across * width / 10} cm, length: {down * width / 10} cm}}}}}}\n"
        f"pieces:\n  tile: {{fabric: main, start: {{centre: flat}}, sections: [motif: {{sides: {sides}, rounds: {motif_rounds}}}], grid: {{across: 'size.width + 2 * in_rows({rounds * 100 / rows} mm, edge)', down: 'size.length + 2 * in_rows({rounds * 100 / rows} mm, edge)'}}}}\n"
        f"  border: {{fabric: edge, start: {{pick_up: tile.rim}}, sections: [even: {{rounds: {rounds}}}]}}\n"
    )
    grading = graded(text)
    (tile,), (border,), (plan,) = grading.pieces["tile"], grading.pieces["border"], grading.plans["border"]
    layout = tile.layout
    assert layout is not None and layout.across == across
    inner = shapely.union_all([shapely.Polygon(polygon(sides, layout.width / 2, (place.x, place.y))).buffer(1e-4, join_style="mitre") for place in layout.places()])
    assert row_faults(border.main, border.strips) == ()
    stitch = 100 / stitches
    for number, row in enumerate(border.main.rows):
        flat = inner.buffer(number * 100 / rows, join_style="mitre").exterior.length
        assert abs(row.makes * stitch - flat) <= len(plan.corners) * stitch + 0.03 * inner.exterior.length + stitch
    other = [abs(layout.joined_width + more * layout.width - across * width) for more in (-1, 1)]
    assert abs(layout.joined_width - across * width) <= min(other) + 1e-6
    assert math.isclose(border.finished["joined_width"], layout.joined_width + 2 * rounds * 100 / rows, rel_tol=1e-9)
