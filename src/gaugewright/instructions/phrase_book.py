"""Phrase books: TOML under templates/phrases/, one per language."""

import tomllib
from pathlib import Path
from typing import Literal

from gaugewright.errors import UserError
from gaugewright.instructions.wording import Book
from gaugewright.resources import read_template


def load_book(language: str, terms: Literal["us", "uk"], units: Literal["cm", "in"], labels: tuple[str, ...], user_folder: Path | None = None) -> Book:
    """The phrase book of a language; a plain-language error where there is none or it can't be read."""
    name = f"phrases/{language}.toml"
    text = read_template(name, user_folder)
    try:
        data = tomllib.loads(text)
        return Book(data["sentences"], data["parts"], data["words"], data["front"], terms, units, labels)
    except (tomllib.TOMLDecodeError, KeyError) as fault:
        raise UserError("bad-template", f"the phrase book {name} can't be read: {fault}", "compare it with the one that ships with gaugewright") from None
