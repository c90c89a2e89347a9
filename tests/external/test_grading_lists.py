"""Printed lists of whole size ranges: counts and widths of every size must come out as printed."""

import pytest
from external.sources import source

from gaugewright.gauge.model import Gauge
from gaugewright.gauge.counts import CountRule, count_for, spacing
from gaugewright.rounding import half_up, to_step, up
from gaugewright.tolerances import bust_tolerance, width_tolerance

IN = 25.4
ANY = CountRule()

MUD_SEASON = [33, 36.5, 38.5, 42, 45.25, 48.5, 51.75, 54, 58.5, 61.75, 65]
RAIN = [33.5, 36.75, 40, 44, 47.25, 49.5, 52.75]
COMPASS = [32, 36.25, 40, 44, 48, 52, 54.75]


def _quarter_inches_again(busts: list[float], gauge: Gauge, rule: CountRule) -> list[float]:
    """Each printed bust made into a count and shown again to the quarter inch."""
    counts = [count_for(gauge.stitches_in(bust * IN), rule) for bust in busts]
    return [to_step(gauge.width_of(count) / IN, 0.25) for count in counts]


@source("published", "Elizabeth Smith Knits, 'Mud Season', 11 sizes, 14.5 sts to 4 in (multiples of 4 inferred)")
def test_mud_season() -> None:
    assert _quarter_inches_again(MUD_SEASON, Gauge(29, 8 * IN, 11, 2 * IN), CountRule(multiple=4)) == MUD_SEASON


@source("published", "Elizabeth Smith Knits, 'Mud Season', 11 sizes: an odd multiple does not give its busts")
def test_mud_season_is_not_what_another_repeat_gives() -> None:
    assert _quarter_inches_again(MUD_SEASON, Gauge(29, 8 * IN, 11, 2 * IN), CountRule(multiple=6)) != MUD_SEASON


@source("published", "Gift of Knitting, 'Rain', 7 sizes, 20 sts to 4 in (multiples of 4 inferred)")
def test_rain() -> None:
    assert _quarter_inches_again(RAIN, Gauge(20, 4 * IN, 1, 1), CountRule(multiple=4)) == RAIN


@source("published", "Quince & Co., 'Compass', 7 sizes, 26 sts to 4 in (even counts inferred)")
def test_compass() -> None:
    assert _quarter_inches_again(COMPASS, Gauge(26, 4 * IN, 1, 1), CountRule(parity="even")) == COMPASS


@source("published", "Lion Brand Yarn, 'Wool-Ease Knit Oh-So-Simple Cardigan', pattern 60061")
def test_lion_60061() -> None:
    gauge = Gauge(16, 4 * IN, 32, 4 * IN)
    chests, centimetres = [40, 44, 48, 52, 56, 60], [101.5, 112, 122, 132, 142, 152.5]
    backs = [count_for(gauge.stitches_in(chest / 2 * IN), ANY) for chest in chests]
    assert backs == [80, 88, 96, 104, 112, 120]
    assert [to_step(gauge.width_of(2 * back) / 10, 0.5) for back in backs] == centimetres


@source("published", "Lion Brand Yarn, 'Homespun Cozy Classic Pullover' (crochet), pattern 70644AD")
def test_lion_70644() -> None:
    gauge = Gauge(9, 4 * IN, 7, 4 * IN)
    chests = [half_up(gauge.width_of(2 * back) / IN) for back in (42, 46, 50, 54, 58)]
    assert chests == [37, 41, 44, 48, 52]
    even = CountRule(parity="even")
    assert [count_for(gauge.stitches_in(c / 2 * IN), even) for c in chests] == [42, 46, 50, 54, 58]


@source("published", "Lion Brand Yarn, 'Wool-Ease Statement Sleeve Sweater' (crochet): worked sideways")
def test_lion_statement_sleeve() -> None:
    gauge = Gauge(14, 4 * IN, 1, 1)
    lengths = [20, 20, 20, 22, 22, 22, 22]
    assert [count_for(gauge.stitches_in(length * IN), ANY) for length in lengths] == [70, 70, 70, 77, 77, 77, 77]
    assert [half_up(gauge.width_of(n) / 10) for n in (70, 77)] == [51, 56]


@source("published", "James N. Watts, 'Super Bulky Basic Drop Sleeve Sweater', 2024, 9 sizes")
def test_watts_steps_need_no_rounding() -> None:
    gauge = Gauge(8, 4 * IN, 15, 4 * IN)
    chests = [30, 34, 38, 42, 46, 50, 54, 58, 62]
    counts = [count_for(gauge.stitches_in((chest + 7) * IN), CountRule(parity="even")) for chest in chests]
    finished = [gauge.width_of(count) / IN for count in counts]
    assert finished == pytest.approx([37, 41, 45, 49, 53, 57, 61, 65, 69])


