"""Length to count and back, and from one gauge to another, against published worked examples."""

import pytest
from external.sources import source

from gaugewright.gauge.model import Gauge
from gaugewright.gauge.counts import CountRule, allows, count_for
from gaugewright.rounding import half_up
from gaugewright.units import parse_length

IN, CM = 25.4, 10.0
ANY = CountRule()
EVEN, ODD = CountRule(parity="even"), CountRule(parity="odd")
EVEN_DOWN = CountRule(parity="even", direction="down")
EVEN_UP = CountRule(parity="even", direction="up")


def per_inches(stitches: int, inches: float = 4, rows: int = 1, rows_inches: float = 1) -> Gauge:
    return Gauge(stitches, inches * IN, rows, rows_inches * IN)


def per_10_cm(stitches: int, rows: int = 1) -> Gauge:
    return Gauge(stitches, 10 * CM, rows, 10 * CM)


@source("published", "Knitting Sitting (blog), 'Compounding Interest', 2008")
@pytest.mark.parametrize(("gauge", "chest"), [(per_inches(13, 2), 48), (per_inches(6, 1), 52)])
def test_half_a_stitch_an_inch_is_four_inches_of_chest(gauge: Gauge, chest: float) -> None:
    assert gauge.width_of(312) / IN == pytest.approx(chest)


@source("published", "Maths Magics, 'Knitting Math: how much difference can 1 stitch per inch make', 2021")
def test_one_stitch_an_inch_off() -> None:
    assert count_for(per_inches(4, 1).stitches_in(40 * IN), ANY) == 160
    assert per_inches(5, 1).width_of(160) / IN == pytest.approx(32, abs=0.01)
    assert per_inches(3, 1).width_of(160) / IN == pytest.approx(53.333, abs=0.01)


@source("published", "Knit Nottingham (shop blog), 'Moving on with gauge', 2011")
@pytest.mark.parametrize(("cast_on", "width", "new"), [(128, 23, 151), (112, 20, 132)])
def test_another_gauge_with_the_seam_stitches_kept_out(cast_on: int, width: int, new: int) -> None:
    pattern, mine = per_inches(11, 2), per_inches(13, 2)
    without_seams = pattern.width_of(cast_on - 2)
    assert half_up(without_seams / IN) == width
    assert count_for(mine.stitches_in(without_seams), ANY) + 2 == new


@source("published", "Quince & Co. (Jerusha Robinson), 'Kathryn essay 3', 2015")
def test_half_a_stitch_goes_up() -> None:
    kathryn = per_inches(51, 8, 32, 4)
    assert kathryn.stitches_in(36 * IN) == pytest.approx(229.5)
    assert count_for(kathryn.stitches_in(36 * IN), ANY) == 230
    assert count_for(kathryn.rows_in(7.25 * IN), ANY) == 58


@source("published", "Be A Little Knitty (blog), 'But I knit a gauge swatch!!!', 2025")
def test_a_swatch_believed_on_the_needle() -> None:
    assert per_inches(20).width_of(200) / IN == pytest.approx(40)
    assert count_for(per_inches(24).stitches_in(40 * IN), ANY) == 240


@source("published", "Stitch Whisper Designs, 'Multiples', 2021; Made by Fabi, 2015")
def test_multiples_plus() -> None:
    five, twelve = CountRule(multiple=5, plus=1), CountRule(multiple=12, plus=2)
    for repeats, stitches in ((2, 11), (11, 56), (20, 101)):
        assert count_for(5.0 * repeats, five) == stitches
    assert count_for(110.0, twelve) == 110
    assert not allows(twelve, 108)


@source("published", "Craftown / Crochet Fashions (Paul Weber), 'Bulky Sweater', 2005: multiple of 2 plus 1")
@pytest.mark.parametrize("chain", [52, 58, 64, 70, 74, 78])
def test_row_one_of_every_size_fits_the_repeat(chain: int) -> None:
    assert allows(CountRule(multiple=2, plus=1), chain - 1)
    assert count_for(chain - 1.4, CountRule(multiple=2, plus=1)) == chain - 1


