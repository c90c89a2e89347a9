"""Published sleeves and bodies written as specs, by the habits of their authors, and graded whole."""

import pytest
from external.sources import source
from tiny_specs import graded

from gaugewright.grading.curves import Phrase, stated_profile
from gaugewright.grading.grade import Grading
from gaugewright.grading.plan import DividedPlan, PiecePlan, ShouldersPlan, TaperPlan

HEAD = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
yarns: {oat: {colour: "#d9c9a8"}}
sizes: {own: {M: {bust: 100 cm}}}
"""


def made(gauge: str, piece: str, habits: str = "", fabric: str = "") -> tuple[PiecePlan, Grading]:
    """The piece of a spec with one fabric, worked by these habits."""
    text = f"{HEAD}conventions: {{{habits}}}\nfabrics: {{plain: {{stitch: sc, gauge: '{gauge}'{fabric}}}}}\npieces: {{piece: {{{piece}}}}}\n"
    grading = graded(text)
    return grading.plans["piece"]["M"], grading


def rates(plan: TaperPlan) -> dict[int, int]:
    return {block.gaps[0]: block.times for block in plan.schedule.blocks}


def tapers(plan: PiecePlan) -> list[TaperPlan]:
    return [section for section in plan.sections if isinstance(section, TaperPlan)]


@source("published", "Design Your Own Sweater (blog), 'Sleeve', 2007: 72 to 156 sts in 176 of 196 rows, both counts cut down to even")
def test_a_whole_sleeve() -> None:
    sections = "sections: [even: {rows: 1}, taper: {length: 49 cm - 5 cm, target: 56 cm}, even: {length: rest}]"
    plan, _ = made("28 sts, 40 rows / 10 cm", f"start: {{chain: 26 cm}}, total: 80 cm - 62 cm / 2, {sections}", "schedules: shorter gap first, taper_ends: even below")
    [taper] = tapers(plan)
    assert (taper.stitches, taper.end, taper.rows, plan.rows) == (72, 156, 176, 196)
    assert rates(taper) == {4: 34, 5: 8}
    assert (taper.schedule.changes, taper.shaping_rows()[-1]) == (42, 176)


@source("published", "Design Your Own Sweater (blog), 'Sleeve', 2007: the same sleeve without a habit stated is as published")
def test_a_whole_sleeve_by_the_straightest_schedule() -> None:
    plan, _ = made("28 sts, 40 rows / 10 cm", "start: {chain: 26 cm}, sections: [even: {rows: 1}, taper: {rows: 176, target: 56 cm}]", "taper_ends: even below")
    assert rates(tapers(plan)[0]) == {4: 34, 5: 8}


@source("published", "Kristen TenDyke, 'How to increase evenly along a set number of rows', 2006 and 2014: 38.75 is cut down to 38 for the parity of 60")
def test_a_sleeve_whose_cuff_is_cut_down() -> None:
    piece = "start: {chain: 7.75 in}, sections: [even: {rows: 1}, taper: {rows: 108, target: 12 in}]"
    plan, _ = made("20 sts, 28 rows / 4 in", piece, "schedules: shorter gap first, taper_ends: even below")
    [taper] = tapers(plan)
    assert (taper.stitches, taper.end, taper.schedule.changes) == (38, 60, 11)
    assert rates(taper) == {9: 2, 10: 9}
    falling, _ = made("20 sts, 28 rows / 4 in", piece)
    assert (tapers(falling)[0].stitches, tapers(falling)[0].end) == (39, 61)


@source("published", "Knitting Unplugged, 'How to figure out decrease and increase placement', 2016: 49.5 and 71.5 go to 50 and 72")
def test_a_sleeve_between_the_nearest_even_counts() -> None:
    plan, _ = made("11 sts, 14 rows / 2 in", "start: {chain: 9 in}, sections: [even: {rows: 1}, taper: {length: 11.5 in, target: 13 in}]", "taper_ends: nearest even")
    [taper] = tapers(plan)
    assert (taper.stitches, taper.end, taper.schedule.changes) == (50, 72, 11)


@source("published", "Papermoon Knits, 'Math Monday: increasing along the length': cuff of 38.25 to 40, the nearest multiple of 4; 60 above it")
def test_a_cuff_in_a_repeat_of_four() -> None:
    text = HEAD + """\
fabrics:
  cuff: {stitch: sc, worked: joined rounds, gauge: "17 sts, 27 rounds / 4 in", multiple: {of: 4}}
  plain: {stitch: sc, worked: joined rounds, gauge: "16 sts, 27 rounds / 4 in"}
pieces:
  piece: {fabric: plain, start: {ring: 9 in, fabric: cuff}, sections: [even: {length: 1.5 in, fabric: cuff}, even: {length: 1 in}, taper: {rounds: 88, target: 15 in}, even: {length: 1 in}]}
