"""Yarns side by side as a document for the maker: one table, a plot of what they cost, then each with its verdict and reasons."""

from collections import Counter
from collections.abc import Iterator

from gaugewright.design.size_list import ONE_SIZE
from gaugewright.drawings.cost_plot import CostBar, draw_costs
from gaugewright.instructions.nodes import Block, Document, Figure, Heading, Paragraph, Span, Table, measure_columns, plain, spans_text
from gaugewright.instructions.wording import Book, sizes_text
from gaugewright.rounding import half_up, to_step
from gaugewright.trade.yarn_weights import yarn_weight
from gaugewright.yarn.comparison import Compared, Comparison, Reason

TRAIT_WORDS = ("pilling", "shedding")
"""What is expected of wear is told by itself, beside what must be minded."""


def candidates_document(comparison: Comparison, book: Book, date: str) -> Document:
    """The whole page."""
    title = spans_text(book.comparing_text("title", title=comparison.title))
    blocks = (
        Heading(1, title), Paragraph(book.comparing_text("lead"), "lead"),
        *_tables(comparison, book), *_plot(comparison, book),
        *(block for yarn in comparison.all for block in _yarn(yarn, yarn is comparison.own, comparison, book)),
        Heading(2, book.comparing["rules"]), *(Paragraph(book.comparing_text(f"rule-{rule}"), "bullet") for rule in ("gauge", "hand", "amounts", "wear", "verdict")),
    )
    return Document(title, "", "en", date, title, "", tuple(blocks))


def _tables(comparison: Comparison, book: Book) -> Iterator[Block]:
    """All yarns in the size shown, then balls and cost of every size, where there are several."""
    header = tuple(book.comparing[key] for key in ("yarn", "gauge", "balls", "cost", "grams", "verdict"))
    rows = tuple(_row(yarn, yarn is comparison.own, comparison.size, book) for yarn in comparison.all)
    one = comparison.size == ONE_SIZE
    caption = book.comparing["table-one"] if one else spans_text(book.comparing_text("table", size=comparison.size))
    note = spans_text(book.comparing_text("kept", yarns=", ".join(comparison.kept))) if comparison.kept else ""
    yield Table(caption, header, rows, ("left", "left", "right", "right", "right", "left"), note=note)
    labels = book.labels
    if len(labels) > 1:
        align = measure_columns(len(labels))
        for key, cells in (("balls", _ball_ends), ("cost", _sum)):
            told = [yarn for yarn in comparison.all if (yarn.take if key == "balls" else yarn.cost) is not None]
            body = tuple((_about(yarn, book) + (f"{yarn.name}, {yarn.currency}" if key == "cost" else yarn.name), *(cells(yarn, size, book) for size in labels)) for yarn in told)
            if body:
                yield Table(book.comparing[f"{key}-sizes"], (book.comparing["yarn"], *labels), body, align)


def _row(yarn: Compared, own: bool, size: str, book: Book) -> tuple[str, ...]:
    gauge = yarn.gauge.gauge
    about = book.comparing["about-sign"] if yarn.gauge.estimated else ""
    text = f"{about}{to_step(gauge.stitches_in(100), 0.1):.1f} × {to_step(gauge.rows_in(100), 0.1):.1f}"
    verdict = book.comparing["own"] if own else book.comparing[f"verdict-{yarn.verdict.replace(' ', '-')}"]
    return (yarn.name, text, _balls(yarn, size, book), _cost(yarn, size, book), _grams(yarn, size, book), verdict)


def _about(yarn: Compared, book: Book) -> str:
    return book.comparing["about-sign"] if yarn.take and (yarn.take.estimated or yarn.gauge.estimated) else ""


def _balls(yarn: Compared, size: str, book: Book) -> str:
    return book.words["no-value"] if yarn.take is None else f"{_about(yarn, book)}{_ball_ends(yarn, size, book)}"


def _ball_ends(yarn: Compared, size: str, book: Book) -> str:
    """Balls, without the mark of an estimate."""
    assert yarn.take is not None  # only yarns whose amounts are known are asked
    low, high = yarn.take.balls[size]
    return f"{low}" if low == high else f"{low} {book.words['to']} {high}"


