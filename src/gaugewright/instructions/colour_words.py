"""Colours told before a piece is begun: its stripes as a sequence, and the rows of every colour in a table."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from gaugewright.grading.plan import PiecePlan
from gaugewright.grading.strands import Strand, strands_of
from gaugewright.instructions.block_words import block_steps
from gaugewright.instructions.nodes import Block, Paragraph, Span, Table, measure_columns
from gaugewright.instructions.steps import step, tail_length
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Spans, counts_text, list_text
from gaugewright.sized import Sized


@dataclass(frozen=True, slots=True)
class Line:
    """One stripe or band: its colour, and its first and last row in the sizes that have it."""

    colour: str
    rows: Mapping[str, tuple[int, int]]


def colour_steps(book: Book, view: PieceView, names: Mapping[str, str], titles: Mapping[str, str]) -> Iterator[Block]:
    """What is told of a piece's colours; nothing where it has one."""
    if view.piece.colours.blocks:
        yield from block_steps(book, view, names)
    elif view.piece.colours.stripes:
        yield _stripes(book, view, names, titles)
        yield _stripe_table(book, view, names)
    elif any(len(plan.bands) > 1 for plan in view.plans):
        yield _band_table(book, view, names)


def lines_of(view: PieceView) -> tuple[Line, ...]:
    """Stripes, or bands, of all sizes in order of working; those of one place in the sequence are one line."""
    found: dict[tuple[object, ...], dict[str, tuple[int, int]]] = {}
    for label, plan in view.plans.items():
        for key, first, last in _keyed(plan):
            found.setdefault(key, {})[label] = (first, last)
    lines = sorted(found.items(), key=lambda item: max(first for first, _ in item[1].values()))
    return tuple(Line(str(key[0]), rows) for key, rows in lines)


def _keyed(plan: PiecePlan) -> Iterator[tuple[tuple[object, ...], int, int]]:
    """Each band of one size with what makes it the same in other sizes: its place in the sequence, else its number."""
    for number, band in enumerate(plan.bands):
        if plan.stripes is None or plan.stripes.colour_at(band.first) != band.colour:
            yield (band.colour, "own", number if plan.stripes is None else 0), band.first, band.last
        else:
            yield (band.colour, "stripe", plan.stripes.place(band.first)[0]), band.first, band.last


def _stripes(book: Book, view: PieceView, names: Mapping[str, str], titles: Mapping[str, str]) -> Paragraph:
    sentences = [book.sentence("stripes-sequence", view.piece.key, sequence=_sequence(book, view, names)), *_placed(book, view, titles)]
    if view.first.worked == "spiral rounds":
        sentences.append(book.sentence("stripes-spiral", slst=book.abbr("sl st"), rnd=_row(book, view)))
    fates = {fate for line in lines_of(view) for fate in _fates(view, line).values()}
    if "carry" in fates:
        kind = "stripes-carry-rounds" if view.in_rounds else "stripes-carry"
        sentences.append(book.sentence(kind, view.piece.key, limit=rows_text(book, view, view.piece.colours.carry)))
    if "cut" in fates:
        sentences.append(book.sentence("stripes-cut" if "carry" in fates else "stripes-cut-alone", tail=tail_length(book, "weave in")))
    return step("Stripes:", *sentences)


def _sequence(book: Book, view: PieceView, names: Mapping[str, str]) -> Spans:
    """ "4 rows with Oat, 2 rows with Kelp"."""
    plans = [plan.stripes for plan in view.plans if plan.stripes is not None]
    spans: list[Span] = []
    for index, (colour, _) in enumerate(plans[0].sequence):
        rows = Sized(view.labels, tuple(plan.sequence[index][1] for plan in plans))
        spans += [Span(", ")] if spans else []
        spans += book.part("stripe", f"{view.piece.key}.stripe.{index}", rows=rows_text(book, view, rows), colour=names[colour])
    return tuple(spans)


def rows_text(book: Book, view: PieceView, rows: "int | Sized[int]") -> str:
    """ "4 rows", "1 row"; in rounds rnds."""
    text = str(rows) if isinstance(rows, int) else counts_text(rows, book.labels)
    return f"{text}\u00a0{_row(book, view) if text == '1' else book.words['rounds' if view.in_rounds else 'rows']}"


def _row(book: Book, view: PieceView) -> str:
    return book.row_word(view.in_rounds).lower()


