"""Triangles in words: the ring and its spine stitch, the rows that gain, in which order they are repeated."""

from collections.abc import Iterator, Mapping

from gaugewright.drawings.triangle_figures import lower_half
from gaugewright.grading.triangle_rows import TrianglePlan
from gaugewright.instructions.cloth_words import opening
from gaugewright.instructions.nodes import Block, Paragraph
from gaugewright.instructions.steps import count_end, only, spoken, step, to_row
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Mm, Slot, Spans, ordinal, spaced
from gaugewright.sized import Sized

CHECK_ROW = 8
"""The first row after which lengths are checked, at the end of a cycle: smaller, a triangle still rolls at its
edges (common practice, no source)."""


def is_triangle(view: PieceView) -> bool:
    """Whether the piece is a triangle from the middle of its long edge."""
    return isinstance(view.first.sections[0], TrianglePlan)


def middle_steps(book: Book, view: PieceView, names: Mapping[str, str]) -> list[Paragraph]:
    """The ring, the row worked into it, and the stitch that becomes the spine."""
    plan, cloth = view.first, view.first.start_cloth
    stitches = view.plans.map(lambda one: one.start.stitches)
    fact = f"{view.piece.key}.row1"
    slots: dict[str, Slot] = {"stitch": book.abbr(cloth.stitch), "n": stitches}
    begin = opening(book, cloth, plan.worked)
    kind = "first-row-middle" if begin else "first-row-middle-no-chain"
    slots |= {"open": begin} if begin else {}
    middle = ordinal((stitches.values[0] + 1) // 2)
    return [
        step("Foundation:", book.sentence("centre-foundation", view.piece.key, colour=names[plan.colour_of(1)])),
        step(
            f"{book.row_word(False)}\u00a01 (RS):", book.sentence(kind, fact, **slots), book.sentence("triangle-spine", fact, middle=middle),
            count=count_end(book, fact, stitches),
        ),
    ]


def triangle_blocks(book: Book, view: PieceView, index: int, colours: list[Spans]) -> Iterator[Block]:
    """The rows that gain, one cycle of them, a check on the way, and how long it is repeated."""
    plans: Sized[TrianglePlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    plan, fact, stitch = plans.values[0], f"{view.piece.key}.triangle", book.abbr(plans.values[0].cloth.stitch)
    gains = sorted({gain for gain in plan.cycle if gain})
    for gain in gains:
        yield step(f"{_name(book, gain, gains)}:", book.sentence("triangle-row", fact, stitch=stitch, n=gain + 1, more=4 * gain))
    if colours:
        yield step("Colour:", *colours)
    last, cycle = view.section_last_rows(index), len(plan.cycle)
    if cycle > 1:
        order = "; ".join(
            f"{book.row_word(False)}\u00a0{row}: {_said(book, plan.gain(row), gains)}" for row in range(2, cycle + 2)
        )
        label = book.words["rows-label"].format(Row=book.row_word(False), first=2, last=cycle + 1)
        yield step(label, book.sentence("triangle-cycle", fact, rows=order), count=count_end(book, f"{fact}.cycle", plans.map(lambda p: p.after(cycle + 1))))
    yield from _check(book, view, plans)
    kind = "triangle-repeat" if cycle > 1 else "triangle-each"
    size: dict[str, Slot] = {"width": _wide(view, last), "depth": view.height(last), "edge": spoken(view.piece.bottom)}
    yield step(
        to_row(book, view, last), book.sentence(kind, fact, first=2, last=cycle + 1),
        book.sentence("triangle-end", fact, **size), count=count_end(book, fact, view.stitches(last)),
    )


def _check(book: Book, view: PieceView, plans: Sized[TrianglePlan]) -> Iterator[Block]:
    """Lengths and stitches at the end of an early cycle, for the sizes that go further than that."""
    cycle = len(plans.values[0].cycle)
    row = 1 + cycle * -(-(CHECK_ROW - 1) // cycle)
    further = tuple(label for label, plan in plans.items() if plan.rows > row)
    if not further:
        return
    rows = plans.pick(further).map(lambda _plan: row)
    yield step("Check:", only(book, further), book.sentence(
        "triangle-check", f"{view.piece.key}.check", Row=book.row_word(False), row=row, width=_wide(view, rows), depth=view.height(rows),
        n=plans.values[0].after(row), half=(plans.values[0].after(row) - 1) // 2, edge=spoken(view.piece.bottom), gauge=book.word("gauge"),
    ))


def _wide(view: PieceView, rows: Sized[int]) -> Mm:
    """The long edge after those rows, in which each half is as long as the spine."""
    return Mm(view.height(rows).values.map(lambda mm: 2 * mm))


def _name(book: Book, gain: int, gains: list[int]) -> str:
    """ "Inc row", or "Single inc row" where there are several kinds."""
    return book.words["inc-row" if len(gains) == 1 else f"inc-row-{gain}"]


def _said(book: Book, gain: int, gains: list[int]) -> str:
    return _name(book, gain, gains).lower() if gain else book.words["plain-row"].lower()


def triangle_check(book: Book, view: PieceView) -> Spans:
    """What the finished piece measures; where its last row has more or fewer stitches than its edge is long, that too."""
    last = view.plans.map(lambda plan: plan.rows)
    flat = view.graded.map(lambda graded: lower_half(graded.outline))
    own = view.graded.map(lambda graded: graded.edges[view.piece.top].length / 2)
    apart = any(abs(one - other) >= TOLD for one, other in zip(flat, own, strict=True))
    lower = book.sentence("triangle-lower", view.piece.key, edge=spoken(view.piece.top), flat=Mm(flat), own=Mm(own), gauge=book.word("gauge")) if apart else ()
    return spaced(_measures(book, view, last), lower)


TOLD = 5.0
"""Millimetres by which half a last row may differ from its edge untold: half a centimetre is what lengths are given to."""


def _measures(book: Book, view: PieceView, last: Sized[int]) -> Spans:
    return book.sentence("final-check-triangle", view.piece.key, width=_wide(view, last), length=view.height(last), bottom=spoken(view.piece.bottom))
