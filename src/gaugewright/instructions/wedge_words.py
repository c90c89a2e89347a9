"""A wedge of short rows in words: what each short row does, how many the sizes work, and the rows that close it."""

from collections.abc import Iterator

from gaugewright.grading.plan import WedgePlan
from gaugewright.instructions.edge_tables import ranges
from gaugewright.instructions.nodes import Align, Block, Span, Table
from gaugewright.instructions.steps import count_end, edge_name_at, only, spoken, step
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import NO_BREAK, Book, Mm, Spans, counts_text, listed
from gaugewright.sized import Sized


def wedge_blocks(book: Book, view: PieceView, index: int) -> Iterator[Block]:
    """The wedge for the sizes that have one; nothing where no size printed does."""
    every: Sized[WedgePlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    sizes = tuple(label for label, plan in every.items() if plan.leaves)
    if not sizes:
        return
    plans = every.pick(sizes)
    after = Sized(sizes, tuple(sum(s.rows for s in view.plans[size].sections[:index]) + every[size].lead for size in sizes))
    closing = after.map(lambda row: row + 1)
    fact, row, side = f"{view.piece.key}.wedge", book.row_word(False), spoken(_side_edge(view, plans.values[0], after.values[0]))
    grown = any(view.fabrics[plan.cloth.fabric].lying for plan in plans)
    deeper = Mm(Sized(sizes, tuple(view.fabrics[plan.cloth.fabric].flat.height_of(plan.short) for plan in plans)), "flat" if grown else "")
    place = "middle" if plans.values[0].at == "middle" else spoken(edge_name_at(view, plans.values[0].at, after.values[0])) + " edge"
    short = plans.map(lambda plan: plan.short)
    yield step(
        "Wedge:", only(book, sizes), *_lead(book, plans, after, place),
        book.sentence("wedge", fact, Row=row, after=after, short=short, depth=deeper, place=place, side=side),
    )
    yield from _short_rows(book, view, plans)
    yield _table(book, view, plans, after)
    yield from _closing(book, plans, closing, side, fact)


def _lead(book: Book, plans: Sized[WedgePlan], after: Sized[int], place: str) -> list[Spans]:
    """Short rows at an edge begin there: a size whose last row ended at the other edge works one more."""
    return [book.sentence("wedge-lead", Row=book.row_word(False), after=after, place=place)] if any(plan.lead for plan in plans) else []


def _side_edge(view: PieceView, plan: WedgePlan, row: int) -> str:
    return edge_name_at(view, "starting" if plan.at == "far" else "far" if plan.at == "starting" else "starting", row)


def _short_rows(book: Book, view: PieceView, plans: Sized[WedgePlan]) -> Iterator[Block]:
    """The first short row, the second, and how the others follow them."""
    plan = plans.values[0]
    cloth, slst = plan.cloth, book.abbr("sl st")
    both = plan.at == "middle"
    worked = [plans.map(lambda one, place=place: one.reach()[place].works) for place in (0, 1)]  # type: ignore[misc]
    fact = f"{view.piece.key}.wedge"
    left = _left(book, f"{fact}.leave", plans.map(lambda one: one.leaves[0]))
    slots = {"stitch": book.abbr(cloth.stitch), "slst": slst}
    yield step("Short row\u00a01:", book.sentence("wedge-first", fact, left=left, **slots), count=count_end(book, f"{fact}.1", worked[0]))
    kind = "wedge-back" if both else "wedge-back-edge"
    yield step("Short row\u00a02:", book.sentence(kind, fact, left=left, **slots), count=count_end(book, f"{fact}.2", worked[1]))
    if any(one.short > 2 for one in plans):
        more = tuple(label for label, one in plans.items() if one.short > 2)
        yield step("Further short rows:", only(book, more), book.sentence("wedge-more" if both else "wedge-more-edge", **slots))
    yield step("Waiting sts:", book.sentence("wedge-why", slst=slst))


def _left(book: Book, fact: str, stitches: Sized[int]) -> Spans:
    """ "5 (6, 7) sts"."""
    one = stitches.agree and stitches.values[0] == 1
    return (Span(book.words["count-one" if one else "count-many"].replace("{count}", counts_text(stitches, book.labels)), fact=fact),)


def _closing(book: Book, plans: Sized[WedgePlan], closing: Sized[int], side: str, fact: str) -> Iterator[Block]:
    """The row that goes on from the last turn, and at a wedge in the middle the one that works the other side's sts."""
    left = _left(book, f"{fact}.leave", plans.map(lambda one: one.leaves[0]))
    slots = {"stitch": book.abbr(plans.values[0].cloth.stitch), "slst": book.abbr("sl st")}
    sizes, count = only(book, plans.labels), count_end(book, fact, plans.map(lambda plan: plan.stitches))
    lengths = book.sentence("wedge-lengths", side=side)
    if plans.values[0].at != "middle":
        yield step(_row_label(book, closing), sizes, book.sentence("wedge-close-edge", **slots), lengths, count=count)
        return
    yield step(_row_label(book, closing), sizes, book.sentence("wedge-close", **slots))
    yield step(_row_label(book, closing.map(lambda row: row + 1)), sizes, book.sentence("wedge-next", **slots), lengths, count=count)


def _row_label(book: Book, rows: Sized[int]) -> str:
    return f"{book.row_word(False)}{NO_BREAK}{counts_text(rows, book.labels)}:"


def _table(book: Book, view: PieceView, plans: Sized[WedgePlan], after: Sized[int]) -> Table:
    """For each size how many stitches its short rows leave, and how many the last one works."""
    rows = []
    for label in book.labels:
        if label not in plans.labels:
            rows.append((label, *(book.words["no-value"] for _ in range(4))))
            continue
        plan = plans[label]
        rows.append((label, str(after[label]), str(plan.short), leaves_text(book, plan), str(plan.reach()[-1].works)))
    words = book.words
    header = (words["size"], words["wedge-after"], words["wedge-short"], words["wedge-leave"], words["wedge-last"])
    right: Align = "right"
    return Table(words["wedge-table"].format(title=view.piece.title), header, tuple(rows), ("left", right, right, "left", right))


def leaves_text(book: Book, plan: WedgePlan) -> str:
    """ "5 sts in short rows 1 and 2; 8 in 3 to 6": the stitches left at a row's end, rows alike together."""
    each = [(left, number) for turn, left in enumerate(plan.leaves) for number in ((2 * turn + 1, 2 * turn + 2) if plan.at == "middle" else (2 * turn + 1,))]
    groups: list[tuple[int, list[int]]] = []
    for left, number in each:
        if not groups or groups[-1][0] != left:
            groups.append((left, []))
        groups[-1][1].append(number)
    found = []
    for left, numbers in groups:
        texts = ranges(numbers, book.words["to"]) if plan.at == "middle" else [str(number) for number in numbers]
        count = book.words["count-one" if left == 1 else "count-many"].replace("{count}", str(left)).replace(" ", NO_BREAK)
        found.append(book.words["wedge-in"].format(count=count, rows=listed(book, texts)))
    return "; ".join(found)
