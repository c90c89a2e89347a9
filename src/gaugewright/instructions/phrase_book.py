"""Phrase books: TOML under templates/phrases/, one per language.

A book of one's own is held to the one that ships: the same phrases, and no slot that nothing fills.
Told all at once and before any sentence is made, since which phrases a pattern needs depends on its
numbers: a fault might otherwise show only in some sizes.
"""

import tomllib
from collections.abc import Iterator
from pathlib import Path
from string import Formatter
from typing import Any, Literal

from gaugewright.errors import Problem, ProblemsFound, UserError
from gaugewright.instructions.wording import Book
from gaugewright.resources import find_template, read_template

SHIPPED = "phrases/en.toml"
TABLES = ("sentences", "parts", "words", "front", "measures", "shopping", "comparing")
HINT = f"compare it with {SHIPPED}, which ships with gaugewright"


def load_book(language: str, terms: Literal["us", "uk"], units: Literal["cm", "in"], labels: tuple[str, ...], user_folder: Path | None = None) -> Book:
    """The phrase book of a language; plain-language errors where there is none or it can't be used."""
    name, path = _found(language, user_folder)
    data = _parsed(read_template(name, user_folder), path)
    if path != find_template(SHIPPED):
        faults = tuple(_faults(data, _parsed(read_template(SHIPPED), find_template(SHIPPED))))
        if faults:
            raise ProblemsFound([Problem("bad-template", f"{path}: {fault}", None, HINT) for fault in faults])
    return Book(data["sentences"], data["parts"], data["words"], data["front"], data["measures"], data["shopping"], terms, units, labels, data["comparing"])


def _found(language: str, user_folder: Path | None) -> tuple[str, Path]:
    """The book of the whole tag, else of its language alone: en-GB has the sentences of en."""
    whole, alone = f"phrases/{language}.toml", f"phrases/{language.partition('-')[0]}.toml"
    try:
        return whole, find_template(whole, user_folder)
    except UserError:
        return alone, find_template(alone, user_folder)


def _parsed(text: str, path: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as fault:
        raise UserError("bad-template", f"{path} can't be read: {fault}", HINT) from None


def _faults(data: dict[str, Any], shipped: dict[str, Any]) -> Iterator[str]:
    for table in TABLES:
        own = data.get(table)
        if not isinstance(own, dict):
            yield f"there is no table [{table}]"
            continue
        missing, unknown = shipped[table].keys() - own.keys(), own.keys() - shipped[table].keys()
        yield from (f"[{table}] has no {key}" for key in sorted(missing))
        yield from (f"{key} in [{table}] is no phrase that is used" for key in sorted(unknown))
        for key in sorted(own.keys() & shipped[table].keys()):
            yield from _phrase_faults(f"{key} in [{table}]", own[key], shipped[table][key])


def _phrase_faults(where: str, phrase: object, shipped: str) -> Iterator[str]:
    if not isinstance(phrase, str):
        yield f"{where} is not text in quotes"
        return
    try:
        slots = _slots(phrase)
    except ValueError:
        yield f"{where} has a brace that stands alone, or holds more than a name"
        return
    filled = {slot.lower() for slot in _slots(shipped)}
    for slot in slots:
        if slot.lower() not in filled:
            known = ", ".join(f"{{{one}}}" for one in sorted(filled)) or "none"
            yield f"nothing fills {{{slot}}} of {where} (its slots: {known})"


def _slots(phrase: str) -> list[str]:
    """
    >>> _slots("Make {make}, alike.")
    ['make']
    """
    parts = list(Formatter().parse(phrase))
    if any(form or conversion for _, _, form, conversion in parts):
        raise ValueError("a slot holds its name only")
    return [name for _, name, _, _ in parts if name is not None]
