"""The shopping card: what to buy in which shop, as its till adds it up, on one page with room to tick and to write.

In: what was found out about a purchase. Out: a `Document` of its own; no pattern holds any of it.
"""

from collections.abc import Iterator
from decimal import Decimal

from gaugewright.design.model import Design
from gaugewright.design.size_list import ONE_SIZE
from gaugewright.drawings.colour_bands import assign_hatches
from gaugewright.drawings.yarn_swatches import Swatch, draw_swatches
from gaugewright.instructions.nodes import Block, Document, Figure, Heading, Paragraph, Table, plain
from gaugewright.instructions.shopping_notes import notes, what
from gaugewright.instructions.wording import NO_BREAK, Book, listed
from gaugewright.rounding import up_to_step
from gaugewright.shopping.model import AmountOff, ByPieces, Offer, PercentOff, Shop
from gaugewright.shopping.needs import Colour, Make
from gaugewright.shopping.outcome import Outcome
from gaugewright.shopping.plan import Visit
from gaugewright.shopping.till import HUNDRED
from gaugewright.spec.money import Money, places_of


def shopping_card(book: Book, design: Design, found: Outcome) -> Document:
    """The whole card."""
    title = book.shop_text("title", title=design.about.title)
    return Document(
        title=title, author=design.about.workshop, language=design.about.language, date=found.prices_as_of, running_head=title,
        footer=book.shop_text("footer", title=design.about.title), blocks=tuple(_blocks(book, design, found, title)), keywords=("shopping",),
    )  # fmt: skip


def _blocks(book: Book, design: Design, found: Outcome, title: str) -> Iterator[Block]:
    yield Heading(1, title)
    yield Paragraph(plain(_made(book, found)))
    used = {one.key for one in found.colours}
    hatches = assign_hatches(yarn.label for yarn in design.yarns)
    swatches = [Swatch(yarn.label, yarn.colour, hatches[yarn.label]) for yarn in design.yarns if yarn.key in used]
    drawing = draw_swatches(swatches, title)
    yield Figure(drawing, drawing.description, "", "swatches")
    if found.plan is None:
        yield _balls(book, found)
    else:
        yield from (_receipt(book, found, visit) for visit in found.plan.visits)
    yield from notes(book, found)


def _made(book: Book, found: Outcome) -> str:
    makes = [_make(book, one).replace(" ", NO_BREAK) for one in found.makes]
    text = book.shop_text("made-line", makes=listed(book, makes))
    return f"{text} {book.shop_text('as-of', date=found.prices_as_of)}" if found.prices_as_of else text


def _make(book: Book, one: Make) -> str:
    text = book.shop_text("made-only" if one.size == ONE_SIZE else "made-one", size=one.size)
    text = book.shop_text("made-times", times=str(one.times), make=text) if one.times > 1 else text
    return book.shop_text("made-for", make=text, person=one.person) if one.person else text


def _balls(book: Book, found: Outcome) -> Table:
    """Without prices: balls alone."""
    rows = [(_box(book, one.label), _grams(book, one), str(one.to_buy), book.shopping["blank"]) for one in found.colours if one.to_buy]
    header = tuple(book.shopping[f"column-{name}"] for name in ("what", "grams", "number", "lot"))
    return Table(book.shopping["balls-table"], header, tuple(rows), ("left", "right", "right", "left"), note=book.shopping["no-prices"])


def _receipt(book: Book, found: Outcome, visit: Visit) -> Table:
    """A shop's table: a line for what is bought, then what its till takes off, delivery and what is to pay."""
    shop, receipt = visit.shop, visit.receipt
    header = (
        *(book.shopping[f"column-{name}"] for name in ("what", "grams", "number", "lot")),
        *(book.shop_text(f"column-{name}", currency=shop.currency) for name in ("each", "sum")),
    )  # fmt: skip
    rows = list(_lines(book, found, visit))
    for given in receipt.given:
        rows.append((offer_text(book, found, shop, shop.offers[given.number]), "", "", "", "", f"–{_number(given.saved, shop)}"))
    if receipt.delivery:
        rows.append((book.shopping["delivery"], "", "", "", "", _number(receipt.delivery, shop)))
    rows.append((book.shopping["till"], "", "", "", "", _number(receipt.total, shop)))
    note = book.shop_text("in-currency", total=str(Money(visit.cost, found.currency))) if shop.currency != found.currency else ""
    return Table(shop.title or book.shopping["own-prices"], header, tuple(rows), ("left", "right", "right", "left", "right", "right"), note=note)


def _lines(book: Book, found: Outcome, visit: Visit) -> Iterator[tuple[str, ...]]:
    """Single pieces, then packs; the grams needed stand once."""
    grams = {one.key: one for one in found.colours}
    for line in visit.receipt.bought:
        listing, name = visit.shop.listings[line.key], what(book, found, line.key)
        kinds = [(name, line.singles, listing.price)]
        kinds += [(book.shop_text("pack", what=name, units=str(pack.units)), count, pack.price) for count, pack in zip(line.packs, listing.packs, strict=True)]
        first = True
        for text, count, price in kinds:
            if count:
                needed = _grams(book, grams[line.key]) if line.key in grams and first else ""
                lot = book.shopping["blank"] if line.key in grams else ""
                yield _box(book, text), needed, str(count), lot, _number(price, visit.shop), _number(count * price, visit.shop)
                first = False


def offer_text(book: Book, found: Outcome, shop: Shop, offer: Offer) -> str:
    """An offer in words, with what it is for unless that is all that is bought."""
    match offer:
        case ByPieces(share=share) if share == HUNDRED:
            text = book.shop_text("offer-take", take=str(offer.of), pay=str(offer.of - offer.reduced))
        case ByPieces():
            text = book.shop_text("offer-second", share=_share(offer.share))
        case PercentOff() if not offer.over:
            text = book.shop_text("offer-percent", share=_share(offer.share))
        case PercentOff():
            text = book.shop_text("offer-percent-over", share=_share(offer.share), over=_money(offer.over, shop))
        case AmountOff():
            text = book.shop_text("offer-amount", amount=_money(offer.amount, shop), over=_money(offer.over, shop))
    yarns = [one for one in found.colours if one.key in shop.listings]
    if all(one.key in offer.on for one in yarns):
        return text
    return book.shop_text("offer-on", offer=text, things=listed(book, [what(book, found, key) for key in shop.listings if key in offer.on]))


def _share(value: Decimal) -> str:
    """
    >>> _share(Decimal("50")), _share(Decimal("12.50"))
    ('50', '12.5')
    """
    text = str(value)
    return text.rstrip("0").rstrip(".") if "." in text else text


def _box(book: Book, text: str) -> str:
    return book.shop_text("box", what=text)


def _grams(book: Book, one: Colour) -> str:
    least, most = (f"{up_to_step(grams, 5):.0f}" for grams in (one.least_grams, one.grams))
    return book.shop_text("range", least=least, most=most) if one.estimated else most


def _money(value: Decimal, shop: Shop) -> str:
    return str(Money(value, shop.currency)).replace(" ", NO_BREAK)


def _number(value: Decimal, shop: Shop) -> str:
    return f"{value:.{places_of(shop.currency)}f}"
