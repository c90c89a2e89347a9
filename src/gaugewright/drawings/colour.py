"""Colours as #rrggbb: how light they are, and how well one stands out from another."""

PAPER, INK = "#ffffff", "#1a1a1a"


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21, by the formula of WCAG 2.

    >>> f"{contrast('#ffffff', '#000000'):.1f}", f"{contrast('#ffffff', '#767676'):.2f}"
    ('21.0', '4.54')
    """
    light, dark = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def line_colour_on(fill: str) -> str:
    """Ink or paper, whichever is seen better on a fill: the colour of its hatch.

    >>> line_colour_on("#d9c9a8"), line_colour_on("#3f5d4e")
    ('#1a1a1a', '#ffffff')
    """
    return max(INK, PAPER, key=lambda colour: contrast(colour, fill))


def _luminance(colour: str) -> float:
    channels = [int(colour[start : start + 2], 16) / 255 for start in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
