"""Colour bands in rows: from the bottom edge, the last one up to the top; a section's own colour first."""

from tiny_specs import ONE_SIZE, graded, problems

PIECE = """\
bands:
  tide: {to: total, heights: [25 %, 3.4 cm, rest]}
pieces:
  piece:
    fabric: plain
    start: {chain: 20 cm}
    sections:
      - even: {length: 20 cm}
    colours: {bands: tide, order: [oat, kelp, oat]}
"""


def bands(text: str) -> list[tuple[str, int, int]]:
    return [(band.colour, band.first, band.last) for band in graded(text).plans["piece"]["M"].bands]


def test_bands_fill_the_height_that_the_sections_make() -> None:
    assert bands(ONE_SIZE + PIECE) == [("oat", 1, 5), ("kelp", 6, 8), ("oat", 9, 20)]


def test_heights_may_use_the_total_even_where_none_is_stated() -> None:
    assert bands(ONE_SIZE + PIECE.replace("25 %", "total / 2")) == [("oat", 1, 10), ("kelp", 11, 13), ("oat", 14, 20)]


def test_a_sections_own_colour_goes_first_and_like_neighbours_are_one() -> None:
    text = PIECE.replace("even: {length: 20 cm}", "even: {length: 6 cm, colour: kelp}\n      - even: {length: 14 cm}")
    assert bands(ONE_SIZE + text) == [("kelp", 1, 8), ("oat", 9, 20)]


def test_a_band_of_less_than_a_row_is_told() -> None:
    assert [p.name for p in problems(ONE_SIZE + PIECE.replace("3.4 cm", "3 mm"))] == ["band-too-low"]


def test_a_taper_in_its_own_colour_gives_the_foundation_its_colour() -> None:
    text = PIECE.replace("even: {length: 20 cm}", "taper: {rows: 20, target: 30 cm, colour: kelp}")
    plan = graded(ONE_SIZE + text).plans["piece"]["M"]
    assert plan.start_colour == plan.colour_of(1) == "kelp"
