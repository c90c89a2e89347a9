"""Numbers with units: one small grammar on the way in, one wording on the way out.

In: what a maker types ("16 1/2 in", "20.5 cm", "100 g"). Out: `Quantity` in mm, grams, tex or a
plain number; and text in cm, inches or mm. The grammar is our own because general unit libraries
misread what makers type ("16 1/2 in" as 8 in, "20,5 cm" as 205 cm); pint is asked only about a
unit's name that the table below doesn't hold, and never sees the text. Lengths are worded from mm
each time, cm never from inches nor inches from cm, so that two roundings never add up.
"""

import math
import re
from fractions import Fraction
from typing import NamedTuple

from gaugewright.rounding import to_step
from gaugewright.unit_names import UNITS
from gaugewright.unit_names import Dimension as Dimension
from gaugewright.unit_names import UnitError as UnitError
from gaugewright.unit_names import unit_named as unit_named

LONGEST_TEXT = 80
LARGEST = 1e9  # mm, g or plain: beyond any yarn order, and far from the end of a float


class Quantity(NamedTuple):
    """An amount with its dimension: lengths in mm, masses in g, fineness in tex."""

    amount: float
    dimension: Dimension


GLYPHS = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_GLYPH_CLASS = "".join(GLYPHS)
_INCH_MARKS, _FOOT_MARKS = '"″”“', "'′’‘"

# Longest first: a mixed fraction, a lone fraction, a decimal. ASCII digits only.
NUMBER = re.compile(
    rf"(?P<whole>[0-9]+)[ \t]+(?P<top>[0-9]+)/(?P<bottom>[0-9]+)(?![0-9.])"
    rf"|(?P<whole_glyph>[0-9]+)[ \t]*(?P<glyph>[{_GLYPH_CLASS}])|(?P<lone_glyph>[{_GLYPH_CLASS}])"
    r"|(?P<lone_top>[0-9]+)/(?P<lone_bottom>[0-9]+)(?![0-9.])"
    r"|(?P<decimal>[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
)
UNIT = re.compile(r"%|[A-Za-z]+(?![A-Za-z0-9_.(])")


def number_value(match: re.Match[str], at: int = 0) -> Fraction:
    """The exact value of a `NUMBER` match; `at` is added to the column of a fault."""
    part = match.groupdict()
    if len(match.group()) > 24:
        raise UnitError("this number is too long to be meant", at, "write at most a dozen digits")
    if part["decimal"]:
        return Fraction(part["decimal"])
    glyph = part["glyph"] or part["lone_glyph"]
    whole = int(part["whole"] or part["whole_glyph"] or 0)
    top, bottom = (
        (int(p) for p in GLYPHS[glyph].split("/"))
        if glyph
        else (
            int(part["top"] or part["lone_top"]),
            int(part["bottom"] or part["lone_bottom"]),
        )
    )
    if bottom == 0:
        raise UnitError(f"the fraction {top}/0 has nothing below its line", at, "write a fraction such as 1/2")
    if part["whole"] and top >= bottom:
        raise UnitError(
            f"{match.group()} mixes a whole number with a fraction of 1 or more", at,
            f"write {_plain(whole + Fraction(top, bottom))}",
        )  # fmt: skip
    return whole + Fraction(top, bottom)


def parse_quantity(text: str) -> Quantity:
    """Reads one number with at most one unit; a fraction belongs to the unit after it.

    >>> parse_quantity("16 1/2 in"), parse_quantity("30 %")
    (Quantity(amount=419.1, dimension='length'), Quantity(amount=0.3, dimension='number'))
    """
    if len(text) > LONGEST_TEXT:
        raise UnitError("this text is too long for a number and a unit", 0, "write one number and one unit")
    start = len(text) - len(text.lstrip())
    sign = -1 if text[start : start + 1] in ("-", "−") else 1
    start += sign < 0 or text[start : start + 1] == "+"
    start += len(text[start:]) - len(text[start:].lstrip())
    number = NUMBER.match(text, start)
    if not number:
        raise UnitError(
            f"{text.strip()[:20]!r} doesn't begin with a number", start, "write a number and a unit, such as 20.5 cm"
        )
    _refuse_comma(text, number)
    amount = sign * number_value(number, start)
    at = number.end() + len(text[number.end() :]) - len(text[number.end() :].lstrip())
    if at == len(text):
        return _checked(amount, "number", start)
    unit = UNIT.match(text, at)
    if not unit:
        raise _no_unit(text, number, at)
    factor, dimension = unit_named(unit.group(), at)
    rest = text[unit.end() :]
    if rest.strip():
        raise _more_text(text, amount * factor, dimension, unit.end() + len(rest) - len(rest.lstrip()))
    return _checked(amount * factor, dimension, start)


def parse_length(text: str) -> float:
    """Reads a length and gives it in mm.

    >>> parse_length("20.5 cm"), parse_length("½ in")
    (205.0, 12.7)
    """
    return _parse_as(text, "length", "cm", "in")


