"""Abbreviations: every one used in the pattern, none unused, found in the words themselves."""

import re
from collections.abc import Iterable, Iterator

from gaugewright.instructions.nodes import Block, Heading, Paragraph, Table, spans_text
from gaugewright.instructions.wording import Book
from gaugewright.trade.terms import abbreviation, abbreviation_keys

PLAIN_WORDS = ("m", "join", "turn", "sp")
"""Listed by the trade, but used here as whole words of English or as units."""


def abbreviations(book: Book, blocks: Iterable[Block], by_hand: bool) -> Iterator[Block]:
    """The chapter, from the texts of the chapters that instruct; without a hook if all is worked `by_hand`."""
    text = " ".join(_texts(blocks))
    rows = []
    for key in abbreviation_keys():
        abbr, meaning, how = abbreviation(key, book.terms)
        if key in PLAIN_WORDS or " in next " in key:
            continue
        if _is_used(abbr, text):
            rows.append((abbr, meaning, how.replace(book.front["the-hook"], book.front["the-hand"]) if by_hand else how))
    yield Heading(2, book.front["abbreviations-heading"])
    caption = spans_text(book.front_text("abbreviations-caption", terms=book.terms.upper()))
    header = (book.front["abbreviation"], book.front["meaning"], book.front["how"])
    yield Table(caption, header, tuple(rows), ("left", "left", "left"))


def _is_used(abbr: str, text: str) -> bool:
    """Whether an abbreviation stands in the text by itself, with a capital where it begins a label."""
    forms = dict.fromkeys((abbr, abbr[:1].upper() + abbr[1:]))
    return any(form in text and re.search(rf"(?<![\w-]){re.escape(form)}(?![\w-])", text) for form in forms)


def _texts(blocks: Iterable[Block]) -> Iterator[str]:
    for block in blocks:
        if isinstance(block, Paragraph):
            yield f"{block.label} {spans_text(block.spans)}"
        elif isinstance(block, Table):
            yield " ".join((block.caption, *block.header, *(cell for row in block.rows for cell in row), block.note))
