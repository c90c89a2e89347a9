"""Steps of a piece: the label, the sentences, and the stitch count set apart at the end."""

from collections.abc import Mapping

from gaugewright.instructions.align import ColourChange
from gaugewright.instructions.nodes import Paragraph, Span
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Mm, Spans, counts_text, sizes_text, spaced
from gaugewright.sized import Sized
from gaugewright.trade.tails import tail


def step(label: str, *sentences: Spans, count: Spans = ()) -> Paragraph:
    """One instruction."""
    spans = spaced(*sentences)
    return Paragraph((*spans, Span(" "), *count) if count else spans, "step", label)


def count_end(book: Book, fact: str, stitches: Sized[int]) -> Spans:
    """The stitch count after a dash, set apart."""
    one = stitches.agree and stitches.values[0] == 1
    text = book.words["count-one" if one else "count-many"].replace("{count}", counts_text(stitches, book.labels))
    text = text.replace("st", book.abbr("st")) if book.abbr("st") != "st" else text
    return (Span(f"\u2014\u00a0{text}.", "count", f"{fact}.count"),)


def only(book: Book, sizes: tuple[str, ...]) -> Spans:
    """ "Sizes 2X to 5X only:" where a sentence does not serve all sizes."""
    if len(sizes) == len(book.labels):
        return ()
    kind = "one-only" if len(sizes) == 1 else "only"
    text = book.words[kind].replace("{sizes}", sizes_text(sizes, book.labels, book.words))
    return (Span(text, "strong"),)


def first_yarn(book: Book, view: PieceView, names: Mapping[str, str]) -> str:
    """The yarn that a piece begins with; where sizes begin with others, as stripes may, that of their row 1."""
    keys = {plan.colour_of(1) for plan in view.plans}
    return names[keys.pop()] if len(keys) == 1 else book.words["first-yarn"].format(Row=book.row_word(view.in_rounds))


def to_row(book: Book, view: PieceView, last: Sized[int]) -> str:
    """The label of a stretch: "To the end of Row 28 (29)"."""
    return book.words["to-the-end"].format(Row=book.row_word(view.in_rounds), last=counts_text(last, book.labels))


def tail_length(book: Book, key: str) -> Mm:
    """A tail's length, the same in all sizes."""
    return Mm(Sized(book.labels, (tail(key),) * len(book.labels)))


def change_sentences(book: Book, view: PieceView, changes: tuple[ColourChange, ...], names: dict[str, str], all_of: tuple[str, ...]) -> list[Spans]:
    """Where a colour begins: drawn in on the last pull of the row before, a tail left of both.

    `all_of` are the sizes that the step itself is for: a change that all of them share needs no list.
    """
    found: list[Spans] = []
    for change in changes:
        kind = "change-colour-at-join" if view.first.worked in ("joined rounds", "turned rounds") else "change-colour"
        found.append(() if change.after.labels == all_of else only(book, change.after.labels))
        found.append(book.sentence(
            kind, f"{view.piece.key}.change.{change.colour}", colour=names[change.colour], Row=book.row_word(view.in_rounds),
            last=change.after, tail=tail_length(book, "weave in"), slst=book.abbr("sl st"),
        ))
        found += change_edges(book, view, change)
    return found


def change_edges(book: Book, view: PieceView, change: ColourChange) -> list[Spans]:
    """At which edge the change falls, where the two edges have different names.

    Odd rows end at the far edge. Bands with an odd number of rows make the next one begin there.
    """
    names = {side: [edge.name for edge in view.piece.edges if edge.side == side] for side in ("starting", "far")}
    if view.in_rounds or not all(names.values()) or names["starting"] == names["far"]:
        return []
    found = []
    ends = change.after.map(lambda row: edge_name_at(view, "far" if row % 2 else "starting", row))
    for name in dict.fromkeys(ends.values):
        sizes = tuple(label for label, value in ends.items() if value == name)
        prefix = () if len(sizes) == len(change.after) else only(book, sizes)
        found.append(spaced(prefix, book.sentence("change-colour-edge", edge=edge_word(book, name))))
    return found


def edge_name_at(view: PieceView, side: str, row: int) -> str:
    """The name of a row-end edge at the height of a row, in the first size; the side's own name where it has none."""
    marks = {mark.level: mark.row for mark in view.first.marks}
    for edge in view.piece.edges:
        if edge.side == side and (edge.top is None or row <= marks[edge.top]):
            return edge.name
    return side


def edge_word(book: Book, name: str) -> str:
    """An edge's name before the word "edge", which is not said twice: `upper_edge` -> "upper"."""
    return spoken(name).removesuffix(f" {book.words['edge']}")


def spoken(name: str) -> str:
    """A name of the spec as it is said: `sleeve_top` -> "sleeve top"."""
    return name.replace("_", " ")
