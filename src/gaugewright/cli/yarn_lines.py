"""`yarn`: what a pattern takes, whether the yarn in hand does, and what is still to buy once pieces are weighed."""

import json
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from gaugewright import pipeline
from gaugewright.advice.band_search import BandChange, BandsThatFit, bands_that_fit
from gaugewright.advice.so_far import SoFar, so_far
from gaugewright.advice.yarn_in_hand import InHand, Stock, grams_held, in_hand
from gaugewright.cli.outcome import say
from gaugewright.cli.yarn_terms import amount_data, amount_lines, bought_text, no_figure, tenths
from gaugewright.errors import UserError
from gaugewright.spec.yarn_text import parse_have, parse_used
from gaugewright.yarn.amounts import amounts

VERDICTS = {
    "enough": "can be made", "barely": "can just be made, with less to spare than the margin", "perhaps": "can perhaps be made: the estimate leaves it open",
    "short": "can't be made",
}  # fmt: skip


def yarn_lines(spec: Path, size: str, have: Sequence[str], used: Sequence[str], templates: Path | None, as_json: bool) -> None:
    """Prints the amounts, or the answer about yarn in hand or pieces weighed."""
    texts, weighed = parse_have(have), parse_used(used)
    graded = pipeline.grade(pipeline.load(spec, None, templates))
    if size:
        pipeline.chosen(graded, (size,))
    labels = (size,) if size else graded.bodies.labels
    held = grams_held(graded.design, texts)
    if used:
        if len(labels) > 1:
            raise UserError("size-unsaid", "a piece tells something of the size it is made in only", f"write --size with one of {', '.join(labels)}")
        found = so_far(graded, labels[0], weighed, held)
        _print(as_json, lambda: _so_far_data(found), _so_far_lines(found))
    elif held:
        answers = in_hand(graded, held)
        told = tuple(one for one in answers if one.size in labels)
        fits = {one.size: bands_that_fit(graded, one.size, held) for one in told if one.verdict in ("short", "perhaps")}
        _print(as_json, lambda: [_in_hand_data(one, fits.get(one.size)) for one in told], _in_hand_lines(told, answers, fits))
    else:
        _print(as_json, lambda: _amounts_data(graded, labels), _amount_lines(graded, labels))


def _print(as_json: bool, data: Any, lines: Iterator[str]) -> None:
    if as_json:
        say(json.dumps(data(), indent=2, ensure_ascii=False))
    else:
        for line in lines:
            say(line)


def _amount_lines(graded: pipeline.Graded, labels: Sequence[str]) -> Iterator[str]:
    for label in labels:
        found = amounts(graded.design, pipeline.pieces_of(graded, label))
        if found is None:
            yield no_figure(label)
        for amount in (found or {}).values():
            yield from amount_lines(label, amount)


def _amounts_data(graded: pipeline.Graded, labels: Sequence[str]) -> list[dict[str, Any]]:
    found = [(label, amounts(graded.design, pipeline.pieces_of(graded, label))) for label in labels]
    return [{"size": label, "colours": None if one is None else [amount_data(amount) for amount in one.values()]} for label, one in found]


def _in_hand_lines(told: Sequence[InHand], answers: Sequence[InHand], fits: dict[str, BandsThatFit | None]) -> Iterator[str]:
    for one in told:
        yield f"{one.size} {VERDICTS[one.verdict]}."
        yield from (f"  {_stock_line(stock)}" for stock in one.stocks)
        yield from (f"  {amount.colour} is to be bought: {bought_text(amount)}" for amount in one.to_buy)
        for short, lender in one.lenders:
            yield f"  {lender.yarn.key} could lend {short.yarn.key} {min(short.short, lender.spare):.0f} g, and has {lender.spare:.0f} g that nothing else needs"
        if one.size in fits:
            yield from _band_lines(fits[one.size])
    able, perhaps = ([one.size for one in answers if one.verdict in verdicts] for verdicts in (("enough", "barely"), ("perhaps",)))
    if perhaps:
        yield f"Sizes that this yarn may make: {', '.join(perhaps)}."
    yield f"Sizes that this yarn makes: {', '.join(able)}." if able else f"This yarn makes no size of the pattern{' for certain' if perhaps else ''}."


