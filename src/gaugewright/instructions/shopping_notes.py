"""What stands under a shopping card's tables: the total, the budget, what else is possible, how it was worked out."""

from collections.abc import Iterator
from decimal import Decimal

from gaugewright.instructions.nodes import Block, Heading, Paragraph, Span, plain
from gaugewright.instructions.wording import NO_BREAK, Book, listed
from gaugewright.shopping.budget import Budget, Cheaper, asked_by_margin
from gaugewright.shopping.outcome import Outcome
from gaugewright.shopping.plan import Plan
from gaugewright.spec.money import Money
from gaugewright.spec.shopping import is_size

MOST_CHANGES = 4

def notes(book: Book, found: Outcome) -> Iterator[Block]:
    """Everything under the tables."""
    plan = found.plan
    if plan is not None:
        text = book.shop_text("total", total=_sum(plan.total, found)) if found.least_total is None else _range(book, found, found.least_total, plan)
        budget = [f" {_budget_line(book, found, found.budget)}"] if found.budget else []
        dearest = [f" {book.shop_text('dearest', yarn=found.label(found.dearest[0]), cost=_sum(found.dearest[1], found))}"] if found.dearest else []
        yield Paragraph((Span(text, "strong"), *plain("".join((*budget, *dearest)))))
        if found.budget and found.budget.left < 0:
            yield from _changes(book, found, found.budget)
    if found.unpriced:
        yield Paragraph(plain(book.shopping["unpriced"]))
        yield from (Paragraph(plain(book.shop_text("more-boxes", what=what(book, found, one.key), count=str(one.count))), "bullet") for one in found.unpriced)
    lines = [*_hands(book, found), *_asides(book, found, plan)]
    if lines:
        yield Heading(3, book.shopping["notes-heading"])
        yield from (Paragraph(plain(line), "bullet") for line in lines)
    yield Paragraph(plain(" ".join(_rules(book, found, plan))), "small")


def what(book: Book, found: Outcome, key: str) -> str:
    """A thing as it is named on the card."""
    return book.shop_text("hook", size=key.replace(" ", NO_BREAK)) if is_size(key) else found.label(key)


def _sum(value: Decimal, found: Outcome) -> str:
    return str(Money(value, found.currency)).replace(" ", NO_BREAK)


def _range(book: Book, found: Outcome, least: Decimal, plan: Plan) -> str:
    return book.shop_text("total-range", least=_sum(least, found).partition(NO_BREAK)[0], total=_sum(plan.total, found))


def _budget_line(book: Book, found: Outcome, budget: Budget) -> str:
    amount = _sum(budget.amount, found)
    if not budget.left:
        return book.shop_text("exact", budget=amount)
    if budget.left > 0:
        return book.shop_text("left", budget=amount, left=_sum(budget.left, found))
    return book.shop_text("over", budget=amount, over=_sum(-budget.left, found))


def _changes(book: Book, found: Outcome, budget: Budget) -> Iterator[Block]:
    """What would fit the budget; where nothing does, what comes nearest."""
    told = budget.fitting[:MOST_CHANGES] or tuple(reversed(budget.changes))[:MOST_CHANGES]
    if told:
        yield Paragraph(plain(book.shopping["fits" if budget.fitting else "fits-not"]))
        yield from (Paragraph(plain(_change(book, found, one)), "bullet") for one in told)


def _change(book: Book, found: Outcome, one: Cheaper) -> str:
    total = _sum(one.total, found)
    if one.change == "margin":
        return book.shop_text("change-margin", of=found.label(one.of), total=total)
    if one.change == "smaller size":
        people = {make.person for make in found.makes}
        return book.shop_text("change-smaller-size-for" if one.of in people else "change-smaller-size", of=one.of, to=one.to, total=total)
    return book.shop_text(f"change-{one.change.replace(' ', '-')}", total=total)


def _hands(book: Book, found: Outcome) -> Iterator[str]:
    """What is in hand: balls with their caution, hooks and notions."""
    labels = {one.label for one in found.colours}
    balls = [book.shop_text("hand-yarn", count=str(count), what=name) for name, count in found.in_hand if name in labels]
    tools = [what(book, found, name) for name, _ in found.in_hand if name not in labels]
    if balls:
        yield book.shop_text("in-hand", things=listed(book, balls))
    if tools:
        yield book.shop_text("in-hand-tools", things=listed(book, tools))


def _asides(book: Book, found: Outcome, plan: Plan | None) -> Iterator[str]:
    """What is worth knowing at the counter."""
    if found.estimated:
        balls = [book.shop_text("hand-yarn", count=book.shop_text("range", least=str(one.fewest), most=str(one.balls)), what=one.label) for one in found.colours]
        yield book.shop_text("estimate", things=listed(book, balls))
    if keys := asked_by_margin(found.colours):
        spare = {one.key: one.to_buy - max(0, one.bare - one.in_hand) for one in found.colours}
        yield book.shop_text("for-margin", things=listed(book, [book.shop_text("hand-yarn", count=str(spare[key]), what=found.label(key)) for key in keys]))
    fewer = sum(one.apart - one.balls for one in found.colours)
    if fewer > 0:
        yield book.shop_text("together-one" if fewer == 1 else "together", **({} if fewer == 1 else {"balls": str(fewer)}))
    if plan is None:
        return
    if plan.spare and plan.to_the_piece > plan.total:
        things = [book.shop_text("hand-yarn", count=str(count), what=what(book, found, key)) for key, count in plan.spare]
        yield book.shop_text("spare", things=listed(book, things), total=_sum(plan.to_the_piece, found))
    titles = dict(plan.titles)
    if plan.next_best:
        changes = [book.shop_text("next-from", thing=what(book, found, key), shops=listed(book, [titles[shop] for shop in shops])) for key, shops in plan.next_best.differs]
        yield book.shop_text("next-best", total=_sum(plan.next_best.total, found), changes=listed(book, changes))
    if plan.single and len(plan.visits) > 1:
        yield book.shop_text("single", shops=listed(book, [book.shop_text("single-one", shop=titles[key], total=_sum(total, found)) for key, total in plan.single]))


def _rules(book: Book, found: Outcome, plan: Plan | None) -> Iterator[str]:
    """How balls were chosen and sums were made."""
    mixed = [one.label for one in found.colours if "all" in found.mixed or one.key in found.mixed]
    if len(mixed) == len(found.colours):
        yield book.shopping["mixed"]
    elif mixed:
        yield book.shop_text("same-lot-but", yarns=listed(book, mixed))
    else:
        yield book.shopping["same-lot"]
    if plan is not None and any(visit.shop.offers for visit in plan.visits):
        yield book.shopping["till-way"]
        if any(len(visit.shop.choices) > 1 for visit in plan.visits):
            yield book.shopping["till-choice"]
