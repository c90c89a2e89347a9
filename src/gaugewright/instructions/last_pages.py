"""Care, cautions and the colophon: what a pattern ends with."""

from collections.abc import Iterator

from gaugewright.design.model import Design
from gaugewright.design.sides import is_folded
from gaugewright.instructions.nodes import Block, Heading, Paragraph, plain
from gaugewright.instructions.wording import Book, listed
from gaugewright.trade.care import care_lines, care_names
from gaugewright.trade.cautions import cautions
from gaugewright.trade.structures import is_raised


def last_pages(book: Book, design: Design) -> Iterator[Block]:
    """The last chapters."""
    yield from _care(book, design)
    yield from _cautions(book, design)
    yield Heading(2, book.front["about-heading"])
    about = design.about
    parts = [f"{about.title}", f"version {about.version}" if about.version else "", about.workshop, about.date, about.licence]
    yield Paragraph(plain(", ".join(part for part in parts if part) + "."), "small")
    yield Paragraph(book.front_text("not-proved"), "small")


def _care(book: Book, design: Design) -> Iterator[Block]:
    names = tuple(dict.fromkeys(name for yarn in design.yarns for name in care_names([fibre for fibre, _ in yarn.fibre], yarn.treatment, yarn.structure)))
    if not names:
        return
    yield Heading(2, book.front["care-heading"])
    care = care_lines(names)
    for line in care.lines:
        yield Paragraph(plain(line), "bullet")
    if care.unknown and len(care.unknown) < len(names):
        yield Paragraph(book.front_text("care-unknown", fibres=listed(book, care.unknown)), "bullet")


def _cautions(book: Book, design: Design) -> Iterator[Block]:
    fibres = tuple(dict.fromkeys(name for yarn in design.yarns for name, _ in yarn.fibre))
    made = {yarn.structure for yarn in design.yarns}
    raised = any(is_raised(yarn.structure, [name for name, _ in yarn.fibre]) for yarn in design.yarns)
    worn_on = {opening.passes for opening in design.openings}
    yield Heading(2, book.front["cautions-heading"])
    for caution in cautions(
        design.sizes.table, book.labels, fibres, raised=raised, unspun="roving" in made, pile="chenille" in made, parts=worn_on,
        closed=_holds_fingers(design), blanket=any(piece.grid for piece in design.pieces),
    ):
        yield Paragraph(plain(caution.text), "caution")


def _holds_fingers(design: Design) -> bool:
    """Whether a hand or a foot comes to rest in a closed end: a mitten's or a slipper's, not a sleeve's."""
    shut = any(piece.is_shut or piece.start.kind == "centre" for piece in design.pieces) or any(is_folded(design, seam) for seam in design.seams)
    return shut and any(opening.passes in ("hand", "foot") for opening in design.openings)
