"""Yarn term by term, as lines and as data."""

from collections.abc import Iterator
from typing import Any

from gaugewright import pipeline
from gaugewright.yarn.amounts import Amount, Terms, amounts
from gaugewright.yarn.counted import Share, counted

WORDS = {"stitches": "stitches", "picked_up": "picked-up stitches", "foundations": "foundations", "tails": "tails", "seams": "seams", "swatches": "swatches"}


def no_figure(size: str) -> str:
    """Why a size has no amounts."""
    return f"{size}: no figure, since no swatch was weighed and nothing is published by which to estimate"


def term_lines(graded: pipeline.Graded) -> Iterator[str]:
    """Every size and colour: each term in grams with what was counted for it, then what is bought."""
    for size in graded.bodies.labels:
        pieces = pipeline.pieces_of(graded, size)
        found = amounts(graded.design, pieces)
        if found is None:
            yield no_figure(size)
            continue
        shares = counted(graded.design, pieces)
        for amount in found.values():
            yield from amount_lines(size, amount, tuple(share for share in shares if share.colour == amount.colour))


def amount_lines(size: str, amount: Amount, shares: tuple[Share, ...] = ()) -> Iterator[str]:
    """One colour of one size; with what was counted behind each term where it is given."""
    yield f"{size} {amount.colour}: {bought_text(amount)}"
    for term, words in WORDS.items():
        if getattr(amount.counted, term):
            apart = "" if term != "swatches" else " (in the balls)" if amount.buying.swatches_in_balls else " (not in the balls)"
            yield f"  {words}: {ends(amount, term)}{_counted(shares, term.replace('_', ' '))}{apart}"
    yield f"  margin: {amount.buying.margin * 100:g} %, {_span(amount, [terms.total * amount.buying.margin for terms in (amount.low, amount.counted)])}"
    if not amount.estimated:
        yield f"  the swatch's weight is sure to {(amount.high.total / amount.counted.total - 1) * 100:.1f} %: {amount.low.total:.0f} to {amount.high.total:.0f} g without the margin"
    left = amount.left(amount.counted)
    if left is not None and not amount.estimated:
        yield f"  left over: {left:.0f} g, {left / (amount.ball or 1):.1f} balls, if nothing of the margin goes{'; at the upper end the balls fall short: buy one more' if amount.lacks_a_ball else ''}"


def bought_text(amount: Amount) -> str:
    """What to buy, in grams, metres and balls; of an estimate both ends, and said so."""
    low = amount.bought(amount.low) if amount.estimated else amount.total
    parts = [f"{_range(low, amount.total)} g"]
    if amount.metres:
        parts.append(f"{_range(*amount.metres)} m")
    if amount.ball:
        parts.append(f"{_range(amount.fewest_balls, amount.balls)} balls of {amount.ball:g} g")
    return f"{', '.join(parts)}{' (an estimate)' if amount.estimated else ''}"


def ends(amount: Amount, term: str) -> str:
    """A term in grams; of an estimate both ends."""
    return _span(amount, [getattr(terms, term) for terms in (amount.low, amount.counted)])


def _span(amount: Amount, grams: list[float]) -> str:
    low, middle = grams
    return f"{low:.1f} to {middle:.1f} g" if amount.estimated else f"{middle:.1f} g"


def _range(low: float, high: float) -> str:
    first, last = f"{low:.0f}", f"{high:.0f}"
    return first if first == last else f"{first} to {last}"


def _counted(shares: tuple[Share, ...], term: str) -> str:
    """Stitches' worth by fabric and stitch, or metres of strand."""
    found: dict[str, float] = {}
    for share in shares:
        if share.term == term:
            name = f"{share.fabric} {share.stitch}" if share.fabric else "m of strand"
            found[name] = found.get(name, 0.0) + (share.amount if share.fabric else share.amount / 1000)
    told = [f"{name} {amount:.0f}" if name != "m of strand" else f"{amount:.1f} {name}" for name, amount in found.items()]
    return f" ({', '.join(told)})" if told else ""


def amount_data(amount: Amount) -> dict[str, Any]:
    """One amount for JSON: grams to a tenth."""
    return {
        "colour": amount.colour, "estimated": amount.estimated, "terms": terms_data(amount.counted), "low": terms_data(amount.low), "high": terms_data(amount.high),
        "margin_percent": tenths(amount.buying.margin * 100), "swatches_in_balls": amount.buying.swatches_in_balls,
        "grams": tenths(amount.total), "least_grams": tenths(amount.bought(amount.low)),
        "metres": None if amount.metres is None else [tenths(one) for one in amount.metres],
        "ball_grams": amount.ball, "balls": amount.balls if amount.ball else None, "fewest_balls": amount.fewest_balls if amount.ball else None,
        "one_ball_more": amount.lacks_a_ball, "left_grams": None if amount.ball is None else tenths(amount.left(amount.counted) or 0.0),
    }  # fmt: skip


def terms_data(terms: Terms) -> dict[str, float]:
    """Grams by term, to a tenth."""
    return {name: tenths(getattr(terms, name)) for name in WORDS} | {"total": tenths(terms.total)}


def tenths(value: float) -> float:
    """A figure for JSON, to a tenth."""
    return float(f"{value:.1f}")
