"""Numbers, lengths and sizes as they are printed, and sentences put together from a phrase book.

In: a phrase's id and what fills its braces. Out: spans, each number's span naming the fact it prints.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from string import Formatter
from typing import Literal

from gaugewright.instructions.nodes import Span
from gaugewright.rounding import to_step
from gaugewright.sized import Sized
from gaugewright.trade.terms import abbreviation, word
from gaugewright.units import cm_text, inches_text

NO_BREAK = "\u00a0"
Spans = tuple[Span, ...]


@dataclass(frozen=True, slots=True)
class Mm:
    """A length for each size, printed in both units; `state` says how it is measured, where that makes a difference."""

    values: Sized[float]
    state: Literal["", "flat", "hung"] = ""


@dataclass(frozen=True, slots=True)
class Times:
    """How often, for each size: "once", or "3 (3, 4) times"."""

    values: Sized[int]


Slot = str | int | Sized[int] | Mm | Times | Spans


@dataclass(frozen=True, slots=True)
class Book:
    """A phrase book in one language and one set of terms, with the pattern's sizes and first unit."""

    sentences: Mapping[str, str]
    parts: Mapping[str, str]
    words: Mapping[str, str]
    front: Mapping[str, str]
    measures: Mapping[str, str]
    shopping: Mapping[str, str]
    terms: Literal["us", "uk"]
    units: Literal["cm", "in"]
    labels: tuple[str, ...]
    comparing: Mapping[str, str] = field(default_factory=dict)

    def comparing_text(self, kind: str, **slots: Slot) -> Spans:
        """A sentence of the page of yarns side by side."""
        return self._fill(self.comparing[kind], kind, slots)

    def sentence(self, kind: str, fact: str = "", **slots: Slot) -> Spans:
        """A sentence of the closed list."""
        return self._fill(self.sentences[kind], f"{fact}.{kind}" if fact else kind, slots)

    def part(self, kind: str, fact: str = "", **slots: Slot) -> Spans:
        """A part that sentences are put together from."""
        return self._fill(self.parts[kind], f"{fact}.{kind}" if fact else kind, slots)

    def front_text(self, kind: str, fact: str = "", **slots: Slot) -> Spans:
        """A sentence of the front matter, of making up or finishing."""
        return self._fill(self.front[kind], f"{fact}.{kind}" if fact else kind, slots)

    def shop_text(self, kind: str, **slots: str) -> str:
        """A phrase of the shopping card, as text."""
        return self.shopping[kind].format(**slots)

    def abbr(self, key: str) -> str:
        """An abbreviation in the pattern's terms, by its US form."""
        return abbreviation(key, self.terms).abbr

    def word(self, us: str) -> str:
        """A trade word in the pattern's terms: gauge or tension."""
        return word(us, self.terms)

    def row_word(self, in_rounds: bool) -> str:
        """ "Row" or "Rnd"."""
        return self.words["round" if in_rounds else "row"]

    def _fill(self, template: str, fact: str, slots: Mapping[str, Slot]) -> Spans:
        spans: list[Span] = []
        for literal, name, _, _ in Formatter().parse(template):
            if literal:
                spans.append(Span(literal))
            if name:
                filled = self._slot(slots[name] if name in slots else slots[name.lower()], f"{fact}.{name.lower()}")
                spans += _capital(filled) if name[0].isupper() else filled
        return tuple(spans)

    def _slot(self, value: Slot, fact: str) -> Spans:
        match value:
            case str():
                return (Span(value),) if value else ()
            case int():
                return (Span(str(value), fact=fact),)
            case Sized():
                return (Span(counts_text(value, self.labels), fact=fact),)
            case Mm():
                text = length_text(value.values, self.units, self.labels)
                return (Span(self.words[f"length-{value.state}"].format(length=text) if value.state else text, fact=fact),)
            case Times():
                return (Span(times_text(value.values, self.labels), fact=fact),)
            case _:
                return value


def _capital(spans: Spans) -> Spans:
    if not spans:
        return spans
    first = spans[0]
    return (Span(first.text[:1].upper() + first.text[1:], first.style, first.fact), *spans[1:])


NO_VALUE = "–"
"""Stands in a list for a size that the sentence is not for, so that every size keeps its place."""


