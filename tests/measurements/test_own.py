"""Somebody's own figures, with the gaps filled."""

import pytest

from gaugewright.errors import UserError
from gaugewright.measurements import body, own_body, size_labels
from gaugewright.measurements.model import Which


def test_what_was_measured_is_kept() -> None:
    values = own_body("Ada", {"bust": 1000.0, "upper_arm": 345.0}).values
    assert values["upper_arm"].mm == 345.0
    assert values["upper_arm"].source == "own measurement"
    assert values["upper_arm"].note == ""


def test_what_was_not_is_filled_and_marked() -> None:
    values = own_body("Ada", {"bust": 1000.0}).values
    assert values["upper_arm"].note.startswith("not measured")
    assert "survey" in values["upper_arm"].source
    assert "size chart" in values["armhole_depth"].source
    assert values["armhole_depth"].note.startswith("not measured")


def test_a_gap_is_read_between_two_sizes_of_the_chart() -> None:
    low, high = (body("women", label, "middle").values for label in ("M", "L"))
    middle = (low["bust"].mm + high["bust"].mm) / 2
    depth = own_body("Ada", {"bust": middle}).values["armhole_depth"]
    assert depth.mm == pytest.approx((low["armhole_depth"].mm + high["armhole_depth"].mm) / 2)
    assert not depth.confirmed


@pytest.mark.parametrize(("bust", "label"), [(400.0, "XS"), (1900.0, "5X")])
def test_beyond_the_chart_a_gap_is_held_at_its_end(bust: float, label: str) -> None:
    depth = own_body("Ada", {"bust": bust}).values["armhole_depth"]
    assert depth.mm == body("women", label, "middle").values["armhole_depth"].mm
    assert "held at the end of the chart" in depth.note


@pytest.mark.parametrize("which", ["women", "men", "child", "baby"])
def test_somebody_of_a_charts_girth_gets_that_charts_lengths(which: Which) -> None:
    for label in size_labels(which):
        chart = body(which, label, "middle").values
        own = own_body("Ada", {"bust": chart["bust"].mm}, which).values
        assert own["armhole_depth"].mm == pytest.approx(chart["armhole_depth"].mm)


def test_a_chest_will_do_for_a_man() -> None:
    values = own_body("Tom", {"chest": 1040.0}, "men").values
    assert values["bust"].mm == values["chest"].mm == 1040.0


def test_without_a_girth_nothing_is_filled() -> None:
    values = own_body("Ada", {"head": 560.0}).values
    assert {name: value.mm for name, value in values.items()} == {"head": 560.0}


def test_an_unknown_measure_is_named() -> None:
    with pytest.raises(UserError) as caught:
        own_body("Ada", {"bust": 1000.0, "antler": 300.0})
    assert caught.value.name == "unknown-measure"
    assert "antler" in str(caught.value)
