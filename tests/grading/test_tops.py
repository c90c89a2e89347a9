"""Armholes, divided necks, slopes and caps: what they come to, and what they are told when they don't fit."""

import pytest
from tiny_specs import ONE_SIZE, THREE_SIZES, graded, one_piece, problems, told

from gaugewright.grading.model import SpanStart
from gaugewright.grading.plan import DividedPlan, EvenPlan, ProfilePlan
from gaugewright.grading.shape_plans import gone

HEAD = "levels: {shoulder: 40 cm, underarm: 20 cm}\n"


def piece(sections: str, chain: str = "40 cm", fabric: str = "plain", more: str = "edges: {both: [side]}", key: str = "piece") -> str:
    """A piece of these sections, 1 cm to a stitch and a row."""
    return (
        f"pieces:\n  {key}:\n    fabric: {fabric}\n    colours: oat\n    start: {{chain: {chain}}}\n"
        f"    sections: [{sections}]\n    {more}\n"
    )


ARMHOLE = "even: {to: underarm}, armhole: {to: shoulder, target: 30 cm, block: 3 cm}"


def test_an_armhole_that_is_not_over_goes_on_beside_the_neck() -> None:
    found = graded(ONE_SIZE + HEAD + piece(f"{ARMHOLE}, neck: {{shape: v, width: 10 cm, depth: 19 cm}}"))
    below, divided = found.plans["piece"]["M"].sections[1:]
    assert isinstance(below, ProfilePlan) and isinstance(divided, DividedPlan)
    assert (below.rows, gone(below.starting), gone(divided.outer)) == (1, 3, 2)
    assert [step.row for part in divided.outer for step in part.profile.steps] == [1, 2]


def test_the_neck_takes_its_rows_from_the_section_below_and_the_total_stays() -> None:
    plan = graded(ONE_SIZE + HEAD + piece(f"{ARMHOLE}, neck: {{shape: round, width: 12 cm, depth: 8 cm}}")).plans["piece"]["M"]
    assert [section.rows for section in plan.sections] == [20, 12, 8]
    assert plan.rows == 40


def test_a_slope_higher_than_the_neck_is_deep_begins_below_the_division() -> None:
    sections = "even: {to: shoulder}, neck: {shape: square, width: 12 cm, depth: 2 cm, slope: 4 cm}"
    found = graded(ONE_SIZE + HEAD + piece(sections))
    below, divided = found.plans["piece"]["M"].sections
    assert isinstance(below, ProfilePlan) and isinstance(divided, DividedPlan)
    assert (gone(below.far), divided.sloped, gone(divided.outer)) == (5, 5, 6)
    assert (divided.shoulder, divided.neck, divided.side_end) == (14, 12, 3)
    edges = found.pieces["piece"]["M"].edges
    assert (edges["shoulder"].stitches, edges["side"].rows) == (14, 36)


def test_an_even_section_stays_even_where_nothing_is_shaped_in_it() -> None:
    plan = graded(ONE_SIZE + HEAD + piece("even: {to: shoulder}, neck: {shape: square, width: 12 cm, depth: 6 cm, slope: 4 cm}")).plans["piece"]["M"]
    assert isinstance(plan.sections[0], EvenPlan)


@pytest.mark.parametrize(("rows", "first"), [(12, "starting"), (13, "far")])
def test_the_side_at_which_the_row_before_ends_comes_first(rows: int, first: str) -> None:
    made = one_piece(ONE_SIZE + piece(f"even: {{rows: {rows + 6}}}, neck: {{shape: square, width: 10 cm, depth: 6 cm}}", "30 cm"))
    starts = [strip.start for strip in made.strips[1:]]
    assert all(isinstance(start, SpanStart) and start.stitches == 10 for start in starts)
    assert [start.first for start in starts if isinstance(start, SpanStart)] == ([0, 20] if first == "starting" else [20, 0])
    assert len(made.main.rows) == rows


