"""Openings, arms and hips, with the cloth's thickness taken off."""

import math
from dataclasses import replace

import pytest

from checks.specs import checked, damaged, places, problems_of, pullover, told_by
from gaugewright.checks.wearing import check_openings, inside_loss
from gaugewright.sized import Sized


def test_thick_cloth_is_smaller_inside() -> None:
    design, *_ = pullover()
    assert inside_loss(design.fabrics) == pytest.approx(5 * math.pi)
    assert inside_loss(()) == 0


def test_a_cuff_passes_the_hand_as_far_as_it_stretches() -> None:
    assert told_by("openings") == ()
    assert next(result.figures for result in checked() if result.name == "openings") == "cuff 22.0 to 26.0 cm around, hand 18.0 to 22.0 cm"
    exact = damaged("ring: body.hand + 4 cm => ring: 20 cm")
    tight = damaged("ring: body.hand + 4 cm => ring: 20 cm", "hand: 22 cm => hand: 22.1 cm")
    assert told_by("openings", exact) == ()
    problems = told_by("openings", tight)
    assert places(problems, tight) == [("opening-tight", "error", "C", "cuff, around: [sleeve.cu")]
    assert "20.0 cm around, stretched 22.0 cm, for 22.1 cm" in problems[0].message


def test_the_width_that_the_hint_gives_is_wide_enough() -> None:
    text = damaged("ring: body.hand + 4 cm => ring: 16 cm")
    problems = told_by("openings", text)
    assert "make it at least 20.0 cm around in C: 4.0 cm more" in problems[0].hint
    assert problems[0].size == "A, B, C"
    assert told_by("openings", text.replace("ring: 16 cm", "ring: 20 cm")) == ()


def test_a_band_worked_on_an_opening_is_what_must_pass() -> None:
    band = "  band: {fabric: tight, colours: oat, make: 2, start: {pick_up: sleeve.cuff}, sections: [taper: {rounds: 3, target: edge(sleeve.cuff) - 6 cm}]}\n"
    text = damaged("  tube: {like: body => tight: {like: body, worked: joined rounds}\n  tube: {like: body".replace("=> ", "=>   "), "seams:\n => " + band + "seams:\n")
    problems = told_by("openings", text)
    assert [(one.name, one.size) for one in problems] == [("opening-tight", "A, B")]
    assert "16.0 cm around, stretched 17.6 cm, for 18.0 cm in A" in problems[0].message
    assert "at least 16.4 cm around in A" in problems[0].hint
    wider = text.replace("edge(sleeve.cuff) - 6 cm", "edge(sleeve.cuff) + 3 cm")
    assert told_by("openings", wider) == ()


def test_an_opening_for_a_hand_nobody_knows_is_noted() -> None:
    text = damaged("passes: hand => passes: head", "ring: body.hand + 4 cm => ring: 60 cm")
    design, bodies, grading = pullover(text)
    values = [body if body.label != "B" else replace(body, values={name: value for name, value in body.values.items() if name != "head"}) for body in bodies]
    problems = problems_of(check_openings, (design, Sized(bodies.labels, tuple(values)), grading))
    assert places(problems, text) == [("opening-unchecked", "note", "B", "cuff, around: [sleeve.cu")]
    assert told_by("openings", text) == ()


def test_a_head_needs_more_than_a_hand() -> None:
    known = damaged("passes: hand => passes: head")
    assert [one[0] for one in places(told_by("openings", known), known)] == ["opening-tight"]


def test_the_upper_arm_keeps_two_centimetres_as_worn() -> None:
    assert told_by("upper-arm") == ()
    text = damaged("target: edge(back.armhole) + edge(front.armhole) => target: body.upper_arm + 4 cm", "round: up => round: down")
    problems = told_by("upper-arm", text)
    arm = [one for one in problems if one.name == "upper-arm-tight"]
    assert places(tuple(arm), text) == [("upper-arm-tight", "warning", "B", "upper_arm: {measure: fin")]
    assert "make the sleeve 0.6 cm wider, rounded up to whole stitches" in arm[0].hint
    followed = text.replace("body.upper_arm + 4 cm", "body.upper_arm + 4.6 cm").replace("round: down", "round: up")
    assert [one for one in told_by("upper-arm", followed) if one.name == "upper-arm-tight"] == []
    thin = text.replace(", thickness: 5 mm", "")
    assert [one for one in told_by("upper-arm", thin) if one.name == "upper-arm-tight"] == []


