"""Bands joined along edges as they are written, and what is told where they are written wrong."""

import pytest
from tiny_specs import ONE_SIZE, designed, problems

from gaugewright.design.model import Even, Rest

PIECES = """\
pieces:
  back: {fabric: plain, colours: oat, start: {chain: 40 cm}, sections: [even: {length: 20 cm}], edges: {bottom: hem}}
  band:
    fabric: plain
    colours: oat
    start: {%s}
"""


def test_a_joined_band_as_designed() -> None:
    band = designed(ONE_SIZE + PIECES % "chain: 6 cm, join: back.hem, gather: 10 %").piece("band")
    assert (band.start.joined, band.start.edges, band.start.gather, band.start.sewn) == (True, (("back", "hem"),), 0.1, False)
    (section,) = band.sections
    assert isinstance(section, Even) and section.extent == Rest() and section.origin.line_text.strip().startswith("start:")
    sewn = designed(ONE_SIZE + PIECES % "chain: 6 cm, join: [back.hem, back.top], join_by: sewing").piece("band")
    assert sewn.start.sewn and len(sewn.start.edges) == 2
    assert not designed(ONE_SIZE + PIECES % "chain: 6 cm, join: back.hem").piece("back").start.joined


@pytest.mark.parametrize(
    ("start", "name", "place", "hint"),
    [
        ("ring: 6 cm, join: back.hem", "join-without-chain", "back.hem", "chain: 6 cm"),
        ("chain: 6 cm, join: back.hemm", "unknown-edge", "hemm", "hem"),
        ("chain: 6 cm, join: bakc.hem", "unknown-piece", "bakc.hem", "back.hem"),
        ("chain: 6 cm, join: back.hem, gather: 60 %", "out-of-range", "60 %", "50 %"),
        ("chain: 6 cm, join: back.hem, gather: lots", "wrong-unit", "lots", ""),
        ("chain: 6 cm, join: back.hem, join_by: glue", "unknown-word", "glue", "sewing"),
    ],
)
def test_what_is_written_wrong_is_told_at_its_place(start: str, name: str, place: str, hint: str) -> None:
    [problem] = problems(ONE_SIZE + PIECES.replace("%s", start))
    assert problem.name == name, problem
    assert problem.origin is not None
    assert problem.origin.line_text[problem.origin.location.column - 1 :].startswith(place), problem
    assert hint in problem.hint


@pytest.mark.parametrize(("more", "key"), [("gather: 5 %", "gather"), ("join_by: sewing", "join_by")])
def test_what_goes_with_joining_is_told_where_nothing_is_joined(more: str, key: str) -> None:
    text = ONE_SIZE + PIECES.replace("%s", f"chain: 6 cm, {more}") + "    sections: [even: {rows: 4}]\n"
    [problem] = problems(text)
    assert problem.name == "join-without-edge" and f"take out `{key}`" in problem.hint
    assert problems(text.replace(f", {more}", "")) == []
    assert [one.name for one in problems(text.replace(more, f"join: back.hem, {more}").replace("rows: 4", "length: rest"))] == []


def test_a_piece_that_is_not_joined_still_needs_sections() -> None:
    assert [one.name for one in problems(ONE_SIZE + PIECES % "chain: 6 cm")] == ["missing-key"]
