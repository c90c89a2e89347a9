"""The text of a pattern's row to its nodes.

    row     = list [ "*" list "*" [ "," list ] ]      (a comma may stand beside a star)
    list    = element { "," element }
    element = [number] stitch [hold] [place] | "ch" number | "sk" number | "(" list ")" place
    place   = "in" "1" | "in" "ch" number

Words are the trade's abbreviations in US terms.
"""

import re
from typing import NamedTuple

from gaugewright.errors import UserError
from gaugewright.stitch_patterns.nodes import Chains, Element, Group, Hold, RowText, Skips, Stitches
from gaugewright.trade.stitches import stitch, stitch_names

LONGEST = 400
MOST = 40
"""No element is worked more often in one row of a repeat; above it a number was mistaken."""
MOST_TOGETHER = 6

_TOKEN = re.compile(r"sl\s+st\b|[0-9]+|[A-Za-z]+(?:[0-9]+tog)?(?![0-9])|[(),]")
_HOLDS: dict[str, Hold] = {"blo": "back", "flo": "front"}
_POSTS: dict[str, Hold] = {"fp": "front post", "bp": "back post"}


class PatternError(ValueError):
    """What is wrong with a pattern's row, at which column of its text (from 0), and what would do."""

    def __init__(self, message: str, column: int, hint: str) -> None:
        self.message, self.column, self.hint = message, column, hint
        super().__init__(message)


class Token(NamedTuple):
    """A number, a word or a sign, and its column."""

    text: str
    column: int


def parse_row(text: str) -> RowText:
    """The nodes of a row's text; raises `PatternError`.

    >>> row = parse_row("1 sc, *ch 1, sk 1, 1 sc*")
    >>> len(row.before), len(row.repeat), len(row.after)
    (1, 3, 0)
    """
    if len(text) > LONGEST:
        raise PatternError(f"this row has {len(text)} characters, more than {LONGEST}", LONGEST, "shorten its repeat")
    stars = [match.start() for match in re.finditer(r"\*", text)]
    if len(stars) not in (0, 2):
        hint = "put one star before the repeat and one after it: `1 sc, *ch 1, sk 1, 1 sc*`"
        raise PatternError("a repeat stands between two stars", stars[-1] if stars else 0, hint)
    if not stars:
        reader = _Reader(_tokens(text, 0, len(text)), len(text))
        return RowText(text, reader.elements(), (), ())
    first, last = stars
    parts = [_Reader(_tokens(text, low, high), high).elements() for low, high in ((0, first), (first + 1, last), (last + 1, len(text)))]
    if not parts[1]:
        raise PatternError("nothing stands between the stars", first, "write what is repeated between them")
    return RowText(text, *parts)


def _tokens(text: str, low: int, high: int) -> list[Token]:
    """Numbers, words and signs of a stretch of text."""
    found, at = [], low
    while at < high:
        if text[at].isspace():
            at += 1
            continue
        match = _TOKEN.match(text, at, high)
        if match is None:
            hint = f"write stitches such as `2 sc`, with commas between: {', '.join(stitch_names())}, ch, sk"
            raise PatternError(f"{text[at]!r} means nothing in a row", at, hint)
        found.append(Token(re.sub(r"\s+", " ", match.group()), at))
        at = match.end()
    return found


