"""Bands against the edges they are picked up on, and buttonholes counted in the rows."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from tiny_specs import HEAD, designed

from checks.specs import checked, problems_of, pullover
from gaugewright.checks.bands import check_bands, check_buttonholes
from gaugewright.checks.corners import check_corners
from gaugewright.checks.model import Subject
from gaugewright.checks.remeasure import subject_of
from gaugewright.grading.grade import Grading, grade
from gaugewright.grading.model import EdgeStart, GradedPiece, PickUp, Row, Run, bridge, work
from gaugewright.sizing.bodies import bodies, environments

SIZES = "sizes: {own: {S: {bust: 80 cm}, L: {bust: 120 cm}}}\n"
BAND = """\
pieces:
  panel: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {length: body.bust / 2}], edges: {starting: [front], far: [back]}}
  band:
    fabric: plain
    colours: kelp
    start: {pick_up: [panel.front, panel.top]}
    sections: [even: {rows: 5}]
    buttonholes: {count: 4, size: 2 cm, edge: panel.front, first: 4 cm, last: 3 cm}
"""


def subject(text: str = HEAD + SIZES + BAND, damage: Callable[[GradedPiece], GradedPiece] = lambda piece: piece) -> Subject:
    """The band's spec graded, and the band of every size damaged."""
    design = designed(text)
    of_bodies = bodies(design)
    grading = grade(design, environments(design, of_bodies))
    damaged = {key: sized.map(damage) if key == "band" else sized for key, sized in grading.pieces.items()}
    return subject_of(design, of_bodies, Grading(grading.plans, damaged, grading.environments))


def with_rows(change: Callable[[int, Row], Row]) -> Callable[[GradedPiece], GradedPiece]:
    def damage(piece: GradedPiece) -> GradedPiece:
        rows = tuple(change(number, row) for number, row in enumerate(piece.main.rows, start=1))
        return replace(piece, strips=(replace(piece.main, rows=rows),))

    return damage


def test_a_band_as_long_as_its_edges_passes() -> None:
    assert check_bands(subject()) == ((), "1 band, 0.0 cm longer than their edges")
    assert check_buttonholes(subject()) == ((), "4 buttonholes in each size")


def test_a_band_of_other_length_is_told() -> None:
    def shorter(piece: GradedPiece) -> GradedPiece:
        up, other = piece.main.start.pick_ups  # type: ignore[union-attr]
        start = EdgeStart((PickUp(up.piece, up.edge, up.stitches - 9, up.rows, up.of), other))
        return replace(piece, strips=(replace(piece.main, start=start),))

    [problem] = check_bands(subject(damage=shorter)).problems
    assert (problem.name, problem.severity, problem.size) == ("band-off-edge", "warning", "S, L")
    assert "51.0 cm on edges of 60.0 cm" in problem.message


@pytest.mark.parametrize(("fewer", "names"), [(2, []), (3, ["band-off-edge"])])
def test_a_band_along_row_ends_may_be_three_per_cent_off(fewer: int, names: list[str]) -> None:
    """Along 80 rows two stitches are 2.5 % and three are 3.75 %."""

    def shorter(piece: GradedPiece) -> GradedPiece:
        [up] = piece.main.start.pick_ups  # type: ignore[union-attr]
        start = EdgeStart((PickUp(up.piece, up.edge, up.stitches - fewer, up.rows, up.of),))
        return replace(piece, strips=(replace(piece.main, start=start),))

    text = (HEAD + SIZES + BAND).replace("length: body.bust / 2", "length: 80 cm")
    alone = text.replace("pick_up: [panel.front, panel.top]", "pick_up: [panel.front]")
    assert [one.name for one in check_bands(subject(alone, damage=shorter)).problems] == names


def test_a_wide_multiple_is_told_of() -> None:
    wide = '  wide: {stitch: hdc, gauge: "10 sts, 10 rows / 10 cm", multiple: {of: 16}}\n'
    pieces = BAND.replace("band:\n    fabric: plain", "band:\n    fabric: wide")
    [problem] = check_bands(subject(HEAD + wide + SIZES + pieces)).problems
    assert (problem.name, problem.size) == ("band-off-edge", "S")
    assert "64.0 cm on edges of 60.0 cm" in problem.message


