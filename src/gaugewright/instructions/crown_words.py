"""Closed centres and crowns in words: the ring, its rounds, and how a crown is drawn shut."""

import math
from collections.abc import Iterator, Mapping

from gaugewright.grading.plan import SpreadPlan
from gaugewright.instructions.cloth_words import closing, opening
from gaugewright.instructions.nodes import Block, Paragraph, Table, spans_text
from gaugewright.instructions.spread_words import in_colour, round_work, shaped_rounds, spread_sentences
from gaugewright.instructions.steps import count_end, first_yarn, step, tail_length
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Mm, Slot, Spans, sizes_text
from gaugewright.sized import Sized, join


def is_closed(view: PieceView) -> bool:
    """Whether the piece ends drawn shut."""
    return view.piece.is_shut


def centre_steps(book: Book, view: PieceView, names: Mapping[str, str]) -> list[Paragraph]:
    """The ring, and the round worked into it."""
    plan, cloth = view.first, view.first.start_cloth
    stitches = view.plans.map(lambda one: one.start.stitches)
    fact = f"{view.piece.key}.row1"
    slots: dict[str, Slot] = {"stitch": book.abbr(cloth.stitch), "n": stitches}
    if plan.worked == "spiral rounds":
        sentence = book.sentence("first-round-centre-spiral", fact, **slots)
    else:
        begin = opening(book, cloth, plan.worked)
        kind = "first-round-centre" if begin else "first-round-centre-no-chain"
        slots |= {"open": begin} if begin else {}
        sentence = book.sentence(kind, fact, close=closing(book, cloth, plan.worked), **slots)
    return [
        step("Foundation:", book.sentence("centre-foundation", view.piece.key, colour=first_yarn(book, view, names))),
        step(f"{book.row_word(True)}\u00a01 (RS):", sentence, count=count_end(book, fact, stitches)),
    ]


def crown_blocks(book: Book, view: PieceView, index: int, names: Mapping[str, str]) -> Iterator[Block]:
    """The rounds of a crown: a sentence each where all sizes agree, else one table; then what to measure."""
    plans: Sized[SpreadPlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    first = view.section_first_rows(index)
    if plans.agree and first.agree and _one_colouring(view, first, view.section_last_rows(index)):
        yield from spread_sentences(book, view, plans.values[0], first.values[0], index, names)
    elif any(True for plan in plans for _ in shaped_rounds(plan, index)):
        yield from _table(book, view, plans, index, names)
    if plans.values[0].sign > 0 and view.piece.start.kind == "centre" and index == 0:
        last = view.section_last_rows(index)
        around = view.width(last)
        # A last round that adds less than lies flat draws the edge in: then the disc is no wider than its edge allows.
        across = Mm(join(lambda mm, edge: min(2 * mm, edge / math.pi), view.height(last).values, around.values))
        yield step("Check:", book.sentence("crown-end", f"{view.piece.key}.{index}", across=across, width=around))


def _one_colouring(view: PieceView, first: Sized[int], last: Sized[int]) -> bool:
    """Whether these rounds have the same colours in all sizes."""
    plans = view.plans.items()
    return len({tuple(plan.colour_of(row) for row in range(first[label], last[label] + 1)) for label, plan in plans}) == 1


def _table(book: Book, view: PieceView, plans: Sized[SpreadPlan], index: int, names: Mapping[str, str]) -> Iterator[Block]:
    """Each round once for all sizes that work it alike, in order of rounds, so that every size reads down its own."""
    first = view.section_first_rows(index)
    found: dict[tuple[int, str, int], list[str]] = {}
    for label, plan in plans.items():
        for number, spread, count in shaped_rounds(plan, index):
            work = spans_text(round_work(book, plan.cloth, spread, view))
            found.setdefault((first[label] + number, work, count), []).append(label)
    rows = sorted(found.items(), key=lambda item: (item[0][0], book.labels.index(item[1][0])))
    yield step(f"{book.words['crown']}:", book.sentence("crown-table" + in_colour(view), colour=names[view.colour_at(first)]))
    words = book.words
    yield Table(
        words["crown-caption"].format(title=view.piece.title),
        (words["size"], words["round"], words["work"], f"{book.abbr('st')}s"),
        tuple((_sizes(book, labels), str(row), work, str(count)) for (row, work, count), labels in rows),
        ("left", "right", "left", "right"),
    )


def _sizes(book: Book, labels: list[str]) -> str:
    return book.words["all-sizes"] if len(labels) == len(book.labels) else sizes_text(labels, book.labels, book.words)


def close_sentence(book: Book, view: PieceView) -> Spans:
    """A closed end: the last round drawn together by the tail."""
    left = view.plans.map(lambda plan: plan.sections[-1].end)
    return book.sentence("close", view.piece.key, n=left, tail=tail_length(book, "weave in"))
