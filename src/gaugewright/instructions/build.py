"""The instruction tree of a pattern: plans of all printed sizes -> `Document`.

In: design, bodies, graded pieces, yarn amounts, drawings. Out: blocks in reading order.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from gaugewright.changes import Changes
from gaugewright.design.model import UNSTACKED, Design, Fabric, NeckEdge, Piece, ToLevel
from gaugewright.design.rims import border_of
from gaugewright.drawings.model import Schematic
from gaugewright.drawings.primitives import Drawing
from gaugewright.grading.grade import Grading
from gaugewright.grading.model import EdgeStart
from gaugewright.grading.plan import OpenedPlan, RaglanPlan, RoundYokePlan, ShouldersPlan, TaperPlan
from gaugewright.grading.waiting import in_working_order, seams_before
from gaugewright.instructions.abbreviations import abbreviations
from gaugewright.instructions.amount_tables import Amounts
from gaugewright.instructions.gauge_page import CriticalLength, footer_gauge, gauge_page
from gaugewright.instructions.hanging import is_hung
from gaugewright.instructions.last_pages import last_pages
from gaugewright.instructions.making_up import finishing, making_up, order_of_work, seam_letter
from gaugewright.instructions.materials import materials
from gaugewright.instructions.motif_words import is_motif, motif_plans
from gaugewright.instructions.nodes import Block, Document, Figure, Heading, Paragraph, plain
from gaugewright.instructions.notes_page import notes_page
from gaugewright.instructions.pieces import Names, piece_chapter
from gaugewright.instructions.sizes_page import sizes_page
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book
from gaugewright.instructions.yarn_words import yarn_chapter
from gaugewright.measurements import Body
from gaugewright.sized import Sized, join
from gaugewright.trade.levels import project_level
from gaugewright.yarn.blocks import block_amounts

if TYPE_CHECKING:
    from gaugewright.hours.sizes import SizeTime


@dataclass(frozen=True, slots=True)
class Pattern:
    """All that the words are made from, for the sizes printed."""

    design: Design
    bodies: Sized[Body]
    grading: Grading
    finished: Mapping[str, Sized[float]]
    amounts: Amounts
    schematics: Mapping[str, Schematic]
    cover: Drawing | None
    layouts: Mapping[str, Drawing]
    drawn: str
    own_gauge: str = ""
    changes: Changes | None = None
    plot: Drawing | None = None
    hours: "Sized[SizeTime] | None" = None


def build_document(pattern: Pattern, book: Book) -> Document:
    """The whole pattern."""
    about = pattern.design.about
    views = tuple(_view(pattern, piece.key) for piece in pattern.design.pieces)
    names = Names({yarn.key: yarn.label for yarn in pattern.design.yarns}, {p.key: p.title for p in pattern.design.pieces})
    told = in_working_order(pattern.design)
    in_order = sorted(views, key=lambda view: told.index(view.piece.key))
    bordered = [piece.key for piece in pattern.design.pieces if border_of(piece, pattern.design)]
    chapters = [(*_chapter(pattern, book, view, names), *(_joining(pattern, book, names, [view.piece.key]) if view.piece.key in bordered else ())) for view in in_order]
    pieces = tuple(block for chapter in chapters for block in chapter)
    up = (*_joining(pattern, book, names, [key for key in pattern.layouts if key not in bordered]), *making_up(book, pattern.design, pattern.grading.pieces, pattern.grading.environments, names))
    end = tuple(finishing(book, pattern.design, pattern.grading.pieces, names))
    fabrics = _fabrics_in_use(pattern.design, views)
    gauge = tuple(gauge_page(book, fabrics, _critical(pattern), views))
    notes = (*notes_page(book, pattern.design, views), *_stitch_patterns(book, fabrics))
    front = (
        *_title(pattern, book),
        *sizes_page(book, pattern.design, pattern.bodies, pattern.finished, max(f.thickness for f in fabrics), _hung(pattern)),
        *materials(book, pattern.design, pattern.amounts, fabrics, _markers(pattern.design, views), pattern.plot),
        *yarn_chapter(book, pattern.design, pattern.bodies, pattern.grading, pattern.amounts),
        *gauge,
        *_own_gauge(pattern, book),
        *abbreviations(book, (*gauge, *notes, *pieces, *up, *end), all(fabric.by_hand for fabric in fabrics)),
        *notes,
        *order_of_work(book, pattern.design, names, {view.piece.key: view.made for view in views}),
        *_hours(pattern, book, fabrics),
    )
    return Document(
        title=about.title, author=about.workshop, language=about.language, date=about.date,
        running_head=f"{about.title}  ·  {_size_key(book)}", footer=_footer(pattern, book, fabrics),
        blocks=(*front, *pieces, *up, *end, *last_pages(book, pattern.design)),
        subject=about.about, keywords=("crochet", "pattern"),
    )


def _hung(pattern: Pattern) -> frozenset[str]:
    """The finished measurements that are longer hung than flat."""
    return frozenset(measure.key for measure in pattern.design.finished if is_hung(measure, pattern.design, pattern.grading))


# Chapters that few patterns have are loaded by those that have them.


def _stitch_patterns(book: Book, fabrics: tuple[Fabric, ...]) -> Iterator[Block]:
    if any(fabric.pattern for fabric in fabrics):
        from gaugewright.instructions.pattern_chapter import pattern_chapter

        yield from pattern_chapter(book, fabrics)


def _own_gauge(pattern: Pattern, book: Book) -> Iterator[Block]:
    if pattern.changes is not None:
        from gaugewright.instructions.own_gauge_page import own_gauge_page

        yield from own_gauge_page(book, pattern.changes, pattern.own_gauge)


def _view(pattern: Pattern, key: str) -> PieceView:
    fabrics = {fabric.key: fabric for fabric in pattern.design.fabrics}
    piece = pattern.design.piece(key)
    mirrored = piece.mirrored or any(other.mirrored and other.like == key for other in pattern.design.pieces)
    alike = (key, piece.like) if piece.mirrored else (key,)
    passes = next((o.passes for o in pattern.design.openings if [e.edge for e in o.around] == [piece.bottom] and o.around[0].piece in alike), "")
    own = piece.make > 1 and all(pattern.design.piece(host).make == piece.make for host, _ in piece.start.edges)
    paired = mirrored and not piece.start.in_rounds
    plans, graded = pattern.grading.plans[key], pattern.grading.pieces[key]
    winding = join(lambda plan, one: block_amounts(pattern.design, plan, one), plans, graded)
    return PieceView(piece, plans, graded, fabrics, paired, passes, own, _is_sewn(pattern.design, piece), winding)


def _is_sewn(design: Design, piece: Piece) -> bool:
    """Whether a piece is sewn to something, or to itself, or joined to others of its kind."""
    named = {key for seam in design.seams for key in (seam.join.piece, *(end.piece for end in seam.to))} | {key for one in design.attachments for key in (one.piece, one.to)}
    return piece.key in named or piece.start.sewn or piece.grid is not None


def _chapter(pattern: Pattern, book: Book, view: PieceView, names: Names) -> Iterator[Block]:
    key = view.piece.key
    letters = tuple(seam_letter(pattern.design, index) for index in seams_before(pattern.design, view.piece))
    return piece_chapter(book, view, names, pattern.schematics[key], letters, pattern.drawn)


def _joining(pattern: Pattern, book: Book, names: Names, kinds: list[str]) -> Iterator[Block]:
    """How motifs are joined, of these kinds: before the border that goes round them."""
    if not kinds:
        return
    from gaugewright.instructions.layout_words import layout_blocks

    for key in kinds:
        plans, graded = pattern.grading.plans[key], pattern.grading.pieces[key]
        yield from layout_blocks(book, pattern.design.piece(key), plans, graded, pattern.layouts[key], names.yarns, pattern.drawn)


def _markers(design: Design, views: tuple[PieceView, ...]) -> int:
    """Markers left in the pieces until they are sewn, and as many as the piece in work needs besides."""
    left = 0
    for view in views:
        shoulders = any(isinstance(section, ShouldersPlan) for section in view.first.sections)
        necks = sum(isinstance(section, NeckEdge) for section in view.piece.sections)
        if is_motif(view):
            left += 0 if motif_plans(view).values[0].chains else motif_plans(view).values[0].sides
            continue  # one motif after the other
        left += view.piece.make * (len(view.first.marks) + 2 * shoulders + max(len(plan.corners) for plan in view.plans) + necks + (view.piece.start.kind == "middle"))
    return left + max(_moving(view) for view in views)


def _moving(view: PieceView) -> int:
    """Markers that go up with a piece's rows or rounds, at the ends of rows, a spiral's end, a tip's far side, the parts of
    a yoke, what is left of a tube; or that part an edge in four while stitches are picked up."""
    sections, start = view.first.sections, view.first.start
    parted = 3 * (isinstance(start, EdgeStart) and any(up.rows for up in start.pick_ups))
    if not view.in_rounds:
        return max(2, parted)
    yoke = any(isinstance(section, (RaglanPlan, RoundYokePlan)) for section in sections)
    tip = any(isinstance(section, TaperPlan) and section.edges == "sides" for section in sections)
    opened = any(isinstance(section, OpenedPlan) for section in sections)
    return max(parted, (view.first.worked == "spiral rounds") + 4 * yoke + tip + 2 * opened)


def _size_key(book: Book) -> str:
    """The running head's reminder of how the sizes stand."""
    first, *others = book.labels
    return f"{first}\u00a0({', '.join(others)})" if others else first


