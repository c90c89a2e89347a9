"""What the balls cost by size, where the spec asks for it; of an estimate both ends."""

from collections.abc import Iterator, Sequence
from decimal import Decimal

from gaugewright.design.model import Yarn
from gaugewright.instructions.nodes import Table, measure_columns
from gaugewright.instructions.wording import NO_BREAK, Book
from gaugewright.sized import Sized
from gaugewright.yarn.amounts import Amount


def cost_tables(book: Book, yarns: Sequence[Yarn], found: Sized[dict[str, Amount]]) -> Iterator[Table]:
    """A line for each yarn and one for all of a currency; a table for each currency, since no rate is known."""
    estimated = any(one.estimated for size in found for one in size.values())
    for currency in dict.fromkeys(yarn.currency for yarn in yarns):
        own = [yarn for yarn in yarns if yarn.currency == currency]
        rows = [(yarn.label, *_cells(book, [yarn], found)) for yarn in own]
        if len(own) > 1:
            rows.append((book.front["cost-all"], *_cells(book, own, found)))
        caption = book.front["cost-caption-estimate" if estimated else "cost-caption"].format(currency=currency)
        yield Table(caption, (book.front["colour"], *book.labels), tuple(rows), measure_columns(len(book.labels)))


def _cells(book: Book, yarns: Sequence[Yarn], found: Sized[dict[str, Amount]]) -> list[str]:
    cells = []
    for size in found:
        least, most = (sum((yarn.price * balls for yarn, balls in _balls(yarns, size, end) if yarn.price is not None), Decimal(0)) for end in (0, 1))
        cells.append(f"{least}{NO_BREAK}{book.words['to']}{NO_BREAK}{most}" if least != most else str(most) if most else book.words["no-value"])
    return cells


def _balls(yarns: Sequence[Yarn], size: dict[str, Amount], end: int) -> Iterator[tuple[Yarn, int]]:
    for yarn in yarns:
        if yarn.key in size:
            yield yarn, (size[yarn.key].fewest_balls, size[yarn.key].balls)[end]
