"""What to buy for one or several sizes of a pattern, where, and what it costs."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from gaugewright import pipeline
from gaugewright.errors import Problem, ProblemsFound, UserError
from gaugewright.shopping.baskets import Effort
from gaugewright.shopping.budget import Budget, Cheaper, margin_changes
from gaugewright.shopping.model import Wanted
from gaugewright.shopping.needs import Colour, Make, at_the_least, buttons_of, colours, hooks_of, tools_wanted, yarns_wanted
from gaugewright.shopping.outcome import Outcome
from gaugewright.shopping.plan import Plan, make_plan
from gaugewright.shopping.resolve import own_prices, shops_of
from gaugewright.shopping.shares import Market, cheapest
from gaugewright.spec.check_shopping import Known, basket_currency, problems_beside
from gaugewright.spec.money import Money, places_of
from gaugewright.spec.shopping import Shopping, ShoppingFile, thing
from gaugewright.yarn.amounts import Amount


@dataclass(frozen=True, slots=True)
class _Errand:
    """One shopping trip: the pattern's grams by size and colour, what the file says, the shops."""

    graded: pipeline.Graded
    by_size: Mapping[str, Mapping[str, Amount]]
    file: ShoppingFile | None
    have: Mapping[str, int]
    mixed: tuple[str, ...]
    market: Market
    currency: str

    @property
    def said(self) -> Shopping | None:
        """What the shopping file says."""
        return self.file.data if self.file else None

    def colours(self, makes: Sequence[Make]) -> tuple[Colour, ...]:
        """What some makes need."""
        return colours(self.graded.design, self.by_size, makes, self.have)


def shop(graded: pipeline.Graded, file: ShoppingFile | None, sizes: Sequence[str]) -> Outcome:
    """The cheapest way to buy what is made; `sizes` go before those that the file states."""
    design = graded.design
    if file is not None:
        buttons = buttons_of(design, ())
        known = Known([yarn.key for yarn in design.yarns], graded.bodies.labels, tuple(buttons))
        if problems := tuple(problems_beside(file, known)):
            raise ProblemsFound(problems)
    makes = _makes(graded, file, sizes)
    errand = _errand(graded, file)
    needed = errand.colours(makes)
    tools = _tools(errand, makes)
    sold = {key for one in errand.market.shops for key in one.listings}
    priced = tuple(one for one in tools if one.key in sold)
    if file is not None and (problems := tuple(_not_to_be_had(errand, file, needed, priced))):
        raise ProblemsFound(problems)
    plan = make_plan(errand.market, (*yarns_wanted(needed, errand.mixed), *priced)) if errand.market.shops else None
    return Outcome(
        makes, needed, tools, tuple(one for one in tools if one.key not in sold), _in_hand(errand, needed), errand.mixed, errand.currency, plan,
        _budget(errand, makes, needed, priced, plan) if plan else None, _dearest(plan, needed), (errand.said.prices_as_of or "") if errand.said else "",
        _total(errand, (*yarns_wanted(at_the_least(needed), errand.mixed), *priced)) if plan and any(one.estimated for one in needed) else None,
    )  # fmt: skip


def _makes(graded: pipeline.Graded, file: ShoppingFile | None, sizes: Sequence[str]) -> tuple[Make, ...]:
    labels = graded.bodies.labels
    if unknown := [size for size in sizes if size not in labels]:
        raise UserError("size-not-made", f"this pattern has no size {', '.join(unknown)}", f"its sizes are {', '.join(labels)}")
    if sizes:
        return tuple(Make(size, "", sizes.count(size)) for size in dict.fromkeys(sizes))
    if file is not None and file.data.make:
        return tuple(Make(one.size, one.person or "", one.times) for one in file.data.make)
    if len(labels) == 1:
        return (Make(labels[0], "", 1),)
    raise UserError("size-unsaid", "nothing says which size is made", f"write --size {labels[len(labels) // 2]}, or `make: [{{size: {labels[len(labels) // 2]}}}]` in the shopping file")


def _errand(graded: pipeline.Graded, file: ShoppingFile | None) -> _Errand:
    own = own_prices(graded.design)
    shops = shops_of(file) if file else (own,) if own else ()
    currency = basket_currency(file) if file else own.currency if own else ""
    have = {thing(name): count for name, count in file.data.have.items()} if file else {}
    mixed = (file.data.mix_lots or ()) if file else ()
    return _Errand(graded, _by_size(graded), file, have, mixed, Market(shops, places_of(currency)), currency)


def _by_size(graded: pipeline.Graded) -> dict[str, Mapping[str, Amount]]:
    """Grams by size and colour; raises where they aren't known, or no ball is."""
    design = graded.design
    found: dict[str, Mapping[str, Amount]] = {}
    for size, amounts in pipeline.side(graded).amounts.items():
        if amounts is None:
            raise ProblemsFound([
                Problem("yarn-unknown", f"the swatch of {fabric.key} is not weighed, so its yarn can't be told", fabric.origin, "add the swatch's mass, such as mass: 41 g, or give its yarns a weight category")
                for fabric in design.fabrics if fabric.swatch_mass is None and fabric.key in _fabrics_used(graded)
            ])  # fmt: skip
        found[size] = amounts
    used = {key for amounts in found.values() for key in amounts}
    balls = [yarn for yarn in design.yarns if yarn.key in used and not yarn.ball_mass]
    if balls:
        raise ProblemsFound([Problem("yarn-without-ball", f"nothing says what a ball of {yarn.key} weighs, so balls can't be counted", yarn.origin, "add ball: {mass: 100 g, length: 58 m}") for yarn in balls])
    return found


