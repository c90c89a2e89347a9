"""Picked-up stitches and seams against published ratios."""

import pytest
from external.sources import source
from tiny_specs import graded

from gaugewright.gauge.model import Gauge
from gaugewright.gauge.counts import CountRule, count_for
from gaugewright.grading.join_model import JoinRun
from gaugewright.grading.model import EdgeStart
from gaugewright.grading.ratio import Part, Ratio, best_ratio, parts, picked_up, sewing_ratio

IN = 25.4


def _exact(gauge: Gauge) -> float:
    """Stitches to each row over one length."""
    return gauge.stitches_in(1000) / gauge.rows_in(1000)


@source("published", "Kelbourne Woolens, 'Perfectly picked up stitches', 2015")
def test_ten_of_thirteen() -> None:
    gauge = Gauge(20, 4 * IN, 26, 4 * IN)
    assert best_ratio(_exact(gauge), largest=13, within=0) == Ratio(10, 13)
    assert parts(10, 13) == (Part(3, 4, 2), Part(4, 5, 1))


@source("published", "Men Who Knit forum, 'Picking up stitches' (E. Zimmermann: 2 of 3)")
def test_two_of_three() -> None:
    gauge = Gauge(16, 4 * IN, 24, 4 * IN)
    rows = count_for(gauge.rows_in(20 * IN), CountRule())
    ratio = best_ratio(_exact(gauge))
    assert (rows, ratio, picked_up(rows, ratio)) == (120, Ratio(2, 3), 80)


@source("published", "Indigirl (designer's blog), 'Picking up stitches', 2010")
def test_142_of_216_is_near_two_thirds_not_three_quarters() -> None:
    ratio = best_ratio(142 / 216)
    assert (ratio, picked_up(216, ratio)) == (Ratio(2, 3), 144)
    assert best_ratio(18 / 24) == Ratio(3, 4)


@source("published", "'skeincharmer' on Elizabeth Zimmermann's gauge: 5 sts and 7.5, 6 2/3 or 7 rows to the inch")
@pytest.mark.parametrize(
    ("gauge", "ratio"),
    [
        (Gauge(5, 1 * IN, 15, 2 * IN), Ratio(2, 3)),
        (Gauge(5, 1 * IN, 20, 3 * IN), Ratio(3, 4)),
        (Gauge(5, 1 * IN, 7, 1 * IN), Ratio(5, 7)),
    ],
)
def test_gauge_pairs(gauge: Gauge, ratio: Ratio) -> None:
    assert best_ratio(_exact(gauge)) == ratio
    assert _exact(gauge) == pytest.approx(ratio.value, abs=0.002)


@source("published", "Knotions (Jody Richards), 'Typical stitch ratios in knitting': 2 of 3 or 3 of 4")
@pytest.mark.parametrize(("stitches", "rows"), [(18, 24), (20, 30), (22, 30), (24, 36), (16, 24)])
def test_usual_knitted_gauges_give_the_usual_ratios(stitches: int, rows: int) -> None:
    assert best_ratio(stitches / rows) in (Ratio(2, 3), Ratio(3, 4))


@source("published", "Carol's Crochet Page, 'Picot edging', 2009: one, two, three stitches to a row of sc, dc, tr")
@pytest.mark.parametrize(("height", "stitches"), [(1, 1), (2, 2), (3, 3)])
def test_crochet_row_ends(height: int, stitches: int) -> None:
    square = Gauge(10, 100, 10, 100 * height)
    assert best_ratio(_exact(square)) == Ratio(stitches, 1)
    assert picked_up(20, best_ratio(_exact(square))) == 20 * stitches


@source("published", "Lion Brand Yarn, 60061, garter at 16 sts and 32 rows to 4 in; one stitch to a ridge is common practice")
def test_garter_gives_a_stitch_to_two_rows() -> None:
    assert best_ratio(_exact(Gauge(16, 4 * IN, 32, 4 * IN))) == Ratio(1, 2)


