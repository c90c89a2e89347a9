"""A sleeve picked up at the armhole hangs on the cover with its armhole up; a band there is no sleeve."""

import pytest

from gaugewright.drawings.geometry import box_around
from gaugewright.drawings.cover import _sleeve
from gaugewright.drawings.piece_figure import piece_figure
from tiny_specs import DROPPED_BACK, ONE_SIZE, designed, graded

BODY = DROPPED_BACK + """\
  front: {like: back}
"""
SEAMS = "seams: [{join: back.shoulder, to: front.shoulder}, {join: back.side, to: front.side}]\n"


@pytest.mark.parametrize(("section", "hangs"), [("taper: {length: 30 cm, target: 24 cm}", True), ("even: {length: 3 cm}", False)])
def test_what_is_deeper_than_broad_is_a_sleeve(section: str, hangs: bool) -> None:
    picked = f"  sleeve: {{make: 2, fabric: round, colours: oat, start: {{pick_up: [back.armhole, front.armhole]}}, sections: [{section}]}}\n"
    text = ONE_SIZE + BODY + picked + SEAMS
    design, grading = designed(text), graded(text)
    yarns = {yarn.key: (yarn.label, yarn.colour) for yarn in design.yarns}
    figures = {p.key: piece_figure(p, grading.plans[p.key], grading.pieces[p.key], yarns, "M") for p in design.pieces}
    found = _sleeve(design, figures)
    assert (found is not None) == hangs
    if found is not None:
        _, bottom, _, top = box_around(found.outline)
        at_top, at_bottom = ([x for x, y in found.outline if y == height] for height in (top, bottom))
        assert max(at_top) - min(at_top) == 200.0 and max(at_bottom) - min(at_bottom) == 120.0