def test_a_square_neck_runs_up_across_and_up() -> None:
    made = one_piece(ONE_SIZE + HEAD + piece("even: {to: shoulder}, neck: {shape: square, width: 10 cm, depth: 6 cm}"))
    assert made.edges["neck"].length == pytest.approx(60 + 100 + 60)
    assert (made.edges["neck"].rows, made.edges["neck"].stitches) == (12, 10)
    assert made.edges["shoulder"].length == pytest.approx(150)


def test_widths_are_measured_across_necks_and_slopes() -> None:
    made = one_piece(ONE_SIZE + HEAD + piece(f"{ARMHOLE}, neck: {{shape: round, width: 12 cm, depth: 8 cm, slope: 3 cm}}"))
    assert made.finished["top_width"] == pytest.approx(300)
    assert made.finished["narrowest"] == pytest.approx(300)
    assert made.finished["widest"] == pytest.approx(400)
    assert made.finished["length"] == pytest.approx(400)


def test_the_outline_goes_down_into_the_neck_and_up_again() -> None:
    made = one_piece(ONE_SIZE + HEAD + piece("even: {to: shoulder}, neck: {shape: square, width: 10 cm, depth: 6 cm}"))
    assert [tuple(map(round, point)) for point in made.outline.neck()][:2] == [(250, 400), (250, 390)]
    corners = {tuple(map(round, point)) for point in made.outline.polygon()}
    assert {(0, 0), (400, 0), (400, 400), (250, 400), (250, 340), (150, 340), (150, 400), (0, 400)} <= corners
    assert made.outline.heights[-1] == pytest.approx(400)


def test_row_ends_end_where_shoulder_neck_and_cap_begin() -> None:
    front = one_piece(ONE_SIZE + HEAD + piece(
        "even: {to: shoulder}, neck_edge: {shape: v, width: 8 cm, depth: 10 cm, slope: 2 cm, at: front}", "20 cm",
        more="edges: {starting: [side], far: [front]}",
    ))
    assert (front.edges["side"].rows, front.edges["front"].rows, front.edges["neck"].rows) == (38, 30, 10)
    assert front.edges["shoulder"].stitches == 12


def test_a_cap_fills_its_armholes_in_every_size() -> None:
    spec = (
        THREE_SIZES + HEAD
        + piece("even: {to: underarm}, armhole: {to: shoulder, target: body.bust / 2 - 10 cm, block: 3 cm}", "body.bust / 2", more="edges: {both: [side, underarm, armhole]}", key="back")
        + piece("even: {rows: 4}, cap: {fit: [back.armhole, back.armhole], block: 3 cm}", "28 cm", key="sleeve").removeprefix("pieces:\n")
    )
    found = graded(spec)
    for size, sleeve in found.pieces["sleeve"].items():
        wanted = 2 * found.pieces["back"][size].edges["armhole"].length
        assert 0 <= sleeve.edges["cap"].length - wanted <= 10
        assert sleeve.edges["cap"].stitches == sleeve.main.last_count
        assert sleeve.edges["side"].rows == 4


