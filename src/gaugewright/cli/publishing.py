"""`publish`: files written, and a line about each."""

import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from gaugewright import pipeline
from gaugewright.cli.gauge_option import parse_gauge_options
from gaugewright.cli.outcome import complain, say
from gaugewright.errors import ProblemsFound, UserError
from gaugewright.output import slug, write_together

if TYPE_CHECKING:
    from gaugewright.instructions.nodes import Document


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is written: of which spec, in which edition, at which gauges, where, on which paper, with what beside the PDF:
    text, drawings, a sheet for test makers.
    """

    spec: Path
    edition: pipeline.Edition
    gauge: Sequence[str]
    out: Path | None
    paper: Literal["a4", "letter"]
    text: bool
    svg: bool
    sheet: bool = False


def publish_files(wanted: Wanted) -> None:
    """Grades, checks and writes; nothing is written where a check finds an error."""
    edition = wanted.edition
    _check_templates(edition.templates)
    gauges = parse_gauge_options(wanted.gauge)
    design = pipeline.load(wanted.spec, None, edition.templates)
    graded = pipeline.grade(pipeline.at_gauge(design, gauges))
    before = pipeline.grade(design) if gauges else None
    write_edition(wanted, graded, before)


def write_edition(wanted: Wanted, graded: pipeline.Graded, before: pipeline.Graded | None) -> None:
    """Checks and writes what is graded; `before` is the same at the pattern's own gauge, where this is at another."""
    edition = wanted.edition
    results = pipeline.check(graded)
    errors = pipeline.errors_of(results)
    if errors:
        raise ProblemsFound(errors)
    files = _files(wanted, graded, pipeline.document(graded, edition, before))
    _keep_the_spec(wanted.spec, files)
    write_together(files)
    first, *others = files
    sizes = len(pipeline.chosen(graded, edition.sizes).bodies)
    say(f"{first}: {_counted(sizes, 'size')}, {_counted(len(graded.design.pieces), 'piece')}")
    for path in others:
        say(str(path))
    warnings = [problem for result in results for problem in result.problems if problem.severity == "warning"]
    if warnings:
        complain(warnings)


def _files(wanted: Wanted, graded: pipeline.Graded, document: "Document") -> dict[Path, bytes]:
    """Everything to write, the PDF first; all of it is made before any of it is written."""
    from gaugewright.render.pdf import load_style, render_pdf

    target = _target(wanted, graded)
    files = {target: render_pdf(document, wanted.paper, load_style("quiet", wanted.edition.templates))}
    if wanted.text:
        from gaugewright.render.text import render_text

        files[target.with_suffix(".txt")] = render_text(document).encode()
    if wanted.svg:
        from gaugewright.render.svg import render_svg

        for name, drawing in pipeline.drawings_of(document):
            files[target.with_name(f"{target.stem}-{name}.svg")] = render_svg(drawing).encode()
    return {**files, **(_sheet_files(wanted, graded, target) if wanted.sheet else {})}


def _sheet_files(wanted: Wanted, graded: pipeline.Graded, target: Path) -> dict[Path, bytes]:
    """The sheet is a file of its own: whoever buys the pattern has no use for it, and the pattern stays the same bytes."""
    from gaugewright.render.pdf import load_style, one_page, render_pdf

    document = pipeline.sheet(graded, wanted.edition)
    style = one_page(document, wanted.paper, load_style("sheet", wanted.edition.templates))
    path = target.with_name(f"{target.stem}-test-sheet.pdf")
    files = {path: render_pdf(document, wanted.paper, style)}
    if wanted.text:
        from gaugewright.render.text import render_text

        files[path.with_suffix(".txt")] = render_text(document).encode()
    return files


def _target(wanted: Wanted, graded: pipeline.Graded) -> Path:
    """The PDF's path. Every edition has a name of its own, so that none replaces the pattern itself."""
    out, edition, about = wanted.out, wanted.edition, graded.design.about
    if out is not None and out.suffix.lower() == ".pdf":
        return out
    sizes = [slug(label) for label in graded.bodies.labels if label in edition.sizes]
    terms = [edition.terms] if edition.terms and edition.terms != about.terms else []
    gauge = ["own-gauge"] if edition.own_gauge else []
    paper = ["letter"] if wanted.paper == "letter" else []
    name = "-".join((slug(about.title), *sizes, *terms, *gauge, *paper))
    return (out if out is not None else wanted.spec.parent) / f"{name}.pdf"


def _check_templates(folder: Path | None) -> None:
    """A folder that isn't there would be passed over in silence: its templates would simply not be found."""
    if folder is not None and not folder.is_dir():
        raise UserError("missing-template", f"there is no folder {folder} for --templates", "check its name, or leave --templates out")


def _keep_the_spec(spec: Path, files: Mapping[Path, bytes]) -> None:
    for path in files:
        if os.path.exists(path) and os.path.samefile(path, spec):
            raise UserError("output-unwritable", f"{path} is the spec itself and would be lost", "choose another place with --out")


def _counted(number: int, word: str) -> str:
    """
    >>> _counted(1, "size"), _counted(9, "size")
    ('1 size', '9 sizes')
    """
    return f"{number} {word}{'' if number == 1 else 's'}"
