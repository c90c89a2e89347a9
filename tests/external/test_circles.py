"""Flat circles, crowns and hats against published rules, tables and geometry."""

import math

import pytest
from external.sources import source
from tiny_specs import ONE_SIZE, counts, graded

from gaugewright.gauge.model import Gauge
from gaugewright.grading.crowns import crown_counts, flat_stitches, outward
from gaugewright.grading.grade import Grading
from gaugewright.rounding import half_up
from gaugewright.tolerances import crown_tolerance


def of_aspect(height_to_width: float) -> Gauge:
    """A gauge whose stitch is so many times as high as it is wide."""
    return Gauge(stitches=100, width=1000.0, rows=100, height=1000.0 * height_to_width)


@source("published", "Simply Crochet (magazine), 22 October 2020, 'How do I work a flat circle?'; Crafts and Coffee UK, 2014")
def test_six_to_forty_eight_in_eight_rounds() -> None:
    text = ONE_SIZE + "pieces: {piece: {fabric: round, colours: oat, start: {centre: 6}, sections: [crown: {stitches: 48}]}}\n"
    assert counts(text) == (6, 12, 18, 24, 30, 36, 42, 48)


@source("published", "Simply Crochet, same page: a round of 6 sc, single crochet being as high as it is wide")
def test_square_stitches_take_six_without_being_told() -> None:
    text = ONE_SIZE + "pieces: {piece: {fabric: round, colours: oat, start: {centre: flat}, sections: [crown: {stitches: 48}]}}\n"
    assert counts(text) == (6, 12, 18, 24, 30, 36, 42, 48)


@source("published", "geometry, as announced by Dora Does, 'How to crochet a flat circle', 2020: 6, 8 and 12 at their own aspects")
@pytest.mark.parametrize(("each", "aspect"), [(6, 0.955), (8, 1.273), (12, 1.91)])
def test_six_eight_and_twelve_are_exact_at_their_aspects(each: int, aspect: float) -> None:
    assert flat_stitches(of_aspect(aspect)) == pytest.approx(each, abs=0.01)
    assert flat_stitches(of_aspect(aspect)) == pytest.approx(2 * math.pi * aspect)


@source("published", "Dora Does, 2020, with published aspects of sc, hdc and dc: 6, 8 and 12 within a stitch or a quarter of them")
@pytest.mark.parametrize(
    ("each", "low", "high", "aspects"), [(6, 4.7, 5.8, (0.75, 0.92)), (8, 7.1, 9.1, (1.13, 1.44)), (12, 12.6, 13.4, (2.0, 2.13))]
)
def test_measured_aspects_call_for_nearly_the_usual(each: int, low: float, high: float, aspects: tuple[float, float]) -> None:
    found = [flat_stitches(of_aspect(aspect)) for aspect in aspects]
    assert found == [pytest.approx(low, abs=0.06), pytest.approx(high, abs=0.06)]
    middle = sum(found) / 2
    assert abs(each - middle) <= crown_tolerance(middle)


@source("published", "MK Carroll, 2009: 8 single crochet to a round ruffle, 6 lie flat")
def test_eight_single_crochet_are_too_many() -> None:
    flat = flat_stitches(of_aspect(0.955))
    assert 8 - flat > crown_tolerance(flat) >= abs(6 - flat)


@source("published", "Crafty Maria 2009, MK Carroll 2009, Ana Rosa 2016, crochets.top: figures differ, 6, 8 and 12 are common to them; so each can be stated")
@pytest.mark.parametrize("each", [6, 8, 10, 12, 14, 16])
def test_any_of_the_published_rules_can_be_stated(each: int) -> None:
    text = ONE_SIZE + f"pieces: {{piece: {{fabric: round, colours: oat, start: {{centre: flat}}, sections: [crown: {{stitches: {each * 4}, each: {each}}}]}}}}\n"
    assert counts(text) == tuple(each * number for number in range(1, 5))


@source("common practice", "a disc's last round is often partial: 40 to 42")
def test_a_last_round_adds_what_is_left() -> None:
    assert tuple(outward(8, 42, 8)) == (16, 24, 32, 40, 42)
    assert crown_counts(42, 8, 8) == (40, 32, 24, 16, 8)


@source("common practice", "what a last round adds is spread evenly, not put side by side")
def test_the_two_of_a_last_round_stand_half_a_round_apart() -> None:
    text = ONE_SIZE + "pieces: {piece: {fabric: round, colours: oat, start: {centre: 8}, sections: [crown: {stitches: 42, each: 8}]}}\n"
    last = next(iter(graded(text).pieces["piece"])).main.rows[-1]
    places, at = [], 0
    for run in last.runs:
        places += [at] if run.operation.kind == "increase" else []
        at += run.operation.makes * run.times
    assert (last.uses, last.makes, len(places)) == (40, 42, 2)
    assert abs(places[1] - places[0] - 21) <= 1


