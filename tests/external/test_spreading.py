"""Even spreading of increases and decreases against published worked examples."""

from collections import Counter

import pytest
from external.sources import source

from gaugewright.grading.spread import Group, Kind, Spread, expand, ramp, spread


def _sections(made: Spread) -> list[int]:
    """Stitches from one change to the next, the one worked into included, and the last stretch."""
    marks = [0, *made.positions()]
    rest = made.stitches - marks[-1]
    return [b - a for a, b in zip(marks, marks[1:], strict=False)] + ([rest] if rest else [])


@source("published", "Knitting For Dummies, 'How to increase at several points in the same row'")
def test_five_sections_of_eight() -> None:
    made = spread(40, 4, "increase", along="row")
    assert (_sections(made), made.made) == ([8] * 5, 44)


@source("published", "Woolpack Yarn, 'Calculating where to place the increases'")
def test_51_stitches_4_increases() -> None:
    around = spread(51, 4, "increase")
    assert around.positions() == (13, 26, 39, 51)
    assert _sections(around) == [13, 13, 13, 12]
    flat = spread(51, 4, "increase", along="row with half gaps")
    assert flat.positions() == (6, 19, 32, 45)
    assert (flat.stitches - flat.positions()[-1], flat.made) == (6, 55)


@source("published", "Woolpack Yarn, 'Calculating where to place the increases'")
def test_112_stitches_16_increases() -> None:
    around = spread(112, 16, "increase")
    assert (_sections(around), around.made) == ([7] * 16, 128)
    flat = spread(112, 16, "increase", along="row with half gaps")
    assert abs(flat.positions()[0] - 3.5) == 0.5
    assert _sections(flat)[1:-1] == [7] * 15


DROPS = "lesson 'How to increase / decrease evenly' (DROPS Design, attribution from memory)"


@source("published", DROPS)
def test_gaps_cut_down_to_a_whole_stitch() -> None:
    made = spread(100, 16, "increase", remainder="left at the end")
    assert _sections(made) == [6] * 16 + [4]
    assert made.made == 116


@source("published", DROPS)
def test_gaps_cut_down_to_a_half_stitch() -> None:
    made = spread(140, 21, "increase", remainder="left at the end")
    *gaps, rest = _sections(made)
    assert gaps[:4] == [6, 7, 6, 7]
    assert (Counter(gaps), rest, made.made) == ({6: 11, 7: 10}, 4, 161)


@source("published", DROPS)
def test_half_a_gap_at_both_edges() -> None:
    made = spread(48, 12, "increase", along="row with half gaps")
    assert _sections(made) == [2, *[4] * 11, 2]
    assert made.made == 60


@source("published", "Knit-a-bit, 'Increasing and decreasing evenly'")
@pytest.mark.parametrize(
    ("stitches", "changes", "along", "gaps"),
    [(100, 10, "round", {10: 10}), (110, 10, "row", {10: 11}), (100, 11, "round", {9: 10, 10: 1})],
)
def test_every_nine_and_ten(stitches: int, changes: int, along: str, gaps: dict[int, int]) -> None:
    assert Counter(_sections(spread(stitches, changes, "increase", along=along))) == gaps  # type: ignore[arg-type]


@source("published", "Knit-a-bit, same page: its answer for 120 stitches uses only 101 of them")
def test_an_answer_that_loses_stitches_is_not_given() -> None:
    printed = {10: 9, 11: 1}
    assert sum(gap * times for gap, times in printed.items()) == 101
    made = _sections(spread(120, 10, "increase", along="row"))
    assert (sum(made), Counter(made)) == (120, {11: 10, 10: 1})


@source("published", "Knitting With Karma, 'Knitting math', 2011")
def test_40_to_48() -> None:
    assert _sections(spread(40, 8, "increase")) == [5] * 8


@source("published", "Knitting With Karma, 'Knitting math', 2011: an increase is printed where 16 decreases are needed")
def test_56_to_40_needs_decreases_with_gaps_of_one_and_two() -> None:
    made = spread(56, 16, "decrease", remainder="by turns")
    assert (made.stitches, made.made) == (56, 40)
    assert expand(made) == (2, 1) * 8 + (0,)
    assert spread(56, 16, "increase").made != 40


@source("published", "KnittingHelp forum, 'How to dec evenly'")
@pytest.mark.parametrize(("stitches", "plain"), [(108, 10), (99, 9)])
def test_nine_decreases_a_round(stitches: int, plain: int) -> None:
    assert spread(stitches, 9, "decrease").groups == (Group(plain, 9),)


@source("published", "Crochet Kim, 'Picking up stitches evenly'")
def test_a_border_in_eight_sections() -> None:
    assert _sections(spread(200, 8, "increase")) == [25] * 8
    assert sorted(_sections(spread(204, 8, "increase"))) == [25] * 4 + [26] * 4
    assert _sections(spread(204, 8, "increase", remainder="by turns")) == [26, 25] * 4


@source("published", "Simply Crochet (magazine), 22 October 2020, 'How do I work a flat circle?': stagger the increases")
def test_a_disc_of_six() -> None:
    count, counts, rounds = 6, [6], []
    for number in range(7):
        rounds.append(spread(count, 6, "increase", shifted=number % 2 == 1))
        count = rounds[-1].made
        counts.append(count)
    assert counts == [6, 12, 18, 24, 30, 36, 42, 48]
    places = [{p / made.stitches for p in made.positions()} for made in rounds[3:]]
    assert all(not here & before for here, before in zip(places[1:], places, strict=False))


@source("published", "Elizabeth Zimmermann, Knitting Without Tears, yoke of 268 worked by 'skeincharmer': two thirds three times")
def test_a_yoke_in_three_equal_shares() -> None:
    assert ramp(268, 80, 3) == (179, 120, 80)


@source("common practice", "an increase works two stitches into one, a decrease works two together")
@pytest.mark.parametrize(("kind", "made"), [("increase", 24), ("decrease", 6)])
def test_one_round_doubles_or_halves(kind: Kind, made: int) -> None:
    assert spread(12, 12 if kind == "increase" else 6, kind).made == made