def test_a_sleeve_that_no_arm_goes_into_is_an_error() -> None:
    text = damaged("target: edge(back.armhole) + edge(front.armhole) => target: body.upper_arm")
    assert {one.severity for one in told_by("upper-arm", text) if one.name == "upper-arm-tight"} == {"error"}


def test_the_sleeve_is_no_narrower_where_it_is_sewn_in() -> None:
    text = damaged("underarm: shoulder - 21 cm => underarm: shoulder - 18 cm")
    tight = [one for one in told_by("upper-arm", text) if one.name == "sleeve-top-tight"]
    assert places(tuple(tight), text) == [("sleeve-top-tight", "warning", "C", "sleeve.sleeve_top, to: [")]
    assert "36.0 cm, as worn 34.4 cm, for an arm of 34.0 cm" in tight[0].message
    deeper = tight[0].hint.split()[3]
    followed = text.replace("shoulder - 18 cm", f"shoulder - 18 cm - {deeper} cm")
    assert [one for one in told_by("upper-arm", followed) if one.name == "sleeve-top-tight"] == []


PICKED_SLEEVE = """\
gaugewright: 1
pattern: {title: Picked up, workshop: Ferry Lane Workshop}
sizes: {own: {A: {bust: 90 cm, upper_arm: 28 cm}, B: {bust: 110 cm, upper_arm: 37 cm}}}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics:
  plain: {stitch: hdc, gauge: "10 sts, 10 rows / 10 cm"}
  round: {like: plain, worked: turned rounds}
levels: {shoulder: 50 cm, underarm: shoulder - 18 cm}
pieces:
  back: {fabric: plain, start: {chain: 50 cm}, sections: [even: {to: shoulder}, shoulders: {neck: 20 cm}], edges: {both: [side, underarm, armhole]}}
  front: {like: back}
  sleeve: {make: 2, fabric: round, start: {pick_up: [back.armhole, front.armhole]}, sections: [even: {length: 30 cm}]}
seams:
  - {join: back.shoulder, to: front.shoulder}
  - {join: back.side, to: front.side}
"""


def test_a_picked_up_sleeve_is_held_to_the_arm_as_a_sewn_one_is() -> None:
    [tight] = told_by("upper-arm", PICKED_SLEEVE)
    assert places((tight,), PICKED_SLEEVE) == [("sleeve-top-tight", "warning", "B", "[back.armhole, front.arm")]
    assert "36.0 cm, as worn 36.0 cm, for an arm of 37.0 cm" in tight.message
    deeper = tight.hint.split()[3]
    assert told_by("upper-arm", PICKED_SLEEVE.replace("shoulder - 18 cm", f"shoulder - 18 cm - {deeper} cm")) == ()


def test_a_band_at_an_armhole_is_no_sleeve() -> None:
    assert told_by("upper-arm", PICKED_SLEEVE.replace("length: 30 cm", "length: 3 cm")) == ()


def test_hips_are_covered_where_the_garment_ends_below_the_waist() -> None:
    assert told_by("hips") == ()
    text = damaged("hip: 106 cm => hip: 117 cm")
    problems = told_by("hips", text)
    assert places(problems, text) == [("hips-tight", "warning", "C", "bust: {measure: finished")]
    assert "0.6 cm short as worn" in problems[0].message
    assert "make the lower edge 0.6 cm wider (C)" in problems[0].hint
    assert told_by("hips", text.replace("(body.bust + ease.bust) / 2", "(body.bust + ease.bust + 0.6 cm) / 2 + 0.5 cm")) == ()
    short = text.replace("shoulder: 52 cm", "shoulder: 44 cm")
    assert told_by("hips", short) == ()


def test_a_hem_of_its_own_is_measured_rather_than_the_bust() -> None:
    text = damaged("hip: 106 cm => hip: 117 cm", "finished: => finished:\n  hem: {measure: 2 * edge(back.hem) + 4 cm, of: hip}")
    assert told_by("hips", text) == ()