def _placed(book: Book, view: PieceView, titles: Mapping[str, str]) -> list[Spans]:
    """Where the sequence stands, if it doesn't begin with row 1."""
    stripes = view.piece.colours.stripes
    assert stripes is not None
    if stripes.match is not None and any(plan.stripes is not None and plan.stripes.shift for plan in view.plans):
        kind, rows = "stripes-go-on" if stripes.match.own is None else "stripes-meet", book.words["rounds" if view.in_rounds else "rows"]
        return [book.sentence(kind, piece=titles[stripes.match.piece], rows=rows)]
    begins = view.plans.map(_first_begun)
    if stripes.begin is not None and any(row > 1 for row in begins):
        return [book.sentence("stripes-begin", view.piece.key, Row=book.row_word(view.in_rounds), first=begins)]
    return []


def _first_begun(plan: PiecePlan) -> int:
    """The first row that begins the sequence and isn't hidden under the colour of a first section."""
    stripes, first = plan.stripes, plan.bands[0]
    assert stripes is not None
    row = first.last + 1 if stripes.colour_at(1) != first.colour else 1
    return row + -(stripes.shift + row - 1) % stripes.period


def _fates(view: PieceView, line: Line) -> dict[str, str]:
    """What becomes of a stripe's yarn in each size where the piece goes on after it: it is carried, or cut."""
    return {
        label: "cut" if _strand(view, label, last).last == last else "carry"
        for label, (_, last) in line.rows.items() if last < view.plans[label].rows
    }


def _strand(view: PieceView, label: str, row: int) -> Strand:
    return next(strand for strand in strands_of(view.graded[label].strips, view.piece.colours.carry) if row in strand.rows)


def _stripe_table(book: Book, view: PieceView, names: Mapping[str, str]) -> Table:
    lines = lines_of(view)
    rows = []
    for line, cells in zip(lines, _row_cells(book, view, lines), strict=True):
        fates = {label: book.words[f"yarn-{fate}"] for label, fate in _fates(view, line).items()}
        then = list_text(fates, [label for label in book.labels if label in fates]) if fates else book.words["no-value"]
        rows.append((names[line.colour], *cells, then))
    header = (book.front["colour"], *_row_header(book, view, lines), book.words["yarn-then"])
    return Table(
        book.words["stripe-table"].format(title=view.piece.title), header, tuple(rows), (*measure_columns(len(header) - 2), "left"),
        note=_note(book, view, lines),
    )


def _band_table(book: Book, view: PieceView, names: Mapping[str, str]) -> Table:
    lines = lines_of(view)
    cells = _row_cells(book, view, lines)
    header = (book.front["colour"], *_row_header(book, view, lines))
    rows = tuple((names[line.colour], *each) for line, each in zip(lines, cells, strict=True))
    return Table(book.words["band-table"].format(title=view.piece.title), header, rows, measure_columns(len(header) - 1))


def _begin_alike(lines: tuple[Line, ...]) -> bool:
    """Whether all stripes begin on the same rows in all sizes that have them: one column serves all."""
    return all(len({first for first, _ in line.rows.values()}) == 1 for line in lines)


def _note(book: Book, view: PieceView, lines: tuple[Line, ...]) -> str:
    ends = view.plans.map(lambda plan: plan.rows)
    if not _begin_alike(lines) or ends.agree:
        return ""
    return book.words["stripe-note"].format(Row=book.row_word(view.in_rounds), last=counts_text(ends, book.labels))


def _row_header(book: Book, view: PieceView, lines: tuple[Line, ...]) -> tuple[str, ...]:
    return (book.words["rounds-of" if view.in_rounds else "rows-of"],) if _begin_alike(lines) else book.labels


def _row_cells(book: Book, view: PieceView, lines: tuple[Line, ...]) -> list[tuple[str, ...]]:
    """First and last row of each stripe: in one column, or in a column a size."""
    if _begin_alike(lines):
        return [(_span(book, *max(line.rows.values())),) for line in lines]
    return [
        tuple(_span(book, *line.rows[label]) if label in line.rows else book.words["no-value"] for label in book.labels) for line in lines
    ]


def _span(book: Book, first: int, last: int) -> str:
    return str(first) if first == last else f"{first}\u00a0{book.words['to']}\u00a0{last}"
