"""Growth in a spec: as a percentage or as a swatch measures it hung; what can't be is told at its place."""

from pathlib import Path

import pytest
from tiny_specs import ONE_SIZE, designed, graded, problems

from gaugewright.errors import ProblemsFound
from gaugewright.gauge.model import Gauge

PANEL = "pieces: {panel: {fabric: FABRIC, colours: oat, start: {chain: 20 cm}, sections: [even: {length: 40 cm}]}}\n"
STATED = '  grown: {stitch: hdc, gauge: "10 sts, 10 rows / 10 cm", growth: 5 %}\n'
SWATCHED = "  grown: {stitch: hdc, swatch: {stitches: 10, rows: 10, width: 10 cm, height: 10 cm, hung: 10.5 cm}}\n"


def spec(fabric: str, key: str = "grown") -> str:
    """The tiny spec with one more fabric."""
    return ONE_SIZE.replace("  rib:", f"{fabric}  rib:") + PANEL.replace("FABRIC", key)


@pytest.mark.parametrize("text", [STATED, SWATCHED])
def test_both_ways_to_state_it_are_one(text: str) -> None:
    fabric = designed(spec(text)).fabric("grown")
    assert (fabric.gauge, fabric.flat) == (Gauge(10, 100.0, 10, 105.0), Gauge(10, 100.0, 10, 100.0))
    assert fabric.growth == pytest.approx(0.05) and fabric.judged
    # 40 cm hung at 10.5 mm a row are 38.1 rows.
    piece = graded(spec(text)).pieces["panel"]["M"]
    assert len(piece.main.rows) == 38 and piece.finished["length"] == pytest.approx(399.0)


def test_nothing_stated_and_nothing_grown_differ_only_in_being_judged() -> None:
    none, nought = (designed(spec(text, key)).fabric(key) for text, key in (("", "plain"), (STATED.replace("5 %", "0 %"), "grown")))
    assert none.gauge == nought.gauge and none.lying is nought.lying is None
    assert (none.judged, nought.judged) == (False, True)


def test_a_fabric_like_it_grows_too_unless_it_has_a_swatch_that_was_hung() -> None:
    text = spec(STATED + "  alike: {like: grown, worked: joined rounds}\n  own: {like: grown, swatch: {stitches: 10, rows: 10, width: 10 cm, height: 10 cm, hung: 11 cm}}\n")
    assert [designed(text).fabric(key).growth for key in ("alike", "own")] == pytest.approx([0.05, 0.1])


WRONG = (
    (STATED.replace("5 %", "-2 %"), "out-of-range", "-2 %"),
    (STATED.replace("5 %", "80 %"), "out-of-range", "80 %"),
    (STATED.replace("5 %", "5 cm"), "wrong-unit", ""),
    (STATED.replace("5 %", "much"), "wrong-unit", "much"),
    (SWATCHED.replace("hung: 10.5 cm", "hung: 9.9 cm"), "hung-unlikely", "9.9 cm"),
    (SWATCHED.replace("hung: 10.5 cm", "hung: 16 cm"), "hung-unlikely", "16 cm"),
    (SWATCHED.replace("}}", "}, growth: 5 %}"), "two-growths", "5 %"),
)


@pytest.mark.parametrize(("text", "name", "place"), WRONG, ids=[name + place for _, name, place in WRONG])
def test_what_cannot_be_is_told_at_its_place(text: str, name: str, place: str) -> None:
    with pytest.raises(ProblemsFound) as raised:
        designed(spec(text))
    [problem] = raised.value.problems
    assert problem.name == name and problem.origin is not None and problem.hint
    assert problem.origin.line_text[problem.origin.location.column - 1 :].startswith(place)


CASES = Path(__file__).parents[1] / "cases"
MISPLACED = (("crown-from-centre", "hat: {stitch: dc,", "crown"), ("sideways-rib", "rib: {stitch: sc,", "rib"), ("motif-corners", "middle: {stitch: hdc,", "motif"), ("triangle-shawl", "cloth: {stitch: hdc,", "triangle"))


@pytest.mark.parametrize(("case", "fabric", "section"), MISPLACED)
def test_rows_that_do_not_hang_one_below_the_other_cannot_grow(case: str, fabric: str, section: str) -> None:
    text = (CASES / case / "spec.yaml").read_text(encoding="utf-8")
    assert problems(text) == [] and fabric in text
    found = [one for one in problems(text.replace(fabric, f"{fabric} growth: 4 %,", 1)) if one.name == "growth-misplaced"]
    assert found and all(one.origin is not None and section in one.origin.line_text for one in found)
    assert problems(text.replace(fabric, f"{fabric} growth: 0 %,", 1)) == []
