"""Colours as written: stripes and blocks are read, and what is wrong is told at its place."""

import pytest

from gaugewright.errors import ProblemsFound
from spec.vest import VEST, read

PLAIN = "colours: {stripes: surf, match: {to: back, at: 10 cm}, carry: 2}"


def with_colours(colours: str) -> str:
    """The vest with a patch in these colours, and a sequence of stripes to name."""
    patch = f"  patch:\n    fabric: body\n    start: {{chain: 20 cm}}\n    sections: [even: {{length: 20 cm}}]\n    {colours}\n"
    return VEST.replace("pieces:\n", "stripes: {surf: [{oat: 4}, {kelp: 3 cm}]}\npieces:\n" + patch, 1)


def problems(text: str) -> list[tuple[str, str]]:
    with pytest.raises(ProblemsFound) as caught:
        read(text)
    return [(p.name, p.origin.line_text[p.origin.location.column - 1 :].strip()[:8] if p.origin else "") for p in caught.value.problems]


def test_stripes_and_blocks_are_read() -> None:
    spec = read(with_colours(PLAIN)).spec
    assert spec.stripes["surf"] == ({"oat": "4"}, {"kelp": "3 cm"})
    striped = spec.pieces["patch"].colours
    assert not isinstance(striped, str) and striped is not None
    assert striped.match is not None and (striped.stripes, striped.match.to, striped.carry) == ("surf", "back", 2)
    blocks = read(with_colours("colours: {blocks: [{to: 5 cm, across: oat}, {across: [{oat: 30 %}, {kelp: rest}]}]}")).spec.pieces["patch"].colours
    assert not isinstance(blocks, str) and blocks is not None and blocks.blocks is not None
    assert [part.across for part in blocks.blocks] == ["oat", ({"oat": "30 %"}, {"kelp": "rest"})]


@pytest.mark.parametrize(("colours", "found"), [
    ("colours: {}", ("missing-key", "colours:")),
    ("colours: {stripes: suf}", ("unknown-stripes", "suf}")),
    ("colours: {stripes: [{sand: 4}, {kelp: 2}]}", ("unknown-yarn", "sand: 4}")),
    ("colours: {stripes: [{oat: 0}, {kelp: 2}]}", ("not-positive", "0}, {kel")),
    ("colours: {stripes: [{oat: 2.5}, {kelp: 2}]}", ("wrong-kind", "2.5}, {k")),
    ("colours: {stripes: [{oat: 30 %}, {kelp: 2}]}", ("number-without-unit", "30 %}, {")),
    ("colours: {stripes: [{oat: 4, kelp: 2}]}", ("one-yarn-each", "{oat: 4,")),
    ("colours: {stripes: surf, begin: 3}", ("number-without-unit", "3}")),
    ("colours: {stripes: surf, carry: 40}", ("out-of-range", "40}")),
    ("colours: {stripes: surf, begin: 3 cm, match: {to: back}}", ("two-beginnings", "3 cm, ma")),
    ("colours: {stripes: surf, match: {to: bakc}}", ("unknown-piece", "bakc}}")),
    ("colours: {stripes: surf, match: {at: 3 cm}}", ("missing-key", "match: {")),
    ("colours: {stripes: surf, order: [oat]}", ("unknown-key", "[oat]}")),
    ("colours: {stripes: surf, blocks: [{across: oat}]}", ("two-colour-plans", "[{across")),
    ("colours: {bands: {to: 20 cm, heights: [rest]}}", ("missing-key", "colours:")),
    ("colours: {blocks: [{across: oat}], carry: 3}", ("unknown-key", "3}")),
    ("colours: {blocks: [{across: oat}, {across: kelp}]}", ("missing-key", "{across:")),
    ("colours: {blocks: [{across: [{oat: rest}, {kelp: rest}]}]}", ("rest-twice", "{kelp: r")),
    ("colours: {blocks: [{across: [{oat: 5}, {kelp: rest}]}]}", ("number-without-unit", "5}, {kel")),
    ("colours: {blocks: [{across: [{oat: 5 cm, kelp: rest}]}]}", ("one-yarn-each", "{oat: 5 ")),
])
def test_what_is_wrong_is_told(colours: str, found: tuple[str, str]) -> None:
    assert found in problems(with_colours(colours))
