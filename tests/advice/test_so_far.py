"""Finished pieces weighed: their ratio goes to the rest, and no figure is surer than the scale."""

from functools import cache

import pytest
from tiny_specs import designed

from gaugewright import pipeline
from gaugewright.advice.so_far import SoFar, so_far
from gaugewright.advice.yarn_in_hand import found_amounts
from gaugewright.errors import ProblemsFound
from gaugewright.spec.yarn_text import parse_used
from gaugewright.yarn.counted import counted
from gaugewright.yarn.weighing import weighing

SPEC = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
yarns:
  oat: {colour: "#d9c9a8", weight: 5, ball: {mass: 50 g, length: 55 m}}
  kelp: {colour: "#3f5d4e", like: oat}
fabrics:
  plain: {stitch: hdc, swatch: {stitches: 13, rows: 11, width: 10 cm, height: 10 cm, mass: 9 g}}
  rib: {stitch: sc, loop: back, swatch: {stitches: 13, rows: 15, width: 10 cm, height: 10 cm, mass: 11 g}}
pieces:
  back: {fabric: plain, start: {chain: 40 cm}, sections: [even: {length: 30 cm}], colours: {stripes: [{oat: 4}, {kelp: 2}]}, edges: {both: [side]}}
  front: {fabric: plain, start: {chain: 40 cm}, sections: [even: {length: 30 cm}], colours: oat, edges: {both: [side]}}
  sleeve: {fabric: plain, make: 2, start: {chain: 20 cm}, sections: [even: {length: 25 cm}], colours: kelp}
  hem: {fabric: rib, start: {chain: 5 cm}, sections: [even: {length: 60 cm}], colours: oat}
seams: [{join: back.side, to: front.side}]
"""


@cache
def pattern() -> pipeline.Graded:
    return pipeline.grade(designed(SPEC))


def counted_grams(piece: str, count: int = 1) -> float:
    """What one such piece weighs by its count, without its seams."""
    shares = counted(pattern().design, pipeline.pieces_of(pattern(), "One size"))
    weights = weighing(pattern().design, shares)
    assert weights is not None
    return sum(weights.middle.of(share) for share in shares if share.piece == piece and share.term != "seams") / count


def asked(*texts: str, held: dict[str, float] | None = None) -> SoFar:
    return so_far(pattern(), "One size", parse_used(texts), held or {})


def test_a_piece_as_counted_changes_nothing() -> None:
    grams = counted_grams("back")
    found = asked(f"back={grams:.4f} g")
    for rest in found.rests:
        whole = found_amounts(pattern(), "One size")[rest.yarn.key]
        assert rest.went + rest.middle == pytest.approx(whole.counted.total, rel=1e-4)
    assert sum(rest.went for rest in found.rests) == pytest.approx(grams, rel=1e-4)


def test_a_piece_a_tenth_heavier_makes_the_rest_a_tenth_heavier() -> None:
    """Stitches and foundations, that is: tails and seams are as long in any hand."""
    found = asked(f"back={counted_grams('back') * 1.1:.4f} g")
    whole = found_amounts(pattern(), "One size")
    shares = counted(pattern().design, pipeline.pieces_of(pattern(), "One size"))
    weights = weighing(pattern().design, shares)
    assert weights is not None
    for rest in found.rests:
        left = [share for share in shares if share.colour == rest.yarn.key and share.term != "swatches" and (share.piece != "back" or share.term == "seams")]
        stitches = sum(weights.middle.of(share) for share in left if share.fabric)
        strands = sum(weights.middle.of(share) for share in left if not share.fabric)
        assert rest.middle == pytest.approx(stitches * 1.1 + strands, rel=1e-4)
        assert rest.went < whole[rest.yarn.key].counted.total * 1.1


def test_a_fabric_that_no_piece_tells_of_may_be_as_counted() -> None:
    found = asked(f"back={counted_grams('back') * 1.1:.4f} g")
    assert found.untold == ("rib",)
    rib, plain = found.ratios["rib"], found.ratios["plain"]
    assert rib.low == 1.0 and rib.middle == pytest.approx(1.1, rel=1e-4) == plain.middle
    assert (plain.low, plain.high) == (pytest.approx(1.1 - 0.5 / counted_grams("back"), rel=1e-4), pytest.approx(1.1 + 0.5 / counted_grams("back"), rel=1e-4))


def test_pieces_that_differ_widen_the_range() -> None:
    one, two = counted_grams("back") * 1.02, counted_grams("front") * 1.08
    plain = asked(f"back={one:.3f} g", f"front={two:.3f} g").ratios["plain"]
    assert plain.low < 1.02 and plain.high > 1.08 and 1.02 < plain.middle < 1.08


def test_of_two_sleeves_one_is_still_to_come() -> None:
    each = counted_grams("sleeve", 2)
    one, both = asked(f"sleeve={each:.3f} g"), asked(f"sleeve={each:.3f} g", f"sleeve={each:.3f} g")
    first, second = (next(rest for rest in found.rests if rest.yarn.key == "kelp") for found in (one, both))
    assert first.middle - second.middle == pytest.approx(each, rel=1e-3)


def test_what_is_in_hand_is_what_was_told_or_what_was_to_be_bought() -> None:
    grams = counted_grams("front")
    oat = next(rest for rest in asked(f"front={grams:.3f} g").rests if rest.yarn.key == "oat")
    assert oat.in_hand == pytest.approx(found_amounts(pattern(), "One size")["oat"].balls * 50 - oat.went) and not oat.told
    none = next(rest for rest in asked(f"front={grams:.3f} g", held={"oat": 0.0}).rests if rest.yarn.key == "oat")
    assert none.told and none.to_buy == pytest.approx(none.middle * 1.1)
    assert (none.balls - 1) * 50 < none.to_buy <= none.balls * 50


@pytest.mark.parametrize(("texts", "name"), [
    (("back=2 kg",), "used-unlikely"), (("back=4 g",), "used-unlikely"), (("hood=40 g",), "unknown-piece"),
    (("back=150 g", "back=150 g"), "used-unlikely"),
])  # fmt: skip
def test_what_no_piece_weighs_is_told_at_its_place(texts: tuple[str, ...], name: str) -> None:
    with pytest.raises(ProblemsFound) as fault:
        asked(*texts)
    assert name in {problem.name for problem in fault.value.problems}
    assert all(problem.origin and problem.origin.location.file == "--used" for problem in fault.value.problems)
