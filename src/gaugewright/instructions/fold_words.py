"""An edge folded in half and sewn to itself, in words: the top of a hood, the heel of a slipper, the end of a tube."""

from gaugewright.design.model import Design, Seam
from gaugewright.grading.model import EdgeLength
from gaugewright.instructions.steps import edge_word, only
from gaugewright.instructions.wording import Book, Mm, Spans
from gaugewright.sized import Sized


def fold_sentences(book: Book, seam: Seam, design: Design, edge: Sized[EdgeLength], title: str) -> list[Spans]:
    """What meets what, and in which sizes a stitch or row is left over in the fold."""
    fact, slots = f"seam.{seam.join}", {"edge": edge_word(book, seam.join.edge), "piece": title}
    if any(one.rows and one.stitches or one.corners for one in edge):
        grown = any(one.rows for one in edge) and design.fabric(design.piece(seam.join.piece).fabric).lying is not None
        return [book.sentence("fold-length", fact, half=Mm(edge.map(lambda one: one.length / 2), "hung" if grown else ""), **slots)]
    along_rows = all(one.rows for one in edge)
    counts = edge.map(lambda one: one.rows or one.stitches)
    flat = design.piece(seam.join.piece).start.in_rounds
    kind = "fold-flat" if flat else "fold-rows" if along_rows else "fold-stitches"
    found = [book.sentence(kind, fact, half=counts.map(lambda count: count // 2), **slots)]
    odd = tuple(label for label, count in counts.items() if count % 2)
    if odd:
        found += [only(book, odd), book.sentence("fold-middle-row" if along_rows else "fold-middle")]
    return found