def _stock_line(stock: Stock) -> str:
    have = f"{stock.yarn.key}: {stock.have:.0f} g in hand"
    if stock.amount is None:
        return f"{have}, none needed"
    takes = f"{stock.amount.used(stock.amount.low):.0f} to {stock.amount.used(stock.amount.counted):.0f}" if stock.amount.estimated else f"{stock.amount.used(stock.amount.counted):.0f}"
    need = f"{have}, {takes} g needed, {stock.amount.total:.0f} g with the margin{' at the upper end' if stock.amount.estimated else ''}"
    if not stock.short:
        return f"{need}: {stock.spare:.0f} g over"
    balls = f", {stock.balls_short} ball{'s' if stock.balls_short != 1 else ''}" if stock.balls_short else ""
    return f"{need}: {stock.short:.0f} g short{' of the margin' if stock.verdict == 'barely' else ''}{balls}"


def _band_lines(fit: BandsThatFit | None) -> Iterator[str]:
    if fit is None:
        yield "  No piece has bands whose widths could change."
    elif not fit.changes:
        yield f"  No other widths of the bands make it either, in the order they have{'' if fit.all_seen else ', as far as the nearer ones were tried'}."
    else:
        yield f"  With other bands it can be made, {'the margin included' if fit.with_margin else 'but with less to spare than the margin'}:"
        yield from (f"    {_change_line(change)}" for change in fit.changes)


def _change_line(change: BandChange) -> str:
    rows = "; ".join(f"{title}: {', '.join(f'{colour} {was} -> {now}' for colour, was, now in zip(order, change.old, change.new, strict=True))} rows" for title, order in zip(change.titles, change.colours, strict=True))
    return f"{rows}; write heights: [{', '.join(change.heights)}]"


def _in_hand_data(one: InHand, fit: BandsThatFit | None) -> dict[str, Any]:
    return {
        "size": one.size, "verdict": one.verdict,
        "colours": [
            {"colour": stock.yarn.key, "have_grams": tenths(stock.have), "verdict": stock.verdict, "short_grams": tenths(stock.short), "short_balls": stock.balls_short, "spare_grams": tenths(stock.spare), "needs": stock.amount and amount_data(stock.amount)}
            for stock in one.stocks
        ],
        "to_buy": [amount_data(amount) for amount in one.to_buy], "lenders": [{"short": short.yarn.key, "lends": lender.yarn.key, "spare_grams": tenths(lender.spare)} for short, lender in one.lenders],
        "bands": fit and {"with_margin": fit.with_margin, "changes": [{"pieces": change.titles, "colours": change.colours, "rows": change.old, "new_rows": change.new, "heights": change.heights} for change in fit.changes]},
    }  # fmt: skip


def _so_far_lines(found: SoFar) -> Iterator[str]:
    for one in found.weighed:
        yield f"{one.title}, size {found.size}: {one.grams:g} g where {one.counted:.0f} g were counted, {(one.ratio - 1) * 100:+.1f} %"
    for fabric, ratio in found.ratios.items():
        doubt = ", which no finished piece is worked in, so that it may also be as counted" if fabric in found.untold else ""
        yield f"  {fabric} takes {ratio.middle:.3f} of what was counted ({ratio.low:.3f} to {ratio.high:.3f}){doubt}"
    if len(found.weighed) == 1:
        yield "  The range is the scale's half gram alone: how evenly you work shows with a second piece."
    for rest in found.rests:
        told = "" if rest.told else ", if you bought what the pattern says"
        yield f"{rest.yarn.key}: {rest.went:.0f} g went, {rest.middle:.0f} g ({rest.low:.0f} to {rest.high:.0f}) are still to come, {rest.in_hand:.0f} g in hand{told}"
        if not rest.to_buy:
            yield f"  Nothing to buy: {rest.in_hand - rest.middle:.0f} g will be left over."
        else:
            balls = f": {rest.balls} ball{'s' if rest.balls != 1 else ''}" if rest.balls else ""
            more = f"; at the upper end {rest.lacks_at_most:.0f} g would still lack: one ball more" if rest.lacks_at_most and rest.balls else ""
            yield f"  Still to buy {rest.to_buy:.0f} g, {rest.margin * 100:g} % to spare included{balls}{more}."


def _so_far_data(found: SoFar) -> dict[str, Any]:
    return {
        "size": found.size,
        "weighed": [{"piece": one.piece, "grams": one.grams, "counted_grams": tenths(one.counted), "ratio": round(one.ratio, 4)} for one in found.weighed],
        "ratios": {fabric: {"low": round(one.low, 4), "ratio": round(one.middle, 4), "high": round(one.high, 4), "told": fabric not in found.untold} for fabric, one in found.ratios.items()},
        "colours": [
            {"colour": one.yarn.key, "went_grams": tenths(one.went), "to_come_grams": [tenths(end) for end in (one.low, one.middle, one.high)], "in_hand_grams": tenths(one.in_hand), "buy_grams": tenths(one.to_buy), "buy_balls": one.balls}
            for one in found.rests
        ],
    }  # fmt: skip
