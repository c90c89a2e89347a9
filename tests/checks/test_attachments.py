"""Pieces sewn onto others lie on them."""

import pytest
from tiny_specs import THREE_SIZES, designed

from gaugewright import pipeline
from gaugewright.checks.attachments import check_attached
from gaugewright.checks.remeasure import subject_of

SEWN_ON = THREE_SIZES + """\
pieces:
  back: {fabric: plain, colours: oat, start: {chain: body.bust / 2}, sections: [even: {length: 40 cm}], edges: {both: [side]}}
  pocket: {fabric: rib, colours: oat, start: {chain: 14 cm}, sections: [even: {length: 12 cm}]}
attach: [{piece: pocket, to: back, up: 10 cm, in: 5 cm, from: side}]
"""


@pytest.mark.parametrize(
    ("right", "wrong", "found"),
    [
        ("up: 10 cm", "up: 10 cm", []),
        ("up: 10 cm", "up: 28 cm", []),
        ("up: 10 cm", "up: 31 cm", [("attached-outside", "S, M, L", "31 cm")]),
        ("up: 10 cm", "up: 0 cm - 3 cm", [("attached-outside", "S, M, L", "0 cm - 3")]),
        ("in: 5 cm", "in: 26 cm", []),
        ("in: 5 cm", "in: 29 cm", [("attached-outside", "S", "29 cm")]),
    ],
)
def test_what_reaches_beyond_the_piece_under_it_is_told(right: str, wrong: str, found: list[tuple[str, str, str]]) -> None:
    text = SEWN_ON.replace(right, wrong)
    graded = pipeline.grade(designed(text))
    problems = check_attached(subject_of(graded.design, graded.bodies, graded.grading)).problems
    lines = text.split("\n")
    told = [(one.name, one.size, lines[one.origin.location.line - 1][one.origin.location.column - 1 :]) for one in problems if one.origin]
    assert len(told) == len(problems) == len(found)
    for (name, sizes, place), (wanted, for_sizes, at) in zip(told, found, strict=True):
        assert (name, sizes) == (wanted, for_sizes) and place.startswith(at)
