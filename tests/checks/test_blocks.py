"""Blocks add up to their rows; rows doctored are told."""

from dataclasses import replace

from checks.specs import damaged, places, problems_of, pullover, told_by, with_piece, with_rows
from gaugewright.checks.blocks import check_blocks
from gaugewright.grading.model import GradedPiece, Row, Run

TEXT = damaged("colours: {bands: tide, order: [oat, kelp]} => colours: {blocks: [{to: 10 cm, across: kelp}, {across: [{oat: 30 %}, {kelp: rest}, {oat: 30 %}]}]}")


def test_blocks_as_graded_add_up() -> None:
    assert told_by("blocks", TEXT) == ()


def with_runs(piece: GradedPiece, number: int, times: tuple[int, int, int], colours: tuple[str, str, str]) -> GradedPiece:
    """The piece with one row's three blocks of other stitches or colours."""
    def changed(rows: tuple[Row, ...]) -> tuple[Row, ...]:
        row = rows[number - 1]
        stitch = next(run for run in row.runs if run.operation.makes)
        runs = tuple(Run(stitch.operation, count, colour, stitch.fabric) for count, colour in zip(times, colours, strict=True))
        return (*rows[: number - 1], replace(row, runs=runs), *rows[number:])

    return with_rows(piece, changed)


def test_a_line_that_does_not_run_straight_up_is_told() -> None:
    design, bodies, grading = pullover(TEXT)
    width = grading.pieces["back"]["B"].main.rows[20].makes
    side = width * 3 // 10
    moved = with_piece(grading, "back", "B", lambda piece: with_runs(piece, 21, (side - 1, width - 2 * side + 1, side), ("oat", "kelp", "oat")))
    problems = problems_of(check_blocks, (design, bodies, moved))
    assert places(problems, TEXT) == [("blocks-uneven", "error", "B", "{across: [{oat: 30 %}, {")]
    assert "a block between others changes its stitches" in problems[0].message


def test_blocks_in_another_order_are_told() -> None:
    design, bodies, grading = pullover(TEXT)
    width = grading.pieces["back"]["A"].main.rows[20].makes
    swapped = with_piece(grading, "back", "A", lambda piece: with_runs(piece, 21, (10, width - 20, 10), ("kelp", "oat", "kelp")))
    problems = problems_of(check_blocks, (design, bodies, swapped))
    assert [(one.name, one.size) for one in problems] == [("blocks-uneven", "A")] and "row 21 isn't oat, kelp, oat" in problems[0].message


def test_a_block_of_another_width_is_told() -> None:
    design, bodies, grading = pullover(TEXT)
    def narrowed(piece: GradedPiece) -> GradedPiece:
        width = piece.main.rows[20].makes
        for number in range(11, len(piece.main.rows) + 1):
            piece = with_runs(piece, number, (5, width - 10, 5), ("oat", "kelp", "oat"))
        return piece

    problems = problems_of(check_blocks, (design, bodies, with_piece(grading, "back", "C", narrowed)))
    assert [(one.name, one.size) for one in problems] == [("blocks-uneven", "C")] and "oat is 5.0 cm wide on row 11" in problems[0].message
