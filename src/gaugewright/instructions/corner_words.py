"""Corners of a band in words: where stitches are marked, what is worked there, and on which rows."""

from collections.abc import Iterator, Mapping

from gaugewright.grading.model import EdgeStart
from gaugewright.grading.plan import Corner, MitredPlan, PiecePlan
from gaugewright.grading.profile import EdgeStep
from gaugewright.instructions.edge_tables import ranges, steps_text
from gaugewright.instructions.nodes import Align, Block, Paragraph, Table
from gaugewright.instructions.rim_words import corner_markers, is_round_rim
from gaugewright.instructions.steps import count_end, edge_word, spoken, step, to_row
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Spans, listed
from gaugewright.sized import Sized
from gaugewright.vocabulary import CornerKind


def marker_step(book: Book, view: PieceView, titles: Mapping[str, str]) -> Iterator[Paragraph]:
    """Where the corners' stitches are marked in the pick-up row; nothing where a band has none."""
    corners = view.first.corners
    sentences = corner_markers(book, view) if is_round_rim(view) else [_marked(book, view, index, titles) for index, corner in enumerate(corners) if not _told_with_another(corners, index)]
    if sentences:
        yield step("Markers:", *sentences)


def _told_with_another(corners: tuple[Corner, ...], index: int) -> bool:
    """Whether the corner is the second of two on one edge."""
    site = corners[index].site
    return any(other.site.kind == site.kind and other.site.edge == site.edge for other in corners[:index])


def _marked(book: Book, view: PieceView, index: int, titles: Mapping[str, str]) -> Spans:
    site = view.first.corners[index].site
    key, edge = view.piece.start.edges[site.edge]
    kind = f"marker-{site.kind.replace(' ', '-')}"
    return book.sentence(
        kind, f"{view.piece.key}.corner{index}", n=view.plans.map(lambda plan: _from_end(plan, index)),
        edge=spoken(edge) if site.kind in ("hem", "tip", "back neck") else edge_word(book, edge), piece=titles[key],
    )


def _from_end(plan: PiecePlan, index: int) -> int:
    """The marked stitch, counted along its edge from the end it is nearer to."""
    assert isinstance(plan.start, EdgeStart)  # only what is picked up has corners
    corner, ups = plan.corners[index], plan.start.pick_ups
    within = corner.at - sum(up.stitches for up in ups[: corner.site.edge])
    return ups[corner.site.edge].stitches + 1 - within if corner.site.second else within


def corner_blocks(book: Book, view: PieceView, index: int, colours: list[Spans]) -> Iterator[Block]:
    """The rows of a section, with the corners on those that the table gives."""
    last, shaped = view.section_last_rows(index), _is_shaped(_plans(view, index))
    if colours:
        yield step("Colour:", *colours)
    fact = f"{view.piece.key}.{index}.corners"
    kind = ("corners-by-table-rounds" if view.in_rounds else "corners-by-table") if shaped else "work-even-rounds" if view.in_rounds else "work-even"
    sentence = book.sentence(kind, fact, length=view.height(last), bottom=spoken(view.piece.bottom))
    yield step(to_row(book, view, last), sentence, count=count_end(book, fact, view.stitches(last)))


def corner_table(book: Book, view: PieceView, index: int) -> Iterator[Block]:
    """How stitches are lost and gained at a marked stitch, and the table of the rows on which they are."""
    plans = _plans(view, index)
    if _is_shaped(plans):
        yield from _ways(book, view, plans, index)
        yield _table(book, view, plans, view.section_first_rows(index))


def _plans(view: PieceView, index: int) -> Sized[MitredPlan]:
    return view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]


def _is_shaped(plans: Sized[MitredPlan]) -> bool:
    return any(_steps(corner, plan) for plan in plans for corner in plan.corners)


def _steps(corner: Corner, plan: MitredPlan) -> list[EdgeStep]:
    """A corner's changes within a section, its rows counted from 1."""
    rows = range(1, plan.rows + 1)
    changes = [(row, corner.changes[plan.before + row - 2]) for row in rows if plan.before + row > 1]
    return [EdgeStep(row, abs(change), "decrease") for row, change in changes if change]


