"""The smallest coins of currencies against another library's table."""

import csv
from pathlib import Path

from external.sources import source

from gaugewright.rounding import to_coins
from gaugewright.spec.money import CODES, places_of

DATA = Path(__file__).with_name("data")


def places() -> dict[str, int]:
    with (DATA / "currency_places.csv").open(encoding="utf-8", newline="") as file:
        return {row["code"]: int(row["places"]) for row in csv.DictReader(file)}


@source("library", "OpenJDK 25, java.util.Currency: ISO 4217 minor units of every code in use")
def test_every_currency_has_its_minor_unit() -> None:
    assert {code: places_of(code) for code in CODES} == places()


@source("common practice", "a till rounds half a coin up; laws differ by country and none is cited")
def test_half_a_coin_goes_up() -> None:
    from decimal import Decimal

    assert [str(to_coins(Decimal(text), 2)) for text in ("0.005", "0.015", "2.675", "2.6749")] == ["0.01", "0.02", "2.68", "2.67"]
