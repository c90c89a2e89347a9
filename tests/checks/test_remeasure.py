"""Pieces measured anew: by hand, and against the engine that graded them."""

from pathlib import Path

import pytest

from checks.specs import LABELS, damaged, pullover
from gaugewright.checks import run_checks
from gaugewright.checks.remeasure import lost_stitches, subject_of
from gaugewright.design.resolve import resolve
from gaugewright.grading.grade import grade
from gaugewright.measurements import MEASURES
from gaugewright.sizing.bodies import bodies, environments
from gaugewright.spec import load_spec

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*/spec.yaml"))

SHAPED = damaged(
    "      - even: {to: shoulder}\n =>       - taper: {to: underarm, target: (body.bust + ease.bust) / 2 + 6 cm}\n      - even: {to: shoulder}\n",
)


def test_widths_lose_what_seams_take_and_only_where_they_run() -> None:
    remade = subject_of(*pullover()).remade["back"]["A"]
    # 52 stitches; half a stitch goes into each side seam up to the underarm, nothing into the armholes.
    assert remade.measures["width"] == pytest.approx(510)
    assert remade.measures["widest"] == remade.measures["top_width"] == pytest.approx(520)
    assert remade.measures["length"] == remade.rows_length == pytest.approx(520)
    assert remade.edges["side"] == pytest.approx(310)
    assert remade.edges["armhole"] == pytest.approx(210)
    assert (remade.edges["neck"], remade.edges["shoulder"]) == (pytest.approx(240), pytest.approx(140))


def test_a_seam_along_the_top_takes_half_a_row_off_the_length() -> None:
    text = damaged("back.shoulder, to: front.shoulder, take_up: edge to edge => back.shoulder, to: front.shoulder, take_up: half stitch")
    assert subject_of(*pullover(text)).remade["back"]["A"].measures["length"] == pytest.approx(515)


def test_a_sloping_edge_is_longer_than_its_rows() -> None:
    remade = subject_of(*pullover(SHAPED)).remade["back"]["A"]
    # Of 31 rows three slopes of 8 rows gain a stitch each; 7 rows are left even.
    assert remade.edges["side"] == pytest.approx(70 + 3 * (80**2 + 10**2) ** 0.5)


def test_a_side_named_as_a_whole_loses_on_that_side_only() -> None:
    design, *_ = pullover(damaged("join: back.side, to: front.side => join: back.starting, to: front.side"))
    assert lost_stitches(design.piece("back"), design)[("side", "starting")] == 0.5
    assert ("side", "far") not in lost_stitches(design.piece("back"), design)
    assert {(name, side) for name, side in lost_stitches(design.piece("front"), design) if name == "side"} == {("side", "starting"), ("side", "far")}


def test_formulas_are_answered_from_the_pieces_measured_anew() -> None:
    subject = subject_of(*pullover(damaged("measure: finished(sleeve.widest) => measure: 'edge(back.side) + in_rows(4.4 cm, tube) + finished(sleeve.top)'")))
    assert subject.measured[-1].actual["A"] == pytest.approx(310 + 40 + 420)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.parent.name)
def test_samples_are_graded_as_they_measure_and_pass_every_check(path: Path) -> None:
    design = resolve(load_spec(path, LABELS, MEASURES), LABELS)
    of_sizes = bodies(design)
    grading = grade(design, environments(design, of_sizes))
    for key, sized in subject_of(design, of_sizes, grading).remade.items():
        for size, remade in sized.items():
            graded = grading.pieces[key][size]
            assert {name: edge.length for name, edge in graded.edges.items()} == pytest.approx(remade.edges)
            assert graded.finished == pytest.approx(remade.measures)
    found = [problem for result in run_checks(design, of_sizes, grading) for problem in result.problems]
    assert [(problem.name, problem.size) for problem in found if problem.severity != "note"] == []
