"""Hooks, yarn weights and project levels against charts in print."""

import pytest
from external.sources import source

from gaugewright.trade.hooks import hook_label, us_hook
from gaugewright.trade.levels import project_levels
from gaugewright.trade.yarn_weights import category_of, yarn_weight

DMC = "DMC technique page and NobleKnits: CYC Standard Yarn Weight System"


@source("published", "Craft Yarn Council, crochet hook sizes (several charts agree)")
@pytest.mark.parametrize(
    ("mm", "us"),
    [
        (2.25, "B-1"), (2.75, "C-2"), (3.25, "D-3"), (3.5, "E-4"), (3.75, "F-5"), (4, "G-6"), (4.5, "7"), (5, "H-8"),
        (5.5, "I-9"), (6, "J-10"), (6.5, "K-10.5"), (8, "L-11"), (9, "M/N-13"), (10, "N/P-15"), (15, "P/Q"), (16, "Q"),
    ],
)  # fmt: skip
def test_hooks_have_their_us_size(mm: float, us: str) -> None:
    assert us_hook(mm) == us
    assert hook_label(mm) == f"{mm:g} mm (US {us})"


@source("published", "charts that put P-16 at 11 mm, and others at 11.5 mm: no agreed size")
def test_a_hook_on_which_charts_disagree_is_named_in_millimetres_only() -> None:
    assert hook_label(11.5) == "11.5 mm"


@source("published", DMC)
@pytest.mark.parametrize(
    ("category", "name", "hook", "stitches"),
    [
        (1, "Super Fine", (2.25, 3.5), (21, 32)), (2, "Fine", (3.5, 4.5), (16, 20)), (3, "Light", (4.5, 5.5), (12, 17)),
        (4, "Medium", (5.5, 6.5), (11, 14)), (5, "Bulky", (6.5, 9), (8, 11)), (6, "Super Bulky", (9, 15), (7, 9)),
        (7, "Jumbo", (15, None), (None, 6)),
    ],
)  # fmt: skip
def test_yarn_weights_have_their_hooks_and_gauges(
    category: int, name: str, hook: tuple[float, float | None], stitches: tuple[int | None, int]
) -> None:
    weight = yarn_weight(category)
    assert (weight.name, weight.hook_mm, weight.stitches) == (name, hook, stitches)


@source("published", "Crochet World, Oct 2018, and 222 Handspun: super bulky 6 to 9 sts, hooks 9 to 16 mm")
def test_super_bulky_lies_within_an_earlier_edition() -> None:
    weight = yarn_weight(6)
    assert 6 <= (weight.stitches[0] or 0) <= weight.stitches[1] <= 9
    assert 9 <= weight.hook_mm[0] <= (weight.hook_mm[1] or 99) <= 16


@source("published", "a retailer's chart of metres to 100 g by category")
@pytest.mark.parametrize(("metres", "category"), [(800, 0), (500, 1), (300, 2), (230, 3), (170, 4), (100, 5), (58, 6), (30, 7)])
def test_metres_tell_the_category(metres: float, category: int) -> None:
    assert category_of(metres) == category


@source("published", "King Cole and Spotlight: UK names of yarn weights")
def test_uk_names_of_yarn() -> None:
    assert [yarn_weight(c).uk_name for c in (4, 5, 6)] == ["Aran", "Chunky", "Super chunky"]


@source("published", "Fiat Fiber Arts, Apr 2018, on the CYC project levels")
def test_project_levels_in_order() -> None:
    assert [level.name for level in project_levels()] == ["Basic", "Easy", "Intermediate", "Complex"]
