"""Hooks, yarn weights, levels and paper."""

import pytest

from gaugewright.errors import UserError
from gaugewright.trade.hooks import hook_label
from gaugewright.trade.levels import project_level
from gaugewright.trade.paper import paper
from gaugewright.trade.yarn_weights import category_of, yarn_weight, yarn_weights


def test_a_hook_without_a_us_size_is_named_in_millimetres() -> None:
    assert [hook_label(mm) for mm in (7, 10.5, 12, 25, 40)] == ["7 mm", "10.5 mm", "12 mm", "25 mm", "40 mm"]


def test_a_thread_hook_has_its_steel_number() -> None:
    assert hook_label(1.65) == "1.65 mm (US steel 7)"
    assert hook_label(3.5) == "3.5 mm (US E-4)"


def test_thicker_yarn_takes_larger_hooks_and_fewer_stitches() -> None:
    weights = yarn_weights()
    assert [w.category for w in weights] == list(range(8))
    assert [w.hook_mm[0] for w in weights] == sorted(w.hook_mm[0] for w in weights)
    most = [w.stitches[1] for w in weights]
    assert most == sorted(most, reverse=True)


def test_jumbo_is_open_ended() -> None:
    jumbo = yarn_weight(7)
    assert (jumbo.stitches, jumbo.hook_mm, jumbo.metres_per_100g) == ((None, 6), (15.0, None), (None, 40))


def test_metres_between_two_categories_belong_to_neither() -> None:
    assert category_of(85) is None
    assert category_of(40) == 6
    assert category_of(5000) is None


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: yarn_weight(8), "unknown-yarn-weight"),
        (lambda: project_level("heroic"), "unknown-level"),
        (lambda: paper("A5½"), "unknown-paper"),
    ],
)
def test_what_there_is_not_is_named(call: object, name: str) -> None:
    with pytest.raises(UserError) as caught:
        call()  # type: ignore[operator]
    assert caught.value.name == name
    assert caught.value.hint


def test_names_are_found_whatever_their_capitals() -> None:
    assert paper("letter") == paper("LETTER")
    assert project_level("EASY").name == "Easy"
