"""Bands worked sideways against the edges they are joined to."""

from pathlib import Path

from checks.specs import places, problems_of, pullover, told_by, with_piece, with_rows
from gaugewright.checks.joins import check_joins

CASE = (Path(__file__).parents[1] / "cases" / "sideways-rib" / "spec.yaml").read_text(encoding="utf-8")


def test_bands_go_along_their_edges() -> None:
    assert told_by("joins", CASE) == ()


def test_two_rows_too_few_are_told() -> None:
    design, bodies, grading = pullover(CASE)
    fewer = with_piece(grading, "hem_rib", "S", lambda piece: with_rows(piece, lambda rows: rows[:-4]))
    (told,) = problems_of(check_joins, (design, bodies, fewer))
    assert places((told,), CASE)[0][:3] == ("rib-off-edge", "error", "S")
    assert "69.1 cm for 72.0 cm of edge" in told.message


def test_a_place_left_out_is_told() -> None:
    design, bodies, grading = pullover(CASE)
    swapped = with_piece(grading, "fine_rib", "L", lambda piece: with_rows(piece, lambda rows: (rows[1], *rows[1:])))
    (told,) = problems_of(check_joins, (design, bodies, swapped))
    assert "43 slip stitches for 44 stitches or row ends" in told.message


def test_an_edge_shorter_than_two_rows_is_told() -> None:
    text = CASE.replace("tall_rib: {fabric: tall_rib, start: {chain: 5 cm, join: front.top}}", "tag: {fabric: body, start: {chain: 2.5 cm}, sections: [even: {rows: 1}]}\n  tall_rib: {fabric: tall_rib, start: {chain: 5 cm, join: tag.top}}")
    assert [problem.name for problem in told_by("joins", text)] == []
    short = text.replace("{chain: 2.5 cm}", "{chain: 1.2 cm}")
    assert [problem.name for problem in told_by("joins", short)] == ["rib-off-edge"]