class _Reader:
    """A cursor over the tokens of one stretch; `end` is the column after it."""

    def __init__(self, tokens: list[Token], end: int) -> None:
        self.tokens, self.end, self.at = tokens, end, 0

    def peek(self) -> Token:
        return self.tokens[self.at] if self.at < len(self.tokens) else Token("", self.end)

    def take(self) -> Token:
        token = self.peek()
        self.at += 1
        return token

    def elements(self) -> tuple[Element, ...]:
        """Elements with commas between; a comma beside a star is passed over."""
        found: list[Element] = []
        while self.peek().text == ",":
            self.take()
        while self.peek().text not in ("", ")"):
            found.append(self.element())
            if self.peek().text not in ("", ")", ","):
                raise self.unexpected("a comma stands between two elements", "put a comma before it")
            while self.peek().text == ",":
                self.take()
        if self.peek().text == ")":
            raise self.unexpected("this bracket closes nothing", "take it out, or open a bracket before it")
        return tuple(found)

    def element(self) -> Element:
        token = self.peek()
        if token.text == "(":
            return self.bracket()
        if token.text in ("ch", "sk"):
            self.take()
            times = self.number(token.text)
            return Chains(times, token.column) if token.text == "ch" else Skips(times, token.column)
        stitches = self.stitches()
        if self.peek().text != "in":
            return stitches
        return Group((stitches,), self.place(), token.column)

    def bracket(self) -> Group:
        column = self.take().column
        parts: list[Stitches | Chains] = []
        while self.peek().text not in ("", ")"):
            token = self.peek()
            part = self.element()
            if not isinstance(part, (Stitches, Chains)):
                raise PatternError("a bracket holds stitches and chains, all worked in one place", token.column, "take this out of the bracket")
            parts.append(part)
            if self.peek().text == ",":
                self.take()
        if self.take().text != ")":
            raise PatternError("this bracket is not closed", column, "close it, and say where it is worked: `(2 dc, ch 1, 2 dc) in 1`")
        if parts and isinstance(parts[0], Chains):
            raise PatternError("what is worked in one place begins with a stitch", parts[0].column, "put a stitch first, or the chains before the bracket")
        if not parts or self.peek().text != "in":
            raise PatternError("a bracket is worked in one place", column, "add `in 1` after it for one stitch, or `in ch 2` for a space")
        return Group(tuple(parts), self.place(), column)

    def place(self) -> int:
        """0 for one stitch, or the chains of the space."""
        self.take()
        token = self.peek()
        if token.text == "ch":
            self.take()
            return self.number("ch")
        if token.text == "1":
            self.take()
            return 0
        raise self.unexpected("`in` is followed by 1, or by the chains of a space", "write `in 1`, or `in ch 2`")

    def number(self, what: str) -> int:
        token = self.peek()
        if not token.text.isdigit():
            raise self.unexpected(f"`{what}` is followed by a number", f"write `{what} 1`")
        self.take()
        return _bounded(int(token.text), token)

    def stitches(self) -> Stitches:
        token = self.take()
        times, column = 1, token.column
        if token.text.isdigit():
            times = _bounded(int(token.text), token)
            token = self.take()
        name, hold, together = _stitch(token)
        if self.peek().text in _HOLDS:
            if hold != "both":
                raise self.unexpected("a stitch round a post has no loops to choose", "take this out")
            hold = _HOLDS[self.take().text]
        return Stitches(name, times, hold, together, column)

    def unexpected(self, message: str, hint: str) -> PatternError:
        return PatternError(message, self.peek().column, hint)


def _bounded(number: int, token: Token) -> int:
    if not 1 <= number <= MOST:
        raise PatternError(f"{number} is no number of stitches here: 1 to {MOST} are expected", token.column, "write how many are worked")
    return number


def _stitch(token: Token) -> tuple[str, Hold, int]:
    """The stitch of a word such as `dc`, `fpdc` or `dc3tog`."""
    together = 1
    match = re.fullmatch(r"([a-z]+)([0-9]+)tog", token.text)
    word = match.group(1) if match else token.text
    if match:
        together = int(match.group(2))
        if not 2 <= together <= MOST_TOGETHER:
            raise PatternError(f"{together} are not worked together: 2 to {MOST_TOGETHER} are", token.column, f"write `{word}2tog`")
    hold: Hold = _POSTS.get(word[:2], "both") if word not in stitch_names() else "both"
    name = word[2:] if hold != "both" else word
    try:
        stitch(name)
    except UserError:
        known = ", ".join((*stitch_names(), "ch", "sk"))
        raise PatternError(f"{token.text or 'the end'} is no stitch", token.column, f"use one of {known}, or fp or bp before one of them") from None
    if name == "sl st" and (hold != "both" or together > 1):
        raise PatternError("slip stitches are worked one by one", token.column, "use another stitch")
    return name, hold, together
