"""Opened tubes in words: what stays of the last round, and the first row over the rest."""

from gaugewright.grading.model import GoOnStart
from gaugewright.grading.opened import OpenedPlan
from gaugewright.instructions.cloth_words import closing, opening
from gaugewright.instructions.nodes import Paragraph
from gaugewright.instructions.steps import count_end, first_yarn, spoken, step
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book
from gaugewright.sized import Sized


def is_opened(view: PieceView) -> bool:
    """Whether the piece ends as an opened tube."""
    return isinstance(view.first.sections[-1], OpenedPlan)


def opened_end(book: Book, view: PieceView) -> Paragraph:
    """The stitches that stay; the yarn isn't cut."""
    plans: Sized[OpenedPlan] = view.plans.map(lambda plan: plan.sections[-1])  # type: ignore[arg-type,return-value]
    return step("End:", book.sentence(
        "opened-end", view.piece.key, Row=book.row_word(True), row=view.plans.map(lambda plan: plan.rows),
        n=plans.map(lambda p: p.gap), left=spoken(plans.values[0].left), rest=spoken(plans.values[0].rest),
    ))


def go_on_steps(book: Book, view: PieceView, names: dict[str, str], titles: dict[str, str]) -> list[Paragraph]:
    """Row 1, over part of a tube's last round."""
    starts: Sized[GoOnStart] = view.plans.map(lambda plan: plan.start)  # type: ignore[arg-type,return-value]
    start, cloth, fact = starts.values[0], view.first.start_cloth, f"{view.piece.key}.row1"
    begin = opening(book, cloth, "rows")
    sentence = book.sentence(
        "go-on", fact, colour=first_yarn(book, view, names), piece=titles[start.piece], stitch=book.abbr(cloth.stitch),
        open=(*begin, *book.part("and-then")) if begin else (), n=starts.map(lambda s: s.stitches - int(cloth.counts)),
        left=starts.map(lambda s: s.left), edge=spoken(start.edge), close=closing(book, cloth, "rows"),
    )
    count = count_end(book, fact, view.stitches(starts.map(lambda _start: 1)))
    return [step(f"{book.row_word(False)}\u00a01 (RS):", sentence, count=count)]
