"""Circular yokes against the published percentages and examples."""

import pytest
from external.sources import source
from tiny_specs import HEAD, graded

from gaugewright.grading.divide_start import Division
from gaugewright.grading.plan import RoundYokePlan
from gaugewright.grading.round_yoke import fewest_rounds, rounds_over, rows_at, stage_counts

TEARS = "Elizabeth Zimmermann, Knitting Without Tears, worked by 'skeincharmer' (Handmade Stitch by Stitch): chest 40 in at 5 stitches to the inch, K = 200"


def yoke(rows_per_inch: str, at: str) -> RoundYokePlan:
    """The published yoke from the neck down: 40 in round the chest, 13.2 round the arm, 3.2 under it, 16 round the neck, 10 in deep."""
    gauge = f'gauge: "50 sts, {rows_per_inch} rows / 10 in"'
    text = HEAD.replace('round: {stitch: hdc, worked: joined rounds, gauge: "10 sts, 10 rows / 10 cm"}', f"round: {{stitch: hdc, worked: joined rounds, {gauge}}}")
    text += (
        "sizes: {own: {M: {bust: 40 in}}}\npieces:\n  yoke: {fabric: round, colours: oat, start: {ring: 16 in}, "
        f"sections: [even: {{rounds: 1}}, round_yoke: {{length: 10 in, body: body.bust, sleeve: body.bust * 0.33, underarm: body.bust * 0.08, {at}}}]}}\n"
    )
    section = graded(text).plans["yoke"]["M"].sections[-1]
    assert isinstance(section, RoundYokePlan)
    return section


@source("published", TEARS)
@pytest.mark.parametrize(("rows_per_inch", "published"), [("66", (33, 50)), ("70", (35, 53)), ("75", (38, 56))])
def test_the_published_yoke_the_other_way_round(rows_per_inch: str, published: tuple[int, int]) -> None:
    """It is worked up from the underarm: decreases at half and three quarters of the depth and at its top."""
    plan = yoke(rows_per_inch, "at: [0 %, 25 %, 50 %]")
    assert plan.division == Division(back=84, sleeve=50, underarm=16) and plan.division.sleeve_girth == 66 and plan.division.body_girth == 200
    assert (plan.stitches, plan.end) == (80, 268)
    assert tuple(dict.fromkeys((plan.stitches, *plan.counts))) == (80, 120, 179, 268)
    first, second, third = plan.increase_rows()
    assert first == 1 and (plan.rows - third, plan.rows - second) == published


@source("published", TEARS + ": two thirds three times")
def test_the_published_counts_need_three_rounds() -> None:
    """With two stitches worked together for every three, or one increase for every two, three rounds are the fewest."""
    assert fewest_rounds(80, 268) == 3 and stage_counts(80, 268, 3) == (120, 179, 268)
    assert rounds_over(254.0 * 2 / 3) == 4  # spread over two thirds of 10 in they would stand further apart than the published 2.5 in
    assert len(yoke("66", "increases: 3").increase_rows()) == 3


@source("published", "Elizabeth Zimmermann, Knitting Without Tears (1971) and Knitting Workshop (1981), as listed by Lindy's Knits & Laces, 2010: percent of K")
def test_the_published_percentages() -> None:
    plan = yoke("70", "at: [0 %, 25 %, 50 %]")
    key = plan.division.body_girth
    of_key = {name: 100 * count / key for name, count in (("neck", plan.stitches), ("upper arm", plan.division.sleeve_girth), ("underarm", plan.division.underarm), ("shoulders", plan.end))}
    assert of_key == {"neck": 40, "upper arm": 33, "underarm": 8, "shoulders": pytest.approx(133, abs=1)}


@source("published", "Quince & Co. (Jerusha Robinson), 'Kathryn essay 3', 2015: 36 in at 25.5 sts and 32 rnds to 4 in, yoke 7.25 in deep, underarm 12 of 230 (5.2 % against Zimmermann's 8)")
def test_a_designers_bust_depth_and_underarm() -> None:
    text = HEAD.replace('round: {stitch: hdc, worked: joined rounds, gauge: "10 sts, 10 rows / 10 cm"}', 'round: {stitch: hdc, worked: joined rounds, gauge: "25.5 sts, 32 rows / 4 in"}')
    text += (
        "sizes: {own: {M: {bust: 36 in}}}\npieces:\n  yoke: {fabric: round, colours: oat, start: {ring: 16 in}, "
        "sections: [even: {rounds: 1}, round_yoke: {length: 7.25 in, body: body.bust, sleeve: 12 in, underarm: body.bust * SHARE}]}\n"
    )

    def section(share: str) -> RoundYokePlan:
        found = graded(text.replace("SHARE", share)).plans["yoke"]["M"].sections[-1]
        assert isinstance(found, RoundYokePlan)
        return found

    assert (section("0.052").division.body_girth, section("0.052").rows, section("0.052").division.underarm) == (230, 58, 12)
    assert section("0.08").division.underarm == 18


@source("common practice", "an increase round is placed as many rounds from the underarm as its share of the depth, to the nearest")
def test_shares_are_counted_from_the_underarm() -> None:
    assert rows_at(20, 0, (0.0, 0.5, 1.0)) == (1, 10, 20)
