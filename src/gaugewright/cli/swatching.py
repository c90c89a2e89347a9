"""`swatch`: what a swatch's readings say, and the spec's block changed where that is asked for."""

import json
from dataclasses import asdict
from pathlib import Path

from gaugewright import pipeline
from gaugewright.advice.swatch import Meaning, ReadGauge, SwatchAdvice, advise
from gaugewright.cli.outcome import say
from gaugewright.errors import UserError
from gaugewright.spec.readings import SwatchReadings, read_swatch
from gaugewright.trade.hooks import hook_label, next_hook
from gaugewright.units import cm_text, inches_text

FEWEST_TO_TELL = 4
"""From so many readings on, the range holds the truth as often as it says (simulated swatches)."""

CLOSE = 0.02
"""A stitch within two hundredths of the one wanted is at gauge (common practice, no source)."""


def swatch_lines(readings: Path, spec: Path | None, fabric: str, templates: Path | None, as_json: bool) -> None:
    """Prints what the readings say, for a spec if one is given."""
    read, found = _advice(readings, spec, fabric, templates)
    if as_json:
        say(json.dumps(asdict(found), indent=2, ensure_ascii=False))
        return
    for line in _lines(read, found):
        say(line)


def swatch_into(readings: Path, spec: Path, fabric: str, templates: Path | None) -> None:
    """Writes the readings' block into a fabric of the spec; a copy of the spec as it was is kept beside it."""
    from gaugewright.advice.swatch_block import spec_with_block
    from gaugewright.output import write_together

    _, found = _advice(readings, spec, fabric, templates)
    assert found.meaning is not None  # a spec is given
    old = spec.read_bytes()
    new = spec_with_block(old, spec, found.meaning.fabric, found.block)
    kept = _copy_name(spec)
    write_together({kept: old, spec: new})
    say(f"{spec}: the swatch of {found.meaning.fabric} is changed; the spec as it was is kept as {kept.name}")


def _copy_name(spec: Path) -> Path:
    """A name that nothing has yet."""
    number = 1
    while (kept := spec.with_name(f"{spec.stem}-before-{number}{spec.suffix}")).exists():
        number += 1
    return kept


def _advice(readings: Path, spec: Path | None, fabric: str, templates: Path | None) -> tuple[SwatchReadings, SwatchAdvice]:
    read = read_swatch(readings)
    if spec is None:
        if fabric:
            raise UserError("fabric-without-spec", f"--fabric {fabric} names a fabric of a spec, and none is given", "add --for with the spec, or leave --fabric out")
        return read, advise(read, None, "")
    graded = pipeline.grade(pipeline.load(spec, None, templates))
    fabrics = [one.key for one in graded.design.fabrics]
    chosen = fabric or (fabrics[0] if len(fabrics) == 1 else "")
    if chosen not in fabrics:
        said = f"there is no fabric {fabric!r} in {spec}" if fabric else f"{spec} has {len(fabrics)} fabrics, and nothing says which was swatched"
        raise UserError("unknown-fabric", said, f"write --fabric with one of {', '.join(fabrics)}")
    return read, advise(read, graded, chosen)


def _lines(read: SwatchReadings, found: SwatchAdvice) -> list[str]:
    lines = [line for gauge in found.gauges for line in _gauge_lines(gauge, gauge is found.used)]
    lines += [*_change_lines(found), *_growth_lines(found)]
    lines += _meaning_lines(read, found)
    block = ", ".join(f"{key}: {value}" for key, value in found.block.items())
    return [*lines, "", "For the spec:", f"  swatch: {{{block}}}"]


def _gauge_lines(gauge: ReadGauge, used: bool) -> list[str]:
    lines = [f"{gauge.state}{', which is graded from' if used else ''}:"]
    for name, one in (("stitches", gauge.stitches), ("rows", gauge.rows)):
        per = 100 / one.mean
        count = f"{one.readings} reading{'s' if one.readings > 1 else ''}"
        line = f"  {per:.2f} {name} to 10 cm, {100 / one.high:.2f} to {100 / one.low:.2f} (90 %, from {count})"
        if one.readings > 1:
            line += f"; single readings spread by {one.spread / one.mean * 100:.1f} %"
        lines.append(line)
        if one.shared:
            lines.append(f"  {_numbered(one.shared)} of the {name} shares its stitches with another: not taken again" if len(one.shared) == 1 else f"  {_numbered(one.shared)} of the {name} share their stitches with others: not taken again")
        if one.readings < FEWEST_TO_TELL:
            lines.append(f"  count {name} in {FEWEST_TO_TELL} places at least, each in another {'row' if name == 'stitches' else 'column of stitches'}: so few can't tell how much yours differ")
        if one.outlier is not None:
            lines.append(f"  reading {one.outlier + 1} of the {name} is far from the others: measure it again, or take it out")
    return lines


