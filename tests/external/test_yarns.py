"""Yarns against what is published: how cloth hangs, how yarns are substituted, what fineness and mass to the area are."""

from dataclasses import replace
from pathlib import Path

import pint
import pytest
from external.sources import source
from hypothesis import given
from hypothesis import strategies as st
from tiny_specs import designed

from gaugewright import pipeline
from gaugewright.advice.swatch import advise
from gaugewright.gauge.hanging import growth_between, hung
from gaugewright.gauge.model import Gauge
from gaugewright.rounding import up
from gaugewright.spec.readings import read_swatch
from gaugewright.trade.structures import traits
from gaugewright.trade.substitution import metres_per_100g, near_enough
from gaugewright.yarn.hanging import grams_per_m2, lengthens_more
from gaugewright.yarn.substitute import NewYarn, fabrics_of_yarns, main_yarns, mass_factor, substituted

FOUR = 4 * 25.4
UNITS: "pint.UnitRegistry[float]" = pint.UnitRegistry()

SCARF = """\
gaugewright: 1
pattern: {title: Pier Scarf, workshop: Ferry Lane Workshop}
yarns: {oat: {weight: 4, ball: {mass: 50 g, length: 112 m}}}
fabrics: {plain: {stitch: hdc, swatch: {stitches: 17, rows: 23, width: 4 in, height: 4 in, mass: 12 g}}}
pieces: {scarf: {start: {chain: 40 cm}, sections: [even: {length: 180 cm}]}}
"""


@source("published", "r/knittinghelp thread, October 2024: one acrylic, 17 sts and 23 rows to 4 in washed, 17 and 21 hung with a weight; 9.5 % longer, width unchanged")
def test_rows_that_lengthen_by_hanging_are_graded_as_they_hang(tmp_path: Path) -> None:
    """From the readings to the spec's swatch to the rows: 40 in hung are 210 rows of 21 to 4 in, not 230 of 23."""
    readings = tmp_path / "readings.yaml"
    readings.write_text("washed: {stitches: [{count: 17, over: 4 in}], rows: [{count: 23, over: 4 in}]}\nhung: {stitches: [{count: 17, over: 4 in}], rows: [{count: 21, over: 4 in}]}\n", encoding="utf-8")
    found = advise(read_swatch(readings), None, "")
    assert found.growth == pytest.approx(0.095, abs=0.0005)
    assert found.block["hung"] == "11.1 cm"
    text = SCARF.replace("height: 4 in", f"height: {found.block['height']}, hung: {found.block['hung']}").replace("180 cm", "40 in")
    graded = pipeline.grade(designed(text))
    assert graded.design.fabric("plain").growth == pytest.approx(0.095, abs=0.01)  # printed to the millimetre
    assert len(graded.grading.pieces["scarf"].values[0].main.rows) == pytest.approx(210, abs=1)
    assert hung(Gauge(17, FOUR, 23, FOUR), 2 / 21).stitch_width == FOUR / 17


@source("published", "Andrea Gaughan Knits, 'Blocked vs unblocked gauge' (Chione sweater): 44 rows unblocked, 46 blocked; length - 4 %")
def test_a_change_of_state_in_rows() -> None:
    assert growth_between(Gauge(29, FOUR, 44, FOUR), Gauge(28, FOUR, 46, FOUR)) == pytest.approx(-0.04, abs=0.005)


@source("published", "Samurai Knitter, 'Row gauge', 2006: heavier yarn, cotton and silk stretch more")
def test_cotton_and_silk_lengthen_more() -> None:
    design = designed(SCARF)
    told = {fibre: lengthens_more(replace(design, yarns=(replace(design.yarns[0], fibre=((fibre, 100.0),)),))) for fibre in ("cotton", "silk", "wool", "acrylic")}
    assert told == {"cotton": ("cotton",), "silk": ("silk",), "wool": (), "acrylic": ()}


@source("published", "Turkish J. Engineering & Environmental Sciences, 'Factors affecting the pilling performance of knitted wool fabrics': low twist pills more")
def test_less_twist_is_expected_to_pill_more() -> None:
    words = {make: next(trait.text for trait in traits(make) if trait.key == "pilling") for make in ("plied", "spun", "roving")}
    assert "fewer pills" in words["plied"] and "more than plied" in words["spun"] and "more than from spun" in words["roving"]


