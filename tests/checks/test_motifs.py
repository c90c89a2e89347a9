"""Motifs that ruffle or cup, and grids whose motifs don't meet."""

from dataclasses import replace

import pytest
from tiny_specs import HEAD, designed

from gaugewright.checks import run_checks
from gaugewright.checks.model import CheckResult
from gaugewright.grading.grade import Grading, grade
from gaugewright.sized import Sized
from gaugewright.sizing.bodies import bodies, environments


def results(gauge: str, sides: int = 4, more: str = "", spoil: bool = False) -> dict[str, CheckResult]:
    text = HEAD.replace('round: {stitch: hdc, worked: joined rounds, gauge: "10 sts, 10 rows / 10 cm"}', f'round: {{stitch: hdc, worked: joined rounds, gauge: "{gauge} / 10 cm"}}')
    design = designed(text + f"pieces:\n  tile: {{fabric: round, colours: oat, start: {{centre: flat}}, sections: [motif: {{sides: {sides}, rounds: 6}}]{more}}}\n")
    of_bodies = bodies(design)
    grading = grade(design, environments(design, of_bodies))
    return {one.name: one for one in run_checks(design, of_bodies, _torn(grading) if spoil else grading)}


def _torn(grading: Grading) -> Grading:
    """The same with motifs that lie a tenth wider apart than they are wide."""
    (piece,) = grading.pieces["tile"]
    assert piece.layout is not None
    layout = replace(piece.layout, width=piece.layout.width * 1.1)
    return replace(grading, pieces={"tile": Sized(grading.pieces["tile"].labels, (replace(piece, layout=layout),))})


def test_what_lies_flat_is_told_with_its_figures() -> None:
    found = results("10 sts, 10 rows")["motifs"]
    assert (found.problems, found.figures) == ((), "tile: 8.0 to a round, 8.0 lie flat")


@pytest.mark.parametrize(("gauge", "sides", "name"), [("10 sts, 30 rows", 4, "motif-ruffles"), ("10 sts, 14 rows", 4, "motif-cups")])
def test_what_does_not_is_a_warning(gauge: str, sides: int, name: str) -> None:
    (problem,) = results(gauge, sides)["motifs"].problems
    assert (problem.name, problem.severity) == (name, "warning")


@pytest.mark.parametrize("sides", [4, 6])
def test_motifs_meet_in_their_grid(sides: int) -> None:
    more = ", grid: {across: 60 cm, down: 60 cm}"
    assert results("10 sts, 10 rows", sides, more)["motifs"].problems == ()
    assert [one.name for one in results("10 sts, 10 rows", sides, more, spoil=True)["motifs"].problems] == ["grid-open"]
