"""Raglan yokes in words: the lines marked, the increase rounds, which rounds they are; then the parting."""

from collections.abc import Iterator, Sequence

from gaugewright.grading.model import DivideStart
from gaugewright.grading.raglan_rows import RaglanPlan
from gaugewright.instructions.cloth_words import closing, opening
from gaugewright.instructions.nodes import Align, Block, Paragraph, Table
from gaugewright.instructions.steps import count_end, spoken, step, to_row
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Slot, Spans
from gaugewright.sized import Sized

KINDS = ("both", "body", "sleeve")
"""Increase rounds of all parts, of back and front only, of the sleeves only."""


def is_yoke(view: PieceView) -> bool:
    """Whether the piece is divided after its last round."""
    return isinstance(view.first.sections[-1], RaglanPlan)


def raglan_blocks(book: Book, view: PieceView, index: int, colours: list[Spans]) -> Iterator[Block]:
    """All of a raglan: its lines, its increase rounds, the table of rounds, and the parts it ends with."""
    plans: Sized[RaglanPlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    first, last = view.section_first_rows(index), view.section_last_rows(index)
    plan, fact = plans.values[0], f"{view.piece.key}.raglan"
    lines = first.map(lambda row: row - 1 + plan.lead)
    neck = {"back": plans.map(lambda p: p.counts.neck.body), "sleeve": plans.map(lambda p: p.counts.neck.sleeve)}
    yield step("Raglan lines:", book.sentence("raglan-lines", fact, Row=book.row_word(True), row=lines, **neck))
    told = [kind for kind in KINDS if any(rounds_of(p, kind) for p in plans)]
    for kind in told:
        yield step(f"{book.words[f'raglan-{kind}']}:", book.sentence(f"raglan-{kind}", fact, stitch=book.abbr(plan.cloth.stitch)))
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


def yoke_end(book: Book, view: PieceView) -> Paragraph:
    """The yoke isn't fastened off."""
    sleeve = view.plans.map(lambda plan: plan.sections[-1].counts.end.sleeve)  # type: ignore[union-attr]
    return step("End:", book.sentence("yoke-end", view.piece.key, sleeve=sleeve))


def divide_steps(book: Book, view: PieceView, names: dict[str, str], titles: dict[str, str]) -> list[Paragraph]:
    """Round 1 of the body or of a sleeve."""
    starts: Sized[DivideStart] = view.plans.map(lambda plan: plan.start)  # type: ignore[arg-type,return-value]
    start, cloth, fact = starts.values[0], view.first.start_cloth, f"{view.piece.key}.row1"
    slots: dict[str, Slot] = {
        "stitch": book.abbr(cloth.stitch), "colour": names[view.first.colour_of(1)], "piece": titles[start.piece],
        "sleeve": starts.map(lambda s: s.sleeve), "close": closing(book, cloth, view.first.worked),
    }
    open_ = opening(book, cloth, view.first.worked)
    slots["open"] = (*open_, *book.part("and-then")) if open_ else ()
    if start.part == "body":
        slots |= {"back": starts.map(lambda s: s.back), "underarm": starts.map(lambda s: s.underarm)}
        sentences = [book.sentence("divide-body", fact, **slots), book.sentence("divide-chain", fact)]
    else:
        slots |= {"before": starts.map(lambda s: s.halves[0]), "after": starts.map(lambda s: s.halves[1]), "slst": book.abbr("sl st")}
        sentences = [book.sentence("divide-sleeve", fact, **slots)]
    count = count_end(book, fact, view.stitches(starts.map(lambda _start: 1)))
    label = book.words[f"{start.part}-label"].format(Row=book.row_word(True))
    return [step(label, *sentences, count=count)]
