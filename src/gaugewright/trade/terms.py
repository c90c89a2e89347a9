"""Abbreviations and trade words in US and UK terms, with their meaning.

Definitions spell stitch names and "yarn over" out, so that a definition never needs an
abbreviation that the pattern does not use otherwise.
"""

from collections.abc import Mapping
from functools import cache
from typing import NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.errors import UserError
from gaugewright.trade.stitches import DATA, Terms, stitch, stitch_names


class Abbreviation(NamedTuple):
    """The abbreviation as printed, what it stands for, and how it is done."""

    abbr: str
    meaning: str
    how: str


def abbreviation(key: str, terms: Terms = "us") -> Abbreviation:
    """An abbreviation by its key (its US form) in the terms of the pattern.

    >>> abbreviation("dc2tog", "uk")[:2]
    ('tr2tog', 'treble crochet 2 together')
    >>> abbreviation("2 dc in next st", "uk").how
    'work two treble crochet into the next stitch'
    """
    row = _row(key)
    how = row["how"].format_map(_words(terms))
    return Abbreviation(row[f"{terms}_abbr"], row[f"{terms}_meaning"], how)


def abbreviation_keys() -> tuple[str, ...]:
    """Every key, in the order of the list: stitches, shaping, placement, words."""
    return tuple(_rows())


def eats_and_makes(key: str) -> tuple[int, int]:
    """Stitches an operation uses up and makes.

    >>> eats_and_makes("sc3tog"), eats_and_makes("inc")
    ((3, 1), (1, 2))
    """
    row = _row(key)
    if not row["eats"]:
        raise UserError("not-an-operation", f"{key!r} is a word, not something worked", hint="")
    return int(row["eats"]), int(row["makes"])


def word(us: str, terms: Terms = "us") -> str:
    """A trade word in the terms of the pattern: gauge or tension, skip or miss.

    >>> word("gauge", "uk"), word("skip", "uk"), word("bulky", "uk"), word("hook", "uk")
    ('tension', 'miss', 'chunky', 'hook')
    """
    return us if terms == "us" else _uk_words().get(us, us)


def _row(key: str) -> Mapping[str, str]:
    if key not in _rows():
        raise UserError(
            "unknown-abbreviation", f"there is no abbreviation {key!r}", hint="keys are the abbreviations of US terms"
        )
    return _rows()[key]


@cache
def _rows() -> Mapping[str, Mapping[str, str]]:
    return {row["key"]: row for row in read_table(DATA / "abbreviations.csv")}


@cache
def _uk_words() -> Mapping[str, str]:
    rows = read_table(DATA / "terms_us_uk.csv")
    words = {row["us_term"]: row["uk_term"] for row in rows if row["craft"] in ("crochet", "both", "yarn")}
    return {**words, "yarn over": "yarn round hook", "color": "colour", "center": "centre"}


@cache
def _words(terms: Terms) -> Mapping[str, str]:
    """What the names in braces stand for in these terms."""
    names = {name: stitch(name).term(terms) for name in stitch_names()}
    return {**names, "yo": word("yarn over", terms), "colour": word("color", terms)}
