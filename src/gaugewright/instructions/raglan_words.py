"""Raglan yokes in words: the lines marked, the increase rounds, and which rounds they are."""

from collections.abc import Iterator, Sequence

from gaugewright.grading.raglan_rows import RaglanPlan
from gaugewright.instructions.dividing_words import back_parts, turned
from gaugewright.instructions.nodes import Align, Block, Table
from gaugewright.instructions.steps import count_end, spoken, step, to_row
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Spans
from gaugewright.sized import Sized

KINDS = ("both", "body", "sleeve")
"""Increase rounds of all parts, of back and front only, of the sleeves only."""


def raglan_blocks(book: Book, view: PieceView, index: int, colours: list[Spans]) -> Iterator[Block]:
    """All of a raglan: its lines, its increase rounds, the table of rounds, and the parts it ends with."""
    plans: Sized[RaglanPlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    first, last = view.section_first_rows(index), view.section_last_rows(index)
    plan, fact = plans.values[0], f"{view.piece.key}.raglan"
    lines = first.map(lambda row: row - 1 + plan.lead)
    backs, way = plans.map(lambda p: p.counts.neck.body), "-turned" if turned(view) else ""
    neck = {"back": backs, "sleeve": plans.map(lambda p: p.counts.neck.sleeve), **back_parts(view, backs, lines)}
    lean = () if turned(view) else book.sentence("raglan-lean")
    yield step("Raglan lines:", book.sentence("raglan-lines" + way, fact, Row=book.row_word(True), row=lines, **neck), lean)
    told = [kind for kind in KINDS if any(rounds_of(p, kind) for p in plans)]
    for kind in told:
        yield step(f"{book.words[f'raglan-{kind}']}:", book.sentence(f"raglan-{kind}{way}", fact, stitch=book.abbr(plan.cloth.stitch)))
    if colours:
        yield step("Colour:", *colours)
    end = {"back": plans.map(lambda p: p.counts.end.body), "sleeve": plans.map(lambda p: p.counts.end.sleeve)}
    yield step(
        to_row(book, view, last), book.sentence("raglan-by-table", fact),
        book.sentence("raglan-end", fact, length=view.height(last), bottom=spoken(view.piece.bottom), **end),
        count=count_end(book, fact, view.stitches(last)),
    )
    yield _table(book, view, plans, first, told)


def rounds_of(plan: RaglanPlan, kind: str) -> list[int]:
    """The rounds of a section on which so many parts increase."""
    body, sleeve = set(plan.body_rows), set(plan.sleeve_rows)
    return sorted({"both": body & sleeve, "body": body - sleeve, "sleeve": sleeve - body}[kind])


def _table(book: Book, view: PieceView, plans: Sized[RaglanPlan], first: Sized[int], told: Sequence[str]) -> Table:
    """One line per size: on which rounds what increases, and the parts at the end."""
    words, rows = book.words, []
    for label, plan in plans.items():
        falls = [", ".join(str(first[label] - 1 + n) for n in rounds_of(plan, kind)) or words["no-value"] for kind in told]
        rows.append((label, *falls, str(plan.counts.end.body), str(plan.counts.end.sleeve), str(plan.end)))
    header = [words["size"]]
    header += [words["falls-on"].format(name=words[f"raglan-{kind}"], Row=book.row_word(True)) for kind in told]
    header += [words["raglan-back-front"], words["raglan-each-sleeve"], words["after"]]
    left: list[Align] = ["left"] * (1 + len(told))
    caption = words["raglan-caption"].format(title=view.piece.title)
    return Table(caption, tuple(header), tuple(rows), (*left, "right", "right", "right"))
