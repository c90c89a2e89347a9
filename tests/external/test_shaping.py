"""Armholes, necks, shoulders and caps against published ones."""

import pytest
from external.sources import source
from tiny_specs import HEAD, graded

from gaugewright.gauge.model import Gauge
from gaugewright.grading.armhole import armhole, default_block, default_curve_rows
from gaugewright.grading.cap import Cap, cap
from gaugewright.grading.curves import (
    Phrase,
    ProfileImpossible,
    deviation,
    phrases_of,
    profile_length,
    quarter_ellipse,
    stated_profile,
)
from gaugewright.grading.necks import NeckPlan, neck, shoulder_stitches, side_curve
from gaugewright.grading.profile import EdgeStep, Profile
from gaugewright.grading.slopes import slope, slope_profile
from gaugewright.rounding import half_up, nearest_of_series, up_to_series

INCH = 25.4


def left(*steps: int, every: int = 2) -> Profile:
    """A published list of steps, one each `every` rows."""
    made = tuple(EdgeStep(every * number, stitches, "leave") for number, stitches in enumerate(steps, start=1))
    return Profile(every * len(steps), made)


@source("published", "Hand-knitting manual, 'Necklines: round and square' (from memory Katharina Buss, Big Book of Knitting, 1999): 12 + 2 x (3, 2, 2, 1, 1, 1)")
def test_a_front_neck_of_32() -> None:
    printed = NeckPlan(12, left(3, 2, 2, 1, 1, 1))
    made = neck("round", 32, printed.side.rows)
    assert printed.width == made.width == 32
    assert made.centre == 12
    curve = side_curve(quarter_ellipse(16, 12), 6, 12)
    assert deviation(made.side, curve) <= deviation(printed.side, curve)


@source("published", "Hand-knitting manual, 'Necklines: round and square': the back, 20 + 2 x (4, 2)")
def test_a_back_neck_of_32() -> None:
    printed = NeckPlan(20, left(4, 2))
    made = neck("round", 32, printed.side.rows)
    assert (made.centre, made.side.stitches, made.width) == (20, printed.side.stitches, printed.width)


@source("published", "Espace Tricot, 'Smoothing edges', 2013, 6 sizes: 12, then 4 once, 2 three times, single decreases")
@pytest.mark.parametrize(
    ("size", "single", "width", "side", "rest"),
    [(0, 5, 44, 68, 52), (1, 5, 44, 72, 56), (2, 6, 46, 78, 61), (3, 7, 48, 82, 64), (4, 8, 50, 86, 67), (5, 8, 50, 92, 73)],
)
def test_a_graded_round_neck(size: int, single: int, width: int, side: int, rest: int) -> None:
    phrases = (
        Phrase(4, 2, 1, "leave"), Phrase(2, 2, 3, "leave"), Phrase(1, 2, single, "decrease"), Phrase(1, 6, 1, "decrease"),
    )
    printed = NeckPlan(12, stated_profile(phrases, 11 + single, 14 + 2 * single))
    assert printed.width == width
    assert side - printed.side.stitches == rest
    assert phrases_of(printed.side) == (phrases, 0)
    assert neck("round", width, printed.side.rows).width == width


@source("published", "'Convert a top-down crew, scoop or square neck to a V-neck', copied at Knit1Knitall, 2015")
@pytest.mark.parametrize(("width", "centre", "side"), [(30, 0, 15), (31, 1, 15)])
def test_the_centre_of_a_v(width: int, centre: int, side: int) -> None:
    made = neck("v", width, 30)
    assert (made.centre, made.side.stitches) == (centre, side)


@source("published", "KnittingHelp forum, men's crew sweater: 5, then 2, 1, 1, 1 each side, shoulders of 16 of 47")
def test_a_crew_neck() -> None:
    printed = NeckPlan(5, left(2, 1, 1, 1))
    assert [printed.centre + 2 * gone for gone in (0, 2, 5)] == [5, 9, 15]
    assert (printed.width, shoulder_stitches(47, printed)) == (15, 16)


