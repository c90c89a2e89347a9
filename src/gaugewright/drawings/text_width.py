"""How wide text is, from the font's own advance widths, so that layout never asks a backend."""

from functools import cache

from gaugewright.drawings.advance_widths import (
    FIRST_LATIN,
    LATIN_REGULAR,
    LATIN_SEMIBOLD,
    OTHER_CHARACTERS,
    OTHER_REGULAR,
    OTHER_SEMIBOLD,
)

ASCENT = 0.75
"""Height of b, d, l and of brackets above the baseline, as a share of the text size."""
DESCENT = 0.22
"""Depth of g, p, y below the baseline, as a share of the text size."""
_UNKNOWN = 1000
"""Thousandths for a character outside the table: a full em, so that room is never too small."""


@cache
def text_width(text: str, size: float, strong: bool = False) -> float:
    """Width of a line of text in mm at a text size in mm, Regular or (strong) SemiBold.

    >>> text_width("10", 2.5), text_width("", 2.5)
    (2.485, 0.0)
    """
    return sum(_advance(character, strong) for character in text) * size / 1000


def _advance(character: str, strong: bool) -> int:
    latin, other = (LATIN_SEMIBOLD, OTHER_SEMIBOLD) if strong else (LATIN_REGULAR, OTHER_REGULAR)
    index = ord(character) - FIRST_LATIN
    if 0 <= index < len(latin):
        return latin[index] or _UNKNOWN
    place = OTHER_CHARACTERS.find(character)
    return other[place] if place >= 0 else _UNKNOWN