@source("published", "Watch Knitting, 'How to measure required stitches', 2016 (its result; the label beside it is inverted)")
def test_twenty_over_thirty_centimetres() -> None:
    gauge = Gauge(20, 300, 1, 1)
    assert count_for(gauge.stitches_in(400), ANY) == 27
    assert gauge.stitches_in(10) == pytest.approx(20 / 30)  # stitches per cm, not cm per stitch


@source("published", "Jen Likes To Knit (blog), 'Gauge can be a killer', 2011")
def test_counts_are_right_where_the_text_slips() -> None:
    assert per_inches(4, 1).stitches_in(46 * IN) == pytest.approx(184)
    assert per_inches(17, 4).stitches_in(46 * IN) == pytest.approx(195.5)
    assert per_inches(18, 4).stitches_in(1 * IN) == pytest.approx(4.5)  # printed as 4.25


@source("published", "'Knit Perfect', page on sleeves (scan of a knitting manual)")
def test_rows_from_inches_and_the_slip_in_centimetres() -> None:
    gauge = per_inches(18, 4, 24, 4)
    assert count_for(gauge.rows_in(19 * IN), ANY) == 114
    assert gauge.stitches_in(1 * IN) == pytest.approx(4.5)
    metric = Gauge(18, 100, 24, 100)
    assert metric.rows_in(485) == pytest.approx(116.4)  # printed as 115.2, which is 48 cm
    assert metric.rows_in(480) == pytest.approx(115.2)


@source("published", "Kristen TenDyke, 'How to increase evenly along a set number of rows', 2006 and 2014")
def test_cuff_and_rows_go_down_to_even() -> None:
    gauge = per_inches(5, 1, 7, 1)
    assert count_for(gauge.stitches_in(7.75 * IN), EVEN_DOWN) == 38
    assert count_for(gauge.stitches_in(12 * IN), EVEN_DOWN) == 60
    assert count_for(gauge.rows_in(15.5 * IN), EVEN_DOWN) == 108


@source("published", "Design Your Own Sweater (blog), 'Sleeve', 2007")
def test_both_ends_of_a_sleeve_are_cut_down_to_even() -> None:
    gauge = per_10_cm(28, 40)
    assert count_for(gauge.stitches_in(26 * CM), EVEN_DOWN) == 72
    assert count_for(gauge.stitches_in(56 * CM), EVEN_DOWN) == 156
    assert count_for(gauge.rows_in(49 * CM), ANY) == 196
    assert count_for(gauge.rows_in((49 - 5) * CM), ANY) == 176


@source("published", "Design Your Own Sweater (blog), 'Set-in sleeves', 2007")
def test_armhole_counts() -> None:
    gauge = per_10_cm(28, 40)
    assert count_for(gauge.stitches_in(62 * CM), EVEN) == 174
    assert count_for(gauge.stitches_in(3 * CM), ANY) == 8
    assert count_for(25.2, EVEN_UP) == 26
    assert count_for(gauge.rows_in((26 - 10) * CM), ANY) == 64


@source("published", "Knitting Unplugged, 'How to figure out decrease and increase placement', 2016")
@pytest.mark.parametrize(("inches", "stitches"), [(9, 50), (13, 72)])
def test_halves_at_both_ends_of_a_sleeve_go_up(inches: float, stitches: int) -> None:
    assert count_for(per_inches(11, 2).stitches_in(inches * IN), ANY) == stitches


@source("published", "Papermoon Knits, 'Math Monday: increasing along the length'")
def test_nearest_even_rounds_and_nearest_multiple_of_four() -> None:
    assert count_for(per_inches(17, 4).stitches_in(9 * IN), CountRule(multiple=4)) == 40
    assert count_for(per_inches(4, 1).stitches_in(15 * IN), EVEN) == 60
    rounds = per_inches(4, 1, 27, 4).rows_in(13 * IN)
    assert rounds == pytest.approx(87.75)
    assert count_for(rounds, EVEN) == 88


