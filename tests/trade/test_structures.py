"""What a yarn's make means: every make has its traits, each with a source, and no grade is ever given."""

import re
from typing import get_args

import pytest

from gaugewright.spec.vocabulary import Structure
from gaugewright.trade.care import care_lines, care_names, gentler_than
from gaugewright.trade.cautions import cautions
from gaugewright.trade.structures import is_raised, traits
from gaugewright.trade.substitution import metres_per_100g, near_enough
from gaugewright.trade.yarn_weights import yarn_weights


@pytest.mark.parametrize("structure", get_args(Structure))
def test_every_make_has_traits_with_sources_and_no_grade(structure: str) -> None:
    found = traits(structure, ["wool", "cotton"])
    assert found
    assert all(trait.source and trait.text.endswith(".") for trait in found)
    # Grades run 5 to 1: none of handmade cloth is published, so no figure stands in any trait.
    assert [trait.text for trait in found if re.search(r"\d", trait.text)] == []


def test_unspun_yarn_has_all_its_cautions() -> None:
    assert {trait.key for trait in traits("roving", ["wool"]) if trait.gravity == "caution"} == {"strength", "seams", "shedding", "pilling", "felting", "ripping"}


def test_only_untreated_wool_felts() -> None:
    keys = [{trait.key for trait in traits("roving", [fibre], treatment)} for fibre, treatment in (("wool", ""), ("wool", "machine-washable"), ("cotton", ""))]
    assert ["felting" in one for one in keys] == [True, False, False]


def test_plied_yarn_asks_for_nothing() -> None:
    assert [trait.gravity for trait in traits("plied", ["wool"])] == ["fact"]


def test_a_treated_wool_is_cared_for_as_such() -> None:
    assert care_lines(care_names(["wool", "nylon"], "machine-washable")).lines[0] == "Machine wash at 30 °C on the gentlest cycle."
    assert care_lines(care_names(["merino"], "machine-washable")).unknown == ()
    assert care_lines(care_names(["wool", "nylon"])).lines[0] == "Wash by hand in cool water; do not rub or wring."


def test_a_make_may_ask_for_gentler_care_than_its_fibre() -> None:
    assert care_lines(care_names(["polyester"], structure="chenille")).lines[4] == "Do not dry clean."
    assert care_lines(care_names(["acrylic"], structure="roving")).lines[0].startswith("Wash by hand")
    assert care_names(["acrylic"], structure="plied") == ("acrylic",)


def test_gentler_care_is_told_by_treatment() -> None:
    assert gentler_than(["wool"], ["cotton"]) == (
        "Wash by hand in cool water; do not rub or wring.", "Do not bleach.", "Dry flat; do not tumble dry.", "Steam lightly, or press on medium heat under a damp cloth.",
    )
    assert gentler_than(["moonbeam"], ["cotton"]) == gentler_than(["cotton"], []) == ()


def test_pile_and_plant_fibre_may_flare() -> None:
    assert is_raised("chenille", ["cotton"]) and is_raised("", ["Mohair"]) and not is_raised("roving", ["wool"])
    keys = [one.key for one in cautions("women", ["M"], ["cotton"], raised=True, pile=True)]
    assert keys == ["flame", "pile", "hands", "local-rules"]


def test_nearness_by_category_and_without_one() -> None:
    assert [near_enough(100, one.category).share for one in yarn_weights()] == [0.2] * 5 + [0.15] * 3
    assert near_enough(58, None).share == 0.15 and near_enough(225, None).share == 0.2
    # 85 m lie between categories 5 and 6: either has 15 %.
    assert near_enough(85, None).share == 0.15
    assert metres_per_100g(50, 110_000) == pytest.approx(220)
