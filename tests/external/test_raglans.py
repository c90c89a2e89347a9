"""Raglan yokes against published examples, right ones and one with a slip."""

import pytest
from external.sources import source
from tiny_specs import HEAD, graded

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.plan import RaglanPlan
from gaugewright.grading.raglan import Parts, RaglanCounts, raglan_counts
from gaugewright.grading.raglan_plans import increase_rounds
from gaugewright.grading.raglan_rows import raglan_rounds

SC = Cloth("yoke", "sc", "both", 1, False)


def yoke(neck: Parts, body: int, sleeve: int, rounds: int) -> RaglanPlan:
    """A yoke with so many increase rounds of each kind."""
    (bodies,), (sleeves,) = increase_rounds([(body, sleeve, rounds)])
    counts = RaglanCounts(neck, Parts(neck.body + 2 * body, neck.sleeve + 2 * sleeve), 2)
    return RaglanPlan(SC, "", rounds, counts, bodies, sleeves)


@source("published", "'Sunday Sweater' crochet pattern (studylib 26975975): a chain of 36, 3 sc in each of four corners, every round")
def test_thirty_six_and_eight_more_on_each_of_thirteen_rounds() -> None:
    plan = yoke(Parts(14, 4), 13, 13, 13)
    rounds = [sum(run.operation.makes * run.times for run in runs) for runs in raglan_rounds(plan, ["oat"] * 13, ["RS"] * 13)]
    assert rounds == [44, 52, 60, 68, 76, 84, 92, 100, 108, 116, 124, 132, 140]
    assert [parts.total for parts in plan.parts_after()] == rounds
    assert plan.end == 140


@source("published", "Elizabeth Zimmermann's percentages as a raglan, worked by 'skeincharmer', Handmade Stitch by Stitch: K = 200")
def test_percentages_at_two_hundred_stitches() -> None:
    counts = raglan_counts(80, 200.0, 0.33 * 200, 0.08 * 200, 2.0)
    assert counts.underarm == 16 and counts.end == Parts(84, 50) and counts.end.total == 268
    increases = counts.end.sleeve // 2  # a stitch at each end of the sleeve
    assert 2 * increases == 50  # on every second round, until all of its stitches are used up
    assert counts.sleeve_increases == increases - 1  # here two of them stand at the neck


@source("published", "Lily Chin, 'Raglan secrets' and 'Plan your own top-down raglan', Interweave, 2017 (crochet): 22 in neck split 9, 2, 9, 2; bust 40, sleeve 13 in")
def test_a_designers_neck_bust_and_sleeve() -> None:
    text = (
        HEAD.replace('round: {stitch: hdc, worked: joined rounds, gauge: "10 sts, 10 rows / 10 cm"}', 'round: {stitch: hdc, worked: joined rounds, gauge: "46 sts, 40 rows / 10 in"}')
        + "sizes: {own: {M: {bust: 40 in}}}\npieces:\n  yoke: {fabric: round, colours: oat, start: {ring: 22 in}, "
        "sections: [raglan: {length: 9 in, body: 40 in, sleeve: 13 in, underarm: 2 in, neck_sleeve: 2 in}]}\n"
    )
    section = graded(text).plans["yoke"]["M"].sections[-1]
    assert isinstance(section, RaglanPlan)
    counts = section.counts
    assert counts.neck.total == 102
    assert abs(counts.division.body_girth - 184) <= 1 and abs(counts.division.sleeve_girth - 60) <= 1
    assert abs(counts.neck.sleeve - 2 * 4.6) <= 1 and abs(counts.neck.body - 9 * 4.6) <= 1


@source("published", "Spud & Chloe blog (guest 'Wendy'), August 2010: 120 body stitches, 4 more on every second of 12 rounds, printed 148")
def test_a_printed_body_count_that_its_increases_do_not_reach() -> None:
    plan = yoke(Parts(60, 44), 6, 6, 12)
    *_, last = plan.parts_after()
    assert (2 * last.body, last.sleeve) == (144, 56)
    assert 2 * last.body / 5 == pytest.approx(28.8) and last.sleeve / 5 == pytest.approx(11.2)
    # The printed 148 would take a seventh increase round.
    assert RaglanCounts(Parts(60, 44), Parts(74, 56), 2).body_increases == 7


@source("common practice", "a third of the neck for the back, a third for the front, and a third for both sleeves")
@pytest.mark.parametrize("neck", [60, 72, 84, 96])
def test_the_neck_is_shared_in_thirds(neck: int) -> None:
    counts = raglan_counts(neck, 2.5 * neck, 0.8 * neck, 0.2 * neck, neck / 6)
    assert counts.neck.total == neck
    assert abs(counts.neck.body - neck / 3) <= 1 and abs(2 * counts.neck.sleeve - neck / 3) <= 2