@source("published", "Lily Chin, 'Raglan secrets', Interweave, 2017 (crochet)")
def test_a_neck_goes_up_to_even() -> None:
    gauge = per_inches(23, 5)
    assert count_for(gauge.stitches_in(22 * IN), EVEN_UP) == 102
    assert count_for(gauge.stitches_in(40 * IN), EVEN_UP) == 184
    assert count_for(gauge.stitches_in(13 * IN), EVEN_UP) == 60


@source("published", "Knitting Robin, 'Shoulder slope, fitting part 2', 2013")
def test_a_slope_goes_up_to_even_rows() -> None:
    assert count_for(per_inches(1, 1, 7, 1).rows_in(0.75 * IN), EVEN_UP) == 6


@source("published", "Slipped Stitches, 'Sleeve cap part 2', 2014")
def test_rows_of_a_cap() -> None:
    assert count_for(per_inches(1, 1, 13, 2).rows_in(5.5 * IN), ANY) == 36


@source("published", "Knitting Konrad, 'Trinity', 2014")
def test_rows_of_an_armhole() -> None:
    assert count_for(per_10_cm(21, 34).rows_in(20 * CM), ANY) == 68


@source("published", "Tess Knits, 'Provence', part 4")
def test_rows_of_a_baby_armhole() -> None:
    assert count_for(per_inches(1, 1, 8, 1).rows_in(5 * IN), ANY) == 40


@source("published", "Ann Budd, 'How to adapt a pattern written for one gauge to another gauge', 2010")
def test_another_gauge_keeps_parity() -> None:
    pattern, mine = per_inches(5, 1), per_inches(13, 2)
    exact = mine.stitches_in(pattern.width_of(98))
    assert exact == pytest.approx(127.4)
    assert (count_for(exact, EVEN), count_for(exact, ODD)) == (128, 127)
    assert count_for(mine.stitches_in(pattern.width_of(30)), ODD) == 39


@source("published", "NeoKnits, 'Design process: yet more math', 2007: 31.6 stitches are cut to 31")
def test_stitches_cut_down() -> None:
    exact = per_inches(11, 2).stitches_in(5.75 * IN)
    assert count_for(exact, CountRule(direction="down")) == 31
    assert count_for(exact, ANY) == 32


@source("published", "C. W. Carvalho, Fiber Images, 1997")
def test_rows_from_knitting_to_crochet() -> None:
    knitted, crocheted = per_inches(1, 1, 6, 1), per_inches(1, 1, 3, 1)
    assert knitted.height_of(24) / IN == pytest.approx(4)
    assert count_for(crocheted.rows_in(knitted.height_of(24)), ANY) == 12


@source("published", "Becki Knits (blog), 2008")
def test_a_size_that_gives_another_at_my_gauge() -> None:
    pattern, mine = per_inches(30), per_inches(36)
    stitches = pattern.stitches_in(43 * IN)
    assert half_up(mine.width_of(stitches) / IN) == 36
    assert allows(CountRule(multiple=6), 324)
    assert not allows(CountRule(multiple=28), 324)


@source("published", "Knitting With Karma, 'Knitting math 2: short repeats', 2011: 7 printed, which is no multiple of 4")
def test_a_printed_repeat_that_does_not_fit_is_refused() -> None:
    four = CountRule(multiple=4)
    more = per_inches(6, 1).stitches_in(1.15 * IN)
    assert count_for(more, four) == 8
    assert not allows(four, 7)


@source("published", "Yay For Yarn, 'Dotty Pullover', 9 sizes (cm = in x 2.54, to 0.1)")
@pytest.mark.parametrize(
    ("inches", "cm"),
    [(32, 81.3), (36, 91.4), (40, 101.6), (44, 111.8), (48, 121.9), (52, 132.0), (56, 142.2), (60, 152.4), (64, 162.6)],
)
def test_inches_to_centimetres(inches: int, cm: float) -> None:
    assert parse_length(f"{inches} in") / CM == pytest.approx(cm, abs=0.1)


@source("published", "Frasier Knits (2.5 cm to the inch) against Lion Brand (2.54), which rules here")
def test_the_two_inches_differ_by_more_than_two_centimetres_at_the_bust() -> None:
    assert parse_length("60 in") / CM == pytest.approx(152.4)
    assert parse_length("36 in") / CM == pytest.approx(91.4, abs=0.05)
