"""Edges sewn together, and colour bands across the seam."""

from dataclasses import replace

from checks.specs import PULLOVER, checked, damaged, places, problems_of, pullover, told_by, with_piece, with_rows
from gaugewright.checks.seams import check_bands_meet, check_seams
from gaugewright.grading.model import GradedPiece, Row

FRONT = """\
  front:
    fabric: body
    start: {chain: (body.bust + ease.bust) / 2}
    sections:
      - even: {to: shoulder}
      - shoulders: {neck: 24 cm}
    edges: {both: [side, underarm, armhole], bottom: hem}
    colours: {bands: tide, order: [kelp, oat]}
"""
LIKE_BACK = "  front:\n    like: back\n    colours: {bands: tide, order: [kelp, oat]}\n"


def with_front(old: str, new: str) -> str:
    """A front of its own, changed."""
    assert LIKE_BACK in PULLOVER and old in FRONT
    return PULLOVER.replace(LIKE_BACK, FRONT.replace(old, new))


def test_the_pullover_fits_together_and_its_figures_say_how() -> None:
    assert told_by("seam-pairs") == ()
    figures = next(result.figures for result in checked() if result.name == "seam-pairs")
    assert figures == (
        "back.shoulder to front.shoulder: up to 0.0 cm apart; "
        "sleeve.sleeve_top to back.armhole + front.armhole: up to 0.0 cm apart, 1 stitch to 1 row; "
        "back.side to front.side: up to 0.0 cm apart"
    )


def test_a_mismatch_is_told_with_both_lengths_at_its_seam() -> None:
    text = damaged("target: edge(back.armhole) + edge(front.armhole) => target: edge(back.armhole) * 2 + 4 cm")
    problems = told_by("seam-pairs", text)
    assert places(problems, text) == [("seam-mismatch", "error", "A, B, C", "sleeve.sleeve_top, to: [")]
    assert "46.0 cm meets 42.0 cm" in problems[0].message
    assert "`target: edge(back.armhole) + edge(front.armhole)`" in problems[0].hint


def test_one_row_or_three_per_cent_is_within() -> None:
    free = damaged(", parity: even => ", "ring: body.hand + 4 cm => ring: 23 cm", "edge(back.armhole) + edge(front.armhole) => 43 cm")
    assert told_by("seam-pairs", free) == ()
    over = free.replace("target: 43 cm", "target: 45 cm")
    assert [one[0] for one in places(told_by("seam-pairs", over), over)] == ["seam-mismatch"]


def test_three_per_cent_of_a_long_edge_is_more_than_a_row_and_passes() -> None:
    """An opening of 80 cm: 82 cm are two rows more and 2.4 % of themselves, 84 cm are 4.8 %."""
    long = damaged("underarm: shoulder - 21 cm => underarm: shoulder - 40 cm", ", parity: even => ", "ring: body.hand + 4 cm => ring: 24 cm", "edge(back.armhole) + edge(front.armhole) => 82 cm")
    assert told_by("seam-pairs", long) == ()
    over = long.replace("target: 82 cm", "target: 84 cm")
    [mismatch] = told_by("seam-pairs", over)
    assert mismatch.name == "seam-mismatch" and "84.0 cm meets 80.0 cm; within one row (1.0 cm) or 3 % is expected" in mismatch.message


def test_an_eased_edge_is_never_short() -> None:
    text = damaged("target: edge(back.armhole) + edge(front.armhole), => target: edge(back.armhole) * 2 - 0.5 cm,", ", parity: even => ", "ring: body.hand + 4 cm => ring: 23 cm", ", round: up => , round: down")
    problems = told_by("seam-pairs", text)
    assert places(problems, text) == [("eased-edge-short", "error", "A, B, C", "sleeve.sleeve_top, to: [")]
    assert "41.0 cm for an opening of 42.0 cm" in problems[0].message
    followed = text.replace("round: down", "round: up").replace("edge(back.armhole) * 2 - 0.5 cm", "edge(back.armhole) * 2")
    assert told_by("seam-pairs", followed) == ()


def test_half_a_millimetre_is_not_short() -> None:
    wider = damaged(
        "{like: body, worked: joined rounds, parity: even} => {stitch: hdc, parity: even, worked: joined rounds, "
        "swatch: {stitches: 200, rows: 20, width: 199.8 cm, height: 20 cm}}", ", round: up => ",
    )
    narrow = wider.replace("width: 199.8 cm", "width: 199 cm")
    assert told_by("seam-pairs", wider) == ()
    assert [one.name for one in told_by("seam-pairs", narrow)] == ["eased-edge-short"]


def test_rows_against_rows_are_equal() -> None:
    text = with_front("[side, underarm, armhole]", "[side, low, armhole]").replace("underarm: shoulder - 21 cm", "underarm: shoulder - 21 cm\n  low: underarm - 1 cm")
    problems = told_by("seam-pairs", text)
    assert ("seam-rows", "error", "A, B, C", "back.side, to: front.sid") in places(problems, text)
    assert "31 rows meet 30" in next(one.message for one in problems if one.name == "seam-rows")