@source("published", "docslib handout 'Yarn substitutions': within 20 % of the yards to 50 g, fine to worsted; 15 %, bulky and super bulky")
def test_how_near_a_substitute_comes() -> None:
    assert [near_enough(100, category).share for category in (2, 3, 4, 5, 6)] == [0.2, 0.2, 0.2, 0.15, 0.15]
    near = near_enough(200, 4)
    assert (near.low, near.high) == pytest.approx((160, 240))


@source("published", "Wools of Nations, 'How to substitute one yarn for another', 2021: 10 skeins of 112 m are 1120 m, 5.8 and so 6 skeins of 192 m")
def test_skeins_are_substituted_by_their_metres() -> None:
    """The scarf in the other yarn at its own gauge: the same metres, whatever either weighs."""
    graded = pipeline.grade(designed(SCARF))
    yarns = main_yarns(graded.design, graded.grading)
    new = NewYarn(4, (), 50.0, 192_000.0, None, "", "", "")
    other = pipeline.grade(substituted(graded.design, yarns, fabrics_of_yarns(graded.grading, yarns), new, graded.design.fabric("plain").flat))
    first, second = ((pipeline.side(one).amounts.values[0] or {})["oat"].total / 50 for one in (graded, other))
    assert first * 112 == pytest.approx(second * 192)
    assert (10 * second / first, up(10 * second / first)) == (pytest.approx(5.8, abs=0.05), 6)


@source("published", "Ice Yarns blog, Petite Republic: yards = gauge x length x width / 6, good for middle weights")
def test_a_larger_stitch_takes_yarn_in_proportion() -> None:
    """By area the rule is a gauge's multiple, so by the stitch its inverse: a stitch twice as large takes twice the yarn."""
    design = designed(SCARF)
    same = NewYarn(4, (), 50.0, 112_000.0, None, "", "", "")
    own = design.fabric("plain").flat
    assert mass_factor(design, design.yarns[0], same, own) == pytest.approx(1)
    assert mass_factor(design, design.yarns[0], same, Gauge(17, 2 * FOUR, 23, 2 * FOUR)) == pytest.approx(2)


@source("published", "practical knitting technology text, 'Conversion formulae': 5 oz to the square yard are 170 g to the square metre")
@source("library", "pint: ounces, yards, metres, tex")
def test_mass_to_the_area() -> None:
    """A swatch of a square yard that weighs 5 oz."""
    yard = UNITS.Quantity(1, "yard").to("mm").magnitude
    fabric = replace(designed(SCARF).fabric("plain"), gauge=Gauge(100, yard, 100, yard), swatch_mass=UNITS.Quantity(5, "ounce").to("gram").magnitude)
    assert grams_per_m2(fabric) == pytest.approx(170, abs=0.5)
    assert grams_per_m2(fabric) == pytest.approx(UNITS.Quantity(5, "ounce / yard ** 2").to("gram / meter ** 2").magnitude)


@source("published", "Texcoms Textile Handbook, 2023, p. 147: g/m2 is stitches to the area x yarn to the stitch x tex")
@source("library", "pint: tex")
def test_mass_to_the_area_from_fineness() -> None:
    """6000 stitches to the square metre, 40 mm of a yarn of 450 tex in each: 108 g."""
    tex = UNITS.Quantity(450, "gram / kilometer")
    mass = (6000 * UNITS.Quantity(40, "mm") * tex).to("gram").magnitude
    fabric = replace(designed(SCARF).fabric("plain"), gauge=Gauge(60, 1000.0, 100, 1000.0), swatch_mass=mass)
    assert grams_per_m2(fabric) == pytest.approx(108)


@source("library", "pint: tex is grams to a kilometre, a yard 0.9144 m, an ounce 28.35 g")
@given(st.floats(10, 1000), st.floats(5, 2000))
def test_metres_to_100_g_are_the_inverse_of_tex(grams: float, metres: float) -> None:
    tex = (UNITS.Quantity(grams, "gram") / UNITS.Quantity(metres, "meter")).to("tex").magnitude
    assert metres_per_100g(grams, metres * 1000) == pytest.approx(100_000 / tex)


@source("published", "Textile Learner, 2012: tex is 1000 by the metric count (Nm 60 is 16.67 tex)")
def test_the_metric_count_of_a_ball() -> None:
    """Nm is metres to a gram."""
    assert 1000 / (metres_per_100g(1, 60_000) / 100) == pytest.approx(16.67, abs=0.005)