TEXTURED_BUST = [30, 34, 38, 42, 46, 50, 54, 58, 62]
TEXTURED_FINISHED = [32.25, 36.75, 41.25, 44.25, 48.75, 53.25, 56.25, 60.75, 65.25]


@source("published", "Yay For Yarn, 'Textured Pullover' (crochet), 9 sizes, 8 rows to 3 in (repeat of 4 rows plus 2 inferred)")
def test_a_row_repeat_makes_uneven_steps() -> None:
    gauge = Gauge(14, 4 * IN, 8, 3 * IN)
    rule = CountRule(multiple=4, plus=2, direction="up")
    rows = [count_for(gauge.rows_in((bust + 2) * IN), rule) for bust in TEXTURED_BUST]
    finished = [gauge.height_of(n) / IN for n in rows]
    assert finished == pytest.approx(TEXTURED_FINISHED)
    steps = [b - a for a, b in zip(finished, finished[1:], strict=False)]
    assert steps == pytest.approx([4.5, 4.5, 3, 4.5, 4.5, 3, 4.5, 4.5])


@source("published", "Yay For Yarn, 'Textured Pullover' (crochet), 9 sizes: stated ease 2 to 3 in")
def test_a_repeat_moves_the_ease_by_half_of_itself_at_most() -> None:
    row = 3 * IN / 8
    limit = width_tolerance(row, spacing(CountRule(multiple=4, plus=2)))
    eases = [f - b for f, b in zip(TEXTURED_FINISHED, TEXTURED_BUST, strict=True)]
    middle = (min(eases) + max(eases)) / 2
    assert all(abs(ease - middle) * IN <= limit for ease in eases)


@source("published", "Elizabeth Smith Knits, 'Mud Season', 11 sizes, 131 yd to a skein")
def test_skeins_go_up() -> None:
    yards = [525, 575, 625, 675, 750, 825, 875, 925, 1025, 1125, 1225]
    assert [up(y / 131) for y in yards] == [5, 5, 5, 6, 6, 7, 7, 8, 8, 9, 10]


@source("published", "Wools of Nations, 'How to substitute one yarn for another', 2021")
def test_skeins_of_another_yarn_go_up() -> None:
    assert up(10 * 112 / 192) == 6


MOULIN = [83, 94, 99, 110, 115, 125, 136, 146, 151]
DIAMONDS = [80, 87, 94.5, 102, 109, 116, 123.5, 138, 145.5, 160]


@source("published", "Pope Knits, 'Moulin Rouge' (Morris & Sons page), 9 sizes, 23 sts to 10 cm (repeat of 12 inferred): steps of 11, 5, 11, 5, 10, 11, 10, 5 cm")
def test_a_colourwork_repeat_shows_through_the_steps() -> None:
    gauge = Gauge(23, 100.0, 28, 100.0)
    counts = [count_for(gauge.stitches_in(bust * 10), CountRule(multiple=12)) for bust in MOULIN]
    assert [half_up(gauge.width_of(count) / 10) for count in counts] == MOULIN
    assert [b - a for a, b in zip(counts, counts[1:], strict=False)] == [24, 12, 24, 12, 24, 24, 24, 12]
    other = [count_for(gauge.stitches_in(bust * 10), CountRule(multiple=14)) for bust in MOULIN]
    assert [half_up(gauge.width_of(count) / 10) for count in other] != MOULIN


@source("published", "Pope Knits, 'Diamonds Top' (Morris & Sons page), 10 sizes, 22 sts to 10 cm (repeat of 16 inferred), to half a centimetre")
def test_a_repeat_of_diamonds() -> None:
    gauge = Gauge(22, 100.0, 28, 100.0)
    counts = [count_for(gauge.stitches_in(bust * 10), CountRule(multiple=16)) for bust in DIAMONDS]
    assert counts == [176, 192, 208, 224, 240, 256, 272, 304, 320, 352]
    assert all(abs(gauge.width_of(count) / 10 - bust) <= 0.5 for count, bust in zip(counts, DIAMONDS, strict=True))


@source("published", "Ning How, 'Garment measurement tolerance': each tolerance stays under half of its grade step; 58 cm with 1.5 cm passes from 56.5 to 59.5")
def test_a_tolerance_stays_under_half_of_its_grade_step() -> None:
    step = 4 * IN  # from size to size in the chart of the Craft Yarn Council
    for stitches in (4, 9, 14, 20, 28):
        assert bust_tolerance(Gauge(stitches, 100.0, 10, 100.0).stitch_width) < step / 2
        assert width_tolerance(Gauge(stitches, 100.0, 10, 100.0).stitch_width, spacing(ANY)) < 15.0


@source("published", "KnittingHelp forum, 'How to dec evenly': 115 stitches, 9 decreases a round: first 7 go, then rounds of 9")
def test_a_count_is_made_to_divide() -> None:
    assert count_for(115, CountRule(multiple=9, direction="down")) == 115 - 7
