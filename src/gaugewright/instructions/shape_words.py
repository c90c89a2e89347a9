"""Shaped edges in words: armholes, raglan edges, caps, slopes and a half front's neck edge; what a step at an edge is."""

from collections.abc import Iterator

from gaugewright.design.model import NeckEdge
from gaugewright.grading.plan import DividedPlan, ProfilePlan, SectionPlan, ShouldersPlan
from gaugewright.grading.shape_plans import EdgeParts
from gaugewright.instructions.cloth_words import opening
from gaugewright.instructions.edge_tables import columns_of, edge_sentences, edge_table
from gaugewright.instructions.flat_raglan_words import raglan_end, raglan_rates
from gaugewright.instructions.nodes import Block
from gaugewright.instructions.rising_words import rising_blocks
from gaugewright.instructions.steps import count_end, edge_name_at, spoken, step, to_row
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Mm, Spans
from gaugewright.sized import Sized
from gaugewright.vocabulary import RowEdge


def edges_of(section: SectionPlan) -> tuple[EdgeParts, ...]:
    """What is shaped at each edge of a section; nothing where no edge is."""
    match section:
        case ProfilePlan(starting=starting, far=far):
            return starting, far
        case DividedPlan(outer=outer, inner=inner):
            return outer, inner
        case ShouldersPlan(slope=slope):
            return slope, slope
    return ()


def ways_told(book: Book, view: PieceView, index: int) -> Iterator[Block]:
    """What leaving and decreasing at an edge is, before the first section in which some size does so."""
    for way, label in (("leave", "Leaving sts:"), ("decrease", "Dec at an edge:")):
        if _uses(view, index, way) and not any(_uses(view, below, way) for below in range(index)):
            yield step(label, _way(book, view, index, way))


def _told_before(book: Book, view: PieceView, index: int, colours: list[Spans]) -> Iterator[Block]:
    """What stands before a shaped section's own rows: the ways of shaping, and its changes of colour."""
    yield from ways_told(book, view, index)
    if colours:
        yield step("Colour:", *colours)


def _uses(view: PieceView, index: int, way: str) -> bool:
    sections = (plan.sections[index] for plan in view.plans)
    steps = (s for section in sections for parts in edges_of(section) for part in parts for s in part.profile.steps)
    return any(each.way == way for each in steps)


def _way(book: Book, view: PieceView, index: int, way: str) -> Spans:
    cloth = view.first.sections[index].cloth
    if way == "decrease":
        kind = "shape-decrease-inset" if cloth.counts else "shape-decrease"
        return book.sentence(kind, stitch=book.abbr(cloth.stitch))
    kind = "shape-leave-counted" if cloth.counts else "shape-leave" if cloth.chains else "shape-leave-no-chain"
    return book.sentence(kind, slst=book.abbr("sl st"), open=opening(book, cloth, view.first.worked))


def profile_blocks(book: Book, view: PieceView, index: int, colours: list[Spans]) -> Iterator[Block]:
    """An armhole, a cap, or the neck edge and shoulder of a half front."""
    yield from _told_before(book, view, index, colours)
    first, last = view.section_first_rows(index), view.section_last_rows(index)
    yield from _neck_begins(book, view, index, first)
    plans: Sized[ProfilePlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    rises, top = bool(plans.values[0].rising), last
    last = last.map(lambda row: row - 1) if rises else last
    alike = all(plan.starting == plan.far for plan in plans)
    sides: tuple[RowEdge, ...] = ("starting",) if alike else ("starting", "far")
    edges = [plans.map(lambda plan, side=side: plan.parts(side)) for side in sides]  # type: ignore[misc]
    edges = [each for each in edges if columns_of(each)]
    block = _block(edges[0]) if alike and edges and not _goes_on(view, index) else None
    told = shaping(book, edges, first, "at-both" if alike else "at-one")
    if block is not None:
        told = [book.sentence("shape-block", Row=book.row_word(False), row=first, n=block, edges=_names(book, edges))]
    kind = "shape-even-after" if told else "work-even"
    end = book.sentence("taper-end", view.piece.key, length=view.height(last), width=view.width(last), bottom=spoken(view.piece.bottom))
    sentences = [*told, book.sentence(kind, length=view.height(last), bottom=spoken(view.piece.bottom)), *([end] if told else [])]
    yield step(to_row(book, view, last), *sentences, count=count_end(book, f"{view.piece.key}.shape", view.stitches(last)))
    counts = ((book.words["before"], plans.map(lambda plan: plan.stitches)), (book.words["after"], plans.map(lambda plan: plan.end)))
    if len(book.labels) > 1 and edges and block is None:
        every = edges[0] if len(edges) == 1 else plans.map(lambda plan: (*plan.starting, *plan.far))
        yield edge_table(book, _title(book, view.piece.title, every, "both" if alike else "one"), every, first, counts, raglan_rates(book, view, every, first))
    if rises:
        yield from rising_blocks(book, view, plans.map(lambda plan: plan), top, view.piece.title)


def _neck_begins(book: Book, view: PieceView, index: int, first: Sized[int]) -> Iterator[Block]:
    """A marker at the foot of a half front's neck edge: a band is picked up from there on."""
    section = view.piece.sections[index]
    if isinstance(section, NeckEdge):
        rows = first.map(lambda row: row - 1)
        edge = edge_name_at(view, section.at, min(rows.values))
        yield step("Marker:", book.sentence(
            "mark-level", f"{view.piece.key}.neck", Row=book.row_word(False), row=rows, height=view.height(rows), bottom=spoken(view.piece.bottom),
            edge=book.words["the-edge"].format(edge=spoken(edge)), below=spoken(edge), above=spoken("neck"),
        ))


def _goes_on(view: PieceView, index: int) -> bool:
    """Whether what is shaped here goes on at the outer edges of both sides of a neck."""
    above = [plan.sections[index + 1] for plan in view.plans if index + 1 < len(plan.sections)]
    return any(isinstance(section, DividedPlan) and any(part.name in ("armhole", "raglan") and part.profile.steps for part in section.outer) for section in above)


def _block(edges: Sized[EdgeParts]) -> Sized[int] | None:
    """The stitches that each size leaves at once on the first row, where that is all that any size shapes."""
    steps = edges.map(lambda parts: [each for part in parts for each in part.profile.steps])
    if all(len(each) == 1 and each[0].row == 1 and each[0].way == "leave" and each[0].stitches > 1 for each in steps):
        return steps.map(lambda each: each[0].stitches)
    return None


def shaping(book: Book, edges: list[Sized[EdgeParts]], first: Sized[int], place: str) -> list[Spans]:
    """What is shaped at some edges: by tables, or for one size in sentences."""
    if not edges:
        return []
    slopes = place == "at-one" and any(name == "shoulder" for each in edges for name, _ in columns_of(each))
    where = [book.sentence("shape-slope-where")] if slopes else []
    if len(book.labels) == 1:
        label = book.labels[0]
        return [*(sentence for each in edges for sentence in edge_sentences(book, each[label], first[label], place)), *where]
    kind = "shape-by-table-both" if place == "at-both" else "shape-by-table"
    return [book.sentence(kind, edges=_names(book, edges)), *where]


def _names(book: Book, edges: list[Sized[EdgeParts]]) -> str:
    """ "armhole and shoulder": what is shaped, once each."""
    names = list(dict.fromkeys(book.words[f"part-{name}"] for each in edges for name, _ in columns_of(each)))
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} {book.words['and']} {names[-1]}"


