"""Shaped sections as they are written: what is missing, doubled or unknown is told at its place."""

import pytest
from tiny_specs import ONE_SIZE, designed

from gaugewright.design.model import Armhole, Cap, Neck, NeckEdge, Shoulders
from gaugewright.errors import ProblemsFound

HEAD = ONE_SIZE + "levels: {shoulder: 40 cm, underarm: 20 cm}\n"


def piece(section: str, edges: str = "both: [side, underarm, armhole]") -> str:
    return (
        f"{HEAD}pieces:\n  piece:\n    fabric: plain\n    colours: oat\n    start: {{chain: 40 cm}}\n"
        f"    sections:\n      - even: {{to: underarm}}\n      - {section}\n    edges: {{{edges}}}\n"
    )


def told(text: str) -> list[tuple[str, int]]:
    """Names of problems, and the columns they stand at."""
    with pytest.raises(ProblemsFound) as found:
        designed(text)
    return [(problem.name, problem.origin.location.column) for problem in found.value.problems if problem.origin]


@pytest.mark.parametrize(("section", "problems"), [
    ("armhole: {to: shoulder, length: 20 cm, target: 30 cm}", [("two-extents", 41)]),
    ("armhole: {target: 30 cm}", [("missing-key", 9)]),
    ("armhole: {to: shoulder}", [("missing-key", 9)]),
    ("armhole: {to: shoulder, target: 30 cm, at: hem}", [("unknown-edge", 52)]),
    ("armhole: {to: shoulder, target: 30}", [("number-without-unit", 41)]),
    ("neck: {shape: heart, width: 10 cm, depth: 8 cm}", [("unknown-word", 23)]),
    ("neck: {shape: v, width: 10 cm}", [("missing-key", 9)]),
    ("neck: {shape: v, width: body.nek, depth: 8 cm}", [("unknown-name", 33)]),
    ("neck_edge: {shape: boat, width: 10 cm, depth: 8 cm, at: side}", [("unknown-word", 28)]),
    ("neck_edge: {shape: v, width: 10 cm, depth: 8 cm}", [("missing-key", 9)]),
    ("cap: {}", [("missing-key", 9)]),
    ("cap: {fit: armhole}", [("edge-text", 20)]),
    ("cap: {fit: [other.armhole]}", [("unknown-piece", 21)]),
    ("shoulders: {neck: 10 cm, slop: 3 cm}", [("unknown-key", 34)]),
])
def test_what_is_wrong_is_told_where_it_stands(section: str, problems: list[tuple[str, int]]) -> None:
    assert told(piece(section)) == problems


def test_what_is_stated_arrives_in_the_design() -> None:
    sections = [
        ("armhole: {length: 20 cm, target: 30 cm, block: 2 cm, at: armhole}", Armhole),
        ("neck: {shape: round, width: 12 cm, depth: 8 cm, slope: 3 cm}", Neck),
        ("neck_edge: {shape: v, width: 6 cm, depth: 8 cm, at: starting}", NeckEdge),
        ("shoulders: {neck: 12 cm, slope: 2 cm}", Shoulders),
    ]
    for text, kind in sections:
        section = designed(piece(text)).piece("piece").sections[1]
        assert isinstance(section, kind)
    armhole = designed(piece(sections[0][0])).piece("piece").sections[1]
    assert isinstance(armhole, Armhole) and armhole.block is not None
    assert (armhole.at, armhole.block.text, armhole.target.text) == ("both", "2 cm", "30 cm")


def test_a_cap_knows_the_edges_it_fits() -> None:
    text = piece("cap: {fit: other.armhole, ease: 1 cm}") + (
        "  other: {fabric: plain, colours: oat, start: {chain: 40 cm}, sections: [even: {to: shoulder}], edges: {both: [side, underarm, armhole]}}\n"
    )
    cap = designed(text).piece("piece").sections[1]
    assert isinstance(cap, Cap)
    assert cap.opening.text == "edge(other.armhole)"
