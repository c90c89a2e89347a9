"""Colours told before a piece is begun: its stripes as a sequence, and the rows of every colour in a table."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from gaugewright.design.model import UNSTACKED, Piece
from gaugewright.grading.plan import PiecePlan
from gaugewright.grading.strands import strands_of
from gaugewright.instructions.block_words import block_steps
from gaugewright.instructions.nodes import Align, Block, Paragraph, Span, Table, measure_columns
from gaugewright.instructions.steps import step, tail_length
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Spans, counts_text, list_text, listed
from gaugewright.sized import Sized


@dataclass(frozen=True, slots=True)
class Line:
    """One stripe or band: its colour, and its first and last row in the sizes that have it."""

    colour: str
    rows: Mapping[str, tuple[int, int]]


Key = tuple[str, str, int]
"""A colour and what makes its rows the same stretch in every size: a place in the sequence, a section, a band's number."""


def colour_steps(book: Book, view: PieceView, names: Mapping[str, str], titles: Mapping[str, str]) -> Iterator[Block]:
    """What is told of a piece's colours; nothing where it has one."""
    if view.piece.colours.blocks:
        yield from block_steps(book, view, names)
    elif view.piece.colours.stripes:
        lines = lines_of(view)
        fates = _fates(view, lines)
        yield _stripes(book, view, {fate for each in fates for fate in each.values()}, names, titles)
        yield _stripe_table(book, view, lines, fates, names)
    elif any(len(plan.bands) > 1 for plan in view.plans):
        yield _band_table(book, view, names)


def lines_of(view: PieceView) -> tuple[Line, ...]:
    """Stripes, or bands, of all sizes in order of working; those of one place in the sequence are one line."""
    found: dict[Key, dict[str, tuple[int, int]]] = {}
    for label, plan in view.plans.items():
        for key, rows in groupby(range(1, plan.rows + 1), key=_keys(view.piece, plan)):
            first, *others = rows
            found.setdefault(key, {})[label] = (first, others[-1] if others else first)
    lines = sorted(found.items(), key=lambda item: max(first for first, _ in item[1].values()))
    return tuple(Line(key[0], rows) for key, rows in lines)


def _keys(piece: Piece, plan: PiecePlan) -> Callable[[int], Key]:
    """What tells each row's stretch; rows of a section with a colour of its own are a stretch by themselves."""
    own: dict[int, int] = {}
    row = 1
    for index, (section, planned) in enumerate(zip(piece.sections, plan.sections, strict=True)):
        if not isinstance(section, UNSTACKED) and section.colour:
            own |= dict.fromkeys(range(row, row + planned.rows), index)
        row += planned.rows

    def key(row: int) -> Key:
        if plan.stripes is None:
            return plan.colour_of(row), "band", next(n for n, band in enumerate(plan.bands) if band.first <= row <= band.last)
        return (plan.colour_of(row), "section", own[row]) if row in own else (plan.colour_of(row), "stripe", plan.stripes.place(row)[0])

    return key


def _stripes(book: Book, view: PieceView, fates: set[str], names: Mapping[str, str], titles: Mapping[str, str]) -> Paragraph:
    own = _own_stretches(book, view, names)
    kind = "stripes-sequence-own" if own else "stripes-sequence"
    sentences = [book.sentence(kind, view.piece.key, sequence=_sequence(book, view, names), own=own), *_placed(book, view, titles)]
    if view.first.worked == "spiral rounds":
        sentences.append(book.sentence("stripes-spiral", slst=book.abbr("sl st"), rnd=_row(book, view)))
    if "carry" in fates:
        kind = "stripes-carry-rounds" if view.in_rounds else "stripes-carry"
        sentences.append(book.sentence(kind, view.piece.key, limit=rows_text(book, view, view.piece.colours.carry)))
    if "cut" in fates:
        sentences.append(book.sentence("stripes-cut" if "carry" in fates else "stripes-cut-alone", tail=tail_length(book, "weave in")))
    return step("Stripes:", *sentences)


def _own_stretches(book: Book, view: PieceView, names: Mapping[str, str]) -> str:
    """The rows of sections with a colour of their own: "Rnds 1 to 3 with Slate"."""
    found = []
    for index, section in enumerate(view.piece.sections):
        first, last = view.section_first_rows(index), view.section_last_rows(index)
        if not isinstance(section, UNSTACKED) and section.colour and any(low <= high for low, high in zip(first, last, strict=True)):
            kind = "stretch-of-one" if first.values == last.values else "stretch-of"
            rows = {"first": counts_text(first, book.labels), "last": counts_text(last, book.labels)}
            found.append(book.words[kind].format(Row=book.row_word(view.in_rounds), colour=names[section.colour], **rows))
    return listed(book, found) if found else ""


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


def _fates(view: PieceView, lines: tuple[Line, ...]) -> list[dict[str, str]]:
    """What becomes of each stripe's yarn in each size where the piece goes on after it: it goes on too, is carried, or cut."""
    last_rows = {
        label: {strand.last for strand in strands_of(graded.strips[:2], view.piece.colours.carry)} for label, graded in view.graded.items()
    }

    def fate(label: str, last: int, colour: str) -> str:
        alike = view.plans[label].colour_of(last + 1) == colour
        return "on" if alike else "cut" if last in last_rows[label] else "carry"

    return [
        {label: fate(label, last, line.colour) for label, (_, last) in line.rows.items() if last < view.plans[label].rows} for line in lines
    ]