def _fabrics_used(graded: pipeline.Graded) -> frozenset[str]:
    return frozenset(section.cloth.fabric for plans in graded.grading.plans.values() for section in plans.values[0].sections)


def _tools(errand: _Errand, makes: Sequence[Make]) -> tuple[Wanted, ...]:
    """Hooks and buttons of the pattern, and the notions that the file asks for; what is in hand is left out."""
    graded, said = errand.graded, errand.said
    notions = {**buttons_of(graded.design, makes), **(said.notions if said else {})}
    return tools_wanted(hooks_of(graded.design, _fabrics_used(graded)), notions, errand.have)


def _in_hand(errand: _Errand, needed: Sequence[Colour]) -> tuple[tuple[str, int], ...]:
    """What is in hand and used: of a colour no more than is needed."""
    balls = [(one.label, min(one.in_hand, one.balls)) for one in needed if one.in_hand]
    yarns = {one.key for one in needed}
    return (*balls, *((name, count) for name, count in errand.have.items() if name not in yarns and count))


def _not_to_be_had(errand: _Errand, file: ShoppingFile, needed: Sequence[Colour], tools: Sequence[Wanted]) -> Iterator[Problem]:
    """Colours that no shop sells, or of which none has enough."""
    for one in yarns_wanted(needed, errand.mixed):
        listings = [(shop, shop.listings[one.key]) for shop in errand.market.shops if one.key in shop.listings]
        if not listings:
            yield Problem("sold-nowhere", f"{one.label} is used, and no shop of this file sells it", file.origin("shops", key=True), f"add {one.key} with its price to a shop's yarns")
            continue
        most = max(listing.most(one.mixed) for _, listing in listings)
        together = sum(listing.most(True) for _, listing in listings)
        if (together if one.mixed else most) < one.count:
            where = next(shop.key for shop, listing in listings if listing.most(one.mixed) == most)
            mend = f"write `mix_lots: [{one.key}]` if several lots will do" if together >= one.count else "take the stock out if more can be ordered, or add a shop"
            lot = "" if one.mixed else " in one lot"
            yield Problem("not-enough-in-stock", f"{one.count} balls of {one.label} are needed, and no shop has more than {most:g}{lot}", file.origin("shops", where, "yarns", one.key, "in_stock"), mend)


def _total(errand: _Errand, wanted: Sequence[Wanted]) -> Decimal | None:
    """The cheapest total; None where there is none, or it would take too long to find."""
    try:
        found = cheapest(errand.market, wanted)
    except UserError:
        return None
    return found.total if found else None


def _budget(errand: _Errand, makes: Sequence[Make], needed: Sequence[Colour], tools: Sequence[Wanted], plan: Plan) -> Budget | None:
    said = errand.said
    if said is None or said.budget is None:
        return None
    errand = replace(errand, market=replace(errand.market, effort=Effort()))
    amount = _in_total(errand, said.budget)
    if plan.total <= amount:
        return Budget(amount, amount - plan.total, ())
    changes = margin_changes(needed, lambda some: _total(errand, (*yarns_wanted(some, errand.mixed), *tools)))
    mixed = _total(errand, (*yarns_wanted(needed, ("all",)), *tools))
    if mixed is not None:
        changes.append(Cheaper("mix lots", "", "", mixed))
    changes += _smaller(errand, makes, tools)
    return Budget(amount, amount - plan.total, tuple(sorted((one for one in changes if one.total < plan.total), key=lambda one: -one.total)))


def _in_total(errand: _Errand, money: Money) -> Decimal:
    said = errand.said
    rate = said.rate_of(money.code, errand.currency) if said else None
    return money.amount * (rate or 1)


def _smaller(errand: _Errand, makes: Sequence[Make], tools: Sequence[Wanted]) -> Iterator[Cheaper]:
    """Each size made one size smaller."""
    labels = errand.graded.bodies.labels
    for place, one in enumerate(makes):
        at = labels.index(one.size)
        if at:
            less = (*makes[:place], Make(labels[at - 1], one.person, one.times), *makes[place + 1 :])
            total = _total(errand, (*yarns_wanted(errand.colours(less), errand.mixed), *tools))
            if total is not None:
                yield Cheaper("smaller size", one.person or one.size, labels[at - 1], total)


def _dearest(plan: Plan | None, needed: Sequence[Colour]) -> tuple[str, Decimal] | None:
    """The colour that costs most, in the total's currency, where one stands out."""
    if plan is None or len(needed) < 2:
        return None
    costs = {one.key: Decimal(0) for one in needed}
    for visit in plan.visits:
        for line, paid in zip(visit.receipt.bought, visit.receipt.paid, strict=True):
            if line.key in costs:
                costs[line.key] += paid * visit.shop.rate
    key = max(costs, key=lambda one: costs[one])
    return (key, costs[key]) if list(costs.values()).count(costs[key]) == 1 else None

