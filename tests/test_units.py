"""Numbers with units: what makers type, what is refused, and the wording out."""

import math

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugewright.units import (
    UNITS,
    Quantity,
    UnitError,
    cm_text,
    inches_text,
    mm_text,
    parse_length,
    parse_mass,
    parse_quantity,
)


@pytest.mark.parametrize(
    ("text", "amount", "dimension"),
    [
        ("20.5 cm", 205.0, "length"),
        ("16 1/2 in", 419.1, "length"),
        ("1/2 in", 12.7, "length"),
        ("½ in", 12.7, "length"),
        ("16½ in", 419.1, "length"),
        ("16 ½ inches", 419.1, "length"),
        ("58m", 58000.0, "length"),
        ("12 ft", 3657.6, "length"),
        ("3 yd", 2743.2, "length"),
        ("5 mm", 5.0, "length"),
        ("  -5 CM ", -50.0, "length"),
        ("100 g", 100.0, "mass"),
        ("3 1/2 oz", 99.2233309375, "mass"),
        ("0.1 kg", 100.0, "mass"),
        ("1 lb", 453.59237, "mass"),
        ("120 tex", 120.0, "fineness"),
        ("30 %", 0.3, "number"),
        ("16 1/2", 16.5, "number"),
        (".5", 0.5, "number"),
    ],
)
def test_what_makers_type(text: str, amount: float, dimension: str) -> None:
    assert parse_quantity(text) == Quantity(amount, dimension)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("text", "column", "fixed"),
    [
        ("20,5 cm", 2, "20.5 cm"),
        ('4"', 1, "4 in"),
        ("16 1/2″", 6, "16 1/2 in"),
        ("6'", 1, "6 ft"),
        ("16-1/2 in", 2, "16 1/2 in"),
        ("5 ft 4 in", 5, "64 in"),
        ("16 3/2 in", 0, "17.5"),
        ("100 g / 58 m", 6, "100 g"),
        ("1,000 m", 1, "1000 m"),
    ],
)
def test_a_refusal_says_what_to_write(text: str, column: int, fixed: str) -> None:
    with pytest.raises(UnitError) as caught:
        parse_quantity(text)
    assert caught.value.column == column
    assert f"{fixed}" in caught.value.hint
    assert parse_quantity(fixed).amount > 0


@pytest.mark.parametrize(
    "text",
    [
        "",
        "  ",
        "cm",
        "x 5 cm",
        "1/0 in",
        "9**9**9 cm",
        "5 parsec",
        "5 pc",
        "3 hours",
        "3 zorkmids",
        "4 __class__",
        "9" * 60 + " cm",
        "5 cm " * 40,
    ],
)
def test_what_is_no_quantity(text: str) -> None:
    with pytest.raises(UnitError) as caught:
        parse_quantity(text)
    assert caught.value.message and caught.value.hint


def test_a_near_unit_is_offered() -> None:
    with pytest.raises(UnitError) as caught:
        parse_length("20 cmm")
    assert (caught.value.column, caught.value.hint) == (3, "did you mean mm?")


def test_a_unit_outside_the_table_is_looked_up_by_name_only() -> None:
    assert parse_length("1 fathom") == pytest.approx(1828.8, rel=1e-5)
    with pytest.raises(UnitError):
        parse_length("1 fathom**2")


def test_a_length_is_not_a_mass_and_a_number_is_neither() -> None:
    for text, read in (("5 g", parse_length), ("5 cm", parse_mass), ("5", parse_length), ("30 %", parse_length)):
        with pytest.raises(UnitError):
            read(text)
    with pytest.raises(UnitError) as caught:
        parse_length("16 1/2")
    assert caught.value.hint == "write 16 1/2 cm or 16 1/2 in"


def test_the_table_agrees_with_a_reference_library() -> None:
    """Oracle: pint, an independent table of the same definitions."""
    registry = pint.UnitRegistry()
    names = {
        "ins": "in",
        "cms": "cm",
        "yds": "yd",
        "lbs": "lb",
        "kilos": "kg",
        "kilo": "kg",
        "gramme": "gram",
        "grammes": "gram",
        "den": "denier",
    }
    base = {"length": "mm", "mass": "g", "fineness": "tex", "number": ""}
    for name, (factor, dimension) in UNITS.items():
        theirs = registry.Quantity(1, names.get(name, name)).to(base[dimension]).magnitude
        assert math.isclose(float(factor), theirs, rel_tol=1e-12), name


_LENGTH_UNITS = sorted(name for name, (_, dimension) in UNITS.items() if dimension == "length")


@settings(deadline=None)
@given(
    st.integers(0, 999),
    st.integers(1, 64),
    st.integers(2, 64),
    st.sampled_from(_LENGTH_UNITS),
    st.sampled_from(["", " ", "  "]),
)
def test_mixed_fractions_come_back(whole: int, top: int, bottom: int, unit: str, gap: str) -> None:
    top %= bottom
    written = f"{whole} {top}/{bottom}{gap or ' '}{unit}"
    assert parse_length(written) == pytest.approx((whole + top / bottom) * float(UNITS[unit][0]), rel=1e-12)


@settings(deadline=None)
@given(
    st.integers(0, 10**7),
    st.integers(0, 4),
    st.sampled_from(["mm", "cm", "in", "g", "oz", "%", ""]),
    st.sampled_from(["", " "]),
)
def test_decimals_come_back(digits: int, places: int, unit: str, gap: str) -> None:
    value = digits / 10**places
    factor = float(UNITS[unit][0]) if unit else 1.0
    assert parse_quantity(f"{value:.{places}f}{gap}{unit}").amount == pytest.approx(value * factor, rel=1e-12)


@settings(deadline=None)
@given(st.text(max_size=40))
def test_no_text_breaks_the_reader(text: str) -> None:
    try:
        amount = parse_quantity(text).amount
    except UnitError as fault:
        assert 0 <= fault.column <= len(text)
    else:
        assert math.isfinite(amount)


@pytest.mark.parametrize(
    ("mm", "cm", "inches"),
    [
        (412.7, "41.5", "16¼"),
        (420.0, "42", "16½"),
        (419.1, "42", "16½"),
        (12.7, "1.5", "½"),
        (3.2, "0.5", "⅛"),
        (0.0, "0", "0"),
        (126.9, "12.5", "5"),
        (127.0, "12.5", "5"),
        (130.0, "13", "5"),
        (-50.8, "-5", "-2"),
    ],
)
def test_lengths_worded(mm: float, cm: str, inches: str) -> None:
    assert (cm_text(mm), inches_text(mm)) == (cm, inches)


@settings(deadline=None)
@given(st.floats(0, 5000))
def test_wording_strays_at_most_half_its_step(mm: float) -> None:
    assert abs(float(cm_text(mm)) * 10 - mm) <= 2.5 + 1e-6
    inches = inches_text(mm)
    whole = inches.rstrip("⅛¼⅜½⅝¾⅞")
    part = {"⅛": 1, "¼": 2, "⅜": 3, "½": 4, "⅝": 5, "¾": 6, "⅞": 7}.get(inches[-1], 0) / 8
    shown = (int(whole) if whole else 0) + part
    step = 0.125 if mm / 25.4 < 5 else 0.25
    assert abs(shown - mm / 25.4) <= step / 2 + 1e-6


def test_hooks_are_worded_as_they_are_marked() -> None:
    assert [mm_text(mm) for mm in (2.25, 3.75, 5.5, 10.0, 12.0)] == ["2.25", "3.75", "5.5", "10", "12"]
