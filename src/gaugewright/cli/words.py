"""Words the command line takes."""

from enum import Enum


class Paper(str, Enum):
    """Sizes of paper."""

    a4 = "a4"
    letter = "letter"


class Terms(str, Enum):
    """US or UK terms."""

    us = "us"
    uk = "uk"


def split_sizes(text: str) -> tuple[str, ...]:
    """ "S,M" as labels.

    >>> split_sizes(" S, M"), split_sizes("")
    (('S', 'M'), ())
    """
    return tuple(part.strip() for part in text.split(",") if part.strip())