def test_stitches_against_stitches_are_noted_if_unequal() -> None:
    text = with_front("neck: 24 cm", "neck: 22 cm")
    problems = told_by("seam-pairs", text)
    assert places(problems, text) == [("seam-stitches", "note", "A, B, C", "back.shoulder, to: front")]
    assert "14 stitches meet 15 in A" in problems[0].message
    assert told_by("seam-pairs", with_front("neck: 24 cm", "neck: 24 cm")) == ()


def test_edges_go_by_the_names_that_all_pieces_have() -> None:
    text = damaged("join: back.side, to: front.side => join: back.starting, to: front.starting")
    assert told_by("seam-pairs", text) == told_by("bands-meet", text) == ()
    assert "back.starting to front.starting: up to 0.0 cm apart" in next(result.figures for result in checked(text) if result.name == "seam-pairs")


def test_an_edge_that_a_piece_does_not_have_is_told_in_place() -> None:
    design, bodies, grading = pullover()
    def without(piece: GradedPiece) -> GradedPiece:
        return replace(piece, edges={name: edge for name, edge in piece.edges.items() if name != "side"})
    problems = problems_of(check_seams, (design, bodies, with_piece(grading, "back", "B", without)))
    assert places(problems) == [("unknown-edge", "error", "B", "back.side, to: front.sid")]


def recoloured(piece: GradedPiece, first: int) -> GradedPiece:
    """The piece with its second colour from another row on."""
    def coloured(rows: tuple[Row, ...]) -> tuple[Row, ...]:
        two = [rows[0].runs[0].colour, rows[-1].runs[0].colour]
        return tuple(
            replace(row, runs=tuple(replace(run, colour=two[number >= first]) for run in row.runs)) for number, row in enumerate(rows, start=1)
        )
    return with_rows(piece, coloured)


def test_bands_change_at_the_same_rows() -> None:
    design, bodies, grading = pullover()
    assert problems_of(check_bands_meet, (design, bodies, grading)) == ()
    assert problems_of(check_bands_meet, (design, bodies, with_piece(grading, "front", "C", lambda piece: recoloured(piece, 21)))) == ()
    off = with_piece(grading, "front", "C", lambda piece: recoloured(piece, 20))
    problems = problems_of(check_bands_meet, (design, bodies, off))
    assert places(problems) == [("bands-do-not-meet", "error", "C", "back.side, to: front.sid")]
    assert "band 1 ends after row 20 of back.side and row 19 of front.side" in problems[0].message


SHAPED = damaged(
    "      - shoulders: {neck: 24 cm} =>       - armhole: {to: shoulder, target: (body.bust + ease.bust) / 2 - 10 cm, block: 2 cm}\n      - shoulders: {neck: 24 cm}",
    "      - even: {to: shoulder}\n      - armhole =>       - even: {to: underarm}\n      - armhole",
    "heights: [20 cm, rest] => heights: [20 cm, 6 cm, rest]", "order: [oat, kelp] => order: [oat, kelp, oat]",
    LIKE_BACK + " => " + """  front:
    fabric: body
    start: {chain: (body.bust + ease.bust) / 2}
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: (body.bust + ease.bust) / 2 - 10 cm, block: 2 cm}
      - neck: {shape: round, width: 24 cm, depth: 20 cm}
    edges: {both: [side, underarm, armhole], bottom: hem}
    colours: {bands: tide, order: [kelp, oat, kelp]}
""",
)


def test_bands_meet_across_the_sides_of_shaped_pieces_and_are_told_where_they_do_not() -> None:
    """Armholes on both, a neck divided on one: the sides' rows are the same whatever is shaped above them."""
    design, bodies, grading = pullover(SHAPED)
    assert len(grading.pieces["front"]["A"].strips) == 3
    assert problems_of(check_bands_meet, (design, bodies, grading)) == ()
    result = next(result for result in checked(SHAPED) if result.name == "bands-meet")
    assert result.figures == "6 colour changes compared over all sizes"
    def later(piece: GradedPiece) -> GradedPiece:
        rows = piece.main.rows
        row = replace(rows[20], runs=tuple(replace(run, colour=rows[19].runs[0].colour) for run in rows[20].runs))
        main = replace(piece.main, rows=(*rows[:20], row, *rows[21:]))
        return replace(piece, strips=(main, *piece.strips[1:]))

    off = problems_of(check_bands_meet, (design, bodies, with_piece(grading, "front", "B", later)))
    assert places(off, SHAPED) == [("bands-do-not-meet", "error", "B", "back.side, to: front.sid")]


def test_bands_of_one_colour_are_not_taken_for_a_change() -> None:
    three = "heights: [10 cm, 10 cm, rest]"
    text = damaged("heights: [20 cm, rest] => " + three, "order: [oat, kelp] => order: [oat, oat, kelp]", "order: [kelp, oat] => order: [kelp, oat, kelp]")
    result = next(result for result in checked(text) if result.name == "bands-meet")
    assert (result.problems, result.figures) == ((), "3 colour changes compared over all sizes")