FAULTS = [
    ("even: {to: shoulder}, neck: {shape: round, width: 39 cm, depth: 6 cm}", "neck-too-wide", "at most 38.0 cm wide"),
    ("even: {to: shoulder}, neck: {shape: round, width: 12 cm, depth: 40 cm}", "neck-too-deep", "at most 39.0 cm deep"),
    ("even: {to: shoulder}, shoulders: {neck: 12 cm, slope: 45 cm}", "neck-too-deep", "at most 39.0 cm deep"),
    ("even: {to: shoulder}, shoulders: {neck: 32 cm, slope: 5 cm}", "slope-too-steep", "at most 3.0 cm"),
    ("even: {to: shoulder}, neck: {shape: v, width: 32 cm, depth: 20 cm, slope: 4 cm}", "slope-too-steep", "at most 3.0 cm"),
    ("even: {to: underarm}, armhole: {to: shoulder, target: 40 cm}", "armhole-takes-nothing", "at most 38.0 cm"),
    ("even: {to: underarm}, armhole: {to: shoulder, target: 30 cm, block: 8 cm}", "armhole-block-too-wide", "at most 5.0 cm"),
    ("even: {to: underarm}, armhole: {length: 1 cm, target: 20 cm, block: 1 cm}, even: {to: shoulder}", "armhole-too-shallow", "at least 4.0 cm deep"),
    ("even: {rows: 4}, cap: {fit: piece.side}", "formula-cycle", ""),
    ("even: {to: shoulder}, neck: {shape: round, width: 38 cm, depth: 6 cm}", "edges-meet", "wider"),
    ("armhole: {to: shoulder, target: 30 cm}", "nothing-below", "before it"),
    ("taper: {to: shoulder, target: 30 cm}, neck: {shape: v, width: 10 cm, depth: 8 cm}", "no-rows-below", "even"),
    ("even: {to: shoulder, colour: kelp}, neck: {shape: v, width: 10 cm, depth: 8 cm}", "no-rows-below", "colours"),
    ("even: {to: shoulder}, neck: {shape: v, width: 10 cm, depth: 8 cm}, even: {rows: 2}", "shoulders-not-last", "last"),
    ("even: {to: shoulder}, armhole: {length: 20 cm, target: 30 cm, at: starting}, neck: {shape: v, width: 10 cm, depth: 8 cm}", "no-such-side", "neck_edge"),
    ("even: {to: shoulder}, armhole: {length: 20 cm, target: 30 cm, at: far}, neck_edge: {shape: v, width: 10 cm, depth: 8 cm, at: far}", "no-such-side", "other edge"),
    ("even: {to: shoulder}, neck_edge: {shape: v, width: 10 cm, depth: 8 cm, at: side}", "no-such-side", "starting"),
]


@pytest.mark.parametrize(("sections", "name", "hint"), FAULTS)
def test_what_does_not_fit_is_told_with_what_would(sections: str, name: str, hint: str) -> None:
    text = ONE_SIZE + HEAD + piece(sections)
    assert [found for found, _, _ in told(text)] == [name]
    assert hint in problems(text)[0].hint


def test_the_told_limits_are_met() -> None:
    for sections in (
        "even: {to: shoulder}, neck: {shape: square, width: 38 cm, depth: 6 cm}",
        "even: {to: shoulder}, neck: {shape: round, width: 12 cm, depth: 39 cm}",
        "even: {to: shoulder}, shoulders: {neck: 32 cm, slope: 3 cm}",
        "even: {to: underarm}, armhole: {to: shoulder, target: 30 cm, block: 5 cm}",
    ):
        assert told(ONE_SIZE + HEAD + piece(sections)) == []


def test_a_cap_that_cannot_be_is_told_a_count_that_can() -> None:
    back = piece(ARMHOLE, more="edges: {both: [side, underarm, armhole]}", key="back")

    def sleeve(chain: str) -> str:
        return piece("even: {rows: 4}, cap: {fit: [back.armhole, back.armhole], block: 3 cm}", chain, key="sleeve").removeprefix("pieces:\n")

    (fault,) = problems(ONE_SIZE + HEAD + back + sleeve("52 cm"))
    assert fault.name == "cap-impossible"
    fits = fault.hint.split(" with ")[1].split(" stitches")[0]
    assert problems(ONE_SIZE + HEAD + back + sleeve(f"{fits} cm")) == []


def test_decreases_in_a_stitch_that_has_none_are_told() -> None:
    text = ONE_SIZE.replace("  rib:", '  slipped: {stitch: sl st, gauge: "10 sts, 10 rows / 10 cm"}\n  rib:')
    assert [name for name, _, _ in told(text + HEAD + piece(ARMHOLE, fabric="slipped"))] == ["no-such-decrease"]
