"""Yarn against published worked examples: swatches weighed, balls counted, units paired, and how far publications disagree."""

import numpy as np
import pytest
from external.sources import source
from tiny_specs import designed, graded

from gaugewright.design.buying import Buying
from gaugewright.gauge.readings import READ_TO
from gaugewright.trade.consumption import consumption
from gaugewright.units import parse_length, parse_mass, parse_quantity
from gaugewright.yarn.amounts import Amount, Terms, amounts
from gaugewright.yarn.weighing import SCALE_READS_TO, mass_per_stitch, unsure

INCH, YARD = 25.4, 914.4


def spec(swatch: str, ball: str, piece: str, buying: str = "margin: 0 %") -> str:
    return f"""\
gaugewright: 1
pattern: {{title: Tiny, workshop: Ferry Lane Workshop}}
buying: {{{buying}}}
yarns: {{oat: {{colour: "#d9c9a8", ball: {ball}}}}}
fabrics: {{plain: {{stitch: sc, swatch: {{{swatch}}}}}}}
pieces: {{piece: {{{piece}}}}}
"""


def amount(text: str) -> Amount:
    found = amounts(designed(text), {"piece": graded(text).pieces["piece"]["One size"]})
    assert found is not None
    return found["oat"]


@source("published", "Interweave, 'Yarn usage for knitting vs crochet: a science experiment': 20 sts x 20 rows of sc weigh 19 g, of hdc 28 g: 0.0475 and 0.07 g to the stitch")
def test_a_stitch_weighs_its_share_of_the_swatch() -> None:
    for grams, size, each in ((19, "6.25 in, height: 5.75 in", 0.0475), (28, "6.75 in, height: 9.25 in", 0.07)):
        (fabric,) = designed(spec(f"stitches: 20, rows: 20, width: {size}, mass: {grams} g", "{mass: 100 g, length: 110 m}", "start: {chain: 20 cm}, sections: [even: {length: 5 cm}]")).fabrics
        assert mass_per_stitch(fabric) == pytest.approx(each)
        assert unsure(fabric) >= 0.5 / grams, "the scale reads whole grams"


@source("published", "Yarn Nomads, 'Another reason to swatch', 2016: a swatch of 6 x 6 in weighs 4 g of a skein of 50 g and 87 yd; a blanket of 60 x 60 in takes 696 yd unrounded, and 800 yd bought hold 15 % more")
@pytest.mark.parametrize(("margin", "yards"), [("0 %", 696), ("15 %", 800)])
def test_a_blanket_from_its_swatch(margin: str, yards: float) -> None:
    """At 24 sts and 24 rows to 6 in: 240 sts and 240 rows. The published sum has no foundation and no tails, which are apart here."""
    text = spec("stitches: 24, rows: 24, width: 6 in, height: 6 in, mass: 4 g", "{mass: 50 g, length: 87 yd}", "start: {chain: 60 in}, sections: [even: {length: 60 in}]", f"margin: {margin}")
    found = amount(text)
    assert found.metres is not None
    apart = (found.counted.foundations + found.counted.tails) * (1 + found.buying.margin) * 87 / 50
    assert found.metres[1] * 1000 / YARD - apart == pytest.approx(yards, abs=0.5)


def by_length(yards: float, ball: float) -> int:
    """Balls for so many yards, weighed as grams of a yarn of a yard to the gram."""
    one = Amount("oat", Terms(stitches=yards), Terms(), Terms(), Buying(0.0), ball=ball)
    return one.balls


@source("published", "Elizabeth Smith Knits, 'Mud Season', 11 sizes: yards and skeins of 131 yd")
def test_skeins_of_eleven_sizes() -> None:
    yards = [525, 575, 625, 675, 750, 825, 875, 925, 1025, 1125, 1225]
    assert [by_length(each, 131) for each in yards] == [5, 5, 5, 6, 6, 7, 7, 8, 8, 9, 10]


@source("published", "Wools of Nations, 'How to substitute one yarn for another', 2021: 10 skeins of 112 m are 6 of 192 m; Sarah Punderson, '2903 Cardigan': 448 and 832 yd are 7 and 13 balls of 64 yd")
def test_balls_of_another_length() -> None:
    assert [by_length(10 * 112, 192), by_length(448, 64), by_length(832, 64)] == [6, 7, 13]


@source("published", "Babycocktails, 'Chartreuse', 12 sizes in yards and metres, two of them misprinted: 1950 yd are 1783 m (printed 1791), 2400 yd 2195 m (printed 2276)")
def test_yards_and_metres() -> None:
    yards = [1450, 1550, 1650, 1750, 1850, 1950, 2050, 2150, 2200, 2250, 2300, 2400]
    printed = [1325, 1417, 1508, 1600, 1691, 1791, 1874, 1965, 2011, 2057, 2103, 2276]
    off = [yard for yard, metres in zip(yards, printed, strict=True) if abs(parse_length(f"{yard} yd") / 1000 - metres) > 1]
    assert off == [1950, 2400]