def _title(book: Book, piece: str, edges: Sized[EdgeParts], which: str) -> str:
    return book.words[f"edge-table-{which}"].format(title=piece, edges=_names(book, [edges]))


def edge_title(book: Book, title: str, edges: Sized[EdgeParts]) -> str:
    """The title of one edge's table."""
    return _title(book, title, edges, "one")


def sloped_shoulders(book: Book, view: PieceView, index: int, colours: list[Spans]) -> Iterator[Block]:
    """An undivided top whose shoulders slope: groups left on the last rows, the neck between them."""
    yield from _told_before(book, view, index, colours)
    first, last = view.section_first_rows(index), view.section_last_rows(index)
    plans: Sized[ShouldersPlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    if plans.values[0].rising:
        yield from rising_blocks(book, view, plans.map(lambda plan: plan), last, view.piece.title)
        yield step("Shoulders:", book.sentence(
            "shoulders", view.piece.key, Row=book.row_word(False), last=last, shoulder=plans.map(lambda p: p.shoulder), neck=plans.map(lambda p: p.neck),
        ))
        return
    edges = plans.map(lambda plan: plan.slope)
    told = shaping(book, [edges], first, "at-both")
    yield step(to_row(book, view, last), *told, count=count_end(book, f"{view.piece.key}.shape", view.stitches(last)))
    if len(book.labels) > 1:
        yield edge_table(book, _title(book, view.piece.title, edges, "both"), edges, first)
    yield step("Shoulders:", book.sentence(
        "shoulders-sloped", view.piece.key, Row=book.row_word(False), last=last, shoulder=plans.map(lambda p: p.shoulder),
        neck=plans.map(lambda p: p.neck), group=plans.map(lambda p: (p.end - p.neck) // 2),
    ))


def has_shaped_top(view: PieceView) -> bool:
    """Whether the piece ends in sloped shoulders, a divided top, a neck edge or a cap."""
    last = view.first.sections[-1]
    if isinstance(last, ProfilePlan):
        return any(part.name in ("neck", "cap") for part in (*last.starting, *last.far))
    return isinstance(last, DividedPlan) or (isinstance(last, ShouldersPlan) and bool(last.rows))


def top_check(book: Book, view: PieceView) -> Spans:
    """The finished length, with what is left to be measured across the top."""
    length, bottom = view.height(view.plans.map(lambda plan: plan.rows)), spoken(view.piece.bottom)
    if view.first.raglan:
        return raglan_end(book, view)
    if "shoulder" not in view.graded.values[0].edges:
        return book.sentence("final-check-cap", view.piece.key, length=length, bottom=bottom)
    shoulder = Mm(view.graded.map(lambda piece: piece.edges["shoulder"].length))
    if not _stepped(view.first.sections[-1]):
        return book.sentence("final-check-shoulders", view.piece.key, length=length, bottom=bottom, width=shoulder)
    return book.sentence(
        "final-check-shoulders-stepped", view.piece.key, length=length, bottom=bottom, width=shoulder,
        n=view.graded.map(lambda piece: piece.edges["shoulder"].stitches),
    )


def _stepped(top: object) -> bool:
    """Whether a shoulder's slope leaves stitches, which its seam finds below the last row; those of a whole top are told before."""
    parts = top.outer if isinstance(top, DividedPlan) else (*top.starting, *top.far) if isinstance(top, ProfilePlan) else ()
    return any(part.name == "shoulder" for part in parts) or (isinstance(top, DividedPlan) and top.sloped > 0)
