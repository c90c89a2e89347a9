"""A fabric in words: its stitch, its loops, its hook or the hands."""

from gaugewright.design.model import Fabric
from gaugewright.instructions.wording import NO_BREAK, Book, Spans
from gaugewright.trade.hooks import hook_label


def hook_text(mm: float) -> str:
    """A hook's label, each of its parts kept on one line: "10 mm (US N/P-15)"."""
    size, bracket, us = hook_label(mm).partition(" (")
    return size.replace(" ", NO_BREAK) + bracket + us.replace(" ", NO_BREAK)


def fabric_words(book: Book, fabric: Fabric) -> Spans:
    """ "hdc with the 10 mm hook"."""
    loops = book.part(f"loop-{fabric.loop}")
    stitch = book.words["in-pattern"].format(title=fabric.pattern.title) if fabric.pattern else book.abbr(fabric.stitch)
    if fabric.by_hand:
        return book.sentence("fabric-hands", stitch=stitch, loops=loops)
    if fabric.tool is None:
        return book.sentence("fabric-plain", stitch=stitch, loops=loops)
    return book.sentence("fabric-hook", f"fabric.{fabric.key}", stitch=stitch, loops=loops, tool=hook_text(fabric.tool))
