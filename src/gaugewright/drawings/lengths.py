"""A length in words, where a drawing carries the value itself."""

from gaugewright.drawings.model import Units
from gaugewright.rounding import down, half_up, to_step

_EIGHTHS = ("", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞")
_MM_PER_INCH = 25.4


def shown_length(mm: float, units: Units) -> str:
    """Centimetres to a half; inches to a quarter, or an eighth under five inches.

    >>> shown_length(412.7, "cm"), shown_length(412.7, "in"), shown_length(60, "in"), shown_length(10, "in")
    ('41.5 cm', '16¼ in', '2⅜ in', '⅜ in')
    """
    if units == "cm":
        return f"{to_step(mm / 10, 0.5):g} cm"
    inches = mm / _MM_PER_INCH
    eighths = half_up(to_step(inches, 0.25 if inches >= 5 else 0.125) * 8)
    whole = down(eighths / 8)
    return f"{whole or ''}{_EIGHTHS[eighths - 8 * whole]} in" if eighths else "0 in"
