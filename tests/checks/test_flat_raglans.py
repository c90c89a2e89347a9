"""Raglan seams: row for row, and slants that the cloth can give."""

import pytest
from checks.specs import told_by

SPEC = """\
gaugewright: 1
pattern: {title: Quayside Raglan}
sizes: {own: {M: {bust: 100 cm, upper_arm: 30 cm}, L: {bust: 120 cm, upper_arm: 36 cm}}}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics: {body: {stitch: hdc, gauge: "10 sts, 10 rows / 10 cm"}}
lengths: {raglan: 20 cm}
levels: {top: 50 cm, underarm: top - raglan, armpit: 40 cm}
pieces:
  back:
    start: {chain: body.bust / 2}
    sections: [even: {to: underarm}, raglan_edge: {to: top, target: 24 cm, block: 4 cm}]
    edges: {both: [side, underarm, raglan], bottom: hem}
  sleeve:
    make: 2
    start: {chain: 24 cm}
    sections: [taper: {to: armpit, target: body.upper_arm + 10 cm}, raglan_edge: {length: raglan, target: 10 cm, block: 4 cm}]
    edges: {both: [seam, armpit, raglan], bottom: cuff}
seams: [{join: back.raglan, to: sleeve.raglan}]
"""


def changed(old: str, new: str) -> str:
    assert old in SPEC
    return SPEC.replace(old, new)


def test_edges_of_the_same_rows_may_differ_by_a_tenth() -> None:
    assert told_by("seam-pairs", SPEC) == ()


def test_body_and_sleeve_of_other_rows_are_told_to_take_one_length() -> None:
    (problem,) = told_by("seam-pairs", changed("length: raglan, target: 10 cm", "length: raglan - 1 cm, target: 10 cm"))
    assert (problem.name, problem.severity, problem.size) == ("seam-rows", "error", "M, L")
    assert "20 rows meet 19" in problem.message
    assert problem.hint == "give back and sleeve the same `length` for their raglan_edge"


def test_a_block_on_one_side_alone_does_not_hide_unequal_rows() -> None:
    found = told_by("seam-pairs", changed("length: raglan, target: 10 cm, block: 4 cm", "length: raglan - 1 cm, target: 10 cm, block: 0 cm"))
    assert "seam-rows" in [problem.name for problem in found]


def test_slants_too_different_for_the_cloth_are_told_with_a_depth_that_works() -> None:
    steep = changed("target: 24 cm, block: 4 cm", "target: 12 cm, block: 4 cm")
    (problem,) = told_by("seam-pairs", steep)
    assert (problem.name, problem.size) == ("seam-mismatch", "L")
    assert "make both raglans 24 cm deep" in problem.hint
    assert told_by("seam-pairs", steep.replace("raglan: 20 cm", "raglan: 24 cm")) == ()


@pytest.mark.parametrize(("target", "told"), [("24 cm", 0), ("16 cm", 0), ("8 cm", 1)])
def test_a_tenth_is_the_limit(target: str, told: int) -> None:
    assert len(told_by("seam-pairs", changed("target: 24 cm", f"target: {target}"))) == told


def test_unequal_blocks_at_the_underarm_are_told() -> None:
    text = changed("target: 10 cm, block: 4 cm", "target: 10 cm, block: 6 cm")
    (problem,) = told_by("seam-pairs", text)
    assert (problem.name, problem.severity, problem.size) == ("raglan-blocks-differ", "warning", "M, L")
    assert "4 stitches meet 6" in problem.message
    assert problem.hint == "give back and sleeve the same `block`"