"""
    [taper] = tapers(graded(text.replace("rounds / 4 in", "rows / 4 in")).plans["piece"]["M"])
    assert (taper.stitches, taper.end, taper.schedule.changes, taper.edges) == (40, 60, 10, "pairs")


@source("published", "Jack Frost vol. 40, pattern 4029 'Extra Heavy Crew Neck Sweater': from 70, every 4th row to 64, every 6th to 54")
def test_a_sleeve_in_two_tapers() -> None:
    sections = "sections: [even: {rows: 4}, taper: {rows: 12, stitches: 64}, taper: {rows: 30, stitches: 54}]"
    plan, grading = made("20 sts, 28 rows / 4 in", f"start: {{chain: 14 in}}, {sections}", "schedules: shorter gap first")
    assert [rates(taper) for taper in tapers(plan)] == [{4: 3}, {6: 5}]
    assert (plan.start.stitches, grading.pieces["piece"]["M"].main.last_count) == (70, 54)


@source("published", "Jack Frost vol. 40, pattern 4029: 90, less 4 and 4 at each armhole, is 74: shoulders of 18 and a neck of 38")
def test_a_body_whose_shoulders_and_neck_add_up() -> None:
    sections = "sections: [even: {length: 12 in}, armhole: {length: 9 in, target: 74 in / 5, block: 0.8 in}, shoulders: {neck: 38 in / 5}]"
    plan, grading = made("20 sts, 28 rows / 4 in", f"start: {{chain: 18 in}}, {sections}")
    top = plan.sections[-1]
    assert isinstance(top, ShouldersPlan)
    assert (plan.start.stitches, top.stitches, top.shoulder, top.neck) == (90, 74, 18, 38)
    left = next(row for row in grading.pieces["piece"]["M"].main.rows if any(run.operation.kind == "leave" for run in row.runs))
    assert left.uses - left.makes == 8


@source("published", "Design Your Own Sweater (blog), 'Set-in sleeves', 2007: 174 cast on, 8 left and 26 decreased at each armhole")
def test_a_body_with_set_in_sleeves() -> None:
    sections = "sections: [even: {length: 64 cm - 26 cm}, armhole: {length: 26 cm, target: 38 cm, block: 3 cm}]"
    plan, grading = made("28 sts, 40 rows / 10 cm", f"start: {{chain: 62 cm}}, {sections}")
    counts = tuple(grading.pieces["piece"]["M"].main.counts())
    assert (plan.start.stitches, plan.sections[0].rows, counts[-1]) == (174, 152, 174 - 2 * (8 + 26))
    assert counts[152] == 174 - 2 * 8
    assert counts[152 + 64] == counts[-1]


@source("published", "sweater in a knitting manual (knittingmagic.biz guide 8, 'Sleeves'), 3 sizes: each cap ends with the same 13 stitches")
@pytest.mark.parametrize(("stitches", "block", "fourth", "alternate"), [(67, 5, 2, 8), (71, 6, 3, 8), (77, 7, 3, 10)])
def test_caps_that_end_alike(stitches: int, block: int, fourth: int, alternate: int) -> None:
    phrases = (
        Phrase(block, 1, 1, "leave"), Phrase(1, 1, 3, "decrease"), Phrase(1, 2, 3, "decrease"), Phrase(1, 4, fourth, "decrease"),
        Phrase(1, 2, alternate, "decrease"), Phrase(1, 1, 2, "decrease"), Phrase(4, 1, 1, "leave"),
    )
    rows = sum(phrase.every * phrase.times for phrase in phrases)
    printed = stated_profile(phrases, (stitches - 13) // 2, rows)
    before_the_end = stitches - 2 * (printed.stitches - 4)
    assert (before_the_end, stitches - 2 * printed.stitches) == (21, 13)


@source("published", "'Convert a top-down crew, scoop or square neck to a V-neck', copied at Knit1Knitall, 2015: an odd neck sets one stitch aside")
@pytest.mark.parametrize(("start", "width", "centre"), [(70, 30, 0), (71, 31, 1)])
def test_a_v_neck_in_a_front(start: int, width: int, centre: int) -> None:
    sections = f"sections: [even: {{length: 20 in}}, neck: {{shape: v, width: {width} in / 4, depth: 8 in}}]"
    plan, _ = made("16 sts, 24 rows / 4 in", f"start: {{chain: {start} in / 4}}, {sections}")
    top = plan.sections[-1]
    assert isinstance(top, DividedPlan)
    assert (top.centre, top.neck, top.shoulder) == (centre, width, 20)


@source("published", "Knitting Konrad, 'Trinity' KAL, 2014: a V that begins at the armhole, 20 cm at 34 rows, has 68 rows to share out")
def test_a_v_as_deep_as_its_armhole() -> None:
    plan, _ = made("21 sts, 34 rows / 10 cm", "start: {chain: 40 cm}, sections: [even: {length: 55 cm}, neck: {shape: v, width: 16 cm, depth: 20 cm}]")
    assert plan.sections[-1].rows == 68
