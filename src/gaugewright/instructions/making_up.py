"""Making up: seams in order, lettered, with their sewing ratios; pieces sewn on; finishing."""

from collections.abc import Iterator, Mapping

from gaugewright.design.model import Attachment, Design, EdgeName, Seam
from gaugewright.grading.model import EdgeLength, GradedPiece
from gaugewright.grading.ratio import sewing_ratio
from gaugewright.instructions.nodes import Block, Heading, Paragraph
from gaugewright.instructions.pieces import Names
from gaugewright.instructions.steps import spoken, step
from gaugewright.instructions.wording import Book, Mm, Spans
from gaugewright.rounding import half_up
from gaugewright.sized import Sized
from gaugewright.sizing.environment import Environment

Pieces = Mapping[str, Sized[GradedPiece]]


def making_up(book: Book, design: Design, pieces: Pieces, envs: Sized[Environment], names: Names) -> Iterator[Block]:
    """The chapter on making up."""
    if not design.seams and not design.attachments:
        return
    yield Heading(2, book.front["assembly-heading"])
    for index, seam in enumerate(design.seams):
        yield step(f"{letter(index)}.", *_seam(book, seam, design, pieces, names))
    for index, one in enumerate(design.attachments, start=len(design.seams)):
        yield step(f"{letter(index)}.", _attach(book, one, design, pieces, envs, names))


def letter(index: int) -> str:
    """A, B, C ... for seams in order."""
    return chr(ord("A") + index) if index < 26 else f"{chr(ord('A') + index // 26 - 1)}{chr(ord('A') + index % 26)}"


def _edge(pieces: Pieces, name: EdgeName) -> Sized[EdgeLength]:
    return pieces[name.piece].map(lambda piece: piece.edges[name.edge])


def _seam(book: Book, seam: Seam, design: Design, pieces: Pieces, names: Names) -> list[Spans]:
    join = _edge(pieces, seam.join)
    others = [_edge(pieces, name) for name in seam.to]
    targets = book.words["and"].join(f" {spoken(n.edge)} edge of the {names.pieces[n.piece]} " for n in seam.to).strip()
    slots = {"edge": spoken(seam.join.edge), "piece": names.pieces[seam.join.piece], "to": targets}
    fact = f"seam.{seam.join}"
    first_rows, first_sts = join.map(lambda e: e.rows), join.map(lambda e: e.stitches)
    rows = Sized(join.labels, tuple(sum(o[label].rows for o in others) for label in join.labels))
    sts = Sized(join.labels, tuple(sum(o[label].stitches for o in others) for label in join.labels))
    if all(first_rows) and all(rows):
        found = [book.sentence("seam-rows", fact, first=first_rows, second=rows, **slots)]
    elif all(first_sts) and all(sts):
        same = first_sts.values == sts.values
        found = [book.sentence("seam-stitch-for-stitch" if same else "seam-stitches", fact, first=first_sts, second=sts, **slots)]
    else:
        found = [_mixed(book, fact, slots, first_sts if any(first_sts) else sts, rows if any(rows) else first_rows)]
        if design.piece(seam.join.piece).start.kind == "ring":
            found.append(book.sentence("seam-join-at-underarm"))
    method = {"mattress": "mattress", "whip": "whip", "slip stitch": "slip"}[seam.method]
    take = {"edge to edge": "edge", "half stitch": "half", "whole stitch": "whole"}[seam.take_up]
    return [*found, book.sentence(f"seam-method-{method}"), book.sentence(f"seam-take-{take}")]


def _mixed(book: Book, fact: str, slots: Mapping[str, str], sts: Sized[int], rows: Sized[int]) -> Spans:
    ratio = sewing_ratio(sum(sts.values), sum(rows.values))
    return book.sentence("seam-mixed", fact, first=sts, second=rows, a=ratio.first, b=ratio.second, cover=book.sentence("seam-mixed-eased"), **slots)


def _attach(book: Book, one: Attachment, design: Design, pieces: Pieces, envs: Sized[Environment], names: Names) -> Spans:
    fabric = design.fabric(design.piece(one.to).fabric)
    up = envs.map(lambda env: half_up(fabric.gauge.rows_in(env.length(one.up))))
    inset = envs.map(lambda env: half_up(fabric.gauge.stitches_in(env.length(one.inset))))
    return book.sentence(
        "attach", f"attach.{one.piece}", piece=names.pieces[one.piece], to=names.pieces[one.to],
        up=Mm(up.map(fabric.gauge.height_of)), rows=up, inset=Mm(inset.map(fabric.gauge.width_of)), sts=inset, edge=spoken(one.from_edge),
    )


def finishing(book: Book, design: Design) -> Iterator[Block]:
    """Ends, blocking, and the shoulders of heavy cloth."""
    yield Heading(2, book.front["finishing-heading"])
    yield Paragraph(book.front_text("finish-ends"), "bullet")
    if any(seam.join.edge == "shoulder" for seam in design.seams):
        yield Paragraph(book.front_text("finish-shoulders", slst=book.abbr("sl st")), "bullet")
    yield Paragraph(book.front_text("finish-block"), "bullet")
