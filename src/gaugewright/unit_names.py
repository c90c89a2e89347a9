"""Names of units with their exact factors; the only door to pint.

pint is asked only about a name that the table doesn't hold (furlong, ell).
"""

import difflib
import re
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    import pint

Dimension = Literal["length", "mass", "fineness", "number"]

class UnitError(Exception):
    """A number and unit that can't be read; `column` counts from 0 within the text."""

    def __init__(self, message: str, column: int = 0, hint: str = "") -> None:
        self.message, self.column, self.hint = message, column, hint
        super().__init__(message)


def _rows(dimension: Dimension, *rows: tuple[str, str]) -> dict[str, tuple[Fraction, Dimension]]:
    return {name: (Fraction(factor), dimension) for names, factor in rows for name in names.split()}


# Exact by definition (international yard and pound, 1959: 1 yd = 914.4 mm, 1 lb = 453.59237 g).
UNITS: dict[str, tuple[Fraction, Dimension]] = {
    **_rows(
        "length",
        ("mm millimetre millimetres millimeter millimeters", "1"),
        ("cm cms centimetre centimetres centimeter centimeters", "10"),
        ("dm", "100"),
        ("m metre metres meter meters", "1000"),
        ("km", "1000000"),
        ("in ins inch inches", "25.4"),
        ("ft foot feet", "304.8"),
        ("yd yds yard yards", "914.4"),
    ),
    **_rows(
        "mass",
        ("mg", "1/1000"),
        ("g gram grams gramme grammes", "1"),
        ("kg kilo kilos kilogram kilograms", "1000"),
        ("oz ounce ounces", "28.349523125"),
        ("lb lbs pound pounds", "453.59237"),
    ),
    **_rows("fineness", ("tex", "1"), ("dtex", "1/10"), ("den denier", "1/9")),
    **_rows("number", ("%", "1/100"), ("percent", "1/100")),
}


def unit_named(name: str, at: int = 0) -> tuple[Fraction, Dimension]:
    """A unit's exact factor and dimension; capitals don't matter for units of the table."""
    found = UNITS.get(name) or UNITS.get(name.lower()) or _unit_outside_the_table(name)
    if found:
        return found
    near = difflib.get_close_matches(name.lower(), list(UNITS), n=1, cutoff=0.6)
    hint = f"did you mean {near[0]}?" if near else "use cm, mm, m, in, yd, g, kg, oz or lb"
    raise UnitError(f"unknown unit {name[:20]!r}: a length or a mass is expected", at, hint)


@cache
def _registry() -> "pint.UnitRegistry[float]":
    """pint's registry, built once and on first use, since that takes 0.2 s."""
    import pint

    return pint.UnitRegistry()


@cache
def _unit_outside_the_table(name: str) -> tuple[Fraction, Dimension] | None:
    """Asks pint about a single name (furlong, ell)."""
    if not re.fullmatch(r"[A-Za-z]{1,20}", name):
        return None
    import pint

    registry = _registry()
    try:
        unit = registry.Unit(name)
        for dimension, base, pint_name in (("length", "mm", "[length]"), ("mass", "g", "[mass]")):
            if unit.dimensionality == {pint_name: 1}:
                factor = Fraction(str(registry.Quantity(1, unit).to(base).magnitude))
                return factor, "length" if dimension == "length" else "mass"
    except (pint.PintError, AttributeError, ValueError, TypeError, OverflowError):
        return None
    return None
