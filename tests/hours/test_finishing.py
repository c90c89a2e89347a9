"""Finishing, apart from the pieces: seams by length, ends by number, picking up, buttons, laying out."""

import pytest

from gaugewright import pipeline
from gaugewright.hours.finishing import Chore
from gaugewright.hours.sizes import size_time
from instructions.specs import ROOT
from tiny_specs import ONE_SIZE, designed, graded

TWO = ONE_SIZE + """\
pieces:
  back: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {length: 30 cm}], edges: {both: [side]}}
  front: {like: back}
  pocket: {fabric: plain, colours: kelp, start: {chain: 8 cm}, sections: [even: {length: 10 cm}]}
seams: [{join: back.side, to: front.side}]
attach: [{piece: pocket, to: front, up: 5 cm, in: 4 cm, from: side}]
"""


def chores(text: str) -> dict[str, Chore]:
    pieces = {key: sized.values[0] for key, sized in graded(text).pieces.items()}
    return {chore.kind: chore for chore in size_time(designed(text), pieces).finishing}


def test_a_side_seam_is_sewn_on_both_sides_and_a_pocket_along_three() -> None:
    """2 x 30 cm, and 10 + 8 + 10 cm; half a minute the centimetre."""
    found = chores(TWO)["seams"]
    assert found.amount == pytest.approx(600 + 280)
    assert found.time.mean == pytest.approx(88 * 30)


def test_two_ends_to_each_strand_and_to_each_seam() -> None:
    found = chores(TWO)["ends"]
    assert found.amount == 2 * 3 + 2 * 3
    assert (found.time.low, found.time.high) == (12 * 60, 12 * 180)


def test_what_isnt_there_is_not_told() -> None:
    assert set(chores(TWO)) == {"seams", "ends", "laying out"}


def test_pieces_made_twice_are_counted_twice() -> None:
    alone = ONE_SIZE + "pieces: {piece: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {length: 30 cm}]}}\n"
    assert chores(alone.replace("colours: oat", "make: 3, colours: oat"))["ends"].amount == 3 * chores(alone)["ends"].amount


def case(name: str) -> str:
    return (ROOT / "tests/cases" / name / "spec.yaml").read_text(encoding="utf-8")


def test_an_edge_folded_in_half_is_half_a_seam_and_one_made_twice_is_sewn_twice() -> None:
    """Without all seams but one: the hood's top, and the heels of two slippers."""
    folded = case("folded-edges")
    seams = folded[folded.index("seams:") :]
    edges = {(key, name): sized.values[0].edges[name].length for key, sized in graded(folded).pieces.items() for name in ("top", "bottom")}
    for seam, length in (("hood.top, to: hood.top", edges["hood", "top"] / 2), ("slipper.heel, to: slipper.bottom", edges["slipper", "bottom"])):
        joins = "seams:\n  - {join: back.shoulder, to: right_front.shoulder}\n  - {join: back.shoulder, to: left_front.shoulder}\n"
        without, alone = folded.replace(seams, joins), folded.replace(seams, f"{joins}  - {{join: {seam}}}\n")
        assert chores(alone)["seams"].amount - chores(without)["seams"].amount == pytest.approx(length)


def test_ribbing_turned_sideways_has_its_ends_sewn_where_it_goes_round() -> None:
    """Once for the hem, twice for the cuffs, as long as the rib is deep; what is sewn on takes a seam of its length."""
    pieces = {key: sized.values[0] for key, sized in graded(case("sideways-rib")).pieces.items()}
    side = 2 * pieces["back"].edges["side"].length
    rings = pieces["hem_rib"].worked["width"] + 2 * pieces["cuff_rib"].worked["width"]
    assert chores(case("sideways-rib"))["seams"].amount == pytest.approx(side + rings + pieces["sewn_rib"].worked["length"])


def test_motifs_are_joined_side_by_side() -> None:
    """A throw of 6 x 9 squares has 5 x 9 + 6 x 8 joins, each of a square's side."""
    throw = pipeline.grade(pipeline.load(ROOT / "samples/quayside-throw/spec.yaml"))
    pieces = {key: sized.values[0] for key, sized in throw.grading.pieces.items()}
    square = pieces["square"]
    assert square.layout is not None and (square.layout.across, square.layout.down) == (6, 9)
    found = next(chore for chore in size_time(throw.design, pieces).finishing if chore.kind == "seams")
    assert found.amount == pytest.approx((5 * 9 + 6 * 8) * square.edges["top"].length / 4)


def test_buttons_and_picked_up_stitches_of_the_vest() -> None:
    """Five buttons; a button is sewn on in five minutes, a stitch picked up in ten seconds."""
    vest = pipeline.grade(pipeline.load(ROOT / "samples/groyne-vest/spec.yaml"))
    pieces = {key: sized.values[0] for key, sized in vest.grading.pieces.items()}
    found = {chore.kind: chore for chore in size_time(vest.design, pieces).finishing}
    assert (found["buttons"].amount, found["buttons"].time.mean) == (5, 5 * 300)
    picked = {key: sum(start.stitches for start in piece.main.start.pick_ups) for key, piece in pieces.items() if key in ("front_band", "armhole_band")}  # type: ignore[union-attr]
    assert found["picking up"].amount == picked["front_band"] + 2 * picked["armhole_band"]
    assert found["picking up"].time.mean == 10 * found["picking up"].amount
