"""Page contents in the words of PDF: numbers, colours, paths, runs of text.

In: points, #rrggbb, text. Out: operators as text. reportlab would write the same, but it measures
every text again and sizes every number through a logarithm, and a pattern has thousands of both.
Cutting text into a font's subsets stays with reportlab.
"""

from collections.abc import Iterable
from functools import cache

from gaugewright.drawings.primitives import Point

BUTT, ROUND = 0, 1


def number(value: float) -> str:
    """A number to a thousandth of a point, far below what any printer can place.

    >>> number(12.0), number(0.35), number(-0.0001), number(841.8899)
    ('12', '0.35', '0', '841.89')
    """
    return f"{value:z.3f}".rstrip("0").rstrip(".")


def at(x: float, y: float) -> str:
    """A point."""
    return f"{number(x)} {number(y)}"


@cache
def colour(rgb: str) -> str:
    """The three parts of #rrggbb, from 0 to 1.

    >>> colour("#ff8000")
    '1 0.502 0'
    """
    return " ".join(number(int(rgb[i : i + 2], 16) / 255) for i in (1, 3, 5))


def fill_in(rgb: str) -> str:
    """The colour of fills and text from here on."""
    return f"{colour(rgb)} rg"


def stroke_in(rgb: str, width: float) -> str:
    """The colour and width of lines from here on."""
    return f"{colour(rgb)} RG {number(width)} w"


def dashed(parts: Iterable[float]) -> str:
    """The dashes and gaps of lines from here on; none for a solid line."""
    return f"[{' '.join(map(number, parts))}] 0 d"


def path(points: Iterable[Point]) -> str:
    """Straight segments from point to point, in hundredths: a hatch has hundreds of lines.

    >>> path([(0, 0), (10, 2.5)])
    '0.00 0.00 m 10.00 2.50 l'
    """
    first, *others = [f"{x:.2f} {y:.2f}" for x, y in points]
    return f"{first} m " + " ".join(f"{place} l" for place in others)


def show(runs: Iterable[tuple[str, str]], size: float) -> str:
    """Strings of font subsets, one after the other from where the text stands.

    >>> show([("/F1+0", "ch"), ("/F1+0", " 8"), ("/F2+0", "sc")], 9.5)
    '/F1+0 9.5 Tf (ch) Tj ( 8) Tj /F2+0 9.5 Tf (sc) Tj'
    """
    words, set_in = [], ""
    for font, string in runs:
        if font != set_in:
            words.append(f"{font} {number(size)} Tf")
            set_in = font
        words.append(f"({string}) Tj")
    return " ".join(words)
