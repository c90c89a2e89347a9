"""Ends to weave in, counted by piece and colour."""

from collections.abc import Iterator, Mapping

from gaugewright.design.model import Design
from gaugewright.grading.model import GradedPiece
from gaugewright.instructions.nodes import Table, measure_columns, spans_text
from gaugewright.instructions.pieces import Names
from gaugewright.instructions.wording import Book, counts_text
from gaugewright.sized import Sized
from gaugewright.yarn.ends import any_goes_on, ends_of_pieces
from gaugewright.yarn.seams import joining_ends
from gaugewright.yarn.turns import joining_colour


def ends_table(book: Book, design: Design, pieces: Mapping[str, Sized[GradedPiece]], names: Names) -> Iterator[Table]:
    """The table of ends; none where a pattern has one colour, whose few ends need no plan."""
    graded = {label: {key: sized[label] for key, sized in pieces.items()} for label in book.labels}
    by_size = Sized(book.labels, tuple(ends_of_pieces(design, graded[label]) for label in book.labels))
    ends = {piece.key: by_size.map(lambda one, key=piece.key: one[key]) for piece in design.pieces}  # type: ignore[misc]
    used = [yarn for yarn in design.yarns if any(yarn.key in one for sized in ends.values() for one in sized)]
    if len(used) < 2:
        return
    rows = []
    for piece in design.pieces:
        made = pieces[piece.key].map(lambda one, make=piece.make: one.layout.motifs if one.layout else make)  # type: ignore[misc]
        title = piece.title if set(made.values) == {1} else spans_text(book.front_text("twice", piece=piece.title, make=made))
        cells = [ends[piece.key].map(lambda one, key=yarn.key: one.get(key, 0)) for yarn in used]  # type: ignore[misc]
        rows.append((title, *(_cell(book, cell) for cell in cells), _cell(book, ends[piece.key].map(lambda one: sum(one.values())))))
    for piece in design.pieces:
        if piece.grid is not None:
            rows.append(_joining(book, piece.title, pieces[piece.key], [yarn.key for yarn in used]))
    header = (book.front["ends-piece"], *(names.yarns[yarn.key] for yarn in used), book.front["ends-all"])
    note = book.front["ends-note-seams" if design.seams or design.attachments else "ends-note"]
    if any(any_goes_on(one) for one in graded.values()):
        note += " " + book.front["ends-note-going-on"]
    yield Table(book.front["ends-caption"], header, tuple(rows), measure_columns(len(header) - 1), note=note)


def _joining(book: Book, title: str, graded: Sized[GradedPiece], used: list[str]) -> tuple[str, ...]:
    """Two ends of each length that motifs are joined with: one for each join in a row, and one from row to row."""
    ends = graded.map(lambda one: joining_ends(one.layout) if one.layout else 0)
    colour = joining_colour(graded.values[0])
    cells = (_cell(book, ends) if key == colour else book.words["no-value"] for key in used)
    return book.front["joining-heading"].format(title=title), *cells, _cell(book, ends)


def _cell(book: Book, counts: Sized[int]) -> str:
    return counts_text(counts, book.labels) if any(counts) else book.words["no-value"]