@source("published", "ISO tex system in Textile Learner, 2012: tex is denier / 9; Ne 30 is 177.17 denier, 590.5 / 30 tex; 1 oz of yarn is 28.35 g")
def test_fineness_and_ounces() -> None:
    assert parse_quantity("177.17 den").amount == pytest.approx(590.5 / 30, rel=1e-3)
    assert parse_mass("1 oz") == pytest.approx(28.35, abs=0.01)


@source("published", "Devious Knitter, 'Did the designer include enough yarn to swatch?': designers add 10 to 15 %")
def test_the_margin_unless_set_is_what_designers_add() -> None:
    text = spec("stitches: 10, rows: 10, width: 10 cm, height: 10 cm, mass: 5 g", "{mass: 50 g, length: 100 m}", "start: {chain: 20 cm}, sections: [even: {length: 5 cm}]").replace("buying: {margin: 0 %}\n", "")
    assert 0.10 <= designed(text).buying.margin <= 0.15


@source("published", "Ice Yarns (blog), yards = sts to the inch x length x width / 6; C. W. Carvalho, Fiber Images, 1997, and Ladybug Daydreams: crochet takes 30 to 33 % more")
@pytest.mark.parametrize("stitch", ["sc", "hdc", "dc", "tr"])
def test_rules_of_thumb_lie_between_the_ends(stitch: str) -> None:
    """36 in to the yard by 6 in: six inches of yarn for each inch of row height; a third more for crochet."""
    found = consumption(stitch)
    assert found is not None
    assert found.low < 36 / 6 < 36 / 6 * 1.33 < found.high


@source("published", "Windchilde, 'Crochet yarn estimating': 785.5 in of worsted yarn unravelled of a 5 in square in sc; Interweave: 19 g of chunky yarn in 6.25 x 5.75 in")
def test_what_was_measured_lies_between_an_estimates_ends() -> None:
    """Their squares as pieces at their categories' middle gauges, not weighed; a category's metres make grams of Interweave's."""
    def bare(gauge: str, weight: int, width: str, height: str) -> Amount:
        text = spec("stitches: 1, rows: 1, width: 1 cm, height: 1 cm", "{mass: 1 g, length: 1 m}", f"start: {{chain: {width}}}, sections: [even: {{length: {height}}}]")
        text = text.replace("swatch: {stitches: 1, rows: 1, width: 1 cm, height: 1 cm}", f'gauge: "{gauge}"').replace("ball: {mass: 1 g, length: 1 m}", f"weight: {weight}")
        return amount(text)

    worsted = bare("13 sts, 13 rows / 4 in", 4, "5 in", "5 in")
    assert worsted.estimated and worsted.metres is not None
    assert worsted.metres[0] * 1000 < 785.5 * INCH < worsted.metres[1] * 1000
    chunky = bare("20 sts, 21.5 rows / 6.25 in", 5, "6.25 in", "5.75 in")
    assert chunky.low.stitches < 19 < chunky.high.stitches


@source("published", "The Snugglery, 'Does crochet use more yarn': the yarn of 4 in of sc makes 4.75 in of dc or tr at the same width")
def test_tall_stitches_take_less_for_an_area() -> None:
    sc, tr = consumption("sc"), consumption("tr")
    assert sc is not None and tr is not None
    assert (tr.low / sc.low, tr.high / sc.high) == (pytest.approx(4 / 4.75), pytest.approx(4 / 4.75))


@source("library", "NumPy's random generator: half a gram, half a stitch and half a row drawn evenly and apart from one another")
@pytest.mark.parametrize(("mass", "stitches", "rows"), [(41, 18, 14), (13, 31, 16), (90, 6, 5), (9, 20, 20)])
def test_how_sure_a_weighed_swatch_is(mass: float, stitches: int, rows: int) -> None:
    """Squares add: the spread of what is drawn is that of one even draw as wide as the rule says."""
    text = spec(f"stitches: {stitches}, rows: {rows}, width: 20 cm, height: 20 cm, mass: {mass} g", "{mass: 100 g, length: 110 m}", "start: {chain: 20 cm}, sections: [even: {length: 20 cm}]")
    (fabric,) = designed(text).fabrics
    drawn = np.random.default_rng(7).uniform(-1, 1, (3, 200_000))
    each = (mass + SCALE_READS_TO * drawn[0]) / ((stitches + READ_TO * drawn[1]) * (rows + READ_TO * drawn[2]))
    assert float(each.std()) * stitches * rows / mass * 3**0.5 == pytest.approx(unsure(fabric), rel=0.03)
