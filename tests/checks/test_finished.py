"""Finished measurements against what was wanted, over all sizes."""

from dataclasses import replace

from checks.specs import PULLOVER, checked, damaged, places, problems_of, pullover, told_by, with_piece
from gaugewright.checks.finished import check_finished
from gaugewright.checks.remeasure import subject_of
from gaugewright.checks.terms import allowance, terms_of

COARSE = "swatch: {stitches: 20, rows: 20, width: 20 cm, height: 20 cm, thickness: 5 mm}"


def figures(name: str, text: str = PULLOVER) -> str:
    return next(result.figures for result in checked(text) if result.name == name)


def test_the_pullover_is_as_wanted_and_says_by_how_much() -> None:
    assert told_by("finished-measures") == ()
    assert figures("finished-measures") == (
        "bust 102.0 to 118.0 cm, off by up to 0.0 cm (A), allowed one stitch, 1.0 cm; "
        "length 52.0 cm, off by up to 0.0 cm (A), allowed half a row, 0.5 cm"
    )


def test_a_bust_that_forgets_its_bands_or_seams() -> None:
    text = damaged("start: {chain: (body.bust + ease.bust) / 2} => start: {chain: (body.bust + ease.bust) / 2 - 2 cm}")
    problems = told_by("finished-measures", text)
    assert places(problems, text) == [("finished-off-target", "error", "A, B, C", "bust: {measure: finished")]
    assert "98.0 cm where 102.0 cm is wanted in A" in problems[0].message
    assert "one stitch, 1.0 cm" in problems[0].message
    followed = text.replace("wanted: body.bust + ease.bust", "wanted: body.bust + ease.bust - 4 cm")
    assert told_by("finished-measures", followed) == ()


def test_a_length_is_held_to_half_a_row() -> None:
    near = damaged("wanted: shoulder => wanted: shoulder + 0.5 cm")
    far = damaged("wanted: shoulder => wanted: shoulder + 0.6 cm")
    assert told_by("finished-measures", near) == ()
    assert [one[0] for one in places(told_by("finished-measures", far), far)] == ["finished-off-target"]


def allowed(measure: str, text: str = PULLOVER) -> tuple[float, str]:
    design, bodies, grading = pullover(text.replace("finished(sleeve.widest)", measure))
    subject = subject_of(design, bodies, grading)
    found = allowance(design.finished[-1].measure, subject, "B")
    return found.mm, found.words


def test_how_far_a_measurement_may_be_off() -> None:
    assert allowed("finished(back.width) + finished(front.width)") == (10.0, "one stitch, 1.0 cm")
    assert allowed("2 * finished(back.width)") == (10.0, "one stitch, 1.0 cm")
    assert allowed("finished(back.width)") == (5.0, "0.5 of one stitch, 0.5 cm")
    assert allowed("finished(back.length)") == (5.0, "half a row, 0.5 cm")
    assert allowed("edge(back.armhole)") == (5.0, "half a row, 0.5 cm")
    assert allowed("finished(back.width) / 2 + finished(sleeve.length)") == (5.0, "half a row, 0.5 cm")


def test_a_repeat_widens_what_is_allowed_to_half_of_it() -> None:
    text = damaged(f"body: {{stitch: hdc, {COARSE} => body: {{stitch: hdc, multiple: {{of: 6, plus: 2}}, {COARSE}")
    assert allowed("finished(back.width)", text) == (30.0, "0.5 of a step of 6 stitches, 3.0 cm")
    assert allowed("finished(back.width) + finished(front.width)", text) == (60.0, "a step of 6 stitches, 6.0 cm")


def test_a_width_always_rounded_up_may_be_off_by_the_whole_step() -> None:
    assert allowed("finished(sleeve.widest)") == (20.0, "a step of 2 stitches, 2.0 cm")


def test_what_a_formula_adds_up() -> None:
    design, *_ = pullover(damaged("levels: => lengths: {half: finished(front.width) / 2}\nlevels:", "measure: finished(sleeve.widest) => measure: '3 * (half - edge(back.neck)) + max(finished(back.length), 2 cm)'"))
    found = [(term.piece, term.name, term.is_edge, term.factor) for term in terms_of(design.finished[-1].measure, design)]
    assert found == [("front", "width", False, 1.5), ("back", "neck", True, -3.0), ("back", "length", False, 1.0)]


def test_a_graded_figure_that_its_rows_do_not_measure() -> None:
    design, bodies, grading = pullover()
    wrong = with_piece(grading, "back", "B", lambda piece: replace(piece, finished={**piece.finished, "width": 540.0}))
    problems = problems_of(check_finished, (design, bodies, wrong))
    assert places(problems) == [("finished-disagrees", "error", "B", "bust: {measure: finished")]
    assert "54.0 cm, and its rows measure 55.0 cm" in problems[0].message


def test_a_measurement_that_cannot_be_worked_out_is_told_at_its_formula() -> None:
    text = damaged("wanted: shoulder => wanted: shoulder + 2 cm / (finished(back.length) / 52 cm - 1)")
    problems = told_by("finished-measures", text)
    assert places(problems, text) == [("formula-fault", "error", "A, B, C", "/ (finished(back.length)")]


