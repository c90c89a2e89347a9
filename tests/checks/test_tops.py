"""Checks of divided tops and caps: what passes, and what is told when rows or lengths are damaged."""

from dataclasses import replace

import pytest
from tiny_specs import HEAD as YARNS
from tiny_specs import designed

from gaugewright.checks import run_checks
from gaugewright.checks.lengths import mirror_fault
from gaugewright.checks.model import CheckResult
from gaugewright.checks.rows import row_faults
from gaugewright.design.model import Design
from gaugewright.grading.grade import Grading, grade
from gaugewright.grading.model import EdgeLength, GradedPiece, Row, work
from gaugewright.measurements.model import Body
from gaugewright.sized import Sized
from gaugewright.sizing.bodies import bodies, environments

VEST = YARNS + """\
sizes: {own: {S: {bust: 80 cm}, L: {bust: 106 cm}}}
levels: {shoulder: 44 cm, underarm: shoulder - 22 cm}
pieces:
  back:
    fabric: plain
    colours: {bands: {to: shoulder, heights: [42 cm, rest]}, order: [oat, kelp]}
    start: {chain: body.bust / 2}
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: body.bust / 2 - 10 cm, block: 3 cm}
      - neck: {shape: round, width: 14 cm, depth: 3 cm, slope: 4 cm}
    edges: {both: [side, underarm, armhole], bottom: hem}
  front:
    like: back
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: body.bust / 2 - 10 cm, block: 3 cm}
      - neck: {shape: v, width: 14 cm, depth: 20 cm, slope: 4 cm}
  sleeve:
    fabric: plain
    colours: oat
    start: {chain: 32 cm}
    sections: [even: {rows: 4}, cap: {fit: [back.armhole, front.armhole], block: 3 cm}]
    edges: {both: [sleeve_seam], bottom: cuff}
  slant:
    fabric: plain
    colours: oat
    start: {chain: 40 cm}
    sections: [even: {to: shoulder}, shoulders: {neck: 14 cm, slope: 3 cm}]
    edges: {both: [side]}
  half:
    fabric: plain
    colours: oat
    start: {chain: 20 cm}
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: 15 cm, at: armhole}
      - neck_edge: {shape: round, width: 7 cm, depth: 9 cm, slope: 3 cm, at: front}
    edges: {starting: [side, underarm, armhole], far: [front]}
seams:
  - {join: back.shoulder, to: front.shoulder}
  - {join: back.side, to: front.side, take_up: half stitch}
  - {join: sleeve.cap, to: [back.armhole, front.armhole]}
finished:
  across: {measure: finished(back.top_width), wanted: body.bust / 2 - 10 cm}
  neck: {measure: edge(back.neck) + edge(front.neck)}
  shoulder: {measure: edge(half.shoulder) + edge(half.neck) + edge(slant.shoulder) + edge(slant.neck) + edge(sleeve.cap)}
"""


@pytest.fixture(scope="module")
def vest() -> tuple[Design, Sized[Body], Grading]:
    design = designed(VEST)
    of_sizes = bodies(design)
    return design, of_sizes, grade(design, environments(design, of_sizes))


def results(vest: tuple[Design, Sized[Body], Grading], key: str = "", damaged: GradedPiece | None = None) -> dict[str, CheckResult]:
    """All checks by name, with one piece of the first size damaged."""
    design, of_sizes, grading = vest
    if damaged is not None:
        sized = grading.pieces[key]
        changed = Sized(sized.labels, (damaged, *sized.values[1:]))
        grading = replace(grading, pieces={**grading.pieces, key: changed})
    return {result.name: result for result in run_checks(design, of_sizes, grading)}


def names(found: dict[str, CheckResult], severity: str = "error") -> set[str]:
    return {problem.name for result in found.values() for problem in result.problems if problem.severity == severity}


def test_rows_edges_and_seams_of_shaped_tops_pass(vest: tuple[Design, Sized[Body], Grading]) -> None:
    assert names(results(vest)) == set()


