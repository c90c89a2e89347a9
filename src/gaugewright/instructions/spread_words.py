"""Rounds with changes spread round them: a sentence for one size, a table of lines for several."""

from collections.abc import Iterator, Mapping

from gaugewright.grading.plan import Cloth, SpreadPlan
from gaugewright.grading.spread import Group, Spread
from gaugewright.instructions.cloth_words import closing, each, opening
from gaugewright.instructions.nodes import Block, Span, Table, spans_text
from gaugewright.instructions.steps import count_end, step
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Spans
from gaugewright.sized import Sized


def spread_blocks(book: Book, view: PieceView, index: int, names: Mapping[str, str]) -> Iterator[Block]:
    """The shaped rounds of one section."""
    plans: Sized[SpreadPlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    first = view.section_first_rows(index)
    if len(plans) == 1:
        yield from spread_sentences(book, view, plans.values[0], first.values[0], index, names)
        return
    name = "Inc rnds" if plans.values[0].sign > 0 else "Dec rnds"
    yield step(f"{name}:", book.sentence("spread-table" + in_colour(view), colour=names[view.colour_at(first)]))
    rows = []
    for label, plan in plans.items():
        for number, spread, count in shaped_rounds(plan, index):
            work = round_work(book, plan.cloth, spread, view)
            rows.append((label, str(first[label] + number), spans_text(work), str(count)))
    yield Table(f"{view.piece.title}: {name.lower()}", ("Size", "Rnd", "Work", "sts"), tuple(rows), ("left", "right", "left", "right"))


def in_colour(view: PieceView) -> str:
    """The sentence that names the colour, where a piece has several that aren't told beforehand."""
    return "-colour" if len(view.first.bands) > 1 and not view.planned else ""


def shaped_rounds(plan: SpreadPlan, index: int) -> Iterator[tuple[int, Spread | None, int]]:
    """Each round's place in the section, its spread and its count; round 1 of a piece has been told already."""
    for number, (spread, count) in enumerate(zip(plan.spreads, plan.counts, strict=True)):
        if index or number:
            yield number, spread, count


def spread_sentences(book: Book, view: PieceView, plan: SpreadPlan, first: int, index: int, names: Mapping[str, str]) -> Iterator[Block]:
    """A sentence for each round, for one size."""
    start, end = opening(book, plan.cloth, view.first.worked), closing(book, plan.cloth, view.first.worked)
    kind = "spread-increase" if plan.sign > 0 else "spread-decrease"
    for number, spread, count in shaped_rounds(plan, index):
        fact = f"{view.piece.key}.spread.{number}"
        work = round_work(book, plan.cloth, spread, view)
        colour = names[view.first.colour_of(first + number)]
        if start:
            sentence = book.sentence(kind + in_colour(view), fact, colour=colour, open=start, work=work, close=end)
        else:
            sentence = book.sentence("spread-no-chain" + in_colour(view), fact, colour=colour, work=work, close=end)
        yield step(f"Rnd\u00a0{first + number}:", sentence, count=count_end(book, fact, Sized(view.labels, (count,) * len(view.labels))))


def round_work(book: Book, cloth: Cloth, spread: Spread | None, view: PieceView) -> Spans:
    """What is worked between the opening chain and the join."""
    if spread is None:
        return each(book, cloth, view.first.worked)
    stitch = book.abbr(cloth.stitch)
    parts: list[Spans] = []
    if spread.leading:
        parts.append(_plain(book, stitch, spread.leading))
    turns = _turns(spread.groups)
    if turns:
        first, second = (_group(book, stitch, spread, group, second=False) for group in spread.groups[:2])
        parts.append(book.part("repeat-turns", first=first, second=second, times=turns))
    stars = int(turns > 0)
    for group in spread.groups[2 * turns :]:
        starred = group.plain > 0 and group.times > 1
        stars += starred
        parts.append(_group(book, stitch, spread, group, second=starred and stars == 2))
    if spread.trailing:
        parts.append(_plain(book, stitch, spread.trailing))
    joined: list[Span] = []
    for part in parts:
        joined += [Span(", ")] if joined else []
        joined += part
    return (*joined, *book.part(f"loop-{cloth.loop}"))


def _turns(groups: tuple[Group, ...]) -> int:
    """How often the first two groups follow one another by turns; 0 where they don't, or only once.

    >>> _turns((Group(6, 1), Group(7, 1)) * 10 + (Group(6, 1),)), _turns((Group(6, 3), Group(5, 2)))
    (10, 0)
    """
    turns = 0
    while groups[:2] == groups[2 * turns : 2 * turns + 2] and len(groups) > 1:
        turns += 1
    return turns if turns > 1 else 0


def _plain(book: Book, stitch: str, count: int) -> Spans:
    return book.part("plain-in-next-one" if count == 1 else "plain-in-next", stitch=stitch, n=count)


def _group(book: Book, stitch: str, spread: Spread, group: Group, second: bool) -> Spans:
    way = spread.kind
    if group.plain == 0 and group.times > 1:
        return book.part(f"{way}-each", stitch=stitch, n=group.times)
    change = book.part(f"{way}-once" if group.changes == 1 else f"{way}-each", stitch=stitch, n=group.changes)
    if group.plain == 0:
        return change
    plain = _plain(book, stitch, group.plain)
    if group.times == 1:
        return (*change, Span(", "), *plain) if spread.change_first else (*plain, Span(", "), *change)
    kind = "repeat-second" if second else "repeat"
    return book.part(kind + ("-change-first" if spread.change_first else ""), plain=plain, change=change, times=group.times)
