"""Paces and hours against what is published of them: orders of magnitude, nothing of very thick yarn."""

import pytest
from external.sources import source

from gaugewright.advice.finish_by import at_work
from gaugewright.design.timing import Timing
from gaugewright.hours.paces import beginner, stitch_time
from gaugewright.trade.work_times import movements, pace_fault, work_time

YARDS_AN_HOUR = (60, 120)


@source("published", "Miss Purl Chicago, 'How fast can you crochet a sweater?': 1200 yards at 60 to 120 yards an hour are 10 to 20 hours; yarn of a square inch of sc: Windchilde, 'Crochet yarn estimating' (31.42 in); 14 sts and 16 rows to 4 in: Crochet Kitten")
def test_a_sweater_of_1200_yards_takes_ten_to_twenty_hours() -> None:
    """Its stitches, counted from its yarn, at the paces of the table."""
    yarn_per_stitch = 31.42 / (14 / 4 * 16 / 4)
    stitches = 1200 * 36 / yarn_per_stitch
    pace = work_time("single crochet")
    assert [stitches * seconds / 3600 for seconds in (pace.low, pace.high)] == pytest.approx([10, 20], rel=0.01)
    assert pace.usual == pytest.approx((pace.low + pace.high) / 2, rel=0.01)


@source("published", "Windchilde, 'Crochet yarn estimating': yarn of strips in sc, hdc and dc 53, 78.5 and 102 in for 5 in, as 1 : 1.48 : 1.92")
def test_movements_of_the_hook_go_as_the_yarn_it_draws() -> None:
    """A pace in yards an hour makes a stitch's time go with its yarn: so do the movements, within a twentieth."""
    yarn = {"sc": 53.0, "hdc": 78.5, "dc": 102.0}
    for stitch, inches in yarn.items():
        assert movements(stitch) / movements("sc") == pytest.approx(inches / yarn["sc"], rel=0.05)


@source("published", "Knitty Knotty, 2005 (newspaper copy), and Dances With Wool, 2008: 5113 stitches in 30 minutes, chains among them (170 a minute); before it 147 (1981) and 132 (L. Chin)")
def test_the_record_is_a_pace_and_faster_is_a_slip() -> None:
    per_minute = 60 / stitch_time([Timing(5113, 1800.0)]).mean
    assert per_minute == pytest.approx(work_time("record").usual, abs=1)
    assert [pace_fault(rate) for rate in (132.0, 147.0, 170.0)] == [None, None, None]
    assert pace_fault(171.0) is not None


@source("published", "a 2014 blog's division of 5113 stitches in 30 minutes to 25 a minute (wrong by 7 times)")
def test_a_wrong_division_of_the_record() -> None:
    assert 60 / stitch_time([Timing(5113, 1800.0)]).mean > 6.5 * 25


@source("published", "KnittingHelp forum, 2005, Samurai Knitter, 2006, Hastings Tribune, 2022: 255, 257 and 262 stitches knitted in 3 minutes, 85 to 87.3 a minute; everyday knitters 28 to 42 (Mystic Weave, 2007; Beehive Knitting, 2009)")
def test_published_knitting_paces_lie_between_ours_and_the_record() -> None:
    """Knitting, so an order of magnitude: an everyday sc is no faster than the fastest knitting and no slower than a fifth of the slowest everyday's."""
    fastest = [60 / stitch_time([Timing(stitches, 180.0)]).mean for stitches in (255, 257, 262)]
    assert fastest == pytest.approx([85.0, 85.7, 87.3], abs=0.05)
    pace = work_time("single crochet")
    assert 28 / 5 < 60 / pace.high < 60 / pace.low < min(fastest)


@source("published", "You Get Hooked and Fosbas Designs (own survey, its size not seen): a garment takes beginners 20 to 40 hours, experienced makers 15 to 30")
def test_beginners_take_a_third_longer() -> None:
    assert beginner({}).times == pytest.approx(20 / 15, rel=1e-3) == pytest.approx(40 / 30, rel=1e-3)


@source("published", "Fosbas Designs (own survey): an adult's garment takes 20 hours and 30 days")
def test_the_surveys_days_are_well_under_an_hour_each() -> None:
    """20 hours in 30 days are 40 minutes a day: a spell, a pause and a little more hold them."""
    assert at_work(45 / 60) == pytest.approx(40 / 60)
