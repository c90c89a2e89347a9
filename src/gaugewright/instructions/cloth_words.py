"""How a row of a fabric opens, goes on and closes, in words."""

from gaugewright.grading.plan import Cloth
from gaugewright.instructions.wording import Book, Spans
from gaugewright.vocabulary import Worked


def opening(book: Book, cloth: Cloth, worked: Worked) -> Spans:
    """The turning chain, or nothing in a spiral or for slip stitches."""
    if worked == "spiral rounds" or cloth.chains == 0:
        return ()
    kind = "open-counted" if cloth.counts else "open-plain"
    return book.part(kind, chains=cloth.chains, stitch=book.abbr(cloth.stitch))


def each(book: Book, cloth: Cloth, worked: Worked) -> Spans:
    """The row's plain stitches."""
    across = book.words["row-start" if worked == "rows" else "round-start"]
    if cloth.counts and worked != "spiral rounds":
        loops = book.part(f"loop-{cloth.loop}")
        return book.part("each-after-counted", stitch=book.abbr(cloth.stitch), across=across) + loops
    return book.part(f"each-{cloth.loop}", stitch=book.abbr(cloth.stitch), across=across)


CLOSE = {"rows": "rows", "joined rounds": "joined", "turned rounds": "turned", "spiral rounds": "spiral"}


def closing(book: Book, cloth: Cloth, worked: Worked) -> Spans:
    """Turn, join, or neither."""
    kind = CLOSE[worked]
    if cloth.counts and kind in ("joined", "turned"):
        kind = f"counted-{kind}"
    return book.part(f"close-{kind}", slst=book.abbr("sl st"), stitch=book.abbr(cloth.stitch))


def pick_up_close(book: Book, cloth: Cloth, worked: Worked) -> Spans:
    """The end of a pick-up row or round. Its ch never counts, so a join goes into the first stitch."""
    return book.part(f"close-{CLOSE[worked]}", slst=book.abbr("sl st"), stitch=book.abbr(cloth.stitch))


def even_row(book: Book, cloth: Cloth, worked: Worked) -> Spans:
    """The whole even row or round."""
    start, middle, end = opening(book, cloth, worked), each(book, cloth, worked), closing(book, cloth, worked)
    if not start:
        return book.sentence("even-row-no-chain", each=middle, close=end)
    return book.sentence("even-row", open=start, each=middle, close=end)