@source("published", "Ms Premise-Conclusion, 'The ideal crochet sphere', 2010; Tacomagic, 2011: twice as many stitches in the middle row as rows, each row as the sine of its angle")
def test_a_ball_by_the_sine_of_its_rows_is_as_far_round_as_over() -> None:
    rows = 20
    wanted = [half_up(2 * rows * math.sin(math.pi * (row - 0.5) / rows)) for row in range(1, rows + 1)]
    shaped = [max(6, count) for count in wanted]
    assert max(wanted) == 40 and wanted == wanted[::-1]
    sections = ", ".join(f"taper: {{rounds: 1, stitches: {count}, at: all round}}" if count != before else "even: {rounds: 1}" for before, count in zip(shaped, shaped[1:], strict=False))
    text = ONE_SIZE + f"pieces: {{piece: {{fabric: round, colours: oat, start: {{centre: {shaped[0]}}}, sections: [even: {{rounds: 1}}, {sections}]}}}}\n"
    ball = next(iter(graded(text).pieces["piece"]))
    assert tuple(ball.main.counts()) == tuple(shaped)
    # Over the ball from pole to pole is half a great circle: in square stitches twenty rows to forty stitches.
    assert ball.worked["widest"] == 2 * ball.worked["length"] == 400.0


HEADS = """\
fabrics:
  fine: {stitch: sc, worked: spiral rounds, gauge: "40 sts, 42 rows / 10 cm"}
"""


def hat(around_mm: float, height: str = "") -> Grading:
    """A hat of this girth in a gauge so fine that rounding hardly shows, its crown flat."""
    sections = "crown: {target: %.2f mm}" % around_mm + (", even: {length: rest}" if height else "")
    total = f"    total: {height}\n" if height else ""
    return graded(
        "gaugewright: 1\npattern: {title: Hat, workshop: Ferry Lane Workshop}\nyarns: {oat: {colour: \"#d9c9a8\"}}\n" + HEADS
        + f"pieces:\n  hat:\n    start: {{centre: flat}}\n    sections: [{sections}]\n{total}"
    )


INCH = 25.4


@source("published", "Hook That Yarn 2016; The Country Willows; O Hewe 2009; Loca for Crafts 2015: diameter = head / pi, height = 0.4 x head")
@pytest.mark.parametrize(("head", "diameter", "height"), [(23 * INCH, 7.32 * INCH, 9.2 * INCH), (13.5 * INCH, 4.3 * INCH, 5.4 * INCH), (22 * INCH, 7.0 * INCH, 8.8 * INCH), (395.0, 125.8, None)])
def test_a_crown_is_the_head_over_pi_across(head: float, diameter: float, height: float | None) -> None:
    assert head / math.pi == pytest.approx(diameter, abs=0.02 * INCH)
    row = 100 / 42
    piece = next(iter(hat(head).pieces["hat"]))
    stitch = 100 / 40
    assert piece.finished["width"] == pytest.approx(head, abs=stitch / 2)
    # The crown is whole rounds of a whole number of stitches: it meets the diameter within a round.
    assert 2 * piece.finished["length"] == pytest.approx(diameter, abs=2 * row + (diameter * (1 - flat_share())))
    if height is not None:
        whole = next(iter(hat(head, f"{head * 0.4:.2f} mm").pieces["hat"]))
        assert whole.finished["length"] == pytest.approx(height, abs=row / 2)


def flat_share() -> float:
    """How much of a round's exact stitches the whole number is, here 6 of 5.98."""
    flat = flat_stitches(Gauge(40, 100.0, 42, 100.0))
    return min(half_up(flat) / flat, flat / half_up(flat))


@source("published", "Calico Joy, size chart: hat heights to head 0.35 to 0.42, so the rule of 0.4 holds within 1/4 in from 14 in up")
@pytest.mark.parametrize(
    ("head", "low", "high"), [(14, 5.5, 6), (15, 6, 6.25), (16, 6.25, 6.5), (16.5, 6.5, 6.5), (17, 6.75, 6.75), (18, 7.25, 7.25)]
)
def test_hats_of_four_tenths_are_in_the_chart(head: float, low: float, high: float) -> None:
    piece = next(iter(hat((head - 1) * INCH, f"{head * 0.4} in").pieces["hat"]))
    assert low - 0.3 <= piece.finished["length"] / INCH <= high + 0.3
    assert piece.finished["width"] / INCH == pytest.approx(head - 1, abs=0.05)


@source("published", "Crochet Kitten, 'Measurements for designers: hat sizes', 2014: crown to brow = head / 4, another height than crown to ear")
@pytest.mark.parametrize(
    ("head", "brow"), [(12, 3), (14, 3.5), (16, 4), (17, 4.25), (19, 4.75), (20.5, 5), (21, 5.25), (22, 5.5)]
)
def test_crown_to_brow_is_not_crown_to_ear(head: float, brow: float) -> None:
    """The two published heights conflict: a spec states which it means, and either is met."""
    row = 100 / 42 / INCH
    to_brow, to_ear = (next(iter(hat(head * INCH, f"{head} in * {share}").pieces["hat"])).finished["length"] / INCH for share in (0.25, 0.4))
    assert to_brow == pytest.approx(brow, abs=0.125 + row / 2)
    assert to_ear - to_brow == pytest.approx(0.15 * head, abs=row)
