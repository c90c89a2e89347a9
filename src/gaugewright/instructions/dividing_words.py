"""A yoke parted in words: how it ends, what the parts of its last round are, and round 1 of the body and of a sleeve."""

from gaugewright.grading.divide_start import DivideStart, Division, halves_of_back
from gaugewright.grading.plan import RaglanPlan, RoundYokePlan
from gaugewright.instructions.cloth_words import closing, opening
from gaugewright.instructions.nodes import Paragraph
from gaugewright.instructions.steps import count_end, first_yarn, only, step
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Slot, Spans, spaced
from gaugewright.sized import Sized
from gaugewright.vocabulary import Side


def is_yoke(view: PieceView) -> bool:
    """Whether the piece is divided after its last round."""
    return isinstance(view.first.sections[-1], (RaglanPlan, RoundYokePlan))


def turned(view: PieceView) -> bool:
    """Whether its rounds are turned; they begin in the middle of the back."""
    return view.first.worked == "turned rounds"


def side_after(view: PieceView, row: int) -> Side:
    """The side that faces in the round after a yoke's round."""
    return "WS" if turned(view) and row % 2 else "RS"


def back_parts(view: PieceView, stitches: Sized[int], rows: Sized[int]) -> dict[str, Slot]:
    """What the round after a yoke's round works of the back first and last."""
    parts = {label: halves_of_back(count, turned(view), side_after(view, rows[label])) for label, count in stitches.items()}
    return {name: Sized(stitches.labels, tuple(part[place] for part in parts.values())) for place, name in enumerate(("first", "last"))}


def yoke_end(book: Book, view: PieceView) -> Paragraph:
    """The yoke isn't fastened off; a circular one is counted off into its parts."""
    divisions: Sized[Division] = view.plans.map(lambda plan: plan.sections[-1].division)  # type: ignore[union-attr]
    slots: dict[str, Slot] = {"sleeve": divisions.map(lambda d: d.sleeve), "back": divisions.map(lambda d: d.back)}
    slots |= back_parts(view, divisions.map(lambda d: d.back), view.plans.map(lambda plan: plan.rows))
    if isinstance(view.first.sections[-1], RaglanPlan):
        return step("End:", book.sentence("yoke-end-marked" if turned(view) else "yoke-end", view.piece.key, **slots))
    kind = "yoke-parts-centred" if turned(view) else "yoke-parts"
    return step("End:", book.sentence("yoke-end-round", view.piece.key, **slots), book.sentence(kind, view.piece.key, **slots))


def divide_steps(book: Book, view: PieceView, names: dict[str, str], titles: dict[str, str]) -> list[Paragraph]:
    """Round 1 of the body or of a sleeve."""
    starts: Sized[DivideStart] = view.plans.map(lambda plan: plan.start)  # type: ignore[arg-type,return-value]
    start, cloth, fact = starts.values[0], view.first.start_cloth, f"{view.piece.key}.row1"
    slots: dict[str, Slot] = {
        "stitch": book.abbr(cloth.stitch), "colour": first_yarn(book, view, names), "piece": titles[start.piece],
        "sleeve": starts.map(lambda s: s.sleeve), "close": closing(book, cloth, view.first.worked),
    }
    open_ = opening(book, cloth, view.first.worked)
    slots["open"] = (*open_, *book.part("and-then")) if open_ else ()
    if start.part == "body":
        slots |= {"back": starts.map(lambda s: s.back), "underarm": starts.map(lambda s: s.underarm)}
        slots |= {"first": starts.map(lambda s: s.back_parts[0]), "last": starts.map(lambda s: s.back_parts[1])}
        sentences = [book.sentence("divide-body-centred" if start.centred else "divide-body", fact, **slots), book.sentence("divide-chain", fact)]
    else:
        slots |= {"before": starts.map(lambda s: s.halves[0]), "after": starts.map(lambda s: s.halves[1]), "slst": book.abbr("sl st")}
        sentences = [book.sentence("divide-sleeve-turned" if start.centred else "divide-sleeve", fact, **slots)]
    count = count_end(book, fact, view.stitches(starts.map(lambda _start: 1)))
    label = book.words[f"{start.part}-label{'-turned' if start.centred else ''}"].format(Row=book.row_word(True))
    sides = [step(book.words["sides-label"], *_sides(book, starts))] if start.centred else []
    return [*sides, step(label, *sentences, count=count)]


def _sides(book: Book, starts: Sized[DivideStart]) -> list[Spans]:
    """Which rounds of a turned piece are worked on the right side: the yoke's last round decides."""
    found = []
    for side in dict.fromkeys(start.side for start in starts):
        sizes = tuple(label for label, start in starts.items() if start.side == side)
        found.append(spaced(only(book, sizes), book.sentence("odd-rounds-right" if side == "RS" else "odd-rounds-wrong")))
    return found
