"""Circular yokes in words: how many rounds increase, which they are, and what each works."""

from collections.abc import Iterator

from gaugewright.grading.round_yoke import RoundYokePlan
from gaugewright.instructions.nodes import Block, Table, spans_text
from gaugewright.instructions.spread_words import round_work
from gaugewright.instructions.steps import count_end, spoken, step, to_row
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Spans
from gaugewright.sized import Sized


def round_yoke_blocks(book: Book, view: PieceView, index: int, colours: list[Spans]) -> Iterator[Block]:
    """All of a circular yoke but its end: what its increase rounds are, and the table of them."""
    plans: Sized[RoundYokePlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    first, last, fact = view.section_first_rows(index), view.section_last_rows(index), f"{view.piece.key}.yoke"
    rounds = len(plans.values[0].increase_rows())
    told = book.sentence("yoke-rounds-one") if rounds == 1 else book.sentence("yoke-rounds", fact, n=rounds)
    yield step(f"{book.words['inc-rounds']}:", told, book.sentence("yoke-by-table", fact))
    if colours:
        yield step("Colour:", *colours)
    yield step(
        to_row(book, view, last), book.sentence("yoke-work", fact, length=view.height(last), bottom=spoken(view.piece.bottom)),
        count=count_end(book, fact, view.stitches(last)),
    )
    yield _table(book, view, plans, first)


def _table(book: Book, view: PieceView, plans: Sized[RoundYokePlan], first: Sized[int]) -> Table:
    """A line for each increase round, size by size: a maker reads down her own."""
    words, rows = book.words, []
    for label, plan in plans.items():
        for number in plan.increase_rows():
            work = spans_text(round_work(book, plan.cloth, plan.spreads[number - 1], view))
            rows.append((label, str(first[label] - 1 + number), work, str(plan.counts[number - 1])))
    header = (words["size"], words["round"], words["work"], words["after"])
    return Table(words["raglan-caption"].format(title=view.piece.title), header, tuple(rows), ("left", "right", "left", "right"))
