"""Worked edges held to their curves: what each size strays, what over a stitch is told, and hints that work."""

import re
from dataclasses import replace

import pytest
from tiny_specs import HEAD, ONE_SIZE, THREE_SIZES, designed

from gaugewright.checks.curves import check_curves, edges_of
from gaugewright.checks.model import Found, Subject
from gaugewright.checks.remeasure import subject_of
from gaugewright.grading.grade import grade
from gaugewright.grading.model import Row, leave, slip_over
from gaugewright.sized import Sized
from gaugewright.sizing.bodies import bodies, environments

VEST = """\
levels: {shoulder: 60 cm, underarm: shoulder - 43 cm}
pieces:
  back:
    fabric: plain
    colours: oat
    start: {chain: body.bust + 20 cm}
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: body.bust - 20 cm, block: 6 cm}
      - neck: {shape: round, width: 30 cm, depth: 3 cm, slope: 3 cm}
    edges: {both: [side, underarm, armhole], bottom: hem}
"""
SHALLOW = VEST.replace("block: 6 cm", "block: 3 cm")


def subject(text: str) -> Subject:
    design = designed(text)
    of_bodies = bodies(design)
    return subject_of(design, of_bodies, grade(design, environments(design, of_bodies)))


def found(text: str) -> Found:
    return check_curves(subject(text))


def test_each_size_tells_what_its_edges_stray() -> None:
    result = found(THREE_SIZES + VEST)
    assert result.problems == ()
    assert re.fullmatch(r"stitches off the curve, by size: armhole of back 0\.\d; neck of back 0\.\d", result.figures), result.figures


def test_a_shoulders_slope_above_it_is_no_part_of_an_armhole() -> None:
    made = subject(ONE_SIZE + VEST)
    for edge in edges_of(made, made.design.piece("back"), 1, "M"):
        assert (edge.gone[0], edge.gone[-1], len(edge.gone)) == (6, 20, 40)


def test_an_edge_over_a_stitch_off_is_noted_at_its_section_and_the_hint_works() -> None:
    result = found(ONE_SIZE + SHALLOW)
    [note] = result.problems
    assert (note.name, note.severity, note.size) == ("curve-strays", "note", "M")
    assert note.origin is not None and note.origin.line_text.strip().startswith("- armhole:")
    assert "the edge at the armhole of back strays from its curve by 1.4 stitches, 1.4 cm" in note.message
    said = re.search(r"`(block: [^`]+)`", note.hint)
    assert said
    assert found(ONE_SIZE + SHALLOW.replace("block: 3 cm", said[1])).problems == ()


def test_a_neck_over_a_stitch_off_and_the_depth_that_would_do() -> None:
    v = VEST.replace("shape: round, width: 30 cm, depth: 3 cm, slope: 3 cm", "shape: v, width: 40 cm, depth: 30 cm")
    [note] = found(ONE_SIZE + v).problems
    assert note.origin is not None and note.origin.line_text.strip().startswith("- neck:") and "neck of back strays" in note.message
    said = re.search(r"make it ([0-9.]+ cm) deep", note.hint)
    assert said
    assert found(ONE_SIZE + v.replace("depth: 30 cm", f"depth: {said[1]}")).problems == ()


def test_a_half_fronts_neck_edge_is_measured_like_a_whole_neck() -> None:
    half = """\
pieces:
  front:
    fabric: plain
    colours: oat
    start: {chain: 40 cm}
    sections: [even: {rows: 40}, neck_edge: {shape: round, width: 12 cm, depth: 14 cm, at: far, slope: 3 cm}]
"""
    whole = half.replace("chain: 40 cm", "chain: 80 cm").replace("neck_edge", "neck").replace("width: 12 cm", "width: 24 cm").replace(" at: far,", "")
    assert found(ONE_SIZE + half).figures == found(ONE_SIZE + whole).figures
    assert found(ONE_SIZE + half).figures.endswith("neck of front 0.9")


def test_a_published_habit_tells_what_it_costs() -> None:
    v = VEST.replace("shape: round, width: 30 cm, depth: 3 cm, slope: 3 cm", "shape: v, width: 30 cm, depth: 25 cm")
    assert found(ONE_SIZE + v).problems == ()
    [note] = found(ONE_SIZE + v.replace("levels:", "conventions: {schedules: shorter gap first}\nlevels:", 1)).problems
    assert "neck of back strays from its curve by 2.0 stitches" in note.message


def test_rows_that_leave_more_than_their_plan_are_seen() -> None:
    """The rows are measured, not the plan: five stitches more left at both edges of the block's row."""
    made = subject(ONE_SIZE + VEST)
    sized = made.grading.pieces["back"]
    [piece] = sized.values
    main, *sides = piece.strips
    rows = list(main.rows)
    block = next(number for number, row in enumerate(rows) if any(run.operation.kind == "leave" for run in row.runs))
    rows[block + 6] = _shifted(rows[block + 6])
    strips = (replace(main, rows=tuple(rows)), *sides)
    grading = replace(made.grading, pieces={"back": Sized(sized.labels, (replace(piece, strips=strips),))})
    [note] = check_curves(replace(made, grading=grading)).problems
    assert note.name == "curve-strays"


def _shifted(row: Row) -> Row:
    """A row that leaves three stitches at each edge besides."""
    runs = row.runs
    middle = max(range(len(runs)), key=lambda place: runs[place].times)
    run = runs[middle]
    parts = (*runs[:middle], replace(run, times=run.times - 6), *runs[middle + 1 :])
    return replace(row, runs=(replace(run, operation=slip_over(), times=3), *parts, replace(run, operation=leave(), times=3)))


@pytest.mark.parametrize("sections", ["even: {rows: 9}", "even: {rows: 9}, neck: {shape: square, width: 20 cm, depth: 4 cm}", "even: {rows: 9}, shoulders: {neck: 20 cm}"])
def test_what_has_no_curve(sections: str) -> None:
    text = HEAD + f"sizes: {{own: {{M: {{bust: 90 cm}}}}}}\npieces: {{mat: {{fabric: plain, colours: oat, start: {{chain: 60 cm}}, sections: [{sections}]}}}}\n"
    assert found(text) == Found((), "no curves")