def _footer(pattern: Pattern, book: Book, fabrics: tuple[Fabric, ...]) -> str:
    """Workshop, version, date and gauge, so that two printouts are never mixed up."""
    about = pattern.design.about
    parts = [about.workshop, f"version {about.version}" if about.version else "", about.date, footer_gauge(book, fabrics, bool(pattern.own_gauge))]
    return "  ·  ".join(part for part in parts if part)


def _title(pattern: Pattern, book: Book) -> Iterator[Block]:
    about = pattern.design.about
    yield Heading(1, about.title)
    if about.about:
        yield Paragraph(plain(about.about.strip()), "lead")
    if pattern.own_gauge:
        yield Paragraph(book.front_text("own-gauge", gauge=pattern.own_gauge), "note")
    if pattern.cover is not None:
        yield Figure(pattern.cover, pattern.cover.description, "", "cover")
    if about.level:
        level = project_level(about.level)
        yield Paragraph(book.front_text("level-line", level=level.name, meaning=level.meaning), "body")
    if pattern.hours is not None:
        from gaugewright.instructions.hours_page import hours_line

        yield from hours_line(book, pattern.design, pattern.hours)


def _hours(pattern: Pattern, book: Book, fabrics: tuple[Fabric, ...]) -> Iterator[Block]:
    """The chapter on time, where the spec asks for it."""
    if pattern.hours is not None and pattern.design.about.hours == "by piece":
        from gaugewright.instructions.hours_page import hours_chapter

        yield from hours_chapter(book, pattern.design, pattern.hours, tuple(fabric.key for fabric in fabrics))


