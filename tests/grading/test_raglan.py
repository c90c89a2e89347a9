"""Raglan yokes graded: counts by hand, rounds that meet, parts divided whole, and what can't be."""

import re

import pytest
from tiny_specs import ONE_SIZE, counts, graded, one_piece, problems, row_text, told

from gaugewright.checks.divisions import division_faults, worked_and_passed
from gaugewright.grading.divide_start import DivideStart
from gaugewright.grading.model import Row, Run, work
from gaugewright.grading.plan import RaglanPlan
from gaugewright.grading.raglan import Parts, girths, raglan_counts
from gaugewright.grading.raglan_plans import increase_rounds

YOKE = "  yoke: {{fabric: {fabric}, colours: oat, start: {start}, sections: [{before}raglan: {{{raglan}}}]}}\n"
RAGLAN = "length: 12 cm, body: 80 cm, sleeve: 30 cm, underarm: 4 cm"
LOWER = "  lower: {fabric: round, colours: oat, start: {divide: yoke.body}, sections: [even: {rounds: 3}]}\n"
SLEEVE = "  arm: {fabric: round, colours: oat, make: 2, start: {divide: yoke.sleeve}, sections: [taper: {rounds: 9, target: 22 cm}, even: {rounds: 1}]}\n"


def spec(raglan: str = RAGLAN, start: str = "{ring: 40 cm}", before: str = "", fabric: str = "round", others: str = LOWER + SLEEVE) -> str:
    return ONE_SIZE + "pieces:\n" + YOKE.format(fabric=fabric, start=start, before=before, raglan=raglan) + others


def plan(text: str) -> RaglanPlan:
    section = graded(text).plans["yoke"]["M"].sections[-1]
    assert isinstance(section, RaglanPlan)
    return section


def test_counts_by_hand() -> None:
    """80 round the body less 4 under each arm is 36 front and back; 30 less 4 is 26 for a sleeve. Of 40 at the neck
    a sixth is 6.7, and 6 have the parity of 26; 14 are left for the back, 14 for the front."""
    yoke = plan(spec())
    assert (yoke.counts.neck, yoke.counts.end, yoke.counts.underarm) == (Parts(14, 6), Parts(36, 26), 4)
    assert (len(yoke.body_rows), len(yoke.sleeve_rows)) == (11, 10)
    assert counts(spec(), "yoke") == (40, 48, 52, 60, 68, 76, 84, 92, 100, 108, 116, 124)  # the sleeves rest on one of eleven rounds
    assert counts(spec(), "lower") == (80, 80, 80) and counts(spec(), "arm")[0] == 30 and counts(spec(), "arm")[-1] == 22


def test_dividing_rounds_as_they_are_worked() -> None:
    text = spec()
    lower, arm = one_piece(text, "lower"), one_piece(text, "arm")
    assert row_text(lower.main.rows[0]) == "RS oat: ch(0) 36 hdc 26 skip 4 ch 36 hdc 26 skip 4 ch = 80"
    assert row_text(arm.main.rows[0]) == "RS oat: ch(0) 2 pick 26 hdc 2 pick = 30"
    assert lower.main.start == DivideStart("yoke", "body", 36, 26, 4)
    (body, passed), (sleeve, _) = (worked_and_passed(piece.main.rows[0]) for piece in (lower, arm))
    assert body + 2 * sleeve == one_piece(text, "yoke").main.last_count and passed == 2 * sleeve


def test_a_yoke_that_is_not_divided_whole_is_seen() -> None:
    text = spec()
    pieces = {key: sized["M"] for key, sized in graded(text).pieces.items()}
    assert all(not list(division_faults(piece, pieces)) for piece in pieces.values())
    yoke = pieces["yoke"]
    short = Row((Run(work("hdc"), 120, "oat", "round"),), "RS")
    strip = yoke.main.__class__(yoke.main.name, yoke.main.start, yoke.main.worked, (*yoke.main.rows[:-1], short))
    damaged = {**pieces, "yoke": yoke.__class__(yoke.key, (strip,), yoke.outline, yoke.edges, yoke.finished, yoke.worked)}
    assert list(division_faults(pieces["lower"], damaged)) == ["row 1 goes over 124 stitches, and yoke ends with 120"]
    assert list(division_faults(pieces["arm"], damaged)) == ["two sleeves of 26 and the body's 72 stitches aren't the 120 of yoke"]


def test_a_neckband_comes_before_and_a_full_round_can_increase_at_once() -> None:
    yoke = plan(spec("rounds: 11, body: 80 cm, sleeve: 30 cm, underarm: 4 cm", before="even: {rounds: 3}, "))
    assert yoke.lead == 0 and yoke.body_rows == tuple(range(1, 12))
    assert yoke.body_rows[-1] == yoke.sleeve_rows[-1] == 11


def test_the_sleeves_part_of_the_neck_can_be_stated() -> None:
    assert plan(spec(RAGLAN.replace("12", "14") + ", neck_sleeve: 8 cm")).counts.neck == Parts(12, 8)
    assert plan(spec(RAGLAN.replace("12", "14") + ", neck_sleeve: 1 cm")).counts.neck == Parts(18, 2)


