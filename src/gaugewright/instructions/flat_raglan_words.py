"""Raglan edges of flat pieces in words: how often they decrease, how they end, how they are sewn."""

from collections.abc import Iterator

from gaugewright.design.flat_raglans import is_raglan_seam
from gaugewright.design.model import Design, Seam
from gaugewright.grading.model import EdgeLength
from gaugewright.grading.plan import DividedPlan, ProfilePlan
from gaugewright.grading.schedule_model import Schedule, blocks_of
from gaugewright.grading.shape_plans import EdgeParts
from gaugewright.instructions.edge_tables import ranges
from gaugewright.instructions.hanging import flat_slant
from gaugewright.instructions.steps import spoken
from gaugewright.instructions.taper_words import how_often
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Mm, Slot, Spans, listed
from gaugewright.sized import Sized
from gaugewright.tolerances import SAME_LENGTH, seam_tolerance

MOST_BLOCKS = 3
"""More rates than these in a row are no plainer than the numbers of the rows."""


def raglan_rates(book: Book, view: PieceView, edges: Sized[EdgeParts], first: Sized[int]) -> Sized[str] | None:
    """How often each size decreases at its raglan edge; None where no size can be told, or its table holds other edges too."""
    if any(part.name != "raglan" for parts in edges for part in parts):
        return None
    found = Sized(edges.labels, tuple(_rate(book, view, parts, first[label]) for label, parts in edges.items()))
    return found if any(text for text in found) else None


def _rate(book: Book, view: PieceView, parts: EdgeParts, first: int) -> str:
    """By its gaps, or where most rows decrease by the rows that don't."""
    steps = [step for part in parts for step in part.profile.steps if step.way == "decrease"]
    if not steps or any(step.stitches != 1 for step in steps):
        return ""
    block = max((step.row for part in parts for step in part.profile.steps if step.way == "leave"), default=0)
    rows, last = [step.row for step in steps], parts[0].profile.rows
    plain = [first - 1 + row for row in range(block + 1, last + 1) if row not in rows]
    if not plain:
        return book.words["each-row"]
    if len(plain) < len(rows):
        key = "each-row-but" if len(plain) > 1 else "each-row-but-one"
        return book.words[key].format(Row=book.row_word(False), rows=listed(book, ranges(plain, book.words["to"])))
    blocks = blocks_of([after - before for before, after in zip((block, *rows), rows, strict=False)])
    return how_often(book, view, Schedule(blocks, 0)) if len(blocks) <= MOST_BLOCKS else ""


def raglan_end(book: Book, view: PieceView) -> Spans:
    """The finished length of a front, and where the last stitches of its sides belong."""
    last = view.plans.map(lambda plan: plan.sections[-1])
    left = last.map(lambda section: section.side_end if isinstance(section, DividedPlan) else section.end)
    kind = "final-check-raglan-half" if isinstance(last.values[0], ProfilePlan) else "final-check-raglan"
    length = view.height(view.plans.map(lambda plan: plan.rows))
    return book.sentence(kind, view.piece.key, length=length, bottom=spoken(view.piece.bottom), left=left)


def raglan_seam(
    book: Book, seam: Seam, design: Design, join: Sized[EdgeLength], other: Sized[EdgeLength], slots: dict[str, Slot]
) -> Iterator[Spans]:
    """A seam of raglan edges: row for row from the stitches left; nothing where it is another seam.

    Where one edge slants so much more than the other that their lengths show it, both are told.
    """
    pairs = tuple(zip(join, other, strict=True))
    if not is_raglan_seam(design, seam) or any(not one.corners or not two.corners or one.rows != two.rows for one, two in pairs):
        return
    yield book.sentence("seam-raglan", f"seam.{seam.join}", first=join.map(lambda edge: edge.rows), **slots)
    fabrics = [design.fabric(design.piece(end.piece).fabric) for end in (seam.join, seam.to[0])]
    height = fabrics[0].gauge.row_height
    if any(abs(one.length - two.length) > seam_tolerance(max(one.length, two.length), height) + SAME_LENGTH for one, two in pairs):
        first, second = (Mm(edges.map(lambda edge, fabric=fabric: flat_slant(edge, fabric))) for edges, fabric in zip((join, other), fabrics, strict=True))  # type: ignore[misc]
        yield book.sentence("seam-raglan-give", f"seam.{seam.join}", first=first, second=second)
