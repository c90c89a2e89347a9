"""Yarn by colour and size: balls, grams, metres and yards, what is left over, and how surely all that is known."""

from collections.abc import Callable, Iterator, Sequence

from gaugewright.design.model import Design, Fabric, Yarn
from gaugewright.instructions.nodes import Block, Paragraph, Table, measure_columns, spans_text
from gaugewright.instructions.steps import spoken
from gaugewright.instructions.wording import NO_BREAK, NO_VALUE, Book, Spans, counts_text, listed, spaced
from gaugewright.rounding import down, to_step, up
from gaugewright.sized import Sized
from gaugewright.trade.yarn_weights import yarn_weight
from gaugewright.yarn.amounts import Amount
from gaugewright.yarn.weighing import published, unsure

Amounts = Sized[dict[str, Amount] | None]
Found = Sized[dict[str, Amount]]

MORE = f"+{NO_BREAK}1"
"""Stands beside balls that may fall short by one."""

YARD = 0.9144
"""Metres (exact, international yard of 1959)."""


def amount_tables(book: Book, design: Design, amounts: Amounts, fabrics: tuple[Fabric, ...]) -> Iterator[Block]:
    """The tables with their notes, or why there are none; `fabrics` are those in use."""
    if any(one is None for one in amounts):
        yield Paragraph(book.front_text("no-yarn"), "note")
        return
    found: Found = amounts  # type: ignore[assignment]
    estimated = any(one.estimated for size in found for one in size.values())
    kind = "-estimate" if estimated else ""
    how = _estimate_note(book, design, found, fabrics) if estimated else book.front_text("counted-note")
    note = spans_text(spaced(how, _margin_note(book, design), _swatch_note(book, design, found), *_ball_notes(book, found, fabrics)))
    tables = []
    if any(one.balls for size in found for one in size.values()):
        tables.append(_table(book, f"balls-caption{kind}", [_row(book, found, yarn.key, (yarn.label,), lambda one: balls_text(one, book.words["to"])) for yarn in _used(design, found)], 1))
    tables.append(_table(book, f"grams-caption{kind}", list(_grams_rows(book, design, found)), 2))
    yield from tables[:-1]
    if design.buying.cost:
        from gaugewright.instructions.cost_table import cost_tables

        yield from cost_tables(book, _used(design, found), found)
    last = tables[-1]
    yield Table(last.caption, last.header, last.rows, last.align, note=note)


def _used(design: Design, found: Found) -> list[Yarn]:
    return [yarn for yarn in design.yarns if any(yarn.key in one for one in found)]


def _table(book: Book, caption: str, rows: list[tuple[str, ...]], heads: int) -> Table:
    header = (book.front["colour"], *((book.front["amount-unit"],) if heads == 2 else ()), *book.labels)
    return Table(book.front[caption], header, tuple(rows), measure_columns(len(book.labels), heads))


def _row(book: Book, found: Found, key: str, heads: tuple[str, ...], text: Callable[[Amount], str]) -> tuple[str, ...]:
    return (*heads, *(text(one[key]) if key in one else book.words["no-value"] for one in found))


def _grams_rows(book: Book, design: Design, found: Found) -> Iterator[tuple[str, ...]]:
    """Of each colour a line in grams, metres, yards, and what is left over: those that are known."""
    to = book.words["to"]
    for yarn in _used(design, found):
        of = [one[yarn.key] for one in found if yarn.key in one]
        yield _row(book, found, yarn.key, (yarn.label, book.front["unit-g"]), lambda one: grams_text(one, to))
        if all(one.metres for one in of):
            yield _row(book, found, yarn.key, ("", book.front["unit-m"]), lambda one: length_text(one, 1.0, to))
            yield _row(book, found, yarn.key, ("", book.front["unit-yd"]), lambda one: length_text(one, YARD, to))
        if all(one.ball for one in of) and not any(one.estimated for one in of):
            yield _row(book, found, yarn.key, ("", book.front["unit-left"]), left_text)


def balls_text(one: Amount, to: str) -> str:
    """Balls to buy: "14", of an estimate "4 to 7"; "14 + 1" where the swatch isn't sure enough."""
    if not one.balls:
        return NO_VALUE
    if one.estimated:
        return range_text(one.fewest_balls, one.balls, to)
    return f"{one.balls}{NO_BREAK}{MORE}" if one.lacks_a_ball else str(one.balls)