def _numbered(places: tuple[int, ...]) -> str:
    numbers = [str(place + 1) for place in places]
    return f"reading {numbers[0]}" if len(numbers) == 1 else f"readings {', '.join(numbers[:-1])} and {numbers[-1]}"


def _change_lines(found: SwatchAdvice) -> list[str]:
    """How the swatch changed from its first state to the one graded from."""
    first = found.gauges[0]
    if first is found.used:
        return []
    wide, high = (getattr(found.used, name).mean / getattr(first, name).mean - 1 for name in ("stitches", "rows"))
    return [f"From {first.state} to {found.used.state} it changed by {wide * 100:+.1f} % in width and {high * 100:+.1f} % in height."]


def _growth_lines(found: SwatchAdvice) -> list[str]:
    """By how much its rows lengthen when it hangs, and what is to be done about that."""
    if found.growth is None:
        return []
    change = f"Hung, its rows are {abs(found.growth) * 100:.1f} % {'longer' if found.growth >= 0 else 'shorter'} than {found.used.state}"
    if found.growth < 0:
        return [f"{change}, which cloth isn't: measure both again. It is taken to keep its length."]
    return [f"{change}: with `hung` in its swatch, a pattern is graded to the length it has when it hangs, and says so."]


def _meaning_lines(read: SwatchReadings, found: SwatchAdvice) -> list[str]:
    meaning = found.meaning
    if meaning is None:
        return []
    told = f"The pattern's numbers worked at this gauge ({meaning.fabric}), with the range that the readings leave:"
    lines = ["", *([told] if meaning.widths else [])]
    for one in meaning.widths:
        off = one.mean - one.printed
        sign = "+" if off >= 0 else "-"
        lines.append(
            f"  {one.measure}, {one.size}: {cm_text(one.mean)} cm ({cm_text(one.low)} to {cm_text(one.high)}) / {inches_text(one.mean)} in; "
            f"the pattern says {cm_text(one.printed)} cm ({sign}{cm_text(abs(off))})"
        )
    lines += _size_lines(found, meaning)
    return [*lines, _tool_line(read, found.used, meaning)]


def _size_lines(found: SwatchAdvice, meaning: Meaning) -> list[str]:
    if not meaning.step:
        return []
    wide = f"Sizes are told apart when the girth is known to {cm_text(meaning.step)} cm: for that, stitches counted over {cm_text(meaning.needed)} cm in all are enough"
    if found.measured >= meaning.needed:
        return [f"{wide}; you counted over {cm_text(found.measured)} cm."]
    return [f"{wide}, in one wide swatch or in several places; you counted over {cm_text(found.measured)} cm."]


def _tool_line(read: SwatchReadings, used: ReadGauge, meaning: Meaning) -> str:
    """The hook to try next, or what to do with the loops where there is none."""
    ratio = used.stitches.mean / meaning.wanted.stitch_width
    if abs(ratio - 1) <= CLOSE:
        return "Your stitches are as wide as the pattern's: keep to this hook." if read.tool != "hands" else "Your stitches are as wide as the pattern's."
    larger = ratio < 1
    amount = f"{abs(1 / ratio - 1) * 100:.0f} %"
    if read.tool == "hands":
        return f"Pull each loop {amount} {'larger' if larger else 'smaller'}, and swatch again."
    if read.tool is None or isinstance(read.tool, str):
        return f"Your stitches are {'narrower' if larger else 'wider'} than the pattern's by {amount}: try a {'larger' if larger else 'smaller'} hook."
    hook = next_hook(read.tool.mm, larger)
    where = f"the {hook_label(hook)} hook" if hook else f"a {'larger' if larger else 'smaller'} hook than any in the list"
    return f"Your stitches are {'narrower' if larger else 'wider'} than the pattern's by {amount}: try {where} next, and swatch again."