def _cost(yarn: Compared, size: str, book: Book) -> str:
    return book.words["no-value"] if yarn.cost is None else f"{_about(yarn, book)}{_sum(yarn, size, book)} {yarn.currency}"


def _sum(yarn: Compared, size: str, book: Book) -> str:
    """What it costs, without the currency."""
    assert yarn.cost is not None  # only yarns with a price are asked
    low, high = yarn.cost[size]
    return f"{low}" if low == high else f"{low} {book.words['to']} {high}"


def _grams(yarn: Compared, size: str, book: Book) -> str:
    if yarn.take is None:
        return book.words["no-value"]
    low, high = (int(to_step(grams, 10)) for grams in yarn.take.grams[size])
    return _about(yarn, book) + (f"{low}" if low == high else f"{low} {book.words['to']} {high}")


def _plot(comparison: Comparison, book: Book) -> Iterator[Block]:
    """Costs in the currency that most are priced in; those in another are told."""
    priced = [yarn for yarn in comparison.all if yarn.cost is not None]
    if not priced:
        return
    currency = Counter(yarn.currency for yarn in priced).most_common(1)[0][0]
    bars = [CostBar(yarn.name, *yarn.cost[comparison.size]) for yarn in priced if yarn.cost is not None and yarn.currency == currency]
    drawing = draw_costs(bars, currency, "" if comparison.size == ONE_SIZE else comparison.size)
    if drawing is not None:
        left = [yarn.name for yarn in comparison.all if yarn.cost is None or yarn.currency != currency]
        more = " " + spans_text(book.comparing_text("not-drawn", yarns=", ".join(left), currency=currency)) if left else ""
        yield Figure(drawing, drawing.description, drawing.title + more, "cost")


def _yarn(yarn: Compared, own: bool, comparison: Comparison, book: Book) -> Iterator[Block]:
    yield Heading(2, yarn.name)
    verdict = book.comparing["own-line"] if own else book.comparing[f"verdict-{yarn.verdict.replace(' ', '-')}-line"]
    yield Paragraph((Span(verdict, "strong"), Span(" " + _facts(yarn, book))))
    for reason in yarn.reasons:
        if reason.gravity != "fact" and reason.slots.get("about") not in TRAIT_WORDS:
            yield Paragraph(_said(reason, book), "bullet")
    wear = [reason for reason in yarn.reasons if reason.gravity == "fact" or reason.slots.get("about") in TRAIT_WORDS]
    if wear:
        yield Paragraph((Span(book.comparing["wear"], "strong"),))
        for reason in wear:
            yield Paragraph(_said(reason, book), "bullet")
    if yarn.care:
        yield Paragraph((Span(book.comparing["care"], "strong"), Span(" " + " ".join(yarn.care))))


def _facts(yarn: Compared, book: Book) -> str:
    """What its band says, and how it feels at its gauge."""
    parts = []
    if yarn.category is not None:
        parts.append(book.words["wanted-weight"].format(category=yarn.category, name=yarn_weight(yarn.category).name.lower()))
    if yarn.metres is not None:
        parts.append(book.comparing["metres-of"].format(metres=half_up(yarn.metres), yards=half_up(yarn.metres / 0.9144)))
    parts += [f"{share:g} % {name}" for name, share in yarn.fibre]
    parts.append(yarn.structure or book.comparing["make-unknown"])
    if yarn.hand is not None:
        parts.append(book.comparing[f"hand-{yarn.hand}"])
    parts.append(book.comparing[f"basis-{yarn.gauge.basis.replace(' ', '-')}"])
    text = "; ".join(parts)
    return text[:1].upper() + text[1:] + "."


def _said(reason: Reason, book: Book) -> tuple[Span, ...]:
    """The reason in words, its source after it."""
    slots = {key: value for key, value in reason.slots.items() if key != "about"}
    if "sizes" in slots:
        slots["sizes"] = sizes_text(slots["sizes"].split(", "), book.labels, book.words)
    text = plain(slots["text"]) if reason.key == "said" else book.comparing_text(f"reason-{reason.key}", **slots)
    return (*text, Span(f" [{reason.source}]"))