def _ways(book: Book, view: PieceView, plans: Sized[MitredPlan], index: int) -> Iterator[Block]:
    """What losing or gaining so many stitches at a marked stitch is, each way once."""
    if index:
        return
    changes = sorted({change for plan in plans for corner in plan.corners for change in corner.changes if change}, key=abs)
    stitch = book.abbr(plans.values[0].cloth.stitch)
    for lost, label in ((True, "Dec at a marker:"), (False, "Inc at a marker:")):
        own = [abs(change) for change in changes if (change < 0) == lost]
        told = [_way(book, stitch, change, lost) for change in own]
        if told:
            yield step(label, *told, book.sentence("corner-marker", rows=book.words["rounds" if view.in_rounds else "rows"]))


def _way(book: Book, stitch: str, change: int, lost: bool) -> Spans:
    if not lost:
        return book.sentence("corner-gain", stitch=stitch, n=change, into=change + 1)
    pairs = change // 2 - 1
    kind = "corner-lose" + ("" if not pairs else "-four" if pairs == 1 else "-more")
    return book.sentence(kind, stitch=stitch, n=change, pairs=pairs, reach=1 + 2 * pairs)


def _table(book: Book, view: PieceView, plans: Sized[MitredPlan], first: Sized[int]) -> Table:
    """For each size the rows on which each kind of corner changes, and the stitches after each row."""
    row_word, columns = book.row_word(view.in_rounds), _columns(plans)
    lines = []
    for label, plan in plans.items():
        cells = [steps_text(book, _steps(_of(plan, kind)[number], plan), first[label], row_word) or book.words["no-value"] for kind, number in columns]
        lines.append((label, *cells, ", ".join(str(plan.after(row)) for row in _counted(plan))))
    heads = [_head(book, kind, number, columns, plans) for kind, number in columns]
    counted = sorted({row for plan in plans for row in _counted(plan)})
    after = book.words["sts-after-row" if len(counted) == 1 else "sts-after-rows"].format(Row=row_word, rows=listed(book, ranges(counted, book.words["to"])))
    left: Align = "left"
    caption = book.words["corner-table"].format(title=view.piece.title)
    return Table(caption, (book.words["size"], *heads, after), tuple(lines), tuple(left for _ in range(len(heads) + 2)))


def _counted(plan: MitredPlan) -> range:
    """The section's rows that are counted: all but the pick-up row, whose count is told."""
    return range(max(2, plan.before + 1), plan.before + plan.rows + 1)


def _of(plan: MitredPlan, kind: CornerKind) -> list[Corner]:
    return [corner for corner in plan.corners if corner.site.kind == kind]


def _columns(plans: Sized[MitredPlan]) -> list[tuple[CornerKind, int]]:
    """A column for each kind of corner; one for each corner where those of a kind aren't alike in every size."""
    found = []
    for kind in dict.fromkeys(corner.site.kind for corner in plans.values[0].corners):
        alike = all(corner.changes == _of(plan, kind)[0].changes for plan in plans for corner in _of(plan, kind))
        found += [(kind, number) for number in range(1 if alike else len(_of(plans.values[0], kind)))]
    return found


def _head(book: Book, kind: CornerKind, number: int, columns: list[tuple[CornerKind, int]], plans: Sized[MitredPlan]) -> str:
    lost = any(change < 0 for plan in plans for corner in _of(plan, kind) for change in corner.changes)
    several = len(_of(plans.values[0], kind)) > 1
    numbered = sum(other == kind for other, _ in columns) > 1
    how = "corner-numbered" if numbered else "corner-each" if several else "corner-one"
    called = "outer" if kind == "hem" and len(_of(plans.values[0], kind)) == 4 else kind.replace(" ", "-")
    name = book.words[f"corner-{called}"]
    return book.words[how].format(corner=name, number=number + 1, way=book.words["lose" if lost else "gain"])