def _moved(number: int, row: Row) -> Row:
    """The first buttonhole three stitches further on."""
    if number != 3:
        return row
    runs = list(row.runs)
    at = next(i for i, run in enumerate(runs) if run.operation.kind == "chain")
    runs[at - 1] = replace(runs[at - 1], times=runs[at - 1].times + 3)
    runs[at + 1] = replace(runs[at + 1], times=runs[at + 1].times - 3)
    return replace(row, runs=tuple(runs))


def _closed(number: int, row: Row) -> Row:
    return replace(row, runs=tuple(Run(work("hdc"), run.times, run.colour, run.fabric) if run.operation == bridge() else run for run in row.runs))


def _one_closed(number: int, row: Row) -> Row:
    at = next((i for i, run in enumerate(row.runs) if run.operation == bridge()), -1)
    return replace(row, runs=tuple(replace(run, operation=work("hdc")) if i == at else run for i, run in enumerate(row.runs)))


@pytest.mark.parametrize(
    ("change", "words"),
    [(_moved, "7.0 cm for 4.0 cm at an end"), (_moved, "8.0 cm to 11.0 cm between them in S"), (_closed, "0 rows of buttonholes"), (_one_closed, "3 of 4 alike")],
)
def test_buttonholes_that_do_not_add_up_are_told(change: Callable[[int, Row], Row], words: str) -> None:
    [problem] = check_buttonholes(subject(damage=with_rows(change))).problems
    assert (problem.name, problem.severity, problem.size) == ("buttonholes-uneven", "error", "S, L")
    assert words in problem.message, problem.message
    assert problem.origin is not None and problem.origin.line_text.strip().startswith("buttonholes:")


@pytest.mark.parametrize("sample", ["groyne-vest", "jetty-vest"])
def test_the_vests_are_without_errors_or_warnings_in_the_tables_of_women_and_men(sample: str) -> None:
    results = checked((Path(__file__).parents[2] / "samples" / sample / "spec.yaml").read_text(encoding="utf-8"))
    assert [problem for result in results for problem in result.problems if problem.severity != "note"] == []
    figures = {result.name: result.figures for result in results}
    assert figures["bands-fit"].startswith("2 bands") and figures["bands-flat"].startswith("6 corners") and figures["buttonholes"] == "5 buttonholes in each size"


FLAT = (Path(__file__).parents[1] / "cases/v-neck-bands/spec.yaml").read_text(encoding="utf-8")


def test_bands_are_flat_at_their_corners_row_by_row() -> None:
    [result] = [one for one in checked(FLAT) if one.name == "bands-flat"]
    assert result.problems == () and result.figures.startswith("3 corners, rows ")


def test_a_band_that_runs_straight_over_its_corners_is_noted_with_what_it_is_too_long() -> None:
    text = FLAT.replace("take_up: half stitch}, sections: [even: {length: 3 cm}]", "take_up: half stitch, corners: none}, sections: [even: {length: 3 cm}]")
    [note] = [problem for one in checked(text) if one.name == "bands-flat" for problem in one.problems]
    assert (note.name, note.severity, note.size) == ("band-not-flat", "note", "S, M, L")
    assert "runs straight over its corners (point)" in note.message and "cm too long in S" in note.message


def test_rows_that_do_not_follow_from_the_corners_are_an_error() -> None:
    """The point's decreases taken out of the rows: the band is as long at its outer edge as at its inner one."""
    design, of_sizes, grading = pullover(FLAT)
    pieces = dict(grading.pieces)
    pieces["neck_band"] = pieces["neck_band"].map(lambda piece: replace(piece, strips=(replace(piece.main, rows=(piece.main.rows[0],) * len(piece.main.rows)),)))
    [found] = problems_of(check_corners, (design, of_sizes, replace(grading, pieces=pieces)))
    assert (found.name, found.severity, found.size) == ("band-not-flat", "error", "S, M, L")