def _stripe_table(book: Book, view: PieceView, lines: tuple[Line, ...], fates: list[dict[str, str]], names: Mapping[str, str]) -> Table:
    rows = []
    for line, cells, of_sizes in zip(lines, _row_cells(book, view, lines), fates, strict=True):
        told = {label: book.words[f"yarn-{of_sizes.get(label, 'end')}"] for label in line.rows}
        rows.append((names[line.colour], *cells, list_text(told, book.labels)))
    header = (book.front["colour"], *_row_header(book, view, lines), book.words["yarn-then"])
    return Table(
        book.words["stripe-table"].format(title=view.piece.title), header, tuple(rows), (*_columns(header[:-1]), "left"),
        note=" ".join(filter(None, (_note(book, view, lines), *_explained(book, view, rows)))),
    )


def _explained(book: Book, view: PieceView, rows: Sequence[tuple[str, ...]]) -> Iterator[str]:
    """What isn't told elsewhere of the words in the table's cells."""
    if any(book.words["yarn-on"] in row[-1] for row in rows):
        yield book.words["yarn-on-note-rnds" if view.in_rounds else "yarn-on-note"]
    if any(book.words["no-value"] in cell for row in rows for cell in row):
        yield book.words["yarn-none-note"]


def _band_table(book: Book, view: PieceView, names: Mapping[str, str]) -> Table:
    lines = lines_of(view)
    header = (book.front["colour"], *_row_header(book, view, lines))
    rows = tuple((names[line.colour], *cells) for line, cells in zip(lines, _row_cells(book, view, lines), strict=True))
    return Table(book.words["band-table-rnds" if view.in_rounds else "band-table"].format(title=view.piece.title), header, rows, _columns(header))


def _columns(header: tuple[str, ...]) -> tuple[Align, ...]:
    """One column of rows holds lists that read from the left; a column a size stands at the right."""
    return measure_columns(0, 2) if len(header) == 2 else measure_columns(len(header) - 1)


def _alike(line: Line) -> bool:
    return len({first for first, _ in line.rows.values()}) == 1


LISTED_SIZES = 4
"""A list of more spans of rows than these is harder to read than a column a size."""


def _in_one_column(book: Book, view: PieceView, lines: tuple[Line, ...]) -> bool:
    """Whether one column serves all sizes that get so far; where a few stripes differ, with lists for them."""
    if any(_without(view, line) for line in lines):
        return False
    lists = sum("(" in _one_cell(book, view, line) for line in lines)
    return not lists or (len(book.labels) <= LISTED_SIZES and 2 * lists <= len(lines))


def _without(view: PieceView, line: Line) -> bool:
    """Whether a size that is long enough for a stripe doesn't have it."""
    first = max(first for first, _ in line.rows.values())
    return any(label not in line.rows and plan.rows >= first for label, plan in view.plans.items())


def _row_header(book: Book, view: PieceView, lines: tuple[Line, ...]) -> tuple[str, ...]:
    return (book.words["rounds-of" if view.in_rounds else "rows-of"],) if _in_one_column(book, view, lines) else book.labels


def _row_cells(book: Book, view: PieceView, lines: tuple[Line, ...]) -> list[tuple[str, ...]]:
    """First and last row of each stripe: in one column, or in a column a size."""
    if _in_one_column(book, view, lines):
        return [(_one_cell(book, view, line),) for line in lines]
    return [
        tuple(_span(book, *line.rows[label]) if label in line.rows else book.words["no-value"] for label in book.labels) for line in lines
    ]


def _one_cell(book: Book, view: PieceView, line: Line) -> str:
    """The rows of a stripe in all sizes; where the piece alone ends it, as far as it would go on."""
    if _cut_short(view, line) is not None:
        return _span(book, *max(line.rows.values()))
    return list_text({label: _span(book, *rows) for label, rows in line.rows.items()}, book.labels)


def _cut_short(view: PieceView, line: Line) -> int | None:
    """The last row of a stripe that begins alike in all sizes and ends sooner only where a piece does."""
    last = max(last for _, last in line.rows.values())
    ended = all(end in (last, view.plans[label].rows) for label, (_, end) in line.rows.items())
    return last if _alike(line) and ended else None


def _note(book: Book, view: PieceView, lines: tuple[Line, ...]) -> str:
    """Where each size ends, if the table goes on beyond it."""
    ends = view.plans.map(lambda plan: plan.rows)
    beyond = any(max(last for _, last in line.rows.values()) > min(ends) and "(" not in _one_cell(book, view, line) for line in lines)
    if not _in_one_column(book, view, lines) or not beyond:
        return ""
    return book.words["stripe-note"].format(Row=book.row_word(view.in_rounds), last=counts_text(ends, book.labels))


def _span(book: Book, first: int, last: int) -> str:
    return str(first) if first == last else f"{first}\u00a0{book.words['to']}\u00a0{last}"