def test_each_strip_follows(vest: tuple[Design, Sized[Body], Grading]) -> None:
    pieces = [piece for sized in vest[2].pieces.values() for piece in sized]
    assert [fault for piece in pieces for strip in piece.strips for fault in row_faults(strip, piece.strips)] == []
    assert {len(piece.strips) for piece in pieces} == {1, 3}


def with_row(piece: GradedPiece, strip: int, number: int, row: Row) -> GradedPiece:
    """The piece with another row in one of its strips."""
    rows = (*piece.strips[strip].rows[:number], row, *piece.strips[strip].rows[number + 1 :])
    changed = replace(piece.strips[strip], rows=rows)
    return replace(piece, strips=(*piece.strips[:strip], changed, *piece.strips[strip + 1 :]))


def test_a_side_that_is_no_mirror_of_the_other_is_told(vest: tuple[Design, Sized[Body], Grading]) -> None:
    front = vest[2].pieces["front"]["S"]
    assert mirror_fault(front) == ""
    side = front.strips[1].rows
    number = next(i for i, row in enumerate(side) if row.edge_changes() not in ((0, 0),) and row.edge_changes() != row.edge_changes()[::-1])
    turned = replace(side[number], runs=side[number].runs[::-1])
    damaged = with_row(front, 1, number, turned)
    assert f"row {len(front.main.rows) + number + 1} has" in mirror_fault(damaged)
    assert "neck-off-centre" in names(results(vest, "front", damaged))


def test_a_side_with_other_counts_is_unbalanced(vest: tuple[Design, Sized[Body], Grading]) -> None:
    front = vest[2].pieces["front"]["S"]
    last = front.strips[2].rows[-1]
    plain = Row((replace(last.runs[-1], operation=work("hdc"), times=last.uses),), last.side)
    found = results(vest, "front", with_row(front, 2, len(front.strips[2].rows) - 1, plain))
    assert {"shaping-unbalanced", "neck-off-centre"} <= names(found)


def test_a_side_over_other_stitches_is_told(vest: tuple[Design, Sized[Body], Grading]) -> None:
    front = vest[2].pieces["front"]["S"]
    start = replace(front.strips[2].start, first=1)  # type: ignore[call-arg]
    assert "sides over stitches" in mirror_fault(replace(front, strips=(*front.strips[:2], replace(front.strips[2], start=start))))


def test_an_edge_graded_otherwise_than_its_rows_measure_is_told(vest: tuple[Design, Sized[Body], Grading]) -> None:
    back = vest[2].pieces["back"]["S"]
    neck = back.edges["neck"]
    damaged = replace(back, edges={**back.edges, "neck": EdgeLength(neck.length + 3, neck.rows, neck.stitches)})
    assert names(results(vest, "back", damaged)) == {"finished-disagrees"}


@pytest.mark.parametrize(("armholes", "name"), [("back.armhole", "seam-mismatch"), ("back.armhole, front.armhole, half.armhole", "eased-edge-short")])
def test_a_cap_sewn_into_other_armholes_than_it_fits_is_told(armholes: str, name: str) -> None:
    design = designed(VEST.replace("to: [back.armhole, front.armhole]}", f"to: [{armholes}]}}"))
    of_sizes = bodies(design)
    assert names(results((design, of_sizes, grade(design, environments(design, of_sizes))))) == {name}


def test_a_cap_may_be_longer_by_the_ease_it_states() -> None:
    design = designed(VEST.replace("block: 3 cm}]\n    edges: {both: [sleeve_seam]", "block: 3 cm, ease: 2 cm}]\n    edges: {both: [sleeve_seam]"))
    of_sizes = bodies(design)
    grading = grade(design, environments(design, of_sizes))
    assert names(results((design, of_sizes, grading))) == set()
    armhole = grading.pieces["back"]["S"].edges["armhole"].length + grading.pieces["front"]["S"].edges["armhole"].length
    assert 10 <= grading.pieces["sleeve"]["S"].edges["cap"].length - armhole <= 30
