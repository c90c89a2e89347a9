"""An arm or a hip that is tight on many of the bodies that a size is made for."""

from pathlib import Path

import pytest
from scipy import stats

from gaugewright import pipeline
from gaugewright.checks.crowds import check_crowds
from gaugewright.checks.model import Found
from gaugewright.checks.remeasure import subject_of

SAMPLES = Path(__file__).parents[2] / "samples"


def found(text: str, folder: Path) -> Found:
    file = folder / "spec.yaml"
    file.write_text(text, encoding="utf-8")
    graded = pipeline.grade(pipeline.load(file))
    return check_crowds(subject_of(graded.design, graded.bodies, graded.grading))


def spec(arm: str) -> str:
    return f"""\
gaugewright: 1
pattern: {{title: Crowd Smock, workshop: Ferry Lane Workshop}}
sizes: {{table: women, make: [S, M, L, 3X], ease: {{bust: 10 cm}}}}
yarns: {{oat: {{colour: "#d9c9a8"}}}}
fabrics: {{plain: {{stitch: hdc, swatch: {{stitches: 40, rows: 40, width: 20 cm, height: 20 cm, thickness: 2 mm}}}}}}
pieces:
  back: {{start: {{chain: (body.bust + ease.bust) / 2}}, sections: [even: {{length: 50 cm}}], edges: {{both: [side]}}}}
  front: {{like: back}}
  sleeve: {{start: {{chain: {arm}}}, sections: [even: {{length: 40 cm}}], edges: {{both: [under]}}}}
seams: [{{join: back.side, to: front.side, take_up: edge to edge}}]
finished:
  bust: {{measure: finished(back.width) + finished(front.width), of: bust}}
  upper_arm: {{measure: finished(sleeve.width), of: upper_arm}}
"""


def test_arms_tight_on_more_than_one_in_five_are_told_with_their_shares(tmp_path: Path) -> None:
    """A sleeve of 32 cm, 31.4 as worn, for the women of 96.5 cm bust of size M: 31.06 cm of arm and 2.05 of spread."""
    told = found(spec("32 cm"), tmp_path)
    (one,) = told.problems
    tight = stats.norm(4.28 + 0.2775 * 96.52, 2.048).sf(32 - 0.2 * 3.14159)
    assert (one.name, one.severity, one.size) == ("tight-on-many", "warning", "M, L")
    assert f"{tight * 100:.0f} % in M" in one.message and tight > 0.2
    assert told.figures.startswith("upper_arm: tight on up to") and told.figures.endswith("(L)")


def test_the_hint_followed_is_wide_enough(tmp_path: Path) -> None:
    hint = found(spec("32 cm"), tmp_path).problems[0].hint
    wider = float(hint.split("make it ")[1].split(" cm")[0])
    assert found(spec(f"{32 + wider} cm + 0.5 cm"), tmp_path).problems == ()
    assert found(spec(f"{32 + wider} cm - 1 cm"), tmp_path).problems != ()


@pytest.mark.parametrize("name", ["breakwater-pullover", "saltmarsh-jacket", "dunlin-yoke", "shearwater-cardigan"])
def test_the_samples_are_tight_on_few(name: str) -> None:
    graded = pipeline.grade(pipeline.load(SAMPLES / name / "spec.yaml"))
    told = check_crowds(subject_of(graded.design, graded.bodies, graded.grading))
    assert told.problems == () and "upper_arm" in told.figures


def test_children_and_own_sizes_were_not_surveyed(tmp_path: Path) -> None:
    own = spec("20 cm").replace("table: women, make: [S, M, L, 3X]", "own: {S: {bust: 80 cm, upper_arm: 28 cm}, M: {bust: 90 cm, upper_arm: 30 cm}}")
    assert found(own, tmp_path) == Found((), "no arm or hip of surveyed bodies")
