"""Which cautions a pattern should print, from who wears it and what it is made of."""

import tomllib
from collections.abc import Iterable
from functools import cache
from typing import NamedTuple

from gaugewright.trade.stitches import DATA

UNDER_THREE = ("2",)  # sizes of the child chart worn before the third birthday


class Caution(NamedTuple):
    """One caution with the rule or practice behind it."""

    key: str
    text: str
    source: str


class _Rule(NamedTuple):
    caution: Caution
    when: frozenset[str]
    any_of: frozenset[str]


def cautions(
    table: str, labels: Iterable[str], fibres: Iterable[str], *, raised: bool = False, unspun: bool = False, pile: bool = False,
    parts: Iterable[str] = (), closed: bool = False, blanket: bool = False,
) -> tuple[Caution, ...]:
    """The cautions for a size table, the sizes made, and the fibres; local rules always last.

    `raised` is a brushed or hairy surface, `unspun` loosely spun or unspun yarn, `pile` one like chenille that loses it; `parts` are the parts of the
    body that pass its openings, `closed` says that fingers or toes come to rest in a closed end; a `blanket` may come to lie in a bed.

    >>> [c.key for c in cautions("women", ["M"], ["acrylic"])]
    ['hands', 'local-rules']
    >>> [c.key for c in cautions("baby", ["3 months"], ["cotton"], raised=True)]
    ['baby-ties', 'small-parts', 'baby-sleep', 'flame', 'hands', 'local-rules']
    >>> [c.key for c in cautions("women", ["M"], ["acrylic"], parts=["foot"])]
    ['slippery-soles', 'hands', 'local-rules']
    >>> [c.key for c in cautions("", ["Lap"], ["acrylic"], blanket=True)]
    ['cot-blanket', 'hands', 'local-rules']
    """
    facts = {table, *(fibre.strip().lower() for fibre in fibres)}
    if table == "baby" or (table == "child" and set(labels) & set(UNDER_THREE)):
        facts.add("under-three")
    facts |= set(parts)
    facts |= {name for name, holds in (("raised", raised), ("unspun", unspun), ("pile", pile), ("closed", closed), ("blanket", blanket)) if holds}
    return tuple(
        rule.caution for rule in _rules() if rule.when <= facts and (not rule.any_of or rule.any_of & facts)
    )


@cache
def _rules() -> tuple[_Rule, ...]:
    with (DATA / "cautions.toml").open("rb") as file:
        entries = tomllib.load(file)["caution"]
    return tuple(
        _Rule(
            Caution(entry["key"], entry["text"], entry["source"]),
            frozenset(entry.get("when", ())),
            frozenset(entry.get("any", ())),
        )
        for entry in entries
    )
