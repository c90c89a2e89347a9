"""`regauge`: what another gauge changes, and whose numbers to follow without changing any."""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict
from decimal import Decimal
from itertools import groupby
from pathlib import Path
from typing import Any

from gaugewright import pipeline
from gaugewright.advice.follow import Follow, Got, follow
from gaugewright.changes import Changes, CountChange, changes
from gaugewright.cli.gauge_option import gauges_text, parse_gauge_options
from gaugewright.cli.outcome import complain, say
from gaugewright.errors import ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.sized import Sized
from gaugewright.units import cm_text, inches_text


def regauge_lines(spec: Path, gauge: Sequence[str], sizes: tuple[str, ...], templates: Path | None, as_json: bool) -> None:
    """Prints both answers; exit 1 where the pattern can't be made at this gauge."""
    gauges = parse_gauge_options(gauge)
    assert gauges is not None  # the command asks for one
    design = pipeline.load(spec, None, templates)
    before, after = pipeline.grade(design), pipeline.grade(pipeline.at_gauge(design, gauges))
    results = pipeline.check(after)
    errors = pipeline.errors_of(results)
    if errors:
        raise ProblemsFound(errors)
    old, new = (pipeline.side(pipeline.chosen(one, sizes)) for one in (before, after))
    found = changes(old, new)
    followed = tuple(one for one in follow(before, gauges) if not sizes or one.wanted in sizes)
    if as_json:
        say(json.dumps(_data(found, followed, gauges), indent=2, ensure_ascii=False))
        return
    for line in (*_change_lines(found, gauges_text(gauge)), *follow_lines(followed)):
        say(line)
    warnings = [problem for result in results for problem in result.problems if problem.severity == "warning"]
    if warnings:
        complain(warnings)


def _data(found: Changes, followed: tuple[Follow, ...], gauges: Mapping[str, Gauge]) -> dict[str, Any]:
    return {"gauge": {name or "main": asdict(gauge) for name, gauge in gauges.items()}, "changes": _plain(asdict(found)), "follow": [follow_data(one) for one in followed]}


def _plain(value: Any) -> Any:
    """Values by size as a table of sizes, and money as text, which keeps its cents."""
    if isinstance(value, dict) and value.keys() == {"labels", "values"}:
        return dict(zip(value["labels"], _plain(value["values"]), strict=True))
    if isinstance(value, dict):
        return {key: _plain(each) for key, each in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain(each) for each in value]
    return f"{value:.2f}" if isinstance(value, Decimal) else value


def follow_data(one: Follow) -> dict[str, Any]:
    """One answer for JSON, with what is worked out from it."""
    return {
        "wanted": one.wanted, "numbers": one.numbers, "lead": _got_data(one.lead), "others": [_got_data(other) for other in one.others],
    }  # fmt: skip


def _got_data(one: Got) -> dict[str, Any]:
    return {**asdict(one), "off": one.off, "fits": one.fits}


def _change_lines(found: Changes, gauge: str) -> Iterator[str]:
    yield f"Worked out for {gauge}: what the pattern says -> what this gauge needs"
    labels = found.counts[0].old.labels
    for title, counts in groupby(found.counts, lambda one: one.title):
        rows = [(_place(one), _pairs(one.old, one.new)) for one in counts]
        yield from ("", *table(title, labels, rows))
    yield from ("", *table("Finished, cm", labels, [(one.label, _pairs(one.old.map(cm_text), one.new.map(cm_text))) for one in found.measures]))
    bought = [(one.label, _pairs(one.old, one.new)) for one in found.balls]
    paid = [(f"all, {one.currency}", _pairs(*(values.map(lambda sum: f"{sum:.2f}") for values in (one.old, one.new)))) for one in found.costs]
    if bought:
        yield from ("", *table("Balls", labels, [*bought, *paid]))
    else:
        yield from ("", "How many balls: no figure, since a swatch in use was not weighed or a yarn has no ball.")


def _place(one: CountChange) -> str:
    return f"{one.kind}, {one.unit}" if one.part == 0 else f"end of part {one.part} ({one.kind}), {one.unit}"


def _pairs(old: Sized[Any], new: Sized[Any]) -> list[str]:
    """ "43->39", or one number where nothing changes."""
    return [f"{was}" if was == now else f"{was}->{now}" for was, now in zip(old, new, strict=True)]


def table(title: str, labels: tuple[str, ...], rows: list[tuple[str, list[str]]]) -> list[str]:
    """Columns lined up, a column a size."""
    cells = [(title, list(labels)), *rows]
    first = max(len(name) for name, _ in cells)
    widths = [max(len(values[column]) for _, values in cells) for column in range(len(labels))]
    return ["  ".join([name.ljust(first), *(value.rjust(width) for value, width in zip(values, widths, strict=True))]) for name, values in cells]


def follow_lines(followed: Sequence[Follow]) -> Iterator[str]:
    """Whose numbers to follow, what then doesn't fit and what mends it."""
    yield from ("", "Without changing a number: work the pattern as it is, at your gauge, by the numbers of another size.")
    for one in followed:
        lead = one.lead
        near = "" if lead.fits else f", {large(lead.off)}: no size comes nearer"
        yield f"  for {one.wanted} ({lead.label.lower()} {cm_text(lead.wanted)} cm) follow {one.numbers}: {lead.label.lower()} {both(lead.got)}{near}"
        off = [got_text(other) for other in one.others if not other.fits]
        yield f"    {'; '.join(off)}" if off else "    all other measurements fit"


def got_text(one: Got) -> str:
    """A measurement that is off, by how much, and what mends it."""
    mended = f" (work {abs(one.rows)} row{'s' if abs(one.rows) != 1 else ''} {'more' if one.rows > 0 else 'fewer'})" if one.rows else ""
    return f"{one.label.lower()} {cm_text(one.got)} cm, {signed(one.off)}{mended}"


def signed(mm: float) -> str:
    """A difference in cm with its sign.

    >>> signed(14.0), signed(-25.0)
    ('+1.5 cm', '-2.5 cm')
    """
    return f"{'+' if mm >= 0 else '-'}{cm_text(abs(mm))} cm"


def large(mm: float) -> str:
    """A difference in words.

    >>> large(14.0), large(-25.0)
    ('1.5 cm too large', '2.5 cm too small')
    """
    return f"{cm_text(abs(mm))} cm too {'large' if mm >= 0 else 'small'}"


def both(mm: float) -> str:
    """A length in both units.

    >>> both(1040)
    '104 cm / 41 in'
    """
    return f"{cm_text(mm)} cm / {inches_text(mm)} in"