def test_even_ease_and_ease_that_drifts() -> None:
    assert told_by("ease-drift") == ()
    assert figures("ease-drift") == "bust: ease 16.0 cm, drift 0.0 cm"
    text = damaged("stitches: 20, rows: 20, width: 20 cm => stitches: 6, rows: 20, width: 20 cm", "bust: 94 cm => bust: 96 cm")
    problems = told_by("ease-drift", text)
    assert [one[:2] for one in places(problems, text)] == [("ease-drift", "note")]
    assert problems[0].size == "A, C"
    assert "14.0 cm in A, 18.0 cm in C" in problems[0].message


def test_ease_that_is_meant_to_grow_does_not_drift() -> None:
    assert told_by("ease-drift", damaged("ease: {bust: 16 cm} => ease: {bust: [16 cm, 18 cm, 20 cm]}")) == ()


def test_sizes_whose_sleeves_round_two_ways_fall_and_the_hint_puts_it_right() -> None:
    text = damaged(", parity: even => ", "target: edge(back.armhole) + edge(front.armhole) => target: 42.4 cm", "ring: body.hand + 4 cm => ring: body.hand / 2 + 14 cm")
    problems = told_by("never-falls", text)
    assert places(problems, text) == [("size-falls", "error", "C", "upper_arm: {measure: fin")]
    assert "B 44.0 cm to C 43.0 cm" in problems[0].message
    assert "the fabric tube `parity: even`" in problems[0].hint
    followed = text.replace("worked: joined rounds", "worked: joined rounds, parity: even")
    assert told_by("never-falls", followed) == ()


REST = "      - even: {length: rest}\n    total: 30 cm + body.head - finished(back.width) / 2"
FALLING = damaged(
    "target: edge(back.armhole) + edge(front.armhole), length: 40 cm, round: up} => each: 6, rows: 2}\n" + REST,
    "finished: => finished:\n  arm: {measure: finished(back.width) / 2 + finished(sleeve.length), wanted: body.head + 30 cm, "
    "of: center_back_neck_to_wrist}",
    "head: 56 cm, => head: 55 cm,", "head: 57 cm, => head: 55.8 cm,", "head: 58 cm, => head: 56.6 cm,",
    "rows: 20, width: 20 cm, height: 20 cm => rows: 8, width: 20 cm, height: 20 cm",
)


def test_a_size_moved_by_a_row_so_that_none_falls_is_noted() -> None:
    assert told_by("never-falls", FALLING) == told_by("finished-measures", FALLING) == ()
    problems = told_by("total-length", FALLING)
    assert places(problems, FALLING) == [("row-for-rising", "note", "A", "30 cm + body.head - fini")]
    assert "57.5 cm long where 59.5 cm is wanted" in problems[0].message


def test_a_fall_made_by_whole_rows_is_told_with_the_change_that_mends_it() -> None:
    text = FALLING.replace(REST, "      - even: {length: 25 cm + body.head - finished(back.width) / 2}")
    problems = told_by("never-falls", text)
    assert places(problems, text) == [("size-falls", "error", "B", "arm: {measure: finished(")]
    assert "A 85.5 cm to B 85.0 cm" in problems[0].message
    _, _, length, _, word, *_ = problems[0].hint.split()
    assert problems[0].hint.startswith(f"make sleeve {length} cm {word} in all sizes")
    sign = "+" if word == "longer" else "-"
    followed = text.replace("length: 25 cm +", f"length: 25 cm {sign} {length} cm +").replace("wanted: body.head + 30 cm", f"wanted: body.head + 30 cm {sign} {length} cm")
    assert followed.count(f"{sign} {length} cm") == 2
    assert told_by("never-falls", followed) == ()


def test_a_fall_that_the_body_asks_for_is_a_note() -> None:
    text = damaged("B: {bust: 94 cm => B: {bust: 84 cm")
    problems = told_by("never-falls", text)
    assert places(problems, text)[0] == ("size-falls", "note", "B", "bust: {measure: finished")


def test_sleeves_and_sides_may_fall() -> None:
    text = damaged("upper_arm: {measure: finished(sleeve.widest), of: upper_arm} => side: {measure: edge(back.side)}", "underarm: shoulder - 21 cm => underarm: shoulder - body.upper_arm * 0.7")
    design, bodies, grading = pullover(text)
    sides = subject_of(design, bodies, grading).measured[-1].actual.values
    assert sides[0] > sides[-1]
    assert told_by("never-falls", text) == ()


def test_bust_steps() -> None:
    assert told_by("bust-steps") == ()
    text = damaged("B: {bust: 94 cm => B: {bust: 91 cm")
    problems = told_by("bust-steps", text)
    assert places(problems, text) == [("uneven-steps", "note", "A, B, C", "bust: {measure: finished")]
    assert "5.0 to 11.0 cm" in problems[0].message or "11.0 cm to C" in problems[0].message
