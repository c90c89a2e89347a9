"""Runs the stages in order; the only place that knows the order."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from gaugewright.design.model import Design
from gaugewright.errors import Problem, ProblemsFound, UserError
from gaugewright.gauge.model import Gauge
from gaugewright.grading.grade import Grading
from gaugewright.measurements import Body
from gaugewright.sized import Sized, for_each_size

if TYPE_CHECKING:
    from gaugewright.changes import Side
    from gaugewright.checks import CheckResult
    from gaugewright.drawings.primitives import Drawing, Hatch
    from gaugewright.grading.model import GradedPiece
    from gaugewright.hours.paces import Maker
    from gaugewright.hours.sizes import SizeTime
    from gaugewright.instructions.nodes import Document
    from gaugewright.yarn.amounts import Amount

Terms = Literal["us", "uk"]


@dataclass(frozen=True, slots=True)
class Graded:
    """A design with its bodies and every piece of every size."""

    design: Design
    bodies: Sized[Body]
    grading: Grading


@dataclass(frozen=True, slots=True)
class Edition:
    """What is printed of a graded design: which sizes, in which terms, from whose templates."""

    sizes: tuple[str, ...] = ()
    terms: Terms | None = None
    own_gauge: str = ""
    templates: Path | None = None


def load(path: str | Path, gauge: Gauge | Mapping[str, Gauge] | None = None, templates: Path | None = None) -> Design:
    """Reads and resolves a spec; raises `ProblemsFound` with all its problems. `gauge` is another one, of its main fabric or
    of each that is named; `templates` is the user's own folder.
    """
    from gaugewright.design.resolve import resolve
    from gaugewright.measurements import MEASURES, TABLES, size_labels
    from gaugewright.spec import load_spec

    labels = {table: size_labels(table) for table in TABLES}
    return at_gauge(resolve(load_spec(path, labels, MEASURES, templates), labels), gauge)


def at_gauge(design: Design, gauge: Gauge | Mapping[str, Gauge] | None) -> Design:
    """The design at another gauge; itself where none is given."""
    if gauge is None:
        return design
    from gaugewright.design.regauge import regauged

    return regauged(design, gauge)


def grade(design: Design) -> Graded:
    """Grades every piece in every size."""
    from gaugewright.grading.grade import grade as grade_pieces
    from gaugewright.sizing.bodies import bodies, environments

    of_bodies = bodies(design)
    return Graded(design, of_bodies, grade_pieces(design, environments(design, of_bodies)))


def worked_at(graded: Graded, gauge: Gauge | Mapping[str, Gauge]) -> Graded:
    """The pattern's own numbers worked at another gauge: what a follower gets who changes nothing."""
    from gaugewright.design.regauge import regauged
    from gaugewright.grading.grade import worked_at as worked_pieces
    from gaugewright.sizing.bodies import environments

    design = regauged(graded.design, gauge)
    return Graded(design, graded.bodies, worked_pieces(design, graded.grading.plans, environments(design, graded.bodies)))


def check(graded: Graded) -> "tuple[CheckResult, ...]":
    """Runs all checks; changes nothing."""
    from gaugewright.checks import run_checks

    return run_checks(graded.design, graded.bodies, graded.grading)


def errors_of(results: "tuple[CheckResult, ...]") -> tuple[Problem, ...]:
    """The problems that stop a pattern from being published."""
    return tuple(problem for result in results for problem in result.problems if problem.severity == "error")


def chosen(graded: Graded, sizes: tuple[str, ...]) -> Graded:
    """The same grading with some of the sizes only; what is printed changes, no number does."""
    if not sizes:
        return graded
    labels = graded.bodies.labels
    missing = [size for size in sizes if size not in labels]
    if missing:
        raise UserError("size-not-made", f"this pattern has no size {', '.join(missing)}", f"its sizes are {', '.join(labels)}")
    some = tuple(label for label in labels if label in sizes)
    grading = Grading(
        {key: plans.pick(some) for key, plans in graded.grading.plans.items()},
        {key: pieces.pick(some) for key, pieces in graded.grading.pieces.items()},
        graded.grading.environments.pick(some),
    )
    sizes_list = graded.design.sizes
    ease = tuple(replace(one, values=tuple(one.values[labels.index(label)] for label in some)) for one in sizes_list.ease)
    design = replace(graded.design, sizes=replace(sizes_list, labels=some, ease=ease))
    return Graded(design, graded.bodies.pick(some), grading)


