"""Openings in words: the round that makes one, the stitches picked up round it, and how a pair of pieces differs."""

from collections.abc import Iterator

from gaugewright.design.slits import slit_edges
from gaugewright.grading.model import EdgeStart, PickUp
from gaugewright.grading.slits import SlitPlan
from gaugewright.instructions.nodes import Block
from gaugewright.instructions.steps import count_end, spoken, step
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Slot, Spans, counts_text
from gaugewright.sized import Sized


def slit_blocks(book: Book, view: PieceView, index: int, colours: list[Spans]) -> Iterator[Block]:
    """The row with the opening, and how the next one goes over its chain."""
    plans: Sized[SlitPlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    rows, fact = view.section_last_rows(index), f"{view.piece.key}.{plans.values[0].edge}"
    stitch = book.abbr(plans.values[0].cloth.stitch)
    before, after = plans.map(lambda p: p.before), plans.map(lambda p: p.after)
    slots: dict[str, Slot] = {
        "n": plans.map(lambda p: p.each), "edge": spoken(plans.values[0].edge),
        "before": _some(book, "sts-first", before), "after": _some(book, "sts-last", after),
    }
    row = book.row_word(view.in_rounds)
    label = book.words["opening-label-rnd" if view.in_rounds else "opening-label-row"].format(Row=row, row=counts_text(rows, book.labels))
    sentence = book.sentence("opening-round" if view.in_rounds else "opening-row", fact, **slots)
    into = book.sentence("opening-next", stitch=stitch, Row=row, row=rows.map(lambda one: one + 1))
    yield step(label, sentence, into, *colours, count=count_end(book, fact, view.stitches(rows)))


def _some(book: Book, kind: str, count: Sized[int]) -> Spans:
    return book.part(f"{kind}-one" if set(count.values) == {1} else kind, n=count)


def is_round_opening(view: PieceView) -> bool:
    """Whether the piece is picked up round an opening of another."""
    start = view.first.start
    return isinstance(start, EdgeStart) and len(start.pick_ups) == 1 and start.pick_ups[0].chains > 0


def opening_picked_up(book: Book, view: PieceView, titles: dict[str, str]) -> Spans:
    """Where stitches are picked up round an opening: its lower side, a corner, its chain, the other corner."""
    ups: Sized[PickUp] = view.plans.map(lambda plan: plan.start.pick_ups[0])  # type: ignore[union-attr]
    first = ups.values[0]
    slots: dict[str, Slot] = {
        "stitch": book.abbr(view.first.start_cloth.stitch), "edge": spoken(first.edge), "piece": titles[first.piece],
        "below": ups.map(lambda up: up.of - up.chains - 2), "above": ups.map(lambda up: up.chains), "n": ups.map(lambda up: up.stitches),
    }
    kind = "pick-up-opening" if all(up.stitches == up.of for up in ups) else "pick-up-opening-uneven"
    return book.sentence(kind, f"{view.piece.key}.pickup.{first.piece}.{first.edge}", **slots)


def pair_sentences(book: Book, view: PieceView, like: str) -> list[Spans]:
    """Of pieces in rounds with an opening: how one of a mirrored pair differs, or that two alike fit either hand."""
    if not view.in_rounds or not slit_edges(view.piece.sections):
        return []
    if view.piece.mirrored:
        return [book.sentence("opening-mirrored", other=like)]
    return [book.sentence("opening-either")] if view.piece.make == 2 else []