@source("published", "StudioKnits, How to Become an Expert Knitter, chapter 23: 3 of 4, 4 of 5, 5 of 6 as an edge gets longer")
@pytest.mark.parametrize(("exact", "ratio"), [(0.75, Ratio(3, 4)), (0.8, Ratio(4, 5)), (5 / 6, Ratio(5, 6))])
def test_sloped_edges(exact: float, ratio: Ratio) -> None:
    assert best_ratio(exact) == ratio


@source("published", "Men Who Knit forum, 'Picking up stitches': 80 stitches along 120 rows")
def test_a_seam_of_the_same_counts() -> None:
    assert sewing_ratio(120, 80) == Ratio(3, 2)
    assert parts(120, 80) == (Part(3, 2, 40),)


@source("published", "Men Who Knit forum, 'Picking up stitches': 80 stitches along 120 rows, now 120 rows joined to 80 stitches")
def test_ribbing_turned_sideways_has_the_ratio_the_other_way() -> None:
    """The same gauge's rows lie along a stitch edge: three to two, a pair of rows to one stitch and a third."""
    run = JoinRun((("body", "hem"),), 80, False, 60, _exact(Gauge(24, 4 * IN, 16, 4 * IN)))
    assert best_ratio(run.ratio) == Ratio(3, 2)
    assert run.counts() == {1: 40, 2: 20} and sum(run.takes()) == 80


@source("published", "Hand-knitting manual (scan zanotowane.pl/713/7774): four of five or five of six rows")
def test_four_of_five_or_five_of_six_where_rows_are_few() -> None:
    assert [best_ratio(_exact(Gauge(sts, 4 * IN, rows, 4 * IN)), within=0) for sts, rows in ((16, 20), (15, 18))] == [Ratio(4, 5), Ratio(5, 6)]


@source("published", "Tess Knits, Provence part 4: a 5 in armhole at 8 rows to the inch has 40 rows on each side, 80 around")
def test_rows_around_an_armhole() -> None:
    rows = count_for(Gauge(5, 1 * IN, 8, 1 * IN).rows_in(5 * IN), CountRule())
    assert (rows, 2 * rows) == (40, 80)


@source("published", "Crochet Kim, 'Picking up stitches evenly': 200 stitches in eight sections are 25 each, 204 are 25 and 26 by turns")
@pytest.mark.parametrize(("stitches", "counts"), [(200, {25: 8}), (204, {25: 4, 26: 4})])
def test_stitches_shared_out_over_eight_sections(stitches: int, counts: dict[int, int]) -> None:
    """An edge's places over its joins follow the same rule as stitches over its quarters and eighths."""
    run = JoinRun((("throw", "edge"),), stitches, False, 8)
    assert run.counts() == counts
    assert run.takes() == ((26, 25) * 4 if stitches == 204 else (25,) * 8)


SLOPED = """\
gaugewright: 1
pattern: {title: A sloped edge}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics: {plain: {stitch: sc, gauge: "9 sts, 12 rows / 10 cm"}}
pieces:
  piece:
    start: {chain: 60 cm}
    sections: [SECTION]
    edges: {starting: [side], far: [front]}
  band: {start: {pick_up: piece.front}, sections: [even: {rows: 2}]}
"""


@source("published", "StudioKnits, How to Become an Expert Knitter, chapter 23: 3 of 4 where it is straight, 4 of 5 on a slight slope, 5 of 6 on a steeper one")
@pytest.mark.parametrize(("each_ten_cm", "ratio"), [(0.0, Ratio(3, 4)), (3.7, Ratio(4, 5)), (4.85, Ratio(5, 6))])
def test_bands_along_graded_slopes(each_ten_cm: float, ratio: Ratio) -> None:
    """A slope of 3.7 cm to 10 cm of rows is 1.07 times as long, one of 4.85 cm 1.11 times: rows alone don't say that."""
    section = "even: {length: 60 cm}" if not each_ten_cm else f"taper: {{length: 60 cm, target: {60 - 6 * each_ten_cm} cm, at: front}}"
    start = graded(SLOPED.replace("SECTION", section)).pieces["band"].values[0].main.start
    assert isinstance(start, EdgeStart)
    (up,) = start.pick_ups
    assert up.rows == 72
    assert up.stitches / up.rows == pytest.approx(ratio.value, abs=1 / up.rows)
