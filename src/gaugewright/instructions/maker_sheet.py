"""The sheet that test makers fill in: one page, in the order of the file that it is copied into (`spec/returns.py`).

In: a graded pattern as it is printed. Out: a `Document` of its own, since the pattern that is sold has no use for it.
"""

from collections.abc import Iterator

from gaugewright.changes import Side, fabrics_of, measures_of
from gaugewright.design.model import Fabric
from gaugewright.instructions.gauge_page import footer_gauge
from gaugewright.instructions.nodes import Align, Block, Document, Heading, Paragraph, Span, Table, blank, measure_columns, plain, spans_text
from gaugewright.instructions.steps import spoken
from gaugewright.instructions.wording import NO_BREAK, Book
from gaugewright.rounding import half_up, to_step, up_to_step
from gaugewright.units import cm_text, inches_text

BOX = "☐"
HARD_LINES = 3
"""Places that were hard to follow: more are written on the back."""


def build_sheet(side: Side, book: Book, own_gauge: bool) -> Document:
    """The whole sheet."""
    about = side.design.about
    parts = [about.workshop, about.date, footer_gauge(book, fabrics_of(side), own_gauge)]
    title = spans_text(book.front_text("sheet-title-version" if about.version else "sheet-title", title=about.title, version=about.version))
    return Document(
        title=title, author=about.workshop, language=about.language, date=about.date, running_head=title,
        footer="  ·  ".join(part for part in parts if part), blocks=tuple(_blocks(side, book, title)), keywords=("crochet", "test sheet"),
    )  # fmt: skip


def _blocks(side: Side, book: Book, title: str) -> Iterator[Block]:
    yield Heading(1, title)
    yield Paragraph(book.front_text("sheet-intro", gauge=book.word("gauge")), "note")
    boxes = f"{NO_BREAK * 3} ".join(f"{BOX}{NO_BREAK}{label}" for label in book.labels)
    yield Paragraph(plain(boxes), "body", book.front["sheet-size"])
    yield _gauges(side, book)
    yield _measures(side, book)
    yield _yarns(side, book)
    yield _pieces(side, book)
    yield _hard(book)
    yield Paragraph((Span("_" * 60),), "body", book.front["sheet-more"])
    yield Paragraph(book.front_text("sheet-name", blank="_" * 24), "body")


def _gauges(side: Side, book: Book) -> Table:
    front = book.front
    header = (front["sheet-fabric"], front["sheet-pattern-gauge"], front["sheet-hook"], front["sheet-fresh"], front["sheet-washed"])
    rows = tuple((spoken(fabric.key).capitalize(), _in_short(book, fabric), blank(8), blank(18), blank(18)) for fabric in fabrics_of(side))
    return Table(spans_text(book.front_text("sheet-gauge", gauge=book.word("gauge"), length=_over(book)[1])), header, rows, ("left", "left", "center", "center", "center"))


def _over(book: Book) -> tuple[float, str]:
    """The length that gauges are told over, mm and as printed."""
    return (100.0, f"10{NO_BREAK}cm") if book.units == "cm" else (101.6, f"4{NO_BREAK}in")


def _in_short(book: Book, fabric: Fabric) -> str:
    mm, length = _over(book)
    sts, rows = (f"{to_step(count, 0.1):.1f}".removesuffix(".0") for count in (fabric.gauge.stitches_in(mm), fabric.gauge.rows_in(mm)))
    rowword = book.words["rows" if fabric.worked == "rows" else "rounds"]
    return spans_text(book.front_text("sheet-ten", sts=sts, rows=rows, rowword=rowword, length=length)).replace(" ", NO_BREAK)


def _measures(side: Side, book: Book) -> Table:
    text = cm_text if book.units == "cm" else inches_text
    rows = tuple((label, *(text(mm) for mm in values), blank(16)) for _, label, values in measures_of(side))
    header = (book.front["measure"], *book.labels, book.front["sheet-yours"])
    return Table(spans_text(book.front_text("sheet-finished", unit=book.units)), header, rows, _columns(book))


def _columns(book: Book) -> tuple[Align, ...]:
    """A column a size, and one as wide to write in."""
    return (*measure_columns(len(book.labels)), "center")


def _yarns(side: Side, book: Book) -> Table:
    """The grams that the pattern prints, with its margin; without a weighed swatch the blanks alone."""
    front, amounts = book.front, side.amounts
    weighed = [one for one in amounts if one is not None and not any(amount.estimated for amount in one.values())]
    if len(weighed) < len(amounts):
        rows = tuple((yarn.label, blank(16)) for yarn in side.design.yarns)
        return Table(front["sheet-yarn-unweighed"], (front["colour"], front["sheet-used"]), rows, ("left", "center"))
    used = [yarn for yarn in side.design.yarns if any(yarn.key in one for one in weighed)]
    grams = ((yarn.label, *(f"{up_to_step(one[yarn.key].total, 5):.0f}" if yarn.key in one else book.words["no-value"] for one in weighed), blank(16)) for yarn in used)
    caption = spans_text(book.front_text("sheet-yarn", margin=f"{half_up(side.design.buying.margin * 100)}{NO_BREAK}%"))
    return Table(caption, (front["colour"], *book.labels, front["sheet-used"]), tuple(grams), _columns(book))


def _pieces(side: Side, book: Book) -> Table:
    """Hours of all of a piece that is made more than once: nobody notes them apart."""
    front = book.front
    rows = []
    for piece in side.design.pieces:
        title = spans_text(book.front_text("sheet-made", title=piece.title, make=piece.make)) if piece.make > 1 else piece.title
        rows.append((title, blank(12), blank(60)))
    return Table(front["sheet-pieces"], (front["sheet-piece"], front["sheet-hours"], front["sheet-remarks"]), tuple(rows), ("left",) * 3)


def _hard(book: Book) -> Table:
    front = book.front
    rows = ((blank(10), blank(16), blank(60)),) * HARD_LINES
    return Table(front["sheet-hard"], (front["sheet-page"], front["sheet-row"], front["sheet-what"]), rows, ("left",) * 3, row_heads=False)
