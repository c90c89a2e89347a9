"""Which size fits a body, worked by hand on a plain body with a sleeve."""

from pathlib import Path

import pytest

from cli.running import ROOT, spec_in
from gaugewright import pipeline
from gaugewright.advice.fit import OWN, Fit, fit, grade_own
from gaugewright.errors import ProblemsFound, UserError

SMOCK = """\
gaugewright: 1
pattern: {title: Quay Smock, workshop: Ferry Lane Workshop}
sizes: {own: {S: {bust: 80 cm, hip: 88 cm, upper_arm: 28 cm, back_waist_length: 40 cm}, M: {bust: 90 cm, hip: 98 cm, upper_arm: 30 cm, back_waist_length: 42 cm}, L: {bust: 100 cm, hip: 108 cm, upper_arm: 33 cm, back_waist_length: 43 cm}}, ease: {bust: 10 cm}}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics: {plain: {stitch: hdc, gauge: "10 sts, 10 rows / 10 cm"}}
pieces:
  back: {start: {chain: (body.bust + ease.bust) / 2}, sections: [even: {length: body.back_waist_length + 10 cm}], edges: {both: [side]}}
  front: {like: back}
  sleeve: {start: {chain: body.upper_arm + 8 cm}, sections: [even: {length: 40 cm}]}
seams: [{join: back.side, to: front.side, take_up: edge to edge}]
finished:
  bust: {measure: finished(back.width) + finished(front.width), of: bust}
  hem: {measure: finished(back.width) + finished(front.width), of: hip}
  length: {measure: finished(back.length)}
  upper_arm: {measure: finished(sleeve.width), of: upper_arm}
"""


def advice(folder: Path, **cm: float) -> Fit:
    graded = pipeline.grade(pipeline.load(spec_in(folder, SMOCK)))
    return fit(graded, "Ada", {name: value * 10 for name, value in cm.items()})


def test_a_body_of_the_chart_fits_its_size(tmp_path: Path) -> None:
    found = advice(tmp_path, bust=90, hip=98, upper_arm=30, back_waist_length=42)
    assert (found.size, found.lead.verdict, found.off, found.lengths, found.filled) == ("M", "fits", (), (), ())
    assert (found.lead.ease, found.lead.intended) == (pytest.approx(100), pytest.approx(100))


def test_the_nearest_size_is_chosen_and_of_two_the_larger(tmp_path: Path) -> None:
    assert [advice(tmp_path, bust=bust).size for bust in (60, 84, 85, 86, 96, 130)] == ["S", "S", "M", "M", "L", "L"]


def test_a_strong_arm_is_told_with_its_stitches_and_mended_by_an_own_size(tmp_path: Path) -> None:
    """34 cm where M is for 30: 38 cm of sleeve leave 4 of the 8 cm intended, and 4 sts give them back."""
    found = advice(tmp_path, bust=90, upper_arm=34)
    (arm,) = found.off
    assert (arm.key, arm.verdict, arm.stitches) == ("upper_arm", "tight", 4)
    assert (arm.ease, arm.intended, arm.own) == (pytest.approx(40), pytest.approx(80), pytest.approx(420))
    assert found.own_mends == (arm,)


def test_hips_that_the_design_does_not_follow_are_not_mended_by_an_own_size(tmp_path: Path) -> None:
    """108 cm where M is for 98: the smock is as wide at its hem as at the bust, in an own size too."""
    found = advice(tmp_path, bust=90, hip=108)
    (hem,) = found.off
    assert (hem.key, hem.verdict, hem.stitches, hem.ease) == ("hem", "tight", 10, pytest.approx(-80))
    assert found.own_mends == ()


def test_a_long_back_is_worked_longer(tmp_path: Path) -> None:
    """47 cm to the waist where M has 42: 5 cm are 5 rows, 57 in all."""
    found = advice(tmp_path, bust=90, back_waist_length=47)
    assert [(one.piece, one.rows, one.new_rows) for one in found.lengths] == [("back", 52, 57)]
    assert next(one for one in found.measures if one.key == "length").verdict == "short"


def test_what_was_not_measured_is_not_judged(tmp_path: Path) -> None:
    found = advice(tmp_path, bust=90)
    assert {one.key: one.verdict for one in found.measures if one.of} == {"hem": "not measured", "upper_arm": "not measured"}
    assert found.filled == ("hip", "upper_arm")


def test_a_bust_serves_for_a_chest(tmp_path: Path) -> None:
    assert advice(tmp_path, chest=90).size == "M"


def test_nothing_to_choose_by_is_told(tmp_path: Path) -> None:
    with pytest.raises(UserError) as fault:
        advice(tmp_path, wrist=16)
    assert fault.value.name == "nothing-to-fit" and "bust" in fault.value.message


def test_a_measure_that_the_pattern_needs_is_asked_for(tmp_path: Path) -> None:
    """Hips alone choose a size, but nothing is known of the bust that the widths follow."""
    with pytest.raises(ProblemsFound) as found:
        advice(tmp_path, hip=98)
    assert {problem.name for problem in found.value.problems} == {"formula-fault"}
    assert all("add it to Ada" in problem.hint for problem in found.value.problems)


def test_a_chart_s_range_is_one_size() -> None:
    """Women's M is 36 to 38 in (91.5 to 96.5 cm): every bust in it is an M, without a remark."""
    graded = pipeline.grade(pipeline.load(ROOT / "samples/breakwater-pullover/spec.yaml"))
    for bust in (915.0, 940.0, 965.0):
        found = fit(graded, "Ada", {"bust": bust})
        assert (found.size, found.lead.verdict) == ("M", "fits")


def test_a_body_that_is_a_size_of_the_chart_has_its_counts(tmp_path: Path) -> None:
    """The own size of a body with M's measures is M, row for row."""
    design = pipeline.load(spec_in(tmp_path, SMOCK))
    own = grade_own(design, {"bust": 900.0, "hip": 980.0, "upper_arm": 300.0, "back_waist_length": 420.0}, "M", "Ada")
    standard = pipeline.grade(design)
    for key, pieces in own.grading.pieces.items():
        assert pieces[OWN].strips == standard.grading.pieces[key]["M"].strips