@source("published", "Knitting manual page, 'Shaping the shoulders' (knittingmagic.biz guide-4): three steps of 9 from 18 stitches")
def test_printed_shoulders_that_a_neck_does_not_leave() -> None:
    opening = NeckPlan(15, left(3, 2, 2, 1, 1))
    shoulder = shoulder_stitches(15 + 2 * 27, opening)
    assert shoulder == 18
    with pytest.raises(ProfileImpossible, match="take 27 stitches, but 18 go"):
        stated_profile((Phrase(9, 2, 3, "leave"),), shoulder, 6)
    assert slope(shoulder, 2, "larger at the neck") == (6, 6, 6)
    assert stated_profile((Phrase(9, 2, 3, "leave"),), 36 - 9, 6).stitches == 27


@source("published", "Oz Lorna (blog), armhole tutorial, 2012: the printed decreases are 27 a side, not 29")
def test_a_printed_armhole_that_does_not_balance() -> None:
    printed = (Phrase(9, 1, 1, "leave"), Phrase(1, 1, 9, "decrease"), Phrase(1, 2, 9, "decrease"))
    with pytest.raises(ProfileImpossible, match="take 27 stitches, but 29 go"):
        stated_profile(printed, 29, 90)
    gauge = Gauge(26, 100.0, 36, 100.0)
    made = armhole(29, 90, 9, 30, gauge)
    assert (made.rows, made.stitches, made.steps[-1].row <= 30) == (90, 29, True)
    assert 30 <= default_curve_rows(29, 90, gauge) <= 45


@source("published", "Design Your Own Sweater (blog), 'Set-in sleeves', 2007: 8 left, 26 decreased in 64 of 104 rows")
def test_an_armhole_of_34_stitches() -> None:
    gauge = Gauge(28, 100.0, 40, 100.0)
    assert half_up(gauge.rows_in(260.0)) - half_up(gauge.rows_in(100.0)) == 64
    made = armhole(8 + 26, 104, 8, 65, gauge)
    printed = stated_profile((Phrase(8, 1, 1, "leave"), Phrase(1, 2, 14, "decrease"), Phrase(1, 3, 12, "decrease")), 34, 104)
    assert (made.stitches, made.rows) == (printed.stitches, printed.rows)
    assert printed.steps[-1].row == 65
    assert 104 - made.steps[-1].row >= 39


@source("published", "30 Day Sweater (course), day 24: the first step is half of the stitches removed at a side")
def test_the_first_step_is_half() -> None:
    assert [default_block(stitches) for stitches in (8, 10, 16)] == [4, 5, 8]


@source("published", "TechKnitter, 'Sweater shoulders: stair steps to short rows', 2012: 16 stitches in 3 steps")
def test_16_in_3_steps() -> None:
    assert slope(16, 2, "larger at the neck") == (5, 5, 6)
    assert slope_profile(16, 2, "larger at the neck").after() == (5, 10)


@source("published", "Christina Creating (blog), 2013: 75 = 2 x 23 + 29, in 3 steps with the smaller one outside")
def test_75_stitches() -> None:
    shoulder = shoulder_stitches(75, NeckPlan(29, Profile(1, ())))
    assert slope(shoulder, 2, "larger at the neck") == (7, 8, 8)


@source("published", "Berroco (blog), 'Shaping shoulders with short rows', 2016: Dory, 8 sizes, no fixed place for the odd stitch")
@pytest.mark.parametrize(
    ("first", "later", "total", "remainder"),
    [
        (4, 4, 65, "larger at the neck"), (6, 5, 73, "larger at the armhole"), (6, 6, 77, "larger at the neck"), (6, 7, 81, "larger at the neck"),
        (8, 7, 85, "larger at the armhole"), (8, 9, 93, "larger at the neck"), (10, 9, 97, "larger at the armhole"), (10, 10, 101, "larger at the neck"),
    ],
)
def test_dory(first: int, later: int, total: int, remainder: str) -> None:
    shoulder = shoulder_stitches(total, NeckPlan(41, Profile(1, ())))
    assert slope(shoulder, 2, remainder) == (first, later, later)  # type: ignore[arg-type]