def parse_mass(text: str) -> float:
    """Reads a mass and gives it in grams.

    >>> parse_mass("100 g")
    100.0
    """
    return _parse_as(text, "mass", "g", "oz")


def _parse_as(text: str, wanted: Dimension, unit: str, other: str) -> float:
    quantity = parse_quantity(text)
    if quantity.dimension == wanted:
        return quantity.amount
    at = len(text) - len(text.lstrip())
    found = text.strip()
    if re.search(r"[A-Za-z%]", found):
        raise UnitError(
            f"{found} is a {quantity.dimension}, but a {wanted} is expected", at, f"write the unit as {unit} or {other}"
        )
    raise UnitError(f"{found} has no unit: a {wanted} is expected", at, f"write {found} {unit} or {found} {other}")


def _checked(value: Fraction, dimension: Dimension, at: int) -> Quantity:
    if abs(value) > LARGEST:
        raise UnitError("this amount is too large to be meant", at, "check the number and its unit")
    return Quantity(float(value), dimension)


def _refuse_comma(text: str, number: re.Match[str]) -> None:
    """A decimal comma is refused, not guessed: "1,000 m" and "20,5 cm" look alike."""
    comma = re.compile(r",([0-9]+)").match(text, number.end())
    if comma:
        whole, rest = number.group(), text[comma.end() :].rstrip()
        hint = f"write {whole}.{comma[1]}{rest}"
        if len(comma[1]) == 3:
            hint = f"write {whole}{comma[1]}{rest}, or {whole}.{comma[1]}{rest} if you mean a fraction"
        raise UnitError("a comma can't stand inside a number", number.end(), hint)


def _no_unit(text: str, number: re.Match[str], at: int) -> UnitError:
    found, mark = number.group(), text[at]
    if mark in _INCH_MARKS or mark in _FOOT_MARKS:
        unit = "in" if mark in _INCH_MARKS else "ft"
        return UnitError(f"the mark {mark} is not read as a unit", at, f"write {found} {unit}")
    dash = re.compile(r"[-–]([0-9]+/[0-9]+)(.*)").match(text, at)
    if dash:
        return UnitError(
            "a dash can't join a whole number and a fraction", at, f"write {found} {dash[1]}{dash[2].rstrip()}"
        )
    return UnitError(
        f"a unit is expected after {found}, not {text[at:].strip()[:12]!r}", at, f"write {found} cm, or another unit"
    )


def _more_text(text: str, value: Fraction, dimension: Dimension, at: int) -> UnitError:
    """One unit per number; "5 ft 4 in" is told as what it comes to in its last unit."""
    found = text[at:].strip()
    message = f"one number and one unit are expected, but {found[:20]!r} follows"
    hint = f"write only {text[:at].strip()}"
    number = NUMBER.match(text, at)
    unit = UNIT.match(text, number.end() + (text[number.end() :][:1] == " ")) if number else None
    if (
        number
        and unit
        and unit.group() in UNITS
        and UNITS[unit.group()][1] == dimension
        and not text[unit.end() :].strip()
    ):
        factor = UNITS[unit.group()][0]
        hint = f"write {_plain((value + number_value(number) * factor) / factor)} {unit.group()}"
    return UnitError(message, at, hint)


def _plain(value: Fraction) -> str:
    return f"{float(value):.4f}".rstrip("0").rstrip(".")


def cm_text(mm: float) -> str:
    """Centimetres to the half.

    >>> cm_text(412.7), cm_text(420)
    ('41.5', '42')
    """
    return f"{to_step(mm / 10, 0.5):.1f}".removesuffix(".0")


def inches_text(mm: float) -> str:
    """Inches to the quarter, under 5 in to the eighth, with fraction glyphs.

    >>> inches_text(419.1), inches_text(95.25), inches_text(12.7), inches_text(0)
    ('16½', '3¾', '½', '0')
    """
    return _eighths_text(mm, 0.125 if abs(mm) < 127 else 0.25)


def eighths_text(mm: float) -> str:
    """Inches to the eighth, however long: for differences of lengths that are printed so.

    >>> eighths_text(174.625), eighths_text(-3.175)
    ('6⅞', '-⅛')
    """
    return _eighths_text(mm, 0.125)


def _eighths_text(mm: float, step: float) -> str:
    eighths = math.floor(to_step(abs(mm) / 25.4, step) * 8)
    whole, part = divmod(eighths, 8)
    glyph = ("", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞")[part]
    sign = "-" if mm < 0 and eighths else ""
    return f"{sign}{whole or ''}{glyph}" if eighths else "0"


def mm_text(mm: float) -> str:
    """Millimetres as hooks are marked, to 0.05 with no needless zeros.

    >>> mm_text(10.0), mm_text(2.25)
    ('10', '2.25')
    """
    return f"{to_step(mm, 0.05):.2f}".rstrip("0").rstrip(".")
