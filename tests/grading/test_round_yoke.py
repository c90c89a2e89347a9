"""Circular yokes graded: counts by hand, rounds in their places, parts divided whole, and what can't be."""

import re

import pytest
from tiny_specs import ONE_SIZE, counts, graded, one_piece, problems, row_text, told

from gaugewright.checks.divisions import division_faults
from gaugewright.grading.divide_start import Division
from gaugewright.grading.plan import RoundYokePlan

YOKE = "  yoke: {{fabric: {fabric}, colours: oat, start: {start}, sections: [{before}round_yoke: {{{yoke}}}]}}\n"
DEEP = "length: 22 cm, body: 90 cm, sleeve: 32 cm, underarm: 6 cm"
LOWER = "  lower: {fabric: round, colours: oat, start: {divide: yoke.body}, sections: [even: {rounds: 3}]}\n"
SLEEVE = "  arm: {fabric: round, colours: oat, make: 2, start: {divide: yoke.sleeve}, sections: [taper: {rounds: 9, target: 22 cm}]}\n"


def spec(yoke: str = DEEP, start: str = "{ring: 40 cm}", before: str = "even: {rounds: 2}, ", fabric: str = "round", others: str = LOWER + SLEEVE) -> str:
    return ONE_SIZE + "pieces:\n" + YOKE.format(fabric=fabric, start=start, before=before, yoke=yoke) + others


def plan(text: str) -> RoundYokePlan:
    section = graded(text).plans["yoke"]["M"].sections[-1]
    assert isinstance(section, RoundYokePlan)
    return section


def test_counts_by_hand() -> None:
    """90 round the body less 6 under each arm are 39 front and back; 32 less 6 are 26 for a sleeve; 130 in all. From 40
    that takes three rounds of half as many again; over two thirds of 22 cm three would stand 7.3 cm apart, so there are four."""
    yoke = plan(spec())
    assert (yoke.division, yoke.stitches, yoke.end) == (Division(39, 26, 6), 40, 130)
    assert yoke.increase_rows() == (1, 6, 10, 15)
    assert [yoke.counts[row - 1] for row in yoke.increase_rows()] == [54, 72, 97, 130]
    assert counts(spec(), "lower") == (90, 90, 90) and counts(spec(), "arm")[0] == 32


def test_rounds_as_they_are_worked() -> None:
    text = spec()
    yoke, lower, arm = (one_piece(text, key) for key in ("yoke", "lower", "arm"))
    assert row_text(yoke.main.rows[2]).startswith("RS oat: ch(0) 2 hdc inc 2 hdc inc") and row_text(yoke.main.rows[2]).endswith("1 hdc inc = 54")
    assert row_text(lower.main.rows[0]) == "RS oat: ch(0) 39 hdc 26 skip 6 ch 39 hdc 26 skip 6 ch = 90"
    assert row_text(arm.main.rows[0]) == "RS oat: ch(0) 3 pick 26 hdc 3 pick = 32"
    pieces = {"yoke": yoke, "lower": lower, "arm": arm}
    assert all(not list(division_faults(piece, pieces)) for piece in pieces.values())


def test_shares_of_the_depth_can_be_stated() -> None:
    yoke = plan(spec(DEEP + ", at: [0 %, 25 %, 50 %]"))
    assert yoke.increase_rows() == (1, 5, 11) and len(yoke.counts) == 22


def test_more_increase_rounds_can_be_stated() -> None:
    yoke = plan(spec(DEEP + ", increases: 8"))
    assert len(yoke.increase_rows()) == 8 and yoke.end == 130


def test_a_yoke_that_begins_its_piece_works_its_first_round_into_the_ring() -> None:
    assert plan(spec(before="")).increase_rows()[0] == 2
    assert counts(spec(before=""), "yoke")[:2] == (40, 54)


def test_sizes_have_as_many_increase_rounds() -> None:
    text = spec("length: 24 cm, body: body.bust + 4 cm, sleeve: 32 cm, underarm: 6 cm").replace("{own: {M: {bust: 100 cm}}}", "{own: {M: {bust: 66 cm}, L: {bust: 166 cm}}}")
    assert text.count("166 cm") == 1
    found = graded(text).plans["yoke"].map(lambda one: len(one.sections[-1].increase_rows()))  # type: ignore[union-attr]
    assert found.agree and found.values[0] == 5


