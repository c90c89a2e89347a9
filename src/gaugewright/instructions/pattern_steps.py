"""Where a stitch pattern stands in a piece: its repeats, its plain edge stitches, the row it ends with."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gaugewright.grading.model import Row
from gaugewright.grading.plan import DividedPlan
from gaugewright.instructions.nodes import Block, Span, Table, measure_columns, spans_text
from gaugewright.instructions.steps import only, step
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, NO_VALUE, Spans
from gaugewright.sized import Sized


@dataclass(frozen=True, slots=True)
class Stage:
    """From row `row` on: so many repeats, with so many plain stitches at the starting and at the far edge before it.

    `phase` is the pattern's row there, from 0; no repeats: the rows are plain.
    """

    row: int
    phase: int
    repeats: int
    starting: int
    far: int


def has_plain_rows(view: PieceView, index: int) -> bool:
    """Whether plain rows are worked in the fabric of a section, row 1 of the piece apart, which is told by itself."""
    cloth = view.first.sections[index].cloth
    if cloth.pattern is None:
        return True
    rows = (row for graded in view.graded for number, strip in enumerate(graded.strips) for row in strip.rows[number == 0 :])
    return any(row.placed is None and row.fabric == cloth.fabric for row in rows)


def _beginning(book: Book, view: PieceView, index: int) -> Spans:
    """That a section is worked in a stitch pattern, told where its fabric begins."""
    cloth = view.first.sections[index].cloth
    assert cloth.pattern is not None  # asked for patterned sections only
    if index and view.first.sections[index - 1].cloth == cloth:
        return ()
    return book.sentence("pattern-begin" if has_plain_rows(view, index) else "pattern-begin-all", title=cloth.pattern.title)


def pattern_stages(book: Book, view: PieceView, index: int) -> Iterator[Block]:
    """The pattern where it begins; repeats and plain edge stitches of a section, there and wherever they change."""
    if view.first.sections[index].cloth.pattern is None:
        return
    begins = _beginning(book, view, index)
    if isinstance(view.first.sections[index], DividedPlan):
        for number, side in ((1, "first-side"), (2, "second-side")):
            stages = view.graded.map(lambda graded, n=number: _stages(graded.strips[n].rows, len(graded.main.rows)))  # type: ignore[misc]
            yield from _told(book, view, stages, f" ({book.words[side]})", begins)
            begins = ()
        return
    first, last = view.section_first_rows(index), view.section_last_rows(index)
    stages = Sized(view.labels, tuple(
        _stages(view.graded[label].main.rows[first[label] - 1 : last[label]], first[label] - 1) for label in view.labels
    ))
    yield from _told(book, view, stages, "", begins)


def _stages(rows: Sequence[Row], before: int) -> tuple[Stage, ...]:
    """Stages of neighbouring rows; a row that begins a new number of repeats, or is plain again, begins one."""
    found: list[Stage] = []
    for number, row in enumerate(rows, start=before + 1):
        if row.placed is None:
            stage = Stage(number, -1, 0, 0, 0)
        else:
            edges = (row.placed.first, row.placed.last)
            starting, far = edges if row.side == "RS" else edges[::-1]
            stage = Stage(number, row.placed.phase, row.placed.repeats, starting, far)
        if not found or (stage.repeats, stage.phase < 0) != (found[-1].repeats, found[-1].phase < 0):
            found.append(stage)
    return tuple(found)


def _told(book: Book, view: PieceView, stages: "Sized[tuple[Stage, ...]]", side: str, begins: Spans) -> Iterator[Block]:
    """How it `begins`, if it does here; one sentence where a stage without shaping serves, else a table."""
    label = book.words["pattern"] + side + ":"
    plain_only = all(stage.repeats == 0 for one in stages for stage in one)
    if plain_only:
        yield step(label, begins, book.sentence("pattern-none", rows=_rows(book, view)))
    elif all(len([stage for stage in one if stage.repeats]) == 1 for one in stages):
        yield step(label, begins, *_one_stage(book, view, stages))
    else:
        if begins:
            yield step(book.words["pattern"] + ":", begins)
        yield _table(book, view, stages, side)


def _one_stage(book: Book, view: PieceView, stages: "Sized[tuple[Stage, ...]]") -> Iterator[Spans]:
    """Where the pattern begins, with how many repeats between how many plain stitches, and where it ends early."""
    main = stages.map(lambda one: next(stage for stage in one if stage.repeats))
    fact, row_word = f"{view.piece.key}.pattern.{main.values[0].row}", book.row_word(view.in_rounds)
    repeats = main.map(lambda stage: stage.repeats)
    kind = "pattern-stage" if any(number > 1 for number in repeats) else "pattern-stage-one"
    yield book.sentence(kind, fact, Row=row_word, row=main.map(lambda stage: stage.row), n=main.map(lambda stage: stage.phase + 1), repeats=repeats)
    edges: dict[tuple[int, int], list[str]] = {}
    for label, stage in main.items():
        edges.setdefault((stage.starting, stage.far), []).append(label)
    for pair, sizes in edges.items():
        if any(pair):
            yield (*_only(book, tuple(sizes), view), *_edge_stitches(book, view, fact, *pair))
    ended = stages.map(lambda one: one[-1].row if not one[-1].repeats else 0)
    some = tuple(label for label, row in ended.items() if row)
    if some:
        yield (*_only(book, some, view), *book.sentence("pattern-ended", fact, Row=row_word, row=ended.pick(some), rows=_rows(book, view)))


def _edge_stitches(book: Book, view: PieceView, fact: str, starting: int, far: int) -> Spans:
    kind = "alike" if starting == far else "far" if not starting else "starting" if not far else ""
    stitch = book.abbr(view.first.start_cloth.stitch)
    return book.sentence("-".join(word for word in ("pattern-edges", kind) if word), fact, starting=starting, far=far, stitch=stitch)


def _only(book: Book, sizes: tuple[str, ...], view: PieceView) -> Spans:
    """The sizes a sentence is for, where it isn't for all, with the space after them."""
    return (*only(book, sizes), Span(" ")) if len(sizes) < len(view.labels) else ()