@source("published", "Jo Sharp, Knit (striped drop-shoulder sweater, excerpt at CraftFoxes), 4 sizes: the last step takes what is left")
@pytest.mark.parametrize(
    ("cast_on", "side", "centre", "steps"),
    [(110, 44, 22, (10, 10, 11)), (120, 49, 22, (12, 12, 12)), (130, 53, 24, (13, 13, 14)), (140, 58, 24, (14, 14, 17))],
)
def test_jo_sharps_shoulders(cast_on: int, side: int, centre: int, steps: tuple[int, ...]) -> None:
    opening = NeckPlan(centre, Profile(20, (EdgeStep(1, side - sum(steps), "leave"),)))
    shoulder = shoulder_stitches(cast_on, opening)
    made = slope(shoulder, 2, "larger at the neck")
    assert shoulder == sum(steps) == sum(made)
    assert made[-1] == max(made) and steps[-1] == max(steps)
    assert made == (steps if steps[-1] - steps[0] <= 1 else (15, 15, 15))


@source("published", "Knitting Robin, 'Shoulder slope, fitting part 2', 2013: 3/4 in at 7 rows to the inch is 5.25, worked as 6")
def test_a_slope_in_rows() -> None:
    """Cast-off edges step on every other row and need an even number; left and slipped-over ones step on every row."""
    exact = Gauge(20, 4 * INCH, 28, 4 * INCH).rows_in(0.75 * INCH)
    assert exact == pytest.approx(5.25)
    assert up_to_series(exact, 2, 2) == 6
    text = HEAD.replace("  tall: {", '  fine: {stitch: sc, gauge: "20 sts, 28 rows / 4 in"}\n  tall: {') + "sizes: {own: {M: {bust: 100 cm}}}\n" + (
        "pieces: {back: {fabric: fine, colours: oat, start: {chain: 20 in}, sections: [even: {length: 24 in}, shoulders: {neck: 7 in, slope: 0.75 in}]}}\n"
    )
    assert graded(text).plans["back"]["M"].sections[-1].rows == 5


@source("published", "Woolpack Yarn, 'Shoulder shaping: drape or drop?': twice the slope is half the step, twice as often")
def test_twice_the_slope() -> None:
    assert (slope(12, 1, "larger at the neck"), slope(12, 3, "larger at the neck")) == ((6, 6), (3, 3, 3, 3))


