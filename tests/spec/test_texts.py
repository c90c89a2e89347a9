"""Gauges and prices as text."""

from decimal import Decimal

import pytest

from gaugewright.spec.gauge_text import GaugeError, parse_gauge
from gaugewright.spec.money import CODES, Money, MoneyError, parse_money


@pytest.mark.parametrize(
    ("text", "gauge"),
    [
        ("8 sts, 7 rows / 10 cm", (8, 100.0, 7, 100.0)),
        ("8 sts, 6.5 rows / 10 cm", (8, 100.0, 13, 200.0)),
        ("8 1/2 sts and 6 1/2 rows / 4 in", (17, 203.2, 13, 203.2)),
        ("7 rows, 8 stitches/10cm", (8, 100.0, 7, 100.0)),
        ("9 sts x 6 rounds / 1/2 ft", (9, 152.4, 6, 152.4)),
    ],
)
def test_gauges(text: str, gauge: tuple[float, ...]) -> None:
    assert parse_gauge(text)[:4] == pytest.approx(gauge)
    assert parse_gauge(text).text == text


@pytest.mark.parametrize(
    ("text", "name", "column", "fixed"),
    [
        ("8 sts / 10 cm", "gauge-without-rows", 0, "8 sts, 7 rows / 10 cm"),
        ("7 rows / 10 cm", "gauge-without-stitches", 0, "8 sts, 7 rows / 10 cm"),
        ("8 sts, 6 1/2 rows over 10 cm", "gauge-text", 28, "8 sts, 6 1/2 rows / 10 cm"),
        ("8 loops, 7 rows / 10 cm", "gauge-text", 0, "8 sts, 7 rows / 10 cm"),
        ("8 sts, 0 rows / 10 cm", "not-positive", 7, ""),
        ("8 sts, 7 rows / 0 cm", "not-positive", 15, ""),
        ("8 sts, 7 rows / 10", "gauge-text", 16, "10 cm"),
        ("8 sts, 7 1/0 rows / 10 cm", "gauge-text", 7, ""),
        ("8 sts, 7.123 rows / 10 cm", "gauge-text", 7, ""),
        ("", "gauge-text", 0, "8 sts, 7 rows / 10 cm"),
    ],
)
def test_gauges_refused(text: str, name: str, column: int, fixed: str) -> None:
    with pytest.raises(GaugeError) as caught:
        parse_gauge(text)
    assert (caught.value.name, caught.value.column) == (name, column)
    assert fixed in caught.value.hint and caught.value.hint


def test_prices_are_exact_and_have_a_code() -> None:
    assert parse_money("7.40 EUR") == Money(Decimal("7.40"), "EUR")
    assert parse_money("800JPY") == Money(Decimal("800"), "JPY")
    assert (str(parse_money("7.4 EUR")), str(parse_money("800 JPY")), str(parse_money("1 KWD"))) == (
        "7.40 EUR",
        "800 JPY",
        "1.000 KWD",
    )
    assert sum((parse_money("0.10 EUR").amount for _ in range(3)), Decimal(0)) == Decimal("0.30")
    assert all(len(code) == 3 and code.isupper() for code in CODES)


@pytest.mark.parametrize(
    ("text", "column", "fixed"),
    [
        ("7,40 EUR", 1, "7.40 EUR"),
        ("7.40", 0, "7.40 EUR"),
        ("€7.40", 0, "7.40 EUR"),
        ("£7", 0, "7 GBP"),
        ("7.40 eur", 5, "7.40 EUR"),
        ("7.405 EUR", 2, "7.40 EUR"),
        ("800.5 JPY", 4, "800 JPY"),
        ("seven", 0, "7.40 EUR"),
    ],
)
def test_prices_refused_say_what_to_write(text: str, column: int, fixed: str) -> None:
    with pytest.raises(MoneyError) as caught:
        parse_money(text)
    assert (caught.value.column, caught.value.hint) == (column, f"write {fixed}")
    assert parse_money(fixed)


def test_a_code_that_is_none() -> None:
    with pytest.raises(MoneyError) as caught:
        parse_money("7.40 XQQ")
    assert caught.value.column == 5