def _fabrics_in_use(design: Design, views: tuple[PieceView, ...]) -> tuple[Fabric, ...]:
    used = {section.cloth.fabric for view in views for section in view.first.sections}
    return tuple(fabric for fabric in design.fabrics if fabric.key in used)


def _critical(pattern: Pattern) -> list[CriticalLength]:
    """Whole lengths of the pieces that end at a level: the ones that fit depends on, each once."""
    found: list[CriticalLength] = []
    seen: set[tuple[object, ...]] = set()
    envs = pattern.grading.environments
    for piece in pattern.design.pieces:
        plans = pattern.grading.plans[piece.key]
        cloths = {section.cloth.fabric for section in plans.values[0].sections}
        last = [s for s in piece.sections if not isinstance(s, UNSTACKED)][-1:]
        if len(cloths) != 1 or not last or not isinstance(last[0].extent, ToLevel):
            continue
        top = last[0].extent.height
        fabric = pattern.design.fabric(next(iter(cloths)))
        gauge, flat = fabric.gauge, fabric.flat

        def lying(hung: Sized[float], share: float = flat.row_height / gauge.row_height) -> Sized[float]:
            return hung.map(lambda mm: mm * share) if share != 1 else hung

        taller = pattern.grading.pieces[piece.key].map(lambda one, gauge=gauge: gauge.height_of(one.strips[-1].rows[-1].height - 1))  # type: ignore[misc]
        wanted = Sized(envs.labels, tuple(env.length(top) - taller[size] for size, env in envs.items()))
        rows = plans.map(lambda plan: plan.rows)
        if (wanted.values, gauge) not in seen:
            seen.add((wanted.values, gauge))
            found.append(CriticalLength(f"{piece.title}, whole length", flat, lying(wanted), rows))
        for level in dict.fromkeys(mark.level for mark in plans.values[0].marks):
            above = plans.map(lambda plan, level=level: plan.rows - next(m.row for m in plan.marks if m.level == level))  # type: ignore[misc]
            depth = Sized(envs.labels, tuple(wanted[size] - env.length(env.formulas[level]) for size, env in envs.items()))
            if (depth.values, gauge) not in seen:
                seen.add((depth.values, gauge))
                found.append(CriticalLength(f"{piece.title}, above the {level}", flat, lying(depth), above))
    return found
