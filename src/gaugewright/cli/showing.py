"""`show`: what one stage made of the spec, for the curious and for finding faults."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import fields
from pathlib import Path

from gaugewright import pipeline
from gaugewright.cli.gauge_option import gauges_text, parse_gauge_options
from gaugewright.cli.outcome import say
from gaugewright.design.model import Formula, ForLength, ForRows, Rest, Section, ToLevel
from gaugewright.errors import UserError
from gaugewright.grading.model import Row, Strip


def show_stage(spec: Path, stage: str, gauge: Sequence[str], templates: Path | None) -> None:
    """Prints one stage's result as lines."""
    gauges = parse_gauge_options(gauge)

    design = pipeline.load(spec, None, templates)

    def before() -> pipeline.Graded | None:
        return pipeline.grade(design) if gauges else None

    stages: dict[str, Callable[[pipeline.Graded], Iterator[str]]] = {
        "design": _design, "targets": _targets, "plans": _plans, "rows": _rows, "yarn": _yarn,
        "text": lambda graded: _text(graded, before(), gauge, templates),
    }
    if stage not in stages:
        raise UserError("unknown-stage", f"there is no stage {stage!r}", f"the stages are {', '.join(stages)}")
    for line in stages[stage](pipeline.grade(pipeline.at_gauge(design, gauges))):
        say(line)


def _design(graded: pipeline.Graded) -> Iterator[str]:
    for piece in graded.design.pieces:
        made = str(piece.make) if piece.grid is None else "as many as its grid takes"
        yield f"{piece.key}: {piece.title}, make {made}, {piece.fabric}, from a {piece.start.kind}"
        yield from (f"  {section_text(section)}" for section in piece.sections)


def section_text(section: Section) -> str:
    """A section as the spec states it: kind, what was stated of it, fabric, and colour if it has its own."""
    stated = [f"{name} {words}" for name, words in _stated(section) if words]
    return f"{type(section).__name__.lower()}: {', '.join(stated)}"


def _stated(part: object) -> Iterator[tuple[str, str]]:
    """Fields with their words, those of an extent in the extent's place; places in the file are left out."""
    for field in fields(part):  # type: ignore[arg-type]
        value = getattr(part, field.name)
        if isinstance(value, Formula):
            yield field.name, value.text
        elif isinstance(value, bool):
            yield field.name, "yes" if value else ""
        elif isinstance(value, (str, int)):
            yield field.name, str(value)
        elif isinstance(value, (ToLevel, ForLength, ForRows, Rest)):
            yield from _stated(value) if fields(value) else [("length", "rest")]


def _targets(graded: pipeline.Graded) -> Iterator[str]:
    for name, formula in (*graded.design.lengths, *graded.design.levels):
        values = (f"{size} {env.length(formula) / 10:.2f}" for size, env in graded.grading.environments.items())
        yield f"{name} (cm): {', '.join(values)}"


def _plans(graded: pipeline.Graded) -> Iterator[str]:
    for key, plans in graded.grading.plans.items():
        for size, plan in plans.items():
            counts = " -> ".join(str(count) for count in (plan.sections[0].stitches, *(s.end for s in plan.sections)))
            yield f"{key} {size}: {counts} sts in {plan.rows} rows"


def _rows(graded: pipeline.Graded) -> Iterator[str]:
    for key, pieces in graded.grading.pieces.items():
        for size, piece in pieces.items():
            for strip in piece.strips:
                name = key if strip is piece.main else strip.name
                yield from (f"{name} {size} {number} {row_text(row)}" for number, row in _numbered(strip))


def _numbered(strip: Strip) -> Iterator[tuple[str, Row]]:
    """Rows by their numbers, short rows by those of the row they follow and their own."""
    short = {group.after: group.rows for group in strip.short}
    for number, row in enumerate(strip.rows, start=1):
        yield f"{number:3d}", row
        yield from ((f"{number:3d}.{place}", each) for place, each in enumerate(short.get(number, ()), start=1))


def row_text(row: Row) -> str:
    """A row in a line: side, runs, count."""
    runs = ", ".join(
        f"{run.operation.kind} {run.operation.stitch} x {run.times} {run.colour}" for run in row.runs
    )
    return f"{row.side}: {runs} = {row.makes}"


def _yarn(graded: pipeline.Graded) -> Iterator[str]:
    from gaugewright.cli.yarn_terms import term_lines

    return term_lines(graded)


def _text(graded: pipeline.Graded, before: pipeline.Graded | None, gauge: Sequence[str], templates: Path | None) -> Iterator[str]:
    from gaugewright.render.text import render_text

    yield render_text(pipeline.document(graded, pipeline.Edition(own_gauge=gauges_text(gauge), templates=templates), before)).removesuffix("\n")