def test_too_few_rounds_of_increases_say_how_many_would_do() -> None:
    (found,) = problems(spec(DEEP + ", increases: 2"))
    assert (found.name, found.size) == ("yoke-does-not-meet", "M")
    assert found.message == "2 increase rounds can't lead from 40 to 130 stitches with at most one increase in two stitches each"
    number, neck = re.findall(r"[\d.]+", found.hint)
    assert problems(spec(DEEP + f", increases: {number}")) == []
    assert problems(spec(DEEP + ", increases: 2", start=f"{{ring: {neck} cm}}")) == []


def test_too_shallow_a_yoke_says_how_deep() -> None:
    (found,) = problems(spec(DEEP.replace("22 cm", "3 cm") + ", increases: 6"))
    assert found.name == "yoke-does-not-meet" and found.message == "the yoke needs 6 increase rounds, and it is 3 rounds deep"
    (deep,) = re.findall(r"at least ([\d.]+) cm", found.hint)
    assert problems(spec(DEEP.replace("22 cm", f"{deep} cm") + ", increases: 6")) == []


def test_a_neck_wider_than_the_yokes_end() -> None:
    (found,) = problems(spec(start="{ring: 140 cm}"))
    assert found.name == "yoke-does-not-meet" and found.message == "the yoke has 140 stitches at the neck and 130 below the arms, and it only widens downwards"
    (narrow,) = re.findall(r"neck at most ([\d.]+) cm", found.hint)
    assert problems(spec(DEEP + ", increases: 1", start=f"{{ring: {narrow} cm}}")) == []


@pytest.mark.parametrize("kind", ["round_yoke", "raglan"])
@pytest.mark.parametrize("change", [("sleeve: 32 cm", "sleeve: 5 cm"), ("body: 90 cm", "body: 12 cm")])
def test_an_underarm_wider_than_the_sleeve_or_half_the_body(kind: str, change: tuple[str, str]) -> None:
    found = problems(spec(DEEP.replace(*change)).replace("round_yoke", kind))
    assert [p.name for p in found] == ["underarm-too-wide"] and found[0].origin is not None
    (most,) = re.findall(r"`underarm` at most ([\d.]+) cm", found[0].hint)
    again = problems(spec(DEEP.replace(*change).replace("underarm: 6 cm", f"underarm: {most} cm")).replace("round_yoke", kind))
    assert all(p.name != "underarm-too-wide" for p in again)


def test_a_raglan_whose_neck_is_odd() -> None:
    text = spec(before="even: {rounds: 2}, taper: {rounds: 2, stitches: 43}, ").replace("round_yoke", "raglan")
    assert [(p.name, p.size) for p in problems(text)] == [("raglan-does-not-meet", "M")]
    assert problems(text.replace("43", "44")) == []


@pytest.mark.parametrize(
    ("text", "name"),
    [
        (spec(start="{chain: 40 cm}"), "yoke-not-in-rounds"),
        (spec().replace("underarm: 6 cm}]", "underarm: 6 cm}, even: {rounds: 2}]"), "yoke-not-last"),
        (spec(others=LOWER.replace("yoke.body", "yoke.top")), "nothing-to-divide"),
        (spec(DEEP + ", rounds: 9"), "two-extents"),
        (spec(DEEP.replace("length: 22 cm, ", "")), "missing-key"),
        (spec(DEEP + ", increases: 3, at: [0 %, 50 %]"), "two-counts"),
        (spec(DEEP + ", at: [50 %, 20 %]"), "out-of-range"),
        (spec(DEEP + ", at: [50 %, 120 %]"), "out-of-range"),
        (spec(DEEP + ", at: [50 cm]"), "wrong-unit"),
    ],
    ids=["rows", "not last", "no part", "two depths", "no depth", "two numbers", "not downwards", "too deep", "a length"],
)
def test_faults_of_the_design(text: str, name: str) -> None:
    assert name in [found for found, _, _ in told(text)]
