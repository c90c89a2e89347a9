"""Slips of the tape: unit and decimal point."""

import pytest

from gaugewright.measurements import TABLES, body, implausible, size_labels


@pytest.mark.parametrize("table", TABLES)
@pytest.mark.parametrize("read", ["lower", "upper"])
def test_every_body_in_the_tables_is_believable(table: str, read: str) -> None:
    for label in size_labels(table):
        for measure, value in body(table, label, read).values.items():  # type: ignore[arg-type]
            assert implausible(measure, value.mm, adult=table in ("women", "men")) == ""


@pytest.mark.parametrize(
    ("measure", "mm", "guess"),
    [
        ("bust", 96.0, "96 cm?"),
        ("bust", 9600.0, "96 cm?"),
        ("hip", 10.2, "102 cm?"),
        ("stature", 16.4, "164 cm?"),
    ],
)
def test_a_slip_of_the_decimal_point_is_guessed(measure: str, mm: float, guess: str) -> None:
    assert implausible(measure, mm).endswith(guess)


def test_inches_taken_for_centimetres_are_guessed_for_adults() -> None:
    assert implausible("bust", 380.0, adult=True).endswith("38 in?")
    assert implausible("bust", 380.0) == ""


def test_no_guess_is_made_where_none_fits() -> None:
    assert implausible("wrist", 0.0) == "0 cm is not a likely wrist (8 to 28 cm)"


def test_a_measure_without_bounds_is_not_judged() -> None:
    assert implausible("antler", 1.0) == ""
