"""What the make of a yarn (spun, plied, roving, tube, chenille) means for the cloth: traits with their sources."""

import tomllib
from collections.abc import Iterable
from functools import cache
from typing import Literal, NamedTuple

from gaugewright.trade.stitches import DATA

Gravity = Literal["caution", "fact"]

SEWN_WITH_ANOTHER = ("roving", "chenille")
"""Yarns that don't do to sew with; the trait `seams` says why."""

RAISED_FIBRES = ("mohair", "angora")
"""Fibres whose cloth has a hairy surface."""


class Trait(NamedTuple):
    """One trait: what it is about (pilling, shedding, strength ...), its words, its source."""

    key: str
    text: str
    source: str
    gravity: Gravity


class _Rule(NamedTuple):
    trait: Trait
    structures: frozenset[str]
    fibres: frozenset[str]
    untreated: bool


def traits(structure: str, fibres: Iterable[str] = (), treatment: str = "") -> tuple[Trait, ...]:
    """The traits of a yarn of this make; none where the make isn't known.

    >>> [trait.key for trait in traits("roving", ["merino"])]
    ['strength', 'seams', 'shedding', 'pilling', 'felting', 'ripping']
    >>> [trait.key for trait in traits("roving", ["acrylic"])]
    ['strength', 'seams', 'shedding', 'pilling', 'ripping']
    >>> traits("", ["wool"])
    ()
    """
    names = {fibre.strip().lower() for fibre in fibres}
    return tuple(
        rule.trait for rule in _rules()
        if structure in rule.structures and (not rule.fibres or rule.fibres & names) and not (rule.untreated and treatment)
    )


def is_raised(structure: str, fibres: Iterable[str]) -> bool:
    """Whether cloth of it has a pile or a hairy surface, which burns faster than a plain one.

    >>> is_raised("chenille", ["polyester"]), is_raised("plied", ["wool"])
    (True, False)
    """
    return structure == "chenille" or any(fibre.strip().lower() in RAISED_FIBRES for fibre in fibres)


@cache
def _rules() -> tuple[_Rule, ...]:
    with (DATA / "structures.toml").open("rb") as file:
        entries = tomllib.load(file)["trait"]
    return tuple(
        _Rule(
            Trait(entry["key"], entry["text"], entry["source"], entry["gravity"]),
            frozenset(entry["structures"]), frozenset(entry.get("fibres", ())), entry.get("untreated", False),
        )
        for entry in entries
    )
