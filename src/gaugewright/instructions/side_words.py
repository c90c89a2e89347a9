"""A divided top in words: the division, then each side by itself, the second written out in full."""

from collections.abc import Iterator

from gaugewright.grading.plan import DividedPlan
from gaugewright.instructions.cloth_words import opening
from gaugewright.instructions.edge_tables import columns_of, edge_table
from gaugewright.instructions.nodes import Block, Heading, plain
from gaugewright.instructions.shape_words import edge_title, shaping, ways_told
from gaugewright.instructions.rising_words import rising_blocks
from gaugewright.instructions.steps import count_end, step, tail_length, to_row
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Spans
from gaugewright.sized import Sized


def divided_blocks(book: Book, view: PieceView, index: int, colours: list[Spans], names: dict[str, str]) -> Iterator[Block]:
    """The division and both sides."""
    plans: Sized[DividedPlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    first = view.section_first_rows(index)
    yield from ways_told(book, view, index)
    goes_on = [book.sentence("divide-raglan")] if plans.values[0].raglan else []
    yield step("Divide:", _division(book, view, plans, first), *goes_on)
    yield Heading(3, f"{view.piece.title}: {book.words['first-side']}")
    begin = book.sentence("side-first", view.piece.key, Row=book.row_word(False), first=first, side=plans.map(lambda p: p.side))
    yield from _side(book, view, index, "first-side", begin, colours)
    yield step("End of the first side:", book.sentence("fasten-off-weave", tail=tail_length(book, "weave in")))
    yield Heading(3, f"{view.piece.title}: {book.words['second-side']}")
    yield from _side(book, view, index, "second-side", _rejoin(book, view, plans, first, names), colours)


def _division(book: Book, view: PieceView, plans: Sized[DividedPlan], first: Sized[int]) -> Spans:
    centre = plans.map(lambda plan: plan.centre)
    kind = "divide" if any(centre) else "divide-in-two"
    one = centre.agree and centre.values[0] == 1
    return book.sentence(
        "divide-one" if one else kind, view.piece.key, Row=book.row_word(False), first=first, centre=centre,
        side=plans.map(lambda plan: plan.side), neck=plans.map(lambda plan: plan.neck),
    )


def _rejoin(book: Book, view: PieceView, plans: Sized[DividedPlan], first: Sized[int], names: dict[str, str]) -> Spans:
    centre = plans.map(lambda plan: plan.centre)
    one = centre.agree and centre.values[0] == 1
    cloth = plans.values[0].cloth
    opened = opening(book, cloth, view.first.worked)
    kind = "side-second-one" if one else "side-second" if any(centre) else "side-second-next"
    return book.sentence(
        kind, view.piece.key, Row=book.row_word(False), first=first, centre=centre, side=plans.map(lambda plan: plan.side),
        colour=_colour(view, first, names), slst=book.abbr("sl st"), open=(*opened, *plain(", ")) if opened else (),
        join=book.words["join-begins-counted" if cloth.counts else "join-begins"],
    )


def _colour(view: PieceView, first: Sized[int], names: dict[str, str]) -> str:
    """The yarn of the second side's first row; just the yarn where sizes differ in it."""
    keys = {view.plans[label].colour_of(row) for label, row in first.items()}
    return names[keys.pop()] if len(keys) == 1 else "the yarn"


def _side(book: Book, view: PieceView, index: int, which: str, begin: Spans, colours: list[Spans]) -> Iterator[Block]:
    """One side: where it begins, what is shaped at its edges, its last count, and its tables."""
    plans: Sized[DividedPlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    first, last = view.section_first_rows(index), view.section_last_rows(index)
    yield step("Begin:", begin, *([book.sentence("side-mirror")] if which == "second-side" else []))
    rises, top = bool(plans.values[0].rising), last
    last = last.map(lambda row: row - 1) if rises else last
    if colours:
        yield step("Colour:", *colours)
    edges = [each for each in (plans.map(lambda p: p.inner), plans.map(lambda p: p.outer)) if columns_of(each)]
    told = shaping(book, edges, first, "at-one")
    after = book.sentence("shape-even-after") if told else book.sentence("side-even")
    count = count_end(book, f"{view.piece.key}.{which}", plans.map(lambda plan: plan.side_end))
    yield step(to_row(book, view, last), *told, after, count=count)
    if len(book.labels) > 1 and edges:
        both = plans.map(lambda p: (*p.inner, *p.outer))
        yield edge_table(book, edge_title(book, f"{view.piece.title}, {book.words[which]}", both), both, first)
    if rises:
        yield from rising_blocks(book, view, plans.map(lambda plan: plan), top, f"{view.piece.title}, {book.words[which]}")
