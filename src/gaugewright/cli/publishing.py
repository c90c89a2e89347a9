"""`publish`: files written, and a line about each."""

from pathlib import Path
from typing import Literal

from gaugewright import pipeline
from gaugewright.cli.outcome import complain, say
from gaugewright.errors import ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.output import slug, write_whole


def parse_gauge_option(text: str) -> Gauge | None:
    """The gauge of `--gauge`, or None; a plain problem where it can't be read."""
    if not text:
        return None
    from gaugewright.errors import UserError
    from gaugewright.spec.gauge_text import GaugeError, parse_gauge

    try:
        written = parse_gauge(text)
    except GaugeError as fault:
        raise UserError(fault.name, f"--gauge {text!r}: {fault.message}", fault.hint) from None
    return Gauge(written.stitches, written.width, written.rows, written.height)


def publish_files(
    spec: Path, sizes: tuple[str, ...], gauge: str, out: Path | None, paper: Literal["a4", "letter"],
    terms: Literal["us", "uk"] | None, text: bool, svg: bool, templates: Path | None,
) -> None:
    """Grades, checks and writes; nothing is written where a check finds an error."""
    graded = pipeline.grade(pipeline.load(spec, parse_gauge_option(gauge)))
    results = pipeline.check(graded)
    errors = pipeline.errors_of(results)
    if errors:
        raise ProblemsFound(errors)
    document = pipeline.document(graded, pipeline.Edition(sizes, terms, gauge, templates))
    target = _target(spec, out, slug(graded.design.about.title), sizes, paper)
    from gaugewright.render.pdf import load_style, render_pdf

    data = render_pdf(document, paper, load_style("quiet", templates))
    write_whole(target, data)
    say(f"{target}: {len(sizes) or len(graded.bodies)} sizes, {len(graded.design.pieces)} pieces")
    if text:
        from gaugewright.render.text import render_text

        write_whole(target.with_suffix(".txt"), render_text(document).encode())
        say(str(target.with_suffix(".txt")))
    if svg:
        _write_svgs(target, graded, document)
    warnings = [problem for result in results for problem in result.problems if problem.severity == "warning"]
    if warnings:
        complain(warnings)


def _target(spec: Path, out: Path | None, name: str, sizes: tuple[str, ...], paper: str) -> Path:
    if out is not None and out.suffix.lower() == ".pdf":
        return out
    parts = [name, *(slug(size) for size in sizes), *(["letter"] if paper == "letter" else [])]
    return (out if out is not None else spec.parent) / f"{'-'.join(parts)}.pdf"


def _write_svgs(target: Path, graded: pipeline.Graded, document: object) -> None:
    from gaugewright.render.svg import render_svg

    for name, drawing in pipeline.drawings_of(graded, document):  # type: ignore[arg-type]
        path = target.with_name(f"{target.stem}-{name}.svg")
        write_whole(path, render_svg(drawing).encode())
        say(str(path))
