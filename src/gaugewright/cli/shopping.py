"""`shop`: what to buy where, as a card in the terminal, on paper, or as JSON."""

import json
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any, Literal

from gaugewright import pipeline
from gaugewright.advice.shop import shop
from gaugewright.cli.outcome import say
from gaugewright.errors import UserError
from gaugewright.instructions.phrase_book import load_book
from gaugewright.instructions.shopping_card import shopping_card
from gaugewright.output import write_whole
from gaugewright.shopping.outcome import Outcome
from gaugewright.spec.shopping import read_shopping


@dataclass(frozen=True, slots=True)
class Trip:
    """What is asked for: of which spec, by which shopping file, in which sizes, on which paper."""

    spec: Path
    file: Path | None
    sizes: Sequence[str]
    card: Path | None
    paper: Literal["a4", "letter"]
    templates: Path | None
    as_json: bool


def shop_lines(trip: Trip) -> None:
    """Prints what to buy; writes the card where one is asked for. The spec is only read."""
    file = read_shopping(trip.file) if trip.file else None
    graded = pipeline.grade(pipeline.load(trip.spec, None, trip.templates))
    found = shop(graded, file, trip.sizes)
    about = graded.design.about
    card = shopping_card(load_book(about.language, about.terms, about.units, graded.bodies.labels, trip.templates), graded.design, found)
    if trip.card is not None:
        from gaugewright.render.pdf import load_style, render_pdf

        if trip.card.suffix.lower() != ".pdf":
            raise UserError("output-unwritable", f"{trip.card} is no name of a PDF", "write --card with a name that ends in .pdf")
        write_whole(trip.card, render_pdf(card, trip.paper, load_style("card", trip.templates)))
    if trip.as_json:
        say(json.dumps(_data(found), indent=2, ensure_ascii=False))
        return
    from gaugewright.render.text import render_text

    say(render_text(card).rstrip("\n"))
    if trip.card is not None:
        say(f"\n{trip.card}")


def _data(found: Outcome) -> dict[str, Any]:
    """Everything as plain data; money as text, since a number of JSON isn't exact."""
    data: dict[str, Any] = _plain(asdict(found))
    if found.plan:
        for visit, told in zip(found.plan.visits, data["plan"]["visits"], strict=True):
            told["shop"] = {"key": visit.shop.key, "title": visit.shop.title, "currency": visit.shop.currency}
            told["receipt"] |= {"goods": str(visit.receipt.goods), "total": str(visit.receipt.total)}
    return data


def _plain(value: Any) -> Any:
    """
    >>> from decimal import Decimal
    >>> _plain({"total": (Decimal("7.40"), frozenset({"oat"}))})
    {'total': ['7.40', ['oat']]}
    """
    if isinstance(value, Decimal):
        return str(value)
    if isinstance(value, dict):
        return {key: _plain(held) for key, held in value.items()}
    if isinstance(value, frozenset):
        return sorted(value)
    return [_plain(one) for one in value] if isinstance(value, (list, tuple)) else value