def grams_text(one: Amount, to: str) -> str:
    """Whole grams to buy, rounded up; of an estimate both ends."""
    return range_text(down(one.bought(one.low)) if one.estimated else up(one.total), up(one.total), to)


def length_text(one: Amount, unit: float, to: str) -> str:
    """Whole metres, or yards, to buy."""
    assert one.metres is not None
    low, high = (metres / unit for metres in one.metres)
    return range_text(down(low) if one.estimated else up(high), up(high), to)


def left_text(one: Amount) -> str:
    """Grams left over of the balls, rounded down."""
    left = one.left(one.counted)
    return NO_VALUE if left is None else str(down(left))


def range_text(low: int, high: int, to: str) -> str:
    """
    >>> range_text(4, 7, "to").replace(NO_BREAK, " "), range_text(4, 4, "to")
    ('4 to 7', '4')
    """
    return str(low) if low == high else f"{low}{NO_BREAK}{to}{NO_BREAK}{high}"


def percent_text(share: float) -> str:
    """
    >>> percent_text(0.1).replace(NO_BREAK, " "), percent_text(0.125).replace(NO_BREAK, " ")
    ('10 %', '12.5 %')
    """
    return f"{to_step(share * 100, 0.1):.1f}".removesuffix(".0") + f"{NO_BREAK}%"


def _margin_note(book: Book, design: Design) -> Spans:
    margin = design.buying.margin
    return book.front_text("margin-note" if margin else "margin-note-none", margin=percent_text(margin))


def _swatch_note(book: Book, design: Design, found: Found) -> Spans:
    """What the swatches take by themselves, and whether the balls hold it."""
    parts = []
    for yarn in _used(design, found):
        taken = found.map(lambda size, key=yarn.key: size[key].counted.swatches if key in size else 0.0)  # type: ignore[misc]
        least = found.map(lambda size, key=yarn.key: size[key].low.swatches if key in size and size[key].estimated else 0.0)  # type: ignore[misc]
        if any(taken):
            high = counts_text(taken.map(up), book.labels)
            grams = f"{counts_text(least.map(down), book.labels)}{NO_BREAK}{book.words['to']}{NO_BREAK}{high}" if any(least) else high
            parts.append(spans_text(book.front_text("swatch-amount", grams=grams, yarn=yarn.label)))
    if not parts:
        return ()
    return book.front_text("swatches-in-balls" if design.buying.swatches_in_balls else "swatches-apart", amounts=listed(book, parts), gauge=book.word("gauge"))


def _ball_notes(book: Book, found: Found, fabrics: Sequence[Fabric]) -> Iterator[Spans]:
    balls = [one for size in found for one in size.values() if one.balls]
    if any(one.lacks_a_ball for one in balls):
        yield book.front_text("ball-more", mark=MORE, share=percent_text(max(unsure(fabric) for fabric in fabrics)))
    if any(not one.estimated for one in balls):
        yield book.front_text("left-note")
    if balls:
        yield book.front_text("dye-lots" if any(one.balls > 1 for one in balls) else "dye-lots-one")


def _estimate_note(book: Book, design: Design, found: Found, fabrics: Sequence[Fabric]) -> Spans:
    """Which fabrics weren't weighed, whose figures make the ends, and how many metres 100 g are taken to hold."""
    bare = [fabric for fabric in fabrics if fabric.swatch_mass is None]
    taken = [one for one in map(published, bare) if one is not None]
    whole = "estimate-note" if len(bare) == len(fabrics) else "estimate-note-mixed"
    low, high = (listed(book, list(dict.fromkeys(names))) for names in ((one.low_source for one in taken), (one.high_source for one in taken)))
    yarns = _used(design, found)
    bought = [yarn for yarn in yarns if yarn.ball_mass and yarn.ball_length]
    weights = sorted({yarn.weight for yarn in yarns if yarn not in bought and yarn.weight is not None})
    metres = [book.front["estimate-ball"]] if bought else []
    for weight in weights:
        least, most = yarn_weight(weight).metres_per_100g
        metres.append(spans_text(book.front_text("estimate-category", least=least or 0, most=most, grams=100, weight=weight)))
    return book.front_text(whole, fabrics=listed(book, [spoken(fabric.key) for fabric in bare]), low=low, high=high, metres=listed(book, metres))
