"""Motifs in words: the ring, each round along its sides and at its corners, and how large it is."""

from collections.abc import Iterator, Mapping

from gaugewright.design.model import Motif
from gaugewright.grading.motifs import width_across
from gaugewright.grading.plan import MotifPlan
from gaugewright.instructions.cloth_words import closing, opening
from gaugewright.instructions.nodes import Block, Paragraph, Span
from gaugewright.instructions.spread_words import in_colour
from gaugewright.instructions.steps import count_end, only, step
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Mm, Slot, Spans, ordinal
from gaugewright.sized import Sized


def motif_plans(view: PieceView) -> Sized[MotifPlan]:
    """The plan of every size; they differ in their number of rounds only."""
    return view.plans.map(lambda plan: plan.sections[0])  # type: ignore[arg-type,return-value]


def is_motif(view: PieceView) -> bool:
    """Whether the piece is a motif."""
    return isinstance(view.piece.sections[0], Motif)


def motif_centre(book: Book, view: PieceView, names: Mapping[str, str]) -> list[Paragraph]:
    """The ring and the round worked into it, with the places of the corners."""
    plan, cloth, fact = motif_plans(view).values[0], view.first.start_cloth, f"{view.piece.key}.row1"
    begin, end = opening(book, cloth, view.first.worked), closing(book, cloth, view.first.worked)
    if plan.chains:
        kind = "motif-ring-space-one" if plan.rounds[0].side == 1 else "motif-ring-space"
        work = book.part(kind, stitch=book.abbr(cloth.stitch), n=plan.rounds[0].side, chains=plan.chains, again=_again(book, plan.sides - 1))
        corners = book.sentence("motif-spaces", chains=plan.chains)
    else:
        work = book.part("motif-ring", stitch=book.abbr(cloth.stitch), n=plan.stitches)
        corners = book.sentence("motif-corners", nth=ordinal(plan.along(1)))
    kind = "motif-first-round" if begin else "motif-first-round-no-chain"
    first = book.sentence(kind, fact, work=work, close=end, **({"open": begin} if begin else {}))
    count = count_end(book, fact, view.plans.map(lambda _plan: plan.stitches))
    return [
        step("Foundation:", book.sentence("centre-foundation", view.piece.key, colour=names[view.first.colour_of(1)])),
        step(f"{book.row_word(True)}\u00a01 (RS):", first, corners, count=count),
    ]


def motif_blocks(book: Book, view: PieceView, names: Mapping[str, str]) -> Iterator[Block]:
    """The rounds after the first, each once for all sizes that have it; then the size it has come to."""
    plans = motif_plans(view)
    begin, end = (part(book, view.first.start_cloth, view.first.worked) for part in (opening, closing))
    for number in range(2, max(plan.rows for plan in plans) + 1):
        having = tuple(label for label, plan in plans.items() if plan.rows >= number)
        plan, fact = plans[having[0]], f"{view.piece.key}.motif.{number}"
        for colour, sizes in _by_colour(view, having, number).items():
            work: dict[str, Slot] = {"work": _round(book, plan, number), "close": end, "colour": names[colour]}
            kind = ("spread-increase" if begin else "spread-no-chain") + in_colour(view)
            sentence = book.sentence(kind, fact, **work, **({"open": begin} if begin else {}))
            count = count_end(book, fact, Sized(sizes, (plan.count(number),) * len(sizes)))
            yield step(f"{book.row_word(True)}\u00a0{number}:", only(book, sizes), sentence, count=count)
    motif = view.piece.sections[0]
    assert isinstance(motif, Motif)  # its plan is a motif's
    across = Mm(view.graded.map(lambda graded: width_across(motif.sides, graded.worked["length"])))
    side = Mm(view.graded.map(lambda graded: graded.edges["top"].length / motif.sides))
    kind = "motif-end-odd" if motif.sides % 2 else "motif-end-square" if motif.sides == 4 else "motif-end"  # a square's side is what it measures across
    slots: dict[str, Slot] = {"across": across, "n": plans.map(lambda plan: plan.along(plan.rows)), **({} if motif.sides == 4 else {"side": side})}
    yield step("Check:", book.sentence(kind, view.piece.key, **slots))


def _by_colour(view: PieceView, sizes: tuple[str, ...], number: int) -> dict[str, tuple[str, ...]]:
    """The sizes that have a round, by its colour."""
    found: dict[str, tuple[str, ...]] = {}
    for label in sizes:
        colour = view.plans[label].colour_of(number)
        found[colour] = (*found.get(colour, ()), label)
    return found


def _round(book: Book, plan: MotifPlan, number: int) -> Spans:
    """A round's work: up to the first corner, from corner to corner, and after the last one."""
    one, stitch = plan.rounds[number - 1], book.abbr(plan.cloth.stitch)
    corner = _corner(book, plan, one.half)
    plain = _plain(book, stitch, one.side)
    loop = book.part(f"loop-{plan.cloth.loop}")
    if not one.trail:
        return (*book.part("motif-sides", plain=plain, corner=corner, again=_again(book, plan.sides - 1)), *loop)
    lead = (*_plain(book, stitch, one.lead), Span(", ")) if one.lead else ()
    rest = book.part("motif-sides", plain=plain, corner=corner, again=_again(book, plan.sides - 2))
    last = book.part("motif-last-one" if one.trail == 1 else "motif-last", stitch=stitch, n=one.trail)
    return (*lead, *corner, Span(", "), *rest, Span(", "), *last, *loop)


def _plain(book: Book, stitch: str, count: int) -> Spans:
    return book.part("plain-in-next-one" if count == 1 else "plain-in-next", stitch=stitch, n=count)


def _again(book: Book, times: int) -> Spans:
    return book.part("again-once" if times == 1 else "again", n=times)


def _corner(book: Book, plan: MotifPlan, half: int) -> Spans:
    stitch = book.abbr(plan.cloth.stitch)
    if plan.chains:
        return book.part("motif-corner-space-one" if half == 1 else "motif-corner-space", stitch=stitch, n=half, chains=plan.chains)
    return book.part("motif-corner", stitch=stitch, n=1 + 2 * half) if half else book.part("motif-corner-plain", stitch=stitch)