def pieces_of(graded: Graded, size: str) -> "dict[str, GradedPiece]":
    """Every piece of one size."""
    return {key: sized[size] for key, sized in graded.grading.pieces.items()}


def side(graded: Graded) -> "Side":
    """A graded pattern with its finished measures and yarn, as it is printed and compared."""
    from gaugewright.changes import Side
    from gaugewright.yarn.amounts import amounts

    design, envs = graded.design, graded.grading.environments
    finished = {m.key: envs.map(lambda env, m=m: env.length(m.measure)) for m in design.finished}  # type: ignore[misc]
    labels = graded.bodies.labels
    bought = tuple(amounts(design, pieces_of(graded, label)) for label in labels)
    return Side(design, graded.grading, finished, Sized(labels, bought))


def document(graded: Graded, edition: Edition, before: Graded | None = None) -> "Document":
    """The written pattern of one edition; `before` is the same at the pattern's own gauge, where this one is at another."""
    from gaugewright.changes import changes
    from gaugewright.drawings.colour_bands import assign_hatches
    from gaugewright.drawings.cover import draw_cover
    from gaugewright.drawings.crown_figures import as_worn
    from gaugewright.drawings.folds import with_folds
    from gaugewright.drawings.garment_layout import turned_over
    from gaugewright.drawings.piece_figure import piece_figure, rooms_of
    from gaugewright.drawings.schematic import draw_schematic
    from gaugewright.instructions.build import Pattern, build_document
    from gaugewright.instructions.phrase_book import load_book

    printed = chosen(graded, edition.sizes)
    design, labels = printed.design, printed.bodies.labels
    drawn = labels[len(labels) // 2]
    yarns = {yarn.key: (yarn.label, yarn.colour) for yarn in design.yarns}
    hatches = assign_hatches(yarn.label for yarn in design.yarns)
    figures = {}
    for piece in design.pieces:
        figure = piece_figure(piece, printed.grading.plans[piece.key], printed.grading.pieces[piece.key], yarns, drawn)
        figure = with_folds(figure, piece, design, printed.grading.plans[piece.key][drawn], printed.grading.pieces[piece.key][drawn].outline)
        figures[piece.key] = turned_over(figure) if piece.mirrored and not piece.start.in_rounds else as_worn(figure, piece, design)
    rooms = rooms_of(figures)
    schematics = {key: draw_schematic(figure, design.about.units, *rooms[key], hatches=hatches) for key, figure in figures.items()}
    envs = printed.grading.environments
    insets = {one.piece: (envs[drawn].length(one.up), envs[drawn].length(one.inset)) for one in design.attachments}
    cover = draw_cover(design, figures, insets, hatches)
    layouts = _layouts(printed, yarns, drawn, hatches)
    own = side(printed)
    changed = changes(side(chosen(before, edition.sizes)), own) if before is not None else None
    first = cover or next(iter(layouts.values()), None)
    plot = _amounts_plot(own, hatches)
    pattern = Pattern(design, printed.bodies, printed.grading, own.finished, own.amounts, schematics, first, layouts, drawn, edition.own_gauge, changed, plot, _printed_hours(printed))
    book = load_book(design.about.language, edition.terms or design.about.terms, design.about.units, labels, edition.templates)
    return build_document(pattern, book)


def _layouts(printed: Graded, yarns: Mapping[str, tuple[str, str]], drawn: str, hatches: "Mapping[str, Hatch]") -> "dict[str, Drawing]":
    """How joined motifs lie in the size drawn, each kind with its border."""
    from gaugewright.design.rims import border_of
    from gaugewright.drawings.motif_figures import draw_layout

    plans, pieces = printed.grading.plans, printed.grading.pieces
    found = {}
    for piece in printed.design.pieces:
        border = border_of(piece, printed.design)
        edged = (plans[border.key][drawn], pieces[border.key][drawn]) if border else None
        drawing = draw_layout(piece, plans[piece.key][drawn], pieces[piece.key][drawn], yarns, drawn, hatches, edged)
        if drawing is not None:
            found[piece.key] = drawing
    return found


def sheet(graded: Graded, edition: Edition) -> "Document":
    """The sheet for test makers to fill in, for the same edition."""
    from gaugewright.instructions.phrase_book import load_book
    from gaugewright.instructions.maker_sheet import build_sheet

    printed = chosen(graded, edition.sizes)
    about = printed.design.about
    book = load_book(about.language, edition.terms or about.terms, about.units, printed.bodies.labels, edition.templates)
    return build_sheet(side(printed), book, bool(edition.own_gauge))


def _amounts_plot(own: "Side", hatches: "Mapping[str, Hatch]") -> "Drawing | None":
    """The yarn to buy as bars, where every size has amounts."""
    from gaugewright.drawings.amounts_plot import Bar, ColourBars, draw_amounts

    found = [one for one in own.amounts if one is not None]
    if len(found) < len(own.amounts):
        return None

    def bar(amount: "Amount | None") -> Bar | None:
        if amount is None:
            return None
        few, many = amount.fewest_balls, amount.balls
        balls = "" if not many else str(many) if few == many else f"{few}–{many}"
        return Bar(amount.bought(amount.low) if amount.estimated else amount.total, amount.total, balls)

    used = [yarn for yarn in own.design.yarns if any(yarn.key in one for one in found)]
    return draw_amounts(own.amounts.labels, [ColourBars(yarn.label, yarn.colour, tuple(bar(one.get(yarn.key)) for one in found)) for yarn in used], hatches)


def _printed_hours(graded: Graded) -> "Sized[SizeTime] | None":
    """Hours of work, where a swatch was timed or the spec asks for an estimate."""
    design = graded.design
    if design.about.hours == "never" or not (design.about.hours or any(fabric.timed for fabric in design.fabrics)):
        return None
    return hours(graded)


def hours(graded: Graded, maker: "Maker | None" = None) -> "Sized[SizeTime]":
    """The hours of every size, at the designer's pace or a maker's own."""
    from gaugewright.hours.paces import THE_DESIGNER
    from gaugewright.hours.sizes import size_time

    pieces = graded.grading.pieces
    return for_each_size(graded.bodies.labels, lambda label: size_time(graded.design, {key: sized[label] for key, sized in pieces.items()}, maker or THE_DESIGNER))


def drawings_of(doc: "Document") -> "list[tuple[str, Drawing]]":
    """The drawings of a document with file-safe names, in order: cover, charts of stitch patterns, pieces by their keys."""
    from gaugewright.instructions.nodes import Figure
    from gaugewright.output import slug

    named: dict[str, Drawing] = {}
    for figure in (block for block in doc.blocks if isinstance(block, Figure)):
        name = slug(figure.name)
        # Keys that differ in capitals only, or a piece called "cover", would share a file.
        named[name if name not in named else f"{name}-{len(named) + 1}"] = figure.drawing
    return list(named.items())


def publish(path: str | Path, out: Path, paper: Literal["a4", "letter"] = "a4", edition: Edition = Edition(), gauge: Gauge | Mapping[str, Gauge] | None = None) -> Path:
    """From a spec file to a PDF in place; raises `ProblemsFound` and writes nothing where a check fails."""
    from gaugewright.output import write_whole
    from gaugewright.render.pdf import load_style, render_pdf

    design = load(path, None, edition.templates)
    graded = grade(at_gauge(design, gauge))
    errors = errors_of(check(graded))
    if errors:
        raise ProblemsFound(errors)
    before = grade(design) if gauge is not None else None
    data = render_pdf(document(graded, edition, before), paper, load_style("quiet", edition.templates))
    write_whole(out, data)
    return out
