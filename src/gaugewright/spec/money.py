"""Money as an exact decimal with its ISO 4217 code: `7.40 EUR`."""

import re
from decimal import Decimal
from typing import NamedTuple

# ISO 4217 codes in use; those with no minor unit, and those with three places, are named below.
CODES = frozenset(
    "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF "
    "CHF CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD "
    "HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD "
    "MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN "
    "PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY "
    "TTD TWD TZS UAH UGX USD UYU UZS VES VND VUV WST XAF XCD XCG XOF XPF YER ZAR ZMW ZWG".split()
)
_NO_PLACES = frozenset("BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF".split())
_THREE_PLACES = frozenset("BHD IQD JOD KWD LYD OMR TND".split())
_SIGNS = {"€": "EUR", "£": "GBP", "$": "USD", "¥": "JPY"}


class Money(NamedTuple):
    """An exact amount with its currency's code."""

    amount: Decimal
    code: str

    def __str__(self) -> str:
        return f"{self.amount:.{places_of(self.code)}f} {self.code}"


class MoneyError(Exception):
    """A price that can't be read; `column` counts from 0 within its text."""

    def __init__(self, message: str, column: int, hint: str) -> None:
        self.message, self.column, self.hint = message, column, hint
        super().__init__(message)


def places_of(code: str) -> int:
    """Decimal places of a currency."""
    return 0 if code in _NO_PLACES else 3 if code in _THREE_PLACES else 2


def parse_money(text: str) -> Money:
    """Reads a price, exactly.

    >>> parse_money("7.40 EUR"), str(parse_money("7.4 EUR"))
    (Money(amount=Decimal('7.40'), code='EUR'), '7.40 EUR')
    """
    match = re.fullmatch(r"\s*([0-9]{1,9})(?:([.,])([0-9]{1,4}))?\s*([A-Za-z]{3})\s*", text)
    if below := re.fullmatch(r"\s*[-−]\s*([0-9].*)", text):
        raise MoneyError(f"{text.strip()[:20]} is less than nothing", len(text) - len(text.lstrip()), f"write {below[1].strip()}")
    if not match:
        raise MoneyError(f"{text.strip()[:20]!r} is not a price", 0, _advice(text))
    whole, mark, part, code = match[1], match[2], match[3] or "", match[4]
    places, column = places_of(code.upper()), match.start(4)
    if mark == ",":
        raise MoneyError("a comma can't stand inside a price", match.start(2), f"write {whole}.{part} {code.upper()}")
    if code.upper() not in CODES:
        raise MoneyError(f"{code} is not a currency code in use", column, "write a code such as EUR, GBP or USD")
    if code not in CODES:
        raise MoneyError(
            f"{code} is not how a currency code is written", column, f"write {text.strip()[:-3]}{code.upper()}"
        )
    if len(part) > places:
        raise MoneyError(
            f"{code} has {places} decimal places, not {len(part)}",
            match.start(3),
            f"write {_cut(whole, part, places)} {code}",
        )
    return Money(Decimal(f"{whole}.{part}" if part else whole), code)


def parse_rate(text: str) -> Money:
    """What one unit of another currency costs, to as many places as a bank states.

    >>> parse_rate("1.1643 EUR"), parse_rate("0.0058 EUR").amount
    (Money(amount=Decimal('1.1643'), code='EUR'), Decimal('0.0058'))
    """
    match = re.fullmatch(r"\s*([0-9]{1,9}(?:\.[0-9]{1,8})?)\s*([A-Z]{3})\s*", text)
    if not match:
        raise MoneyError(f"{text.strip()[:20]!r} is not a rate", 0, "write what one of it costs, such as 1.1643 EUR")
    if match[2] not in CODES:
        raise MoneyError(f"{match[2]} is not a currency code in use", match.start(2), "write a code such as EUR, GBP or USD")
    if not Decimal(match[1]):
        raise MoneyError("money that costs nothing can't be changed", 0, "write what one of it costs, such as 1.1643 EUR")
    return Money(Decimal(match[1]), match[2])


def _cut(whole: str, part: str, places: int) -> str:
    return f"{whole}.{part[:places]}" if places else whole


def _advice(text: str) -> str:
    sign = next((code for mark, code in _SIGNS.items() if mark in text), "EUR")
    number = re.search(r"[0-9]+(?:[.,][0-9]{1,2})?", text)
    return f"write {number[0].replace(',', '.') if number else '7.40'} {sign}"
