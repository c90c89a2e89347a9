"""Amounts by hand: every term, margin, swatches, a ball's edge, estimates and their ends."""

from dataclasses import replace

import pytest
from tiny_specs import designed, graded

from gaugewright.errors import ProblemsFound
from gaugewright.yarn.amounts import Amount, amounts
from gaugewright.yarn.counted import counted

SPEC = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
yarns:
  oat: {colour: "#d9c9a8", weight: 5, ball: {mass: 100 g, length: 100 m}}
  kelp: {colour: "#3f5d4e", like: oat}
fabrics:
  plain: {stitch: hdc, swatch: {stitches: 20, rows: 20, width: 20 cm, height: 20 cm, mass: 40 g}}
  band: {stitch: sc, swatch: {stitches: 20, rows: 20, width: 20 cm, height: 20 cm, mass: 60 g}}
pieces:
  back:
    fabric: plain
    start: {chain: 40 cm}
    sections: [even: {length: 30 cm}]
    edges: {both: [side]}
    colours: {stripes: [{oat: 10}, {kelp: 20}], carry: 0}
  edging:
    fabric: band
    start: {pick_up: [back.top]}
    sections: [even: {length: 2 cm}]
    colours: kelp
seams: [{join: back.side, to: back.side}]
"""


def found(text: str) -> dict[str, Amount]:
    size = graded(text).pieces["back"].labels[0]
    told = amounts(designed(text), {key: sized[size] for key, sized in graded(text).pieces.items()})
    assert told is not None
    return told


def bought(buying: str) -> str:
    return SPEC.replace("yarns:", f"buying: {{{buying}}}\nyarns:", 1)


def test_every_term_by_hand() -> None:
    """A stitch weighs a tenth of a gram, one of the band 0.15 g; a metre of yarn a gram; the seam is as long as
    the back is high, 3.5 x 30 cm of strand in the colour of the last row."""
    told = found(SPEC)
    oat, kelp = told["oat"].counted, told["kelp"].counted
    assert (oat.stitches, kelp.stitches) == (pytest.approx(40 * 10 * 0.1), pytest.approx(40 * 20 * 0.1 + 40 * 0.15))
    assert (oat.picked_up, kelp.picked_up) == (0.0, pytest.approx(40 * 0.15))
    chain = graded(SPEC).pieces["back"].values[0].main.start.chains  # type: ignore[union-attr]
    assert (oat.foundations, kelp.foundations) == (pytest.approx(chain * 0.05), 0.0)
    assert (oat.tails, kelp.tails) == (pytest.approx(2 * 0.1524), pytest.approx(4 * 0.1524))
    assert (oat.seams, kelp.seams) == (0.0, pytest.approx(3.5 * 0.3))
    assert oat.total == pytest.approx(oat.stitches + oat.foundations + oat.tails)


def test_swatches_are_a_line_of_their_own() -> None:
    """27 x 27 stitches, a chain of 27 and two tails: in the colour the fabric is first worked in, by itself or in the balls."""
    apart, within = found(SPEC), found(bought("swatches: in the balls"))
    plain, band = (27 * 27 + 27 / 2) * 0.1 + 2 * 0.1524, (27 * 27 + 27 / 2) * 0.15 + 2 * 0.1524
    assert (apart["oat"].counted.swatches, apart["kelp"].counted.swatches) == (pytest.approx(plain), pytest.approx(band))
    for colour, swatch in (("oat", plain), ("kelp", band)):
        assert within[colour].counted == apart[colour].counted
        assert within[colour].total == pytest.approx(apart[colour].total + swatch)


@pytest.mark.parametrize(("buying", "margin"), [("margin: 15 %", 0.15), ("margin: 12.5", 0.125), ("margin: 0 %", 0.0), ("swatches: apart", 0.1)])
def test_the_margin_is_the_specs(buying: str, margin: float) -> None:
    told = found(bought(buying))["kelp"]
    assert told.total == pytest.approx(told.counted.total * (1 + margin))
    assert told.margin == pytest.approx(told.counted.total * margin)


@pytest.mark.parametrize(("total", "balls"), [(198.0, 2), (200.0, 2), (202.0, 3)])
def test_two_grams_over_a_balls_edge_need_the_next_ball(total: float, balls: int) -> None:
    """The margin counted: without it the rows take less than two balls in each case."""
    oat = found(SPEC)["oat"]
    terms = replace(oat.counted, stitches=oat.counted.stitches + total / 1.1 - oat.counted.total)
    one = replace(oat, counted=terms, low=terms, high=terms)
    assert one.total == pytest.approx(total)
    assert terms.total < 200 and one.balls == balls
    assert one.left(terms) == pytest.approx(balls * 100 - terms.total)


def test_a_swatch_that_is_not_sure_enough_asks_for_a_ball_more() -> None:
    """Six stitches of six rows are sure to 12 %: more than a margin of 2 % holds where the balls are nearly used up."""
    text = bought("margin: 2 %")
    small = text.replace("stitches: 20, rows: 20, width: 20 cm, height: 20 cm, mass: 40 g", "stitches: 6, rows: 6, width: 6 cm, height: 6 cm, mass: 8.2 g")
    large = text.replace("mass: 40 g", "mass: 91.1 g")
    sure, unsure = found(large)["oat"], found(small)["oat"]
    assert sure.counted.total == pytest.approx(unsure.counted.total, rel=2e-3) and sure.balls == unsure.balls == 1
    assert unsure.high.total > 100 > unsure.counted.total and unsure.lacks_a_ball
    assert sure.high.total < 100 and not sure.lacks_a_ball


def test_without_a_weighed_swatch_there_are_two_ends_and_no_figure() -> None:
    bare = SPEC.replace(", mass: 40 g", "").replace(", mass: 60 g", "")
    told = found(bare)
    assert all(one.estimated and one.low.total < one.counted.total == one.high.total for one in told.values())
    kelp = told["kelp"]
    assert kelp.total == kelp.bought(kelp.high) and kelp.fewest_balls <= kelp.balls and not kelp.lacks_a_ball
    # Published for hdc: 5.4 to 11.7 heights of a row of 10 mm, at the ball's metre to the gram.
    assert (told["oat"].low.stitches, told["oat"].high.stitches) == (pytest.approx(400 * 0.0536, rel=0.01), pytest.approx(400 * 0.1167, rel=0.01))


def test_one_fabric_that_was_not_weighed_makes_the_whole_an_estimate() -> None:
    mixed = found(SPEC.replace(", mass: 60 g", ""))
    assert all(one.estimated for one in mixed.values())
    assert mixed["oat"].low.stitches == pytest.approx(40, rel=0.05), "the weighed part is as sure as it was"


def test_a_category_tells_metres_where_no_ball_does() -> None:
    """Category 5 holds 90 to 120 m in 100 g: the same metres weigh a third more at one end."""
    bare = SPEC.replace(", mass: 40 g", "").replace(", mass: 60 g", "")
    ball, category = found(bare)["oat"], found(bare.replace(", ball: {mass: 100 g, length: 100 m}", ""))["oat"]
    assert (category.low.stitches, category.high.stitches) == (pytest.approx(ball.low.stitches / 1.2), pytest.approx(ball.high.stitches / 0.9))
    assert category.metres == pytest.approx(ball.metres)
    assert category.balls == category.fewest_balls == 0
    jumbo = bare.replace("weight: 5, ball: {mass: 100 g, length: 100 m}", "weight: 7")
    assert amounts(designed(jumbo), {key: sized.values[0] for key, sized in graded(jumbo).pieces.items()}) is None


def test_a_ball_in_yards_and_ounces() -> None:
    metric = found(SPEC.replace("mass: 100 g, length: 100 m", "mass: 99.2233 g, length: 182.88 m"))
    other = found(SPEC.replace("mass: 100 g, length: 100 m", "mass: 3.5 oz, length: 200 yd"))
    assert other["kelp"].balls == metric["kelp"].balls
    assert other["kelp"].metres == pytest.approx(metric["kelp"].metres, rel=1e-4)


def test_what_was_counted_is_in_one_piece_and_one_term_each() -> None:
    shares = counted(designed(SPEC), {key: sized.values[0] for key, sized in graded(SPEC).pieces.items()})
    keys = [share[:-1] for share in shares]
    assert len(keys) == len(set(keys)) and all(share.amount > 0 for share in shares)


@pytest.mark.parametrize(("old", "new", "name", "there"), [
    ("yarns:", "buying: {margin: -5 %}\nyarns:", "out-of-range", "-5 %}"),
    ("yarns:", "buying: {margin: 150 %}\nyarns:", "out-of-range", "150 %}"),
    ("yarns:", "buying: {margin: 5 g}\nyarns:", "wrong-unit", "5 g}"),
    ("yarns:", "buying: {margin: [1]}\nyarns:", "wrong-kind", "[1]}"),
    ("yarns:", "buying: {swatches: maybe}\nyarns:", "unknown-word", "maybe}"),
    ("yarns:", "buying: {balls: 3}\nyarns:", "unknown-key", "balls: 3}"),
    ("length: 100 m", "length: 0 m", "not-positive", "0 m}}"),
    ("mass: 100 g", "mass: -100 g", "not-positive", "-100 g, length"),
    ("mass: 40 g", "mass: 0 g", "not-positive", "0 g}}"),
])  # fmt: skip
def test_what_cannot_be_is_told_at_its_place(old: str, new: str, name: str, there: str) -> None:
    text = SPEC.replace(old, new, 1)
    with pytest.raises(ProblemsFound) as fault:
        designed(text)
    (problem,) = fault.value.problems
    assert problem.name == name and problem.origin is not None
    _, line, column = problem.origin.location
    assert text.splitlines()[line - 1][column - 1 :].startswith(there)
