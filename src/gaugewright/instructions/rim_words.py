"""A border round joined motifs in words: the round picked up along their sides, over their joins and at the outer corners."""

from collections.abc import Iterator, Mapping

from gaugewright.grading.model import EdgeStart, RimPick
from gaugewright.grading.plan import PiecePlan
from gaugewright.instructions.cloth_words import pick_up_close
from gaugewright.instructions.nodes import Paragraph, Span
from gaugewright.instructions.steps import count_end, first_yarn, step
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Mm, Slot, Spans
from gaugewright.sized import Sized


def is_round_rim(view: PieceView) -> bool:
    """Whether the piece is a border round joined motifs."""
    return isinstance(view.first.start, EdgeStart) and view.first.start.pick_ups[0].rim is not None


def picks(view: PieceView) -> Sized[RimPick]:
    """What is picked up round the rim in every size."""
    return view.plans.map(_pick)


def _pick(plan: PiecePlan) -> RimPick:
    assert isinstance(plan.start, EdgeStart)  # asked of borders only
    rim = plan.start.pick_ups[0].rim
    assert rim is not None
    return rim


def rim_picked_up(book: Book, view: PieceView, names: Mapping[str, str]) -> Paragraph:
    """Round 1: along the sides, over the joins, at the corners."""
    cloth, found = view.first.start_cloth, picks(view)
    place = book.words["rim-space" if found.values[0].layout.spaced else "rim-st"]
    chains = max(1, view.fabrics[cloth.fabric].chains)
    stitch, fact = book.abbr(cloth.stitch), f"{view.piece.key}.rim"
    begin = book.sentence("rim-begin", colour=first_yarn(book, view, dict(names)), slst=book.abbr("sl st"), chains=chains, place=place)
    parts = [_sides(book, found, stitch, fact), *_joins(book, found, stitch, place, fact)]
    parts.append(book.sentence("rim-corners", fact, corners=found.map(lambda one: one.corners), stitch=stitch, place=place))
    listed = tuple(span for index, part in enumerate(parts) for span in (*((Span("; "),) if index else ()), *part))
    end = (Span("; "), *pick_up_close(book, cloth, view.first.worked), Span("."))
    spiral = [book.sentence("pick-up-spiral")] if view.first.worked == "spiral rounds" else []
    count = count_end(book, f"{view.piece.key}.row1", view.stitches(view.plans.map(lambda _plan: 1)))
    return step("Rnd\u00a01 (pick-up rnd, RS):", begin, (*listed, *end), *spiral, count=count)


def _sides(book: Book, found: Sized[RimPick], stitch: str, fact: str) -> Spans:
    slots: dict[str, Slot] = {"n": found.map(lambda one: one.each), "of": found.map(lambda one: one.own - 1), "sides": found.map(lambda one: len(one.along)), "stitch": stitch}
    if all(one.each == one.own - 1 and not one.more for one in found):
        return book.sentence("rim-sides", fact, **slots)
    if any(one.more for one in found):
        return book.sentence("rim-sides-more", fact, more=found.map(lambda one: one.more), **slots)
    return book.sentence("rim-sides-spread", fact, **slots)


def _joins(book: Book, found: Sized[RimPick], stitch: str, place: str, fact: str) -> Iterator[Spans]:
    """Nothing for a single motif, and no number where some size is one."""
    joins = found.map(lambda one: one.joins)
    if any(joins):
        kind = "rim-joins" if all(joins) else "rim-joins-some"
        yield book.sentence(kind, fact, stitch=stitch, place=place, **({"joins": joins} if all(joins) else {}))


def rim_end(book: Book, view: PieceView) -> list[Spans]:
    """What the whole comes to with its border."""
    if not is_round_rim(view):
        return []
    width, length = (Mm(view.graded.map(lambda one, name=name: one.finished[name])) for name in ("joined_width", "joined_length"))  # type: ignore[misc]
    return [book.sentence("rim-end", view.piece.key, width=width, length=length)]


def corner_markers(book: Book, view: PieceView) -> list[Spans]:
    """Where the stitches are marked that corners are worked in."""
    kinds, fact, found = {corner.site.kind for corner in view.first.corners}, f"{view.piece.key}.rim", picks(view)
    outer = [book.sentence("marker-outer", fact, n=found.map(lambda one: one.corners))] if "outer" in kinds else []
    joins = found.map(lambda one: one.joins)
    return outer + ([book.sentence("marker-valley", fact, n=joins)] if "valley" in kinds else [])
