"""Joined motifs in words: what a maker needs to know at a piece's head, seams told as they are sewn, a border's round 1."""

import re

import pytest
from tiny_specs import designed

from gaugewright import pipeline
from gaugewright.render.text import render_text

SPEC = """\
gaugewright: 1
pattern: {title: Quay Squares, workshop: Ferry Lane Workshop}
sizes: {dimensions: {Small: {width: 45 cm, length: 60 cm}, Large: {width: 75 cm, length: 91 cm}}}
yarns: {oat: {colour: "#d9c9a8"}, kelp: {colour: "#3f5d4e"}, reed: {colour: "#8f8a5b"}}
fabrics:
  tall: {stitch: dc, worked: joined rounds, tool: 5 mm, gauge: "15 sts, 7.5 rows / 10 cm"}
  edging: {stitch: sc, worked: joined rounds, tool: 5 mm, gauge: "EDGE / 10 cm"}
pieces:
  square:
    fabric: tall
    start: {centre: flat}
    sections: [motif: {sides: SIDES, target: 13 cm}]
    total: 6.6667 cm
    colours: {bands: {to: total, heights: [75 %, rest]}, order: [oat, reed]}
    grid: {across: size.width, down: size.length, turns: [oat, kelp]}
  border: {fabric: edging, colours: reed, start: {pick_up: square.rim}, sections: [even: {length: 3 cm}]}
"""


def told(sides: int = 4, edge: str = "15 sts, 17 rows", old: str = "", new: str = "") -> str:
    text = SPEC.replace("SIDES", str(sides)).replace("EDGE", edge)
    found = pipeline.document(pipeline.grade(designed(text.replace(old, new) if old else text)), pipeline.Edition())
    return " ".join(render_text(found).replace("\u00a0", " ").split())


def test_the_head_says_how_many_begin_in_which_colour() -> None:
    text = told()
    assert "alike, " not in text and "Make 12 (30)" in text
    assert re.search(r"their first colour: 6 \(15\) in Oat, 6 \(15\) in Kelp\.", text)


def test_what_stands_for_a_motif_s_own_colour_is_explained_before_it_is_used() -> None:
    text = told()
    assert text.index("“The first colour”") < text.index("With the first colour, make an adjustable ring")
    assert "whose turn it is" not in text


def test_joining_names_the_stitch_that_is_explained() -> None:
    text = told()
    assert "Join in Reed: whip stitch, edge to edge" in text
    assert "through both edges" not in text  # “edge to edge” takes the outermost strands only


def test_ends_of_joining_lengths_are_counted() -> None:
    """Small: three across, four down: eight joins within rows and three between them, two ends each."""
    text = told()
    assert "Joining: Square" in text and re.search(r"Joining: Square\W+22 \(", text)


def test_a_square_has_one_measure_and_other_motifs_two_that_say_what_they_are() -> None:
    assert "Side" not in told().split("Square: measurements")[1].split("Foundation")[0]
    six = told(6).split("Square: measurements")[1].split("Foundation")[0]
    assert "From side to side" in six and "Along one side" in six


def test_a_piece_alike_in_all_sizes_is_drawn_in_none() -> None:
    text = told()
    assert "Square, before sewing." in text and "Square, before sewing. Drawn in size" not in text


def test_the_swatch_of_a_motif_is_a_motif_and_that_of_rounds_a_tube() -> None:
    text = told()
    assert "The swatch for Tall is a Square itself" in text
    assert "two and a half times" in text and "small tube" not in text


@pytest.mark.parametrize(
    ("edge", "found"),
    [
        ("15 sts, 17 rows", "sc in each of the 19 sts between the corners"),
        ("16.5 sts, 17 rows", "21 sc spread evenly over the 19 sts between the corners"),
        ("4.8 sts, 5 rows", "5 sc spread evenly over the 19 sts between the corners of a motif, along each of the 14 (22) sides of motifs that lie outside, but one sc more along"),
    ],
)
def test_a_border_s_round_1_says_how_many_along_each_side(edge: str, found: str) -> None:
    text = told(edge=edge)
    assert found in text
    assert re.search(r"one sc over each of the \d+ \(\d+\) joins .*; one sc in the corner space at each of the 4 outer corners", text)


def test_hexagons_have_markers_at_joins_too() -> None:
    text = told(6)
    assert re.search(r"Place a marker in the st at each of the \d+ \(\d+\) outer corners\. Place a marker of another colour in the st over each of the \d+ \(\d+\) joins", text)
    assert "scraps of yarn" in text


def test_a_single_motif_has_no_joins_to_pass() -> None:
    text = told(old="{width: 45 cm, length: 60 cm}, Large: {width: 75 cm, length: 91 cm}", new="{width: 19 cm, length: 19 cm}, Large: {width: 20 cm, length: 19 cm}")
    assert "sides of motifs" in text and "over each join" not in text and "0 joins" not in text


def test_joining_comes_before_the_border() -> None:
    text = told()
    assert text.index("Join them as told under Joining: Square") < text.index("Work the Border round the joined motifs")
    assert text.rindex("Then join row to row") < text.rindex("pick-up rnd")
