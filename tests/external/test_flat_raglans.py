"""Raglans in flat pieces against published sums, right ones and one with a slip."""

import pytest
from external.sources import source
from tiny_specs import graded, problems

from gaugewright.grading.flat_raglan import raglan_profile
from gaugewright.grading.plan import ProfilePlan, TaperPlan
from gaugewright.grading.schedule import Block, two_rates
from gaugewright.grading.shape_plans import gone

FABRIC = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
yarns: {oat: {colour: "#d9c9a8"}}
"""


@source("published", "Slipped Stitches, 'Baby sweater design': sleeve of 40 sts, 2 and 2 bound off, 30 rows with 15 right-side rows, 6 sts left")
def test_a_babys_sleeve_decreases_on_every_second_of_thirty_rows() -> None:
    block = 2
    profile = raglan_profile((40 - 6) // 2, 1 + 30, block)  # both blocks go on one row here
    assert profile.steps[0] == (1, 2, "leave")
    line = profile.steps[1:]
    assert len(line) == 15 and 2 * sum(step.stitches for step in line) == 30
    assert [step.row - 1 for step in line] == list(range(2, 31, 2))
    assert 40 - 2 * profile.stitches == 6


@source("published", "Slipped Stitches, 'Baby sweater design': the same sleeve widens from 34 sts in 48 rows, on 3 of them, every 8th right-side row")
def test_a_babys_sleeve_widens_on_three_rows() -> None:
    assert two_rates(3, 48).blocks == (Block((16,), 3),)  # every 16 rows, 8 of them right-side rows
    text = FABRIC + (
        'fabrics: {plain: {stitch: hdc, gauge: "10 sts, 10 rows / 10 cm"}}\nsizes: {own: {M: {bust: 50 cm}}}\npieces:\n  sleeve:\n    start: {chain: 34 cm}\n'
        "    sections: [taper: {rows: 49, target: 40 cm}, raglan_edge: {length: 31 cm, target: 6 cm, block: 2 cm}]\n"
    )
    widening, raglan = graded(text).plans["sleeve"]["M"].sections
    assert isinstance(widening, TaperPlan) and isinstance(raglan, ProfilePlan)
    assert widening.steps == (1, 1, 1)
    assert (raglan.stitches, raglan.rows, raglan.end) == (40, 31, 6)


@pytest.mark.parametrize(("share", "expected"), [("half / 3", (30, 30, 30)), ("half / 3 + 10 cm", (25, 40, 25))])
@source("published", "Yarnsville, 'How to calculate raglan construction': 90 sts as 30, 30, 30 for women and 25, 40, 25 for men; depth half of upper arm 50 cm and 10 cm")
def test_ninety_stitches_in_three_parts_and_half_the_sleeve_as_depth(share: str, expected: tuple[int, int, int]) -> None:
    text = FABRIC + (
        'fabrics: {plain: {stitch: hdc, gauge: "10 sts, 10 rows / 10 cm"}}\nsizes: {own: {M: {bust: 100 cm, upper_arm: 50 cm}}}\nlengths: {half: 90 cm}\npieces:\n  back:\n'
        f"    start: {{chain: half}}\n    sections: [even: {{rows: 9}}, raglan_edge: {{length: (body.upper_arm + 10 cm) / 2, target: {share}, block: 0 cm}}]\n"
    )
    raglan = graded(text).plans["back"]["M"].sections[-1]
    assert isinstance(raglan, ProfilePlan)
    ((_, starting),), ((_, far),) = raglan.starting, raglan.far
    assert (starting.stitches, raglan.end, far.stitches) == expected
    assert raglan.rows == 30


@source("published", "Kristen TenDyke, 'How I design a top-down raglan pullover', 2013/2015: 4 in of sleeve at the neck are 2 in of depth; raglan 5.5 in, armhole 7.5 in")
def test_half_the_sleeves_width_at_the_neck_counts_as_depth() -> None:
    text = FABRIC + (
        'fabrics: {plain: {stitch: hdc, gauge: "5 sts, 7 rows / 1 in"}}\nsizes: {own: {M: {bust: 100 cm, upper_arm: 14 in, armhole_depth: 7.5 in}}}\n'
        "lengths: {sleeve_top: 4 in, raglan: body.armhole_depth - sleeve_top / 2}\npieces:\n  sleeve:\n    start: {chain: body.upper_arm}\n"
        "    sections: [even: {rows: 9}, raglan_edge: {length: raglan, target: sleeve_top, block: 1 in}]\n"
    )
    raglan = graded(text).plans["sleeve"]["M"].sections[-1]
    assert isinstance(raglan, ProfilePlan)
    assert raglan.rows / 7 == pytest.approx(5.5, abs=0.5 / 7)
    assert raglan.rows / 7 + raglan.end / 5 / 2 == pytest.approx(7.5, abs=1 / 7)


@source("common practice", "a raglan loses a stitch at each side of each line on every second row, down to a third of the width")
@pytest.mark.parametrize("stitches", [60, 90, 120])
def test_a_third_left_at_the_neck_after_a_stitch_on_every_second_row(stitches: int) -> None:
    third = stitches // 3
    profile = raglan_profile(third, 2 * third, 0)
    assert [step.row for step in profile.steps] == list(range(2, 2 * third + 1, 2))
    assert stitches - 2 * profile.stitches == third


@source("published", "Crochet Queen, 'Raglans lesson 4', 2023: back a third of the neck, sleeves a quarter of the back, and front parts printed as 0.025 of it, where 0.25 is meant")
def test_front_parts_of_a_fortieth_do_not_add_up_to_a_front() -> None:
    def fronts(share: float) -> str:
        raglan = "raglan_edge: {to: top, target: %s, block: 2 cm, at: raglan}"
        return FABRIC + (
            'fabrics: {plain: {stitch: hdc, gauge: "10 sts, 10 rows / 10 cm"}}\nsizes: {own: {M: {bust: 100 cm}}}\n'
            "lengths: {back_neck: 100 cm * 0.33}\nlevels: {top: 50 cm, underarm: 25 cm}\npieces:\n  front:\n    start: {chain: 30 cm}\n"
            f"    sections: [even: {{to: underarm}}, {raglan % f'2 * {share} * back_neck'}, neck_edge: {{shape: round, depth: 8 cm, at: front}}]\n"
            "    edges: {starting: [side, underarm, raglan], far: [front]}\n"
        )

    assert [problem.name for problem in problems(fronts(0.025))] == ["raglan-neck-narrow"]
    raglan, neck = graded(fronts(0.25)).plans["front"]["M"].sections[1:]
    assert isinstance(raglan, ProfilePlan) and isinstance(neck, ProfilePlan)
    at_neck = neck.end + gone(neck.far)
    assert abs(2 * at_neck - 33) <= 1  # two parts to each front, and both fronts as wide as the back
