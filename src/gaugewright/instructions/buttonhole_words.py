"""Buttonholes in words: the row of chains with its table, the row into them, the buttons to buy."""

from collections.abc import Iterator, Mapping

from gaugewright.design.model import Design
from gaugewright.grading.buttonholes import HolePlan
from gaugewright.instructions.nodes import Block, Paragraph, Table
from gaugewright.instructions.steps import count_end, edge_word, step
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import NO_BREAK, Book, Spans, counts_text
from gaugewright.sized import Sized
from gaugewright.units import inches_text, mm_text


def buttonhole_blocks(book: Book, view: PieceView, titles: Mapping[str, str]) -> Iterator[Block]:
    """The two rows of the buttonholes, the stitches to skip for each size; nothing where there are none."""
    if view.piece.buttonholes is None:
        return
    plans: Sized[HolePlan] = view.plans.map(lambda plan: plan.holes)  # type: ignore[arg-type,return-value]
    first, fact = plans.values[0], f"{view.piece.key}.buttonholes"
    key, edge = view.piece.buttonholes.edge
    rows = plans.map(lambda plan: plan.row)
    stitch = book.abbr(view.first.start_cloth.stitch)
    corners = [book.sentence("buttonhole-corners", row=book.words["row"].lower())] if view.first.corners else []
    ends = [book.sentence("buttonhole-from-start" if len(view.piece.start.edges) == 1 else "buttonhole-from-end")]
    before = [book.sentence("buttonhole-before-corners" if corners else "buttonhole-before")] if max(rows.values) > 2 else []
    yield step(
        _label(book, rows, "buttonhole-row"),
        book.sentence("buttonhole-row-one" if first.each == 1 else "buttonhole-row", fact, n=first.each, edge=edge_word(book, edge), piece=titles[key]),
        *ends, *before, book.sentence("buttonhole-order"), *corners, count=count_end(book, fact, view.stitches(rows)),
    )
    yield _table(book, view, plans)
    after = rows.map(lambda row: row + 1)
    yield step(_label(book, after, "row-alone"), book.sentence("buttonhole-next", stitch=stitch), *corners, count=count_end(book, f"{fact}.next", view.stitches(after)))


def _label(book: Book, rows: Sized[int], kind: str) -> str:
    return book.words[kind].format(Row=book.row_word(False), row=counts_text(rows, book.labels))


def _table(book: Book, view: PieceView, plans: Sized[HolePlan]) -> Table:
    lines = tuple((label, ", ".join(_skipped(book, first, plan.each) for first in plan.firsts)) for label, plan in plans.items())
    caption = book.words["buttonhole-table"].format(title=view.piece.title)
    return Table(caption, (book.words["size"], book.words["buttonhole-skip"]), lines, ("left", "left"))


def _skipped(book: Book, first: int, each: int) -> str:
    return str(first) if each == 1 else f"{first}\u00a0{book.words['to']}\u00a0{first + each - 1}"


def button_lines(book: Book, design: Design) -> Iterator[Spans]:
    """The buttons to buy, those of one size together."""
    found: dict[float, int] = {}
    for piece in design.pieces:
        if piece.buttonholes is not None:
            found[piece.buttonholes.size] = found.get(piece.buttonholes.size, 0) + piece.buttonholes.count * piece.make
    for size, count in found.items():
        yield book.front_text("buttons-line" if count > 1 else "button-line", count=count, width=_across(size))


def _across(size: float) -> str:
    """Buttons are sold by the millimetre, or by the eighth of an inch."""
    return f"{mm_text(size)}{NO_BREAK}mm / {inches_text(size)}{NO_BREAK}in"


def buttons_sewn(book: Book, design: Design) -> Iterator[Block]:
    """Where buttons go, under finishing."""
    if any(piece.buttonholes is not None for piece in design.pieces):
        yield Paragraph(book.front_text("finish-buttons"), "bullet")
