"""`fit`: the size for a body, ease beside the intended, and what to change; an edition for that body where it is asked for."""

import json
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any

from gaugewright import pipeline
from gaugewright.advice.fit import Fit, LengthChange, Measured, fit, grade_own, with_own_lengths
from gaugewright.cli.outcome import say
from gaugewright.cli.publishing import Wanted, write_edition
from gaugewright.errors import UserError
from gaugewright.output import slug
from gaugewright.spec.household import Household, read_household
from gaugewright.units import cm_text


def fit_lines(spec: Path, body: Path, person: str, templates: Path | None, as_json: bool) -> None:
    """Prints the advice for everybody in the file, or for one person."""
    household = read_household(body)
    graded = pipeline.grade(pipeline.load(spec, None, templates))
    found = [fit(graded, one, household.measures(one)) for one in _people(household, person, body)]
    if as_json:
        say(json.dumps([_data(one) for one in found], indent=2, ensure_ascii=False))
        return
    for line in (line for one in found for line in _lines(one)):
        say(line)


def publish_own(spec: Path, body: Path, person: str, out: Path | None, templates: Path | None, lengths_only: bool = False) -> None:
    """Writes the pattern in one size for one person's body, or the size found with her or his own lengths only. The
    measures stand in it, the name doesn't.
    """
    household = read_household(body)
    people = _people(household, person, body)
    if len(people) > 1:
        raise UserError("unknown-person", f"{body} holds {len(people)} people, and an own size is one person's", f"write --person with one of {', '.join(people)}")
    (one,) = people
    design = pipeline.load(spec, None, templates)
    standard, measures = pipeline.grade(design), household.measures(one)
    size = fit(standard, one, measures).size
    if lengths_only:
        graded = grade_own(design, with_own_lengths(standard, measures, size), size, one, f"{size} own lengths")
    else:
        graded = grade_own(design, measures, size, one)
    kind = slug(f"{size} own lengths") if lengths_only else "own-size"
    target = out if out is not None and out.suffix.lower() == ".pdf" else (out or spec.parent) / f"{slug(design.about.title)}-{kind}.pdf"
    write_edition(Wanted(spec, pipeline.Edition(templates=templates), (), target, "a4", False, False), graded, None)


def _people(household: Household, person: str, body: Path) -> tuple[str, ...]:
    if person and person not in household.people:
        raise UserError("unknown-person", f"{body} has nobody called {person!r}", f"it holds {', '.join(household.people)}")
    return (person,) if person else tuple(household.people)


def _data(one: Fit) -> dict[str, Any]:
    return {
        **asdict(one), "lead": _measured_data(one.lead), "measures": [_measured_data(each) for each in one.measures], "own_mends": [each.key for each in one.own_mends],
    }  # fmt: skip


def _measured_data(one: Measured) -> dict[str, Any]:
    return {**asdict(one), "ease": one.ease if one.body else None, "intended": one.intended if one.chart else None}


def _lines(one: Fit) -> Iterator[str]:
    lead = one.lead
    yield f"{one.person}: make {one.size}, by the {lead.of.replace('_', ' ')} of {cm_text(lead.body)} cm ({one.size} is made for {cm_text(lead.chart)} cm)"
    yield from (f"  {_measure_line(each)}" for each in (lead, *one.measures))
    for change in one.lengths:
        yield f"  {_change_line(change)}"
    if one.lengths:
        yield f"  --own-lengths publishes {one.size} with these lengths, counts and all."
    if one.filled:
        yield f"  not measured, and taken from the mean of such bodies where a length needs it: {', '.join(name.replace('_', ' ') for name in one.filled)}"
    mended = [each.label.lower() for each in one.own_mends]
    left = [each.label.lower() for each in one.off if each not in one.own_mends]
    if mended:
        yield f"  An own size is nearer in {', '.join(mended)}: --own publishes one for this body alone."
    if left:
        yield f"  The design doesn't follow this body in {', '.join(left)}, an own size neither: add or leave out the stitches named, or live with it."


def _measure_line(one: Measured) -> str:
    said = f"{one.label.lower()} {cm_text(one.got)} cm: "
    if one.body and one.chart:
        return f"{said}ease {_signed(one.ease)} where {_signed(one.intended)} is intended, {one.verdict}{_stitches(one)}; an own size has {cm_text(one.own)} cm"
    if one.of:
        return f"{said}the {one.of.replace('_', ' ')} was not measured"
    return f"{said}{one.verdict}{_stitches(one)}; an own size has {cm_text(one.own)} cm"


def _stitches(one: Measured) -> str:
    if not one.stitches:
        return ""
    return f" by {cm_text(abs(one.wanted - one.got))} cm, {abs(one.stitches)} st{'s' if abs(one.stitches) != 1 else ''}"


def _signed(mm: float) -> str:
    """
    >>> _signed(200.0), _signed(-15.0), _signed(-1.0)
    ('20 cm', '-1.5 cm', '0 cm')
    """
    text = cm_text(abs(mm))
    return f"{'-' if mm < 0 and text != '0' else ''}{text} cm"


def _change_line(one: LengthChange) -> str:
    more = one.new_rows - one.rows
    return f"{one.title}: work {abs(more)} row{'s' if abs(more) != 1 else ''} {'more' if more > 0 else 'fewer'} in a part without shaping, {one.new_rows} in all instead of {one.rows}; the same in every piece sewn to it along its rows"
