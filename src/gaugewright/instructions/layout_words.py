"""Joining motifs: how many and in which colours, where they lie, and in which order they are joined."""

from collections.abc import Iterator, Mapping

from gaugewright.design.model import Piece
from gaugewright.design.size_list import ONE_SIZE
from gaugewright.drawings.primitives import Drawing
from gaugewright.grading.layout_model import Layout
from gaugewright.grading.model import GradedPiece
from gaugewright.grading.plan import PiecePlan
from gaugewright.instructions.making_up import METHODS, TAKES
from gaugewright.instructions.nodes import Block, Figure, Heading, Paragraph, spans_text
from gaugewright.instructions.wording import Book, Mm, Slot, Spans, listed
from gaugewright.sized import Sized
from gaugewright.yarn.turns import joining_colour


def layout_blocks(
    book: Book, piece: Piece, plans: Sized[PiecePlan], graded: Sized[GradedPiece], drawing: Drawing, yarns: Mapping[str, str], drawn: str
) -> Iterator[Block]:
    """The chapter on joining one kind of motif."""
    grid, layouts = piece.grid, plans.map(lambda plan: _layout(plan))
    assert grid is not None  # it has a layout
    yield Heading(2, book.front["joining-heading"].format(title=piece.title))
    yield Paragraph(_lying(book, layouts), "body")
    for sentence in _colours(book, layouts.values[0], yarns):
        yield Paragraph(sentence, "body")
    yield Figure(drawing, drawing.description, spans_text(book.front_text("layout-caption-one" if drawn == ONE_SIZE else "layout-caption", title=piece.title, size=drawn)), f"{piece.key}-layout")
    colour = yarns[joining_colour(graded.values[0])]
    method, slst = METHODS[grid.method], book.abbr("sl st")
    yield Paragraph(book.sentence(f"seam-method-{method}", slst=slst), "bullet")
    yield Paragraph(book.sentence(f"seam-take-{TAKES[grid.take_up]}"), "bullet")
    kind = "offset" if layouts.values[0].is_offset else "square"
    yield Paragraph(book.sentence("joining-rows", colour=colour, method=book.sentence(f"method-{method}"), take=book.sentence(f"take-{TAKES[grid.take_up]}")), "bullet")
    yield Paragraph(book.sentence(f"joining-between-{kind}"), "bullet")


def _layout(plan: PiecePlan) -> Layout:
    assert plan.layout is not None  # pieces without one have no chapter on joining
    return plan.layout


def _lying(book: Book, layouts: Sized[Layout]) -> Spans:
    """How many, in which rows, and what they come to."""
    kind, bordered = "layout-offset" if layouts.values[0].is_offset else "layout-square", "-bordered" if any(one.border for one in layouts) else ""
    whole: dict[str, Slot] = {f"whole_{name}": Mm(layouts.map(lambda one, i=i: one.with_border[i])) for i, name in enumerate(("width", "length"))} if bordered else {}  # type: ignore[misc]
    return book.sentence(
        kind + bordered, "layout", n=layouts.map(lambda one: one.motifs), across=layouts.map(lambda one: one.across), down=layouts.map(lambda one: one.down),
        less=layouts.map(lambda one: one.across - 1), width=Mm(layouts.map(lambda one: one.joined_width)), length=Mm(layouts.map(lambda one: one.joined_length)), **whole,
    )


def _colours(book: Book, layout: Layout, yarns: Mapping[str, str]) -> Iterator[Spans]:
    names = listed(book, [yarns[key] for key in layout.turns]) if layout.turns else ""
    if len(layout.turns) > 1:
        yield book.sentence("layout-checkerboard" if layout.plan == "checkerboard" else "layout-rows", colours=names)
