"""Centres and crowns as they are written, and what is told where they are written wrong."""

import pytest
from tiny_specs import ONE_SIZE, designed, one_piece, problems

from gaugewright.design.model import Crown

PIECE = "pieces:\n  piece:\n    fabric: round\n    colours: oat\n    start: {%s}\n    sections:\n      - %s\n"


def text(start: str, section: str) -> str:
    return ONE_SIZE + PIECE % (start, section)


@pytest.mark.parametrize(("written", "stitches"), [("centre: flat", None), ("centre: 8", 8)])
def test_a_centre_holds_a_count_or_as_many_as_lie_flat(written: str, stitches: int | None) -> None:
    piece = designed(text(written, "crown: {stitches: 24}")).piece("piece")
    assert (piece.start.kind, piece.start.stitches, piece.start.in_rounds) == ("centre", stitches, True)
    assert (piece.bottom, piece.top) == ("centre", "edge")


def test_a_crown_as_designed() -> None:
    design = designed(text("ring: 40 cm", "crown: {close: true, each: 7, colour: kelp}"))
    crown = design.piece("piece").sections[0]
    assert isinstance(crown, Crown)
    assert (crown.target, crown.stitches, crown.close, crown.each, crown.fabric, crown.colour) == (None, None, True, 7, "round", "kelp")
    assert crown.origin.line_text.strip().startswith("- crown:")
    assert not design.piece("piece").start.stitches


def test_the_edges_of_a_centre_can_be_named_in_formulas() -> None:
    more = "  strip: {fabric: plain, colours: oat, start: {chain: finished(piece.edge)}, sections: [even: {rows: 2}]}\n"
    assert one_piece(text("centre: flat", "crown: {stitches: 24}") + more, "strip").main.start.stitches == 24


@pytest.mark.parametrize(
    ("start", "section", "name", "place", "hint"),
    [
        ("centre: flatt", "crown: {stitches: 24}", "unknown-word", "flatt", "flat"),
        ("centre: 0", "crown: {stitches: 24}", "not-positive", "0}", "at least 1"),
        ("centre: 2.5", "crown: {stitches: 24}", "wrong-kind", "2.5", "whole number"),
        ("centre: [6]", "crown: {stitches: 24}", "wrong-kind", "centre: [6]", "whole number"),
        ("centre: 6, ring: 40 cm", "crown: {stitches: 24}", "two-starts", "6", "centre"),
        ("centre: flat", "crown: {each: 6}", "missing-key", "crown: {each", "close: true"),
        ("centre: flat", "crown: {target: 40 cm, stitches: 24}", "two-widths", "24", "keep one"),
        ("centre: flat", "crown: {target: 40 cm, close: true}", "two-widths", "true", "keep one"),
        ("centre: flat", "crown: {target: 40}", "number-without-unit", "40", "40 cm"),
        ("centre: flat", "crown: {target: 40 cm, eech: 6}", "unknown-key", "eech", "each"),
        ("centre: flat", "crown: {target: 40 cm, fabric: rund}", "unknown-fabric", "rund", "round"),
        ("centre: flat", "crown: {target: bodi.bust}", "unknown-name", "bodi.bust", "body.bust"),
        ("chain: 20 cm", "crown: {stitches: 24}", "crown-in-rows", "crown: {stitches", "centre: flat"),
    ],
)
def test_what_is_written_wrong_is_told_at_its_place(start: str, section: str, name: str, place: str, hint: str) -> None:
    [problem] = problems(text(start, section))
    assert problem.name == name, problem
    assert problem.origin is not None
    assert problem.origin.line_text[problem.origin.location.column - 1 :].removeprefix("- ").startswith(place), problem
    assert hint in problem.hint


def test_one_section_is_a_crown_or_something_else() -> None:
    [problem] = problems(ONE_SIZE + PIECE % ("centre: flat", "crown: {stitches: 24}\n        even: {rounds: 2}"))
    assert problem.name == "two-kinds"