@source("published", "The Knitter (magazine), 27 June 2019, 10 sizes: every size adds up")
@pytest.mark.parametrize(
    ("start", "repeats", "centre", "after", "side", "shoulder"),
    [
        (83, 3, 33, 75, 21, 18), (86, 3, 34, 78, 22, 19), (86, 2, 36, 80, 22, 19), (87, 2, 37, 81, 22, 19), (93, 4, 37, 83, 23, 20),
        (96, 4, 38, 86, 24, 21), (98, 4, 38, 88, 25, 22), (101, 5, 39, 89, 25, 22), (105, 5, 39, 93, 27, 24), (108, 6, 40, 94, 27, 24),
    ],
)
def test_ten_sizes_balance(start: int, repeats: int, centre: int, after: int, side: int, shoulder: int) -> None:
    armholes = stated_profile((Phrase(1, 2, 1 + repeats, "decrease"),), (start - after) // 2, 2 + 2 * repeats)
    assert start - 2 * armholes.stitches == after
    opening = NeckPlan(centre, left(1, 1, 1))
    assert shoulder_stitches(after, opening) == shoulder == side - 3
    with pytest.raises(ProfileImpossible):
        shoulder_stitches(after + 1, opening)


# Our own garments, XS to 5X: mm gone at a side, depth of the armhole, upper sleeve.
GARMENTS = [
    (40, 185, 320), (50, 190, 335), (60, 197, 350), (72, 203, 375), (80, 212, 400),
    (88, 220, 425), (96, 230, 455), (102, 238, 480), (108, 246, 505),
]
GAUGES = [Gauge(14, 100.0, 10, 100.0), Gauge(9, 100.0, 7, 100.0)]


def fitted(gauge: Gauge, across: int, depth: int, upper: int) -> tuple[Cap, Profile]:
    """The cap for a garment's own armhole, with 1 cm of ease, and that armhole."""
    opening = armhole(half_up(gauge.stitches_in(across)), half_up(gauge.rows_in(depth)), None, None, gauge)
    edge, deep = 2 * profile_length(opening, gauge), gauge.height_of(opening.rows)
    stitches = nearest_of_series(gauge.stitches_in(upper), 2, 2)
    return cap(stitches, edge, gauge, opening.steps[0].stitches, 10.0, deep), opening


@source("published", "Slipped Stitches, 'Sleeve cap part 2', March 2014: 66 stitches, 36 rows for an armhole of 8.5 in")
def test_a_cap_of_66_stitches() -> None:
    gauge = Gauge(16, 3 * INCH, 13, 2 * INCH)
    assert half_up(gauge.rows_in((8.5 - 3.0) * INCH)) == 36
    printed = stated_profile((Phrase(5, 1, 1, "leave"), Phrase(4, 2, 1, "leave"), Phrase(1, 2, 16, "decrease")), 25, 36)
    assert 66 - 2 * printed.stitches == 16
    edge = 2 * profile_length(printed, gauge) + gauge.width_of(16)
    made = cap(66, edge, gauge, 9, 0.0, 8.5 * INCH, (3 * INCH, 3 * INCH))
    assert abs(made.rows - 36) <= 2
    assert abs(made.top - 16) <= 2
    assert made.usual


@source("published", "Slipped Stitches, 2014; Knitting Robin, 'Sleeve cap adjustments', 2011: 2 to 4 in lower than the armhole is deep")
@pytest.mark.parametrize("gauge", GAUGES)
@pytest.mark.parametrize(("across", "depth", "upper"), GARMENTS)
def test_a_cap_is_two_to_four_inches_lower_than_its_armhole(gauge: Gauge, across: int, depth: int, upper: int) -> None:
    made, opening = fitted(gauge, across, depth, upper)
    lower = gauge.height_of(opening.rows - made.rows)
    assert 2 * INCH - gauge.row_height / 2 <= lower <= 4 * INCH + gauge.row_height / 2
    assert made.usual


@source("published", "30 Day Sweater (course), days 8 and 24: lower by 1.5 in and half of the top, which is 2 to 3 in wide")
@pytest.mark.parametrize("gauge", GAUGES)
@pytest.mark.parametrize(("across", "depth", "upper"), GARMENTS)
def test_a_cap_is_about_as_low_as_its_top_asks(gauge: Gauge, across: int, depth: int, upper: int) -> None:
    made, opening = fitted(gauge, across, depth, upper)
    top = gauge.width_of(made.top)
    published = gauge.height_of(opening.rows) - 1.5 * INCH - top / 2
    assert abs(gauge.height_of(made.rows) - published) <= INCH
    assert 2 * INCH - gauge.stitch_width <= top <= 3 * INCH + gauge.stitch_width


@source("published", "By Gum By Golly, 2011; Interweave, 'Adjusting sleeve caps', 2013; H. Toomik, 2020: at most about 1 in longer, never shorter")
@pytest.mark.parametrize("gauge", GAUGES)
@pytest.mark.parametrize(("across", "depth", "upper"), GARMENTS)
def test_a_caps_edge_is_the_armholes_or_up_to_an_inch_more(gauge: Gauge, across: int, depth: int, upper: int) -> None:
    made, opening = fitted(gauge, across, depth, upper)
    over = made.edge_length - 2 * profile_length(opening, gauge)
    assert 0.0 <= over <= INCH
    half = profile_length(made.profile, gauge) + gauge.width_of(made.top) / 2
    assert 2 * half == pytest.approx(made.edge_length)