def test_a_turning_chain_never_counts_in_a_yoke() -> None:
    """The first stitch of a round is increased, which a chain could not be."""
    tall = ONE_SIZE.replace("tall: {stitch: dc,", "tall: {stitch: dc, worked: joined rounds,")
    text = tall + spec(RAGLAN.replace("12", "24"), fabric="tall")[len(ONE_SIZE):].replace("fabric: round", "fabric: tall")
    for key in ("yoke", "lower", "arm"):
        rows = one_piece(text, key).main.rows
        assert all(run.operation.makes == 0 for row in rows for run in row.runs if run.operation.kind == "turning chain")
        assert any(run.operation.kind == "turning chain" for row in rows for run in row.runs)


def test_a_body_narrows_all_round() -> None:
    """Its join is beside one underarm: decreases at the join alone would pull it to one side."""
    body = LOWER.replace("even: {rounds: 3}", "even: {rounds: 2}, taper: {rounds: 4, target: 72 cm}")
    rows = one_piece(spec(others=body + SLEEVE), "lower").main.rows[2:]
    halves = [row.edge_changes() for row in rows if any(run.operation.kind == "decrease" for run in row.runs)]
    assert halves and all(abs(first - last) <= 1 for first, last in halves)


@pytest.mark.parametrize(
    ("body", "sleeve", "rounds"), [(11, 10, 11), (9, 9, 20), (4, 9, 17), (0, 5, 9), (3, 0, 3), (0, 0, 4), (1, 1, 1), (16, 3, 31)]
)
def test_both_parts_meet_on_the_last_round(body: int, sleeve: int, rounds: int) -> None:
    (bodies,), (sleeves,) = increase_rounds([(body, sleeve, rounds)])
    assert (len(bodies), len(sleeves)) == (body, sleeve)
    for rows in (bodies, sleeves):
        assert list(rows) == sorted(set(rows)) and all(1 <= row <= rounds for row in rows) and (not rows or rows[-1] == rounds)
    assert set(bodies) <= set(sleeves) or set(sleeves) <= set(bodies)


def test_girths_keep_the_parity_that_increases_in_pairs_need() -> None:
    assert girths(40, 80.0, 30.0) == (40, 30)
    assert girths(42, 80.0, 30.2) == (40, 31)  # 21 is odd: the sleeve moves, which strays less than the body by 2
    assert raglan_counts(42, 80.0, 30.2, 4.0, 7.0).end == Parts(36, 27)


def test_a_raglan_too_short_says_what_would_fit() -> None:
    text = spec(RAGLAN.replace("12 cm", "8 cm"))
    found = problems(text)
    assert [(p.name, p.size) for p in found] == [("raglan-does-not-meet", "M")] * 2
    assert all(p.origin is not None and "raglan:" in p.origin.line_text for p in found)
    assert found[0].message == "the back needs 11 increase rounds to get from 14 to 36 stitches, and there are 7"
    hints = [re.findall(r"([\d.]+) cm", p.hint) for p in found]
    assert hints == [["12.0", "64.0"], ["11.0", "24.0"]]
    assert problems(spec(RAGLAN.replace("12 cm", f"{hints[0][0]} cm"))) == []
    fitting = RAGLAN.replace("12 cm", "8 cm").replace("80 cm", f"{hints[0][1]} cm").replace("30 cm", f"{hints[1][1]} cm")
    assert problems(spec(fitting, others=LOWER)) == []


def test_a_raglan_only_widens() -> None:
    found = problems(spec(RAGLAN.replace("80 cm", "30 cm")))
    assert [p.name for p in found] == ["raglan-does-not-meet"]
    assert found[0].message == "the back has 13 stitches at the neck and 11 at the underarm, and a raglan only widens downwards"
    least = re.findall(r"at least ([\d.]+) cm", found[0].hint)
    assert problems(spec(RAGLAN.replace("80 cm", f"{least[0]} cm"))) == []


def test_sleeves_that_take_the_whole_neck() -> None:
    assert [name for name, _, _ in told(spec(RAGLAN + ", neck_sleeve: 20 cm"))] == ["raglan-does-not-meet"]


@pytest.mark.parametrize(
    ("text", "name"),
    [
        (spec(start="{chain: 40 cm}"), "raglan-not-in-rounds"),
        (spec().replace("underarm: 4 cm}]", "underarm: 4 cm}, even: {rounds: 2}]"), "raglan-not-last"),
        (spec(others=LOWER.replace("yoke.body", "yoke.top")), "nothing-to-divide"),
        (spec(others=LOWER + SLEEVE.replace("yoke.sleeve", "lower.top")), "nothing-to-divide"),
    ],
    ids=["rows", "not last", "no part", "no yoke"],
)
def test_faults_of_the_design(text: str, name: str) -> None:
    assert name in [found for found, _, _ in told(text)]


def test_parts_of_a_turned_fabric() -> None:
    turned = spec(others=LOWER.replace("fabric: round", "fabric: turned")).replace(
        "  tall:", '  turned: {stitch: hdc, worked: turned rounds, gauge: "10 sts, 10 rows / 10 cm"}\n  tall:'
    )
    assert [name for name, _, _ in told(turned)] == ["yoke-turned-otherwise"]
