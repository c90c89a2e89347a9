"""A fabric in words: its stitch, its loops, its hook or the hands."""

from gaugewright.design.model import Fabric
from gaugewright.instructions.wording import Book, Spans
from gaugewright.trade.hooks import hook_label


def fabric_words(book: Book, fabric: Fabric) -> Spans:
    """ "hdc with the 10 mm hook"."""
    loops = book.part(f"loop-{fabric.loop}")
    stitch = book.abbr(fabric.stitch)
    if fabric.by_hand:
        return book.sentence("fabric-hands", stitch=stitch, loops=loops)
    if fabric.tool is None:
        return book.sentence("fabric-plain", stitch=stitch, loops=loops)
    return book.sentence("fabric-hook", f"fabric.{fabric.key}", stitch=stitch, loops=loops, tool=hook_label(fabric.tool))
