"""`regauge --worked`: what to do in the middle of a piece."""

import json
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any

from gaugewright import pipeline
from gaugewright.advice.midway import Midway, advise
from gaugewright.cli.outcome import say
from gaugewright.cli.regauging import both, follow_data, got_text, large, signed
from gaugewright.design.model import Fabric
from gaugewright.spec.worked_text import WorkedText, parse_worked
from gaugewright.trade.hooks import hook_label, next_hook
from gaugewright.units import cm_text


def midway_lines(spec: Path, piece: str, worked: str, size: str, templates: Path | None, as_json: bool) -> None:
    """Prints the advice for the size begun, or each that it may be."""
    read = parse_worked(worked)
    graded = pipeline.grade(pipeline.load(spec, None, templates))
    found = advise(graded, piece, read, size)
    if as_json:
        say(json.dumps([_data(one) for one in found], indent=2, ensure_ascii=False))
        return
    fabric = graded.design.fabric(graded.design.piece(piece).fabric)
    for line in _hand_lines(found[0], graded.design.piece(piece).title):
        say(line)
    for one in found:
        for line in _lines(one, fabric, read):
            say(line)


def _data(one: Midway) -> dict[str, Any]:
    another = None if one.another is None else {"size": one.another.size, "stitches": one.another.stitches, "result": follow_data(one.another.result)}
    plain = {key: value for key, value in asdict(one).items() if key not in ("continued", "this", "another", "begin")}
    return {
        **plain, "rest": one.rest, "continued": [follow_data(each) for each in one.continued], "this": follow_data(one.this), "another": another, "begin": follow_data(one.begin),
    }  # fmt: skip


def _hand_lines(one: Midway, title: str) -> Iterator[str]:
    hand = one.hand
    yield f"{title}: your stitches are {_share(hand.across, 'wide')} and your rows {_share(hand.along, 'high')}: in the pattern's main fabric {hand.gauge.stitches_in(100):.1f} sts and {hand.gauge.rows_in(100):.1f} rows to 10 cm."
    yield "Continued like this, everything worked in this hand, each size's numbers give:"
    for each in one.continued:
        off = "" if each.lead.fits else f", {signed(each.lead.off)}"
        others = "".join(f"; {got_text(other)}" for other in each.others if not other.fits)
        yield f"  {each.numbers}: {each.lead.label.lower()} {both(each.lead.got)}{off}{others}"


def _share(share: float, word: str) -> str:
    """
    >>> _share(1.043, "wide"), _share(0.999, "high"), _share(0.9, "wide")
    ('4 % too wide', 'as high as the pattern’s', '10 % less wide than they should be')
    """
    percent = f"{abs(share - 1) * 100:.0f}"
    if percent == "0":
        return f"as {word} as the pattern’s"
    return f"{percent} % too {word}" if share > 1 else f"{percent} % less {word} than they should be"


def _lines(one: Midway, fabric: Fabric, read: WorkedText) -> Iterator[str]:
    yield from ("", f"You began {one.size} (row {one.rows} of {one.total}). Best: {one.way}, {_reason(one)}.")
    off = [got_text(each) for each in (one.this.lead, *one.this.others) if not each.fits]
    rows = "" if one.new_total == one.total else f"; for the same length work {one.new_total} rows in all where the pattern has {one.total}, and the shaping in proportion"
    yield f"  go on: {'; '.join(off) if off else 'everything fits'}{rows}"
    yield f"  change hook: {_hook(one, fabric)}; {_with_hook(one, read, fabric)}"
    yield f"  follow another size: {_another(one)}"
    yield f"  rip out: costs {one.lost} row{'s' if one.lost != 1 else ''} ({one.lost_stitches} sts); begin again by the numbers of {one.begin.numbers} for {one.begin.lead.label.lower()} {both(one.begin.lead.got)}, or with another hook by those of {one.size}"
    if one.sewn and one.way != "go on":
        yield f"  It is sewn to {', '.join(one.sewn)}: with numbers of another size, or other rows, work the edges that meet there to match."


def _reason(one: Midway) -> str:
    lead = one.this.lead
    name = lead.label.lower()
    match one.way:
        case "go on":
            return f"since {name} comes out at {cm_text(lead.got)} cm where {cm_text(lead.wanted)} are wanted, which is near enough"
        case "go on with other rows":
            return f"since {name} fits and only the length is off"
        case "follow another size":
            assert one.another is not None  # that way is taken only where there is one
            return f"since the numbers of {one.another.size} give {name} {cm_text(one.another.result.lead.got)} cm where {cm_text(lead.wanted)} are wanted"
        case "change hook":
            return f"since {name} would be {large(lead.off)}, and a change this small doesn't show"
        case "rip out":
            return f"since {name} would be {large(lead.off)}, no size that can be taken up from here fits, and " + (
                "little is worked" if one.rows * 10 <= one.total else "a change of hook this large would show"
            )


def _hook(one: Midway, fabric: Fabric) -> str:
    across = one.hand.across
    if f"{abs(across - 1) * 100:.0f}" == "0":
        return "keep to this hook, your stitches are as wide as they should be"
    larger = across < 1
    if fabric.by_hand:
        return f"pull each loop {'larger' if larger else 'smaller'} by {abs(1 / across - 1) * 100:.0f} %"
    hook = None if fabric.tool is None else next_hook(fabric.tool, larger)
    named = f" than you have now, such as the {hook_label(hook)} if you work with the pattern's" if hook else ""
    return f"a {'larger' if larger else 'smaller'} one{named}"


def _with_hook(one: Midway, read: WorkedText, fabric: Fabric) -> str:
    """What the piece is then: the part that is worked stays as it is."""
    height = read.height + fabric.flat.height_of(one.rest)
    return f"the first {cm_text(read.height)} cm stay {cm_text(read.width)} cm wide where {cm_text(read.width / one.hand.across)} are wanted, and the piece comes to {cm_text(height)} cm in height"


def _another(one: Midway) -> str:
    if one.another is None:
        return "none has a number of stitches here that yours can be taken to"
    way = one.another
    stitches = abs(way.stitches)
    change = "your stitches are its own" if not stitches else f"{'make' if way.stitches > 0 else 'lose'} {stitches} st{'s' if stitches > 1 else ''} on the next row{', one at each edge' if stitches == 2 else ''}"
    return f"{way.size} from row {one.rows + 1} on ({change}): " + "; ".join(got_text(each) for each in (way.result.lead, *(o for o in way.result.others if not o.fits)))
