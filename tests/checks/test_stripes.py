"""Stripes follow their sequence and meet; rows doctored, or pieces set apart, are told."""

from dataclasses import replace

from checks.specs import damaged, places, problems_of, pullover, told_by, with_piece, with_rows
from gaugewright.checks.stripes import check_stripes
from gaugewright.grading.model import GradedPiece, Row

STRIPED = (
    "colours: {bands: tide, order: [oat, kelp]} => colours: {stripes: surf}",
    "colours: {bands: tide, order: [kelp, oat]} => colours: {stripes: surf}",
    "pieces:\n => stripes: {surf: [{oat: 4}, {kelp: 2}]}\npieces:\n",
)
TEXT = damaged(*STRIPED)
SLEEVE = TEXT.replace("    colours: kelp\nseams:", "    colours: {stripes: surf, match: {to: back, at: underarm, own: 40 cm}}\nseams:")


def in_colour(piece: GradedPiece, number: int, colour: str) -> GradedPiece:
    """The piece with one row in another colour."""
    def changed(rows: tuple[Row, ...]) -> tuple[Row, ...]:
        row = rows[number - 1]
        return (*rows[: number - 1], replace(row, runs=tuple(replace(run, colour=colour) for run in row.runs)), *rows[number:])

    return with_rows(piece, changed)


def test_stripes_that_meet_are_in_order() -> None:
    assert SLEEVE != TEXT
    assert told_by("stripes", TEXT) == told_by("stripes", SLEEVE) == ()


def test_a_row_out_of_its_stripe_is_told() -> None:
    design, bodies, grading = pullover(TEXT)
    off = with_piece(grading, "back", "B", lambda piece: in_colour(piece, 8, "kelp"))
    problems = problems_of(check_stripes, (design, bodies, off))
    found = {(one.name, one.severity, one.size) for one in problems}
    assert {("stripes-uneven", "error", "B"), ("stripes-do-not-meet", "warning", "B")} <= found


def test_stripes_begun_elsewhere_do_not_meet_across_the_seam() -> None:
    text = TEXT.replace("    like: back\n    colours: {stripes: surf}", "    like: back\n    colours: {stripes: surf, begin: 3 cm}")
    assert text != TEXT
    found = told_by("stripes", text)
    assert [one for one in places(found, text) if one[0] == "stripes-do-not-meet"] == [("stripes-do-not-meet", "warning", "A, B, C", "back.side, to: front.sid")]


def test_other_sequences_are_not_expected_to_meet() -> None:
    text = TEXT.replace("    like: back\n    colours: {stripes: surf}", "    like: back\n    colours: {stripes: [{oat: 2}, {kelp: 2}]}")
    assert [one for one in told_by("stripes", text) if one.name == "stripes-do-not-meet"] == []


def test_a_matched_piece_that_does_not_stand_as_the_other_is_told() -> None:
    design, bodies, grading = pullover(SLEEVE)
    def moved(piece: GradedPiece) -> GradedPiece:
        def changed(rows: tuple[Row, ...]) -> tuple[Row, ...]:
            colours = [row.runs[0].colour for row in rows]
            return tuple(replace(row, runs=tuple(replace(run, colour=colours[(number + 3) % len(rows)]) for run in row.runs)) for number, row in enumerate(rows))

        return with_rows(piece, changed)

    problems = problems_of(check_stripes, (design, bodies, with_piece(grading, "sleeve", "C", moved)))
    assert ("stripes-do-not-meet", "error", "C", "back, at: underarm, own:") in places(problems, SLEEVE)


def test_odd_stripes_in_rows_are_noted_and_following_the_hint_helps() -> None:
    odd = TEXT.replace("{kelp: 2}", "{kelp: 1}")
    found = [one for one in told_by("stripes", odd) if one.name == "stripes-cut"]
    assert [one.severity for one in found] == ["note", "note"] and "even number of rows" in found[0].hint
    assert told_by("stripes", odd.replace("{kelp: 1}", "{kelp: 2}")) == ()