def counts_text(values: Sized[int], labels: Sequence[str]) -> str:
    """One number when all agree, else the smallest size's and the others in brackets, a place for each.

    >>> counts_text(Sized(("S", "M"), (14, 16)), ("S", "M", "L")).replace(NO_BREAK, " ")
    '14 (16, –)'
    >>> counts_text(Sized(("S", "M"), (4, 4)), ("S", "M"))
    '4'
    """
    return list_text({label: str(value) for label, value in values.items()}, labels)


def list_text(texts: Mapping[str, str], labels: Sequence[str]) -> str:
    """`a (b, c)`, never broken over lines; one text when all are alike."""
    if len(set(texts.values())) == 1:
        return next(iter(texts.values()))
    first, *others = (texts.get(label, NO_VALUE) for label in labels)
    return f"{first}{NO_BREAK}({(',' + NO_BREAK).join(others)})"


def length_text(values: Sized[float], units: Literal["cm", "in"], labels: Sequence[str]) -> str:
    """A length in both units, the pattern's own first.

    >>> length_text(Sized(("S",), (254.0,)), "cm", ("S",)).replace(NO_BREAK, " ")
    '25.5 cm / 10 in'
    """
    cm = f"{list_text({label: cm_text(v) for label, v in values.items()}, labels)}{NO_BREAK}cm"
    inches = f"{list_text({label: inches_text(v) for label, v in values.items()}, labels)}{NO_BREAK}in"
    first, second = (cm, inches) if units == "cm" else (inches, cm)
    # A pair of single lengths stays on one line; two lists may part at their slash.
    return f"{first} / {second}" if "(" in first + second else f"{first}{NO_BREAK}/{NO_BREAK}{second}"


def exact_length_text(mm: float, units: Literal["cm", "in"]) -> str:
    """A length as it was measured, to the hundredth, in both units: a gauge is graded from exactly this.

    >>> exact_length_text(205, "cm").replace(NO_BREAK, " "), exact_length_text(101.6, "in").replace(NO_BREAK, " ")
    ('20.5 cm / 8.07 in', '4 in / 10.16 cm')
    """
    cm = f"{to_step(mm / 10, 0.01):.2f}".rstrip("0").rstrip(".") + f"{NO_BREAK}cm"
    inches = f"{to_step(mm / 25.4, 0.01):.2f}".rstrip("0").rstrip(".") + f"{NO_BREAK}in"
    return f"{cm} / {inches}" if units == "cm" else f"{inches} / {cm}"


def times_text(values: Sized[int], labels: Sequence[str]) -> str:
    """ "once" when every size does it once, else "3 (3, 4) times"."""
    if values.agree and values.values[0] == 1:
        return "once"
    return f"{counts_text(values, labels)} times"


def ordinal(number: int) -> str:
    """ "2nd", "3rd", "4th".

    >>> ordinal(2), ordinal(3), ordinal(4), ordinal(11)
    ('2nd', '3rd', '4th', '11th')
    """
    if 10 <= number % 100 <= 20:
        return f"{number}th"
    return f"{number}{ {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th') }"


def sizes_text(some: Sequence[str], labels: Sequence[str], words: Mapping[str, str]) -> str:
    """Sizes by name, three or more neighbours as a range.

    >>> sizes_text(("S", "M", "L", "2X"), ("XS", "S", "M", "L", "1X", "2X"), {"and": "and", "to": "to"})
    'S to L and 2X'
    """
    runs: list[list[str]] = []
    for label in some:
        if runs and labels.index(runs[-1][-1]) + 1 == labels.index(label):
            runs[-1].append(label)
        else:
            runs.append([label])
    parts: list[str] = []
    for run in runs:
        parts += [f"{run[0]} {words['to']} {run[-1]}"] if len(run) > 2 else run
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} {words['and']} {parts[-1]}"


def listed(book: Book, names: Sequence[str], link: Literal["and", "or"] = "and") -> str:
    """ "A, B and C"."""
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} {book.words[link]} {names[-1]}"


def spaced(*groups: Spans) -> Spans:
    """Sentences one after the other, a space between."""
    spans: list[Span] = []
    for group in groups:
        if group:
            spans += [Span(" ")] if spans else []
            spans += group
    return tuple(spans)
