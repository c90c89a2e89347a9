"""Care of a fibre mix: of every treatment the gentlest that any of its fibres asks for.

Why each treatment by itself: wool decides how a wool and acrylic mix is washed, acrylic
decides that it is not ironed. The ball band always wins over this table, and says so.
"""

from collections.abc import Iterable, Mapping
from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.trade.stitches import DATA

ASPECTS = ("wash", "bleach", "dry", "iron", "professional")
BAND_WINS = "Where the ball band says otherwise, follow the band."


class Care(NamedTuple):
    """Care lines in the order of the label, and the fibres that are not in the table."""

    lines: tuple[str, ...]
    unknown: tuple[str, ...]
    source: str


def care_names(fibres: Iterable[str], treatment: str = "", structure: str = "") -> tuple[str, ...]:
    """The names by which a yarn's care is looked up: its fibres, as they are treated, and its make where that needs care.

    >>> care_names(["merino", "nylon"], "machine-washable", "chenille")
    ('superwash merino', 'nylon', 'chenille')
    """
    names = [TREATED.get(name.strip().lower(), name) if treatment else name for name in fibres]
    return (*names, *([structure] if structure in DELICATE else []))


TREATED = {name: "machine-washable wool" for name in ("wool", "lambswool", "shetland wool", "bluefaced leicester")} | {"merino": "superwash merino"}
DELICATE = ("roving", "chenille")


def care_lines(fibres: Iterable[str]) -> Care:
    """Care for a mix of fibres by name ("wool", "acrylic").

    A mix with a fibre that is not in the table is treated by the fibres that are, and the
    unknown one is named; if none is known, only the ball band is left to follow.

    >>> care_lines(["wool", "acrylic"]).lines[3]
    'Do not iron or steam.'
    >>> care_lines(["moonbeam"])
    Care(lines=('Follow the ball band.',), unknown=('moonbeam',), source='')
    """
    names = tuple(fibres)
    rows = [row for row in read_table(DATA / "care.csv") if _is_one_of(row, names)]
    unknown = tuple(name for name in names if not any(_is_one_of(row, (name,)) for row in rows))
    if not rows:
        return Care(("Follow the ball band.",), unknown, "")
    treated = tuple(words for _, words in _asked(names).values())
    extras = tuple(row["extra"] for row in rows if row["extra"])
    return Care((*treated, *extras, BAND_WINS), unknown, "fibre guides; ISO 3758 symbols, worded")


def gentler_than(names: Iterable[str], others: Iterable[str]) -> tuple[str, ...]:
    """The treatments in words that a mix needs gentler than another does; none where either isn't known.

    >>> gentler_than(["merino"], ["cotton", "acrylic"])[0]
    'Wash by hand in cool water; do not rub or wring.'
    >>> gentler_than(["cotton"], ["wool"])
    ()
    """
    first, second = _asked(names), _asked(others)
    return tuple(first[aspect][1] for aspect in ASPECTS if aspect in first and aspect in second and first[aspect] > second[aspect])


def _asked(names: Iterable[str]) -> dict[str, tuple[int, str]]:
    """How gently a mix is treated, and its words, by aspect."""
    known = tuple(names)
    rows = [row for row in read_table(DATA / "care.csv") if _is_one_of(row, known)]
    return {aspect: max(_words()[aspect, row[aspect]] for row in rows) for aspect in ASPECTS if rows}


def _is_one_of(row: Mapping[str, str], names: tuple[str, ...]) -> bool:
    known = row["names"].split(";")
    return any(name.strip().lower() in known for name in names)


@cache
def _words() -> Mapping[tuple[str, str], tuple[int, str]]:
    """How gentle a treatment is, and its words."""
    return {
        (row["aspect"], row["treatment"]): (int(row["gentleness"]), row["words"])
        for row in read_table(DATA / "care_words.csv")
    }
