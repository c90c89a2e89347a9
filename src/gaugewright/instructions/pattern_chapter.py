"""The chapter on stitch patterns: each one used, with its multiple, its rows, and what its counts do."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from gaugewright.design.model import Fabric
from gaugewright.drawings.stitch_chart import draw_chart
from gaugewright.instructions.nodes import Block, Figure, Heading, Paragraph, plain, spans_text
from gaugewright.instructions.pattern_words import COMMON_TOGETHER, row_words
from gaugewright.instructions.steps import step
from gaugewright.instructions.wording import Book, Spans, spaced
from gaugewright.stitch_patterns.nodes import Chains, Group, Stitches, stitches_of
from gaugewright.stitch_patterns.pattern import StitchPattern, opening_stitch
from gaugewright.trade.stitches import stitch


def pattern_chapter(book: Book, fabrics: Sequence[Fabric]) -> Iterator[Block]:
    """All stitch patterns of the fabrics in use, each once for rows and once for rounds."""
    used = dict.fromkeys((fabric.pattern, fabric.worked != "rows") for fabric in fabrics if fabric.pattern)
    if not used:
        return
    yield Heading(2, book.front["patterns-heading"])
    yield Paragraph(book.front_text("patterns-intro"), "body")
    for pattern, in_rounds in used:
        assert pattern is not None
        yield Heading(3, pattern.title)
        yield from kept_together(_pattern(book, pattern, in_rounds))


def _pattern(book: Book, pattern: StitchPattern, in_rounds: bool) -> Iterator[Block]:
    plus = 0 if in_rounds else pattern.plus
    fact = f"pattern.{pattern.key}"
    multiple = book.front_text("pattern-multiple" if plus else "pattern-multiple-only", fact, of=pattern.of, plus=plus)
    base = book.front_text(f"pattern-base-{'round' if in_rounds else 'row'}", stitch=book.abbr(pattern.plain))
    yield Paragraph((*multiple, *(plain(f" {pattern.note}") if pattern.note else ()), *plain(" "), *base), "body")
    counted = book.front_text("pattern-chains-count") if _has_chains(pattern, in_rounds) else ()
    if told := spaced(() if in_rounds else _openings(book, pattern), counted):
        yield Paragraph(told, "body")
    for number, row in enumerate(pattern.cycle(in_rounds)):
        yield step(pattern_row_label(book, number, in_rounds), (*row_words(book, row), *plain(".")), *_count(book, pattern, number, in_rounds))
    yield Paragraph(_again(book, pattern, in_rounds), "body")
    for element in _clusters(pattern, in_rounds):
        yield Paragraph(book.front_text("pattern-together-how", n=element.together, stitch=book.abbr(element.name), yo=book.word("yarn over")), "note")
    for left_handed in (False, True):
        chart = draw_chart(pattern, in_rounds, book.terms, left_handed)
        caption = spans_text(book.front_text(f"chart-{'left' if left_handed else 'right'}{'-rounds' if in_rounds else ''}", title=pattern.title))
        yield Figure(chart, chart.description, caption, "-".join((pattern.key, "rounds" if in_rounds else "rows", "left" if left_handed else "right")))


def kept_together(blocks: Iterable[Block]) -> Iterator[Block]:
    """A pattern's words and charts on one page, where a page holds them: the charts are read beside the words."""
    *others, last = blocks
    for block in others:
        yield replace(block, keep=True) if isinstance(block, Paragraph | Figure) else block
    yield last


def pattern_row_label(book: Book, number: int, in_rounds: bool) -> str:
    """ "Pattern row 1:"; rows are counted from 0 in the data and from 1 in print."""
    return book.words["pattern-round" if in_rounds else "pattern-row"].format(n=number + 1) + ":"


def _openings(book: Book, pattern: StitchPattern) -> Spans:
    """The chain that each row's first stitch needs."""
    found = dict.fromkeys([opening_stitch(next(iter(row.worked(1)))) for row in pattern.cycle(False)] + [(pattern.plain, stitch(pattern.plain).counts_unless_set)])
    spans: list[Spans] = []
    for name, counts in found:
        facts = stitch(name)
        if facts.chains:
            kind = "pattern-opens-counted" if counts else "pattern-opens"
            spans.append(book.front_text(kind, stitch=book.abbr(name), n=facts.chains))
    return tuple(span for index, part in enumerate(spans) for span in (*(plain(" ") if index else ()), *part))


def _has_chains(pattern: StitchPattern, in_rounds: bool) -> bool:
    """Whether chains stand among the stitches of some row, as which they count."""
    parts = (part for row in pattern.cycle(in_rounds) for element in row.worked(1) for part in (element.parts if isinstance(element, Group) else (element,)))
    return any(isinstance(part, Chains) for part in parts)


def opens_counted(pattern: StitchPattern) -> bool:
    """Whether the chain at the beginning of some row of a pattern in rows counts as a stitch."""
    return any(opening_stitch(next(iter(row.worked(1))))[1] for row in pattern.cycle(False))


def _count(book: Book, pattern: StitchPattern, number: int, in_rounds: bool) -> list[Spans]:
    """The count of a row that has another than the pattern's own, and of the one that comes back to it."""
    level = pattern.level(in_rounds)
    two, three = pattern.counts(2, in_rounds)[number], pattern.counts(3, in_rounds)[number]
    each, beside = three - two, two - 2 * (three - two)
    fact = f"pattern.{pattern.key}.{number}"
    if not level[number]:
        kind = "pattern-count-more" if beside > 0 else "pattern-count-less" if beside < 0 else "pattern-count"
        return [book.front_text(kind, fact, each=each, beside=abs(beside))]
    return [book.front_text("pattern-count-own")] if not level[number - 1] and number else []


def _again(book: Book, pattern: StitchPattern, in_rounds: bool) -> Spans:
    rows, begun = len(pattern.cycle(in_rounds)), 0 if in_rounds else len(pattern.begun)
    word = "round" if in_rounds else "row"
    if rows - begun == 2:
        return book.front_text(f"pattern-again-two-{word}", first=begun + 1, last=rows)
    if rows - begun == 1:
        return book.front_text(f"pattern-again-one-{word}", n=rows)
    return book.front_text(f"pattern-again-{word}", first=begun + 1, last=rows)


def _clusters(pattern: StitchPattern, in_rounds: bool) -> Iterator[Stitches]:
    """Stitches worked together that have no abbreviation of their own, each number and stitch once."""
    found: dict[tuple[str, int], Stitches] = {}
    for row in pattern.cycle(in_rounds):
        for element in (*row.before, *row.repeat, *row.after):
            for one in stitches_of(element):
                if one.together > COMMON_TOGETHER:
                    found.setdefault((one.name, one.together), one)
    yield from found.values()
