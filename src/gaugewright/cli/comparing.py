"""`candidates`: yarns side by side for one pattern, in the terminal, as JSON, or as a page with its plot."""

import json
from collections.abc import Mapping
from dataclasses import asdict
from decimal import Decimal
from pathlib import Path
from typing import Any

from gaugewright import pipeline
from gaugewright.advice.candidates import compare
from gaugewright.cli.outcome import say
from gaugewright.errors import ProblemsFound
from gaugewright.output import slug, write_together
from gaugewright.render.text import render_text
from gaugewright.sized import Sized
from gaugewright.spec.candidates import read_candidates
from gaugewright.yarn.comparison import Compared, Comparison


def candidates_lines(spec: Path, file: Path, sizes: tuple[str, ...], templates: Path | None, as_json: bool, pdf: bool, out: Path | None) -> None:
    """Prints the comparison, or writes it; a pattern that can't be published is refused first."""
    from gaugewright.instructions.candidates_page import candidates_document
    from gaugewright.instructions.phrase_book import load_book

    read = read_candidates(file)
    graded = pipeline.grade(pipeline.load(spec, None, templates))
    errors = pipeline.errors_of(pipeline.check(graded))
    if errors:
        raise ProblemsFound(errors)
    labels = pipeline.chosen(graded, sizes).bodies.labels
    found = compare(graded, read, sizes)
    if as_json:
        say(json.dumps(_data(found), indent=2, ensure_ascii=False))
        return
    about = graded.design.about
    book = load_book(about.language, about.terms, about.units, labels, templates)
    document = candidates_document(found, book, about.date)
    if not pdf:
        say(render_text(document).rstrip("\n"))
        return
    from gaugewright.render.pdf import load_style, render_pdf
    from gaugewright.render.svg import render_svg

    target = out if out is not None and out.suffix.lower() == ".pdf" else (out or file.parent) / f"{slug(about.title)}-candidates.pdf"
    files = {target: render_pdf(document, "a4", load_style("quiet", templates))}
    for name, drawing in pipeline.drawings_of(document):
        files[target.with_name(f"{target.stem}-{name}.svg")] = render_svg(drawing).encode()
    write_together(files)
    for path in files:
        say(str(path))


def _data(found: Comparison) -> dict[str, Any]:
    return {"title": found.title, "size": found.size, "kept": list(found.kept), "own": _yarn_data(found.own), "candidates": [_yarn_data(one) for one in found.candidates]}


def _yarn_data(one: Compared) -> dict[str, Any]:
    """One yarn for JSON; ends as a list of two, money as text, which keeps its cents."""
    return {
        "name": one.name, "verdict": one.verdict, "category": one.category, "metres_per_100g": one.metres, "structure": one.structure, "fibre": dict(one.fibre),
        "gauge": {**asdict(one.gauge.gauge), "from": one.gauge.basis, "estimated": one.gauge.estimated}, "hand": one.hand, "hand_at_the_pattern": one.at_pattern,
        "estimated": one.take.estimated if one.take else None, "balls": _by_size(one.take.balls) if one.take else None,
        "grams": _by_size(one.take.grams) if one.take else None, "cost": _by_size(one.cost) if one.cost else None, "currency": one.currency,
        "care": list(one.care), "reasons": [{"gravity": each.gravity, "key": each.key, **each.slots, "source": each.source} for each in one.reasons],
    }  # fmt: skip


def _by_size(values: "Sized[Any]") -> Mapping[str, list[Any]]:
    return {size: [str(end) if isinstance(end, Decimal) else end for end in ends] for size, ends in values.items()}
