"""Swatches against published examples."""

import pytest
from external.sources import source

from gaugewright.gauge.model import Gauge
from gaugewright.gauge.readings import Reading, estimate, width_needed

INCH = 25.4


@source("published", "Knitting Sitting (blog), 'Compounding Interest', 2008: 312 sts at 6.5 and at 6 to the inch are 48 and 52 in")
def test_half_a_stitch_off_in_the_gauge_is_four_inches_off_at_the_chest() -> None:
    widths = [312 * estimate([Reading(count, INCH)]).mean / INCH for count in (6.5, 6)]
    assert widths == pytest.approx([48, 52])


@source("published", "Maths Magics, 'Knitting Math: how much difference can 1 stitch per inch make', 2021: 160 sts meant for 4 to the inch are 32 in at 5 and 53.3 in at 3")
def test_one_stitch_to_the_inch_off() -> None:
    widths = [160 * estimate([Reading(4 * count, 4 * INCH)]).mean / INCH for count in (5, 3)]
    assert widths == pytest.approx([32, 53.333], abs=0.01)


@source("published", "KnittingHelp forum, 'Gauge question: my first attempt at a sweater': 20 sts over 3 5/8 in are 5.51 to the inch (5.517, cut)")
def test_a_swatch_measured_over_its_whole_stitches() -> None:
    assert INCH / estimate([Reading(20, 3.625 * INCH)]).mean == pytest.approx(5.517, abs=0.001)


@source("published", "Be A Little Knitty (blog), 'But I knit a gauge swatch!!!', 2025: one swatch read in five states, 24, 22, 21, 19 and 20.5 sts to 4 in; 200 sts wanted at 20 are 40 in")
def test_one_swatch_in_five_states() -> None:
    finished = [200 * estimate([Reading(count, 4 * INCH)]).mean / INCH for count in (24, 22, 21, 19, 20.5)]
    assert finished == pytest.approx([33.33, 36.36, 38.1, 42.11, 39.02], abs=0.01)
    believed = Gauge(24, 4 * INCH, 24, 4 * INCH)
    assert believed.stitches_in(40 * INCH) == pytest.approx(240)


@source("published", "Andrea Gaughan Knits, 'Blocked vs unblocked gauge' (Chione sweater): 29 sts and 44 rows unblocked, 28 and 46 blocked; width + 4 %, length - 4 %")
def test_what_washing_changes() -> None:
    fresh, washed = ([estimate([Reading(count, 4 * INCH)]).mean for count in counts] for counts in ((29, 44), (28, 46)))
    assert [b / a for a, b in zip(fresh, washed, strict=True)] == pytest.approx([1.04, 0.96], abs=0.005)


@source("published", "r/knittinghelp thread, October 2024: rows to 4 in 23 lying, 21 hung with a weight: 9.5 % longer, width unchanged")
def test_what_hanging_changes() -> None:
    lying, hung = (estimate([Reading(count, 4 * INCH)]).mean for count in (23, 21))
    assert (hung / lying - 1) * 100 == pytest.approx(9.5, abs=0.05)


@source("published", "Sammimag, Crochet Kitten and Annie's Catalog: swatches of 4 to 6 in, measured over 4 in")
def test_published_swatch_sizes_know_medium_yarn_to_a_size_and_jumbo_yarn_not() -> None:
    """At 4 stitches to the inch 6 in tell sizes 4 in apart at 40 in; at one to the inch they don't."""
    half_a_step = 2 / 40
    assert width_needed(INCH / 4, half_a_step) <= 6 * INCH
    assert width_needed(INCH, half_a_step) > 6 * INCH