def _rows(book: Book, view: PieceView) -> str:
    return book.words["rounds" if view.in_rounds else "rows"]


def _table(book: Book, view: PieceView, stages: "Sized[tuple[Stage, ...]]", side: str) -> Table:
    """Each stage's row, pattern row, repeats and edge stitches, a column a size."""
    lines: list[tuple[str, ...]] = []
    for number in range(max(len(one) for one in stages)):
        ones = [one[number] if number < len(one) else None for one in stages]
        row_word = book.words["pattern-from"].format(Row=book.row_word(view.in_rounds))
        lines.append((row_word, *(NO_VALUE if s is None else str(s.row) for s in ones)))
        lines.append((book.words["pattern-row-of"], *(NO_VALUE if s is None or s.phase < 0 else str(s.phase + 1) for s in ones)))
        lines.append((book.words["pattern-repeats"], *(NO_VALUE if s is None else str(s.repeats) for s in ones)))
        placed = [s for s in ones if s is not None and s.phase >= 0]
        if all(s.starting == s.far for s in placed):
            lines.append((book.words["pattern-plain-both"], *(_plain(s, s.starting if s else 0) for s in ones)))
            continue
        for name in ("starting", "far"):
            lines.append((book.words["pattern-plain-at"].format(edge=_edge(view, name)), *(_plain(s, getattr(s, name, 0)) for s in ones)))
    caption = book.words["pattern-table"].format(title=view.piece.title) + side
    note = spans_text(book.front_text("pattern-table-note"))
    return Table(caption, ("", *view.labels), tuple(lines), measure_columns(len(view.labels)), note=note)


def _edge(view: PieceView, side: str) -> str:
    names = [edge.name for edge in view.piece.edges if edge.side == side]
    return (names[0] if names else side).replace("_", " ")


def _plain(stage: Stage | None, count: int) -> str:
    return NO_VALUE if stage is None or stage.phase < 0 else str(count)
