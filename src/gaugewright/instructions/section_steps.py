"""Sections in words: even stretches, tapers, spread rounds, shoulders."""

from collections.abc import Iterator, Mapping

from gaugewright.design.model import Crown
from gaugewright.grading.model import EdgeStart
from gaugewright.grading.plan import (
    DividedPlan,
    EvenPlan,
    MotifPlan,
    MitredPlan,
    OpenedPlan,
    ProfilePlan,
    RaglanPlan,
    RoundYokePlan,
    ShouldersPlan,
    SlitPlan,
    SpreadPlan,
    TaperPlan,
    TrianglePlan,
    WedgePlan,
)
from gaugewright.instructions.align import change_after, changes_within, stretches
from gaugewright.instructions.buttonhole_words import buttonhole_blocks
from gaugewright.instructions.cloth_words import even_row
from gaugewright.instructions.corner_words import corner_blocks, corner_table
from gaugewright.instructions.crown_words import crown_blocks
from gaugewright.instructions.fabric_words import hook_text
from gaugewright.instructions.join_words import is_joined, joined_blocks
from gaugewright.instructions.motif_words import motif_blocks
from gaugewright.instructions.nodes import Block
from gaugewright.instructions.pattern_steps import has_plain_rows, pattern_stages
from gaugewright.instructions.raglan_words import raglan_blocks
from gaugewright.instructions.round_charts import charted, round_charts
from gaugewright.instructions.round_yoke_words import round_yoke_blocks
from gaugewright.instructions.shape_words import profile_blocks, sloped_shoulders
from gaugewright.instructions.side_words import divided_blocks
from gaugewright.instructions.opening_steps import mark_rows, mark_step
from gaugewright.instructions.slit_words import slit_blocks
from gaugewright.instructions.spread_words import in_colour, spread_blocks
from gaugewright.instructions.steps import change_edges, change_sentences, count_end, only, spoken, step, tail_length, to_row
from gaugewright.instructions.taper_words import taper_blocks
from gaugewright.instructions.triangle_words import triangle_blocks
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Mm, Spans
from gaugewright.instructions.wedge_words import wedge_blocks
from gaugewright.sized import Sized

CHECK_ROW = 4
"""A width is checked once four rows are worked: earlier the edge still rolls (common practice, no source)."""


WIDTH_SLACK = 2
"""Per cent by which a width may be off before the gauge is (common practice, no source)."""

NARROW = 125.0
"""Two in a hundred of a narrower width, mm, are less than a tape on cloth can tell."""


def section_blocks(book: Book, view: PieceView, index: int, names: dict[str, str], titles: Mapping[str, str]) -> Iterator[Block]:
    """The blocks of one section, in order of working. `names` are those of yarns, `titles` those of pieces."""
    section = view.first.sections[index]
    if is_joined(view):
        yield from joined_blocks(book, view, titles)
        return
    if isinstance(section, ShouldersPlan) and not section.rows:
        yield _shoulders(book, view, index)
        return
    if isinstance(section, WedgePlan):
        yield from wedge_blocks(book, view, index)
        return
    if isinstance(section, OpenedPlan):
        return  # told where the piece ends
    yield from _new_cloth(book, view, index)
    if isinstance(section, MitredPlan):
        yield from corner_table(book, view, index)
    if index == 0:
        yield from buttonhole_blocks(book, view, titles)
    if not isinstance(section, EvenPlan):
        yield from _marks_up_to(book, view, view.section_first_rows(index), view.section_last_rows(index))
    yield from pattern_stages(book, view, index)
    yield from _worked(book, view, index, names)


def _worked(book: Book, view: PieceView, index: int, names: dict[str, str]) -> Iterator[Block]:
    """How a section's rows are worked, by its kind."""
    section, colours = view.first.sections[index], _colour_sentences(book, view, index, names)
    match section:
        case EvenPlan():
            yield from _even(book, view, index, names)
        case MitredPlan():
            yield from corner_blocks(book, view, index, colours)
        case TaperPlan():
            yield from taper_blocks(book, view, index, colours)
        case SlitPlan():
            yield from slit_blocks(book, view, index, colours)
        case MotifPlan():
            yield from (step("Colour:", sentence) for sentence in colours if sentence)
            yield from motif_blocks(book, view, names)
        case TrianglePlan():
            yield from triangle_blocks(book, view, index, colours)
        case RaglanPlan():
            yield from raglan_blocks(book, view, index, colours)
        case RoundYokePlan():
            yield from round_yoke_blocks(book, view, index, colours)
        case ProfilePlan():
            yield from profile_blocks(book, view, index, colours)
        case DividedPlan():
            yield from divided_blocks(book, view, index, colours, names)
        case ShouldersPlan():
            yield from sloped_shoulders(book, view, index, colours)
        case SpreadPlan() if isinstance(view.piece.sections[index], Crown):
            charts = round_charts(book, view) if index == 0 else ()
            yield from charted(crown_blocks(book, view, index, names), charts)
            yield from (step("Colour:", sentence) for sentence in colours if sentence)
        case SpreadPlan():
            yield from spread_blocks(book, view, index, names)
            yield from (step("Colour:", sentence) for sentence in colours if sentence)
        case _:
            raise TypeError(f"no words for the section {section!r}")


def _marks_up_to(book: Book, view: PieceView, first: Sized[int], last: Sized[int]) -> Iterator[Block]:
    """Levels that some size reaches within these rows and none has reached before them."""
    for level, rows in mark_rows(view).items():
        reached = min(rows.values)
        if min(first.values) <= reached <= max(last.values):
            yield mark_step(book, view, level, rows)


def plain_label(book: Book, view: PieceView, index: int) -> str:
    """ "Plain row", with the fabric's name where the piece has several."""
    cloths = dict.fromkeys(section.cloth for section in view.first.sections)
    kind = "plain-rnd" if view.in_rounds else "plain-row"
    if len(cloths) == 1:
        return f"{book.words[kind]}:"
    return book.words[f"{kind}-of"].format(name=spoken(view.first.sections[index].cloth.fabric)) + ":"


def _new_cloth(book: Book, view: PieceView, index: int) -> Iterator[Block]:
    """The plain row, told once for each fabric; before it the hook, where that changes."""
    cloth = view.first.sections[index].cloth
    before = view.first.sections[index - 1].cloth if index else None
    if before == cloth or isinstance(view.first.sections[index], MotifPlan):
        return  # no round of a motif is plain
    new_tool = view.fabrics[cloth.fabric].tool
    if before is not None and new_tool is not None and new_tool != view.fabrics[before.fabric].tool:
        yield step("Hook:", book.sentence("change-tool", tool=hook_text(new_tool)))
    if has_plain_rows(view, index):
        yield step(plain_label(book, view, index), even_row(book, cloth, view.first.worked))


def _even(book: Book, view: PieceView, index: int, names: dict[str, str]) -> Iterator[Block]:
    parts = stretches(view, index)
    if index == 0 and view.piece.start.kind != "divide":
        yield from width_check(book, view)
    marked: set[str] = set()
    for number, stretch in enumerate(parts):
        changes = change_after(view, stretch.last)
        worked = tuple(label for label, last in stretch.last.items() if last > 1)
        for level, rows in mark_rows(view).items():
            if level not in marked and min(stretch.first.values) <= min(rows.values) <= max(stretch.last.values):
                marked.add(level)
                yield mark_step(book, view, level, rows)
        if not worked:
            for sentence in change_sentences(book, view, changes, names, stretch.last.labels):
                yield step("Colour:", sentence)
            continue
        last = stretch.last.pick(worked)
        fact = f"{view.piece.key}.{index}.{number}"
        kind = ("work-pattern" if view.first.sections[index].cloth.pattern else "work-even-rounds" if view.in_rounds else "work-even") + ("-planned" if view.planned else in_colour(view))
        sentence = book.sentence(kind, fact, colour=names.get(stretch.colour, ""), length=view.height(last), bottom=spoken(view.piece.bottom))
        told = change_sentences(book, view, changes, names, worked)
        count = count_end(book, fact, view.stitches(last)) if stretch is parts[-1] else ()
        yield step(to_row(book, view, last), only(book, worked), sentence, *told, count=count)


def width_check(book: Book, view: PieceView) -> Iterator[Block]:
    """The width to expect early on, with how much it may differ; none of what is too narrow to tell by."""
    ends = view.section_last_rows(0)
    if isinstance(view.first.start, EdgeStart) or min(ends.values) < CHECK_ROW:
        return
    rows = ends.map(lambda _end: CHECK_ROW)
    width = view.width(rows)
    if min(width.values) < NARROW:
        return
    if view.in_rounds:
        half = Mm(width.values.map(lambda mm: mm / 2))
        sentence = book.sentence("girth-check", view.piece.key, Row=book.row_word(True), row=CHECK_ROW, width=width, half=half)
    else:
        sentence = book.sentence("width-check", view.piece.key, Row=book.row_word(False), row=CHECK_ROW, width=width, slack=WIDTH_SLACK, gauge=book.word("gauge"))
    yield step("Check:", sentence)


def _colour_sentences(book: Book, view: PieceView, index: int, names: dict[str, str]) -> list[Spans]:
    """Colours that change inside a shaped section, and at its end."""
    if isinstance(view.first.sections[index], EvenPlan):
        return []
    found: list[Spans] = []
    kind = "change-colour-on-the-way-at-join" if view.first.worked in ("joined rounds", "turned rounds") else "change-colour-on-the-way"
    for change in changes_within(view, index):
        found.append(only(book, change.after.labels))
        found.append(book.sentence(
            kind, f"{view.piece.key}.change.{change.colour}", colour=names[change.colour], slst=book.abbr("sl st"),
            Row=book.row_word(view.in_rounds), last=change.after, tail=tail_length(book, "weave in"),
        ))
        found += change_edges(book, view, change)
    ends = view.section_last_rows(index)
    return found + change_sentences(book, view, change_after(view, ends), names, ends.labels)


def _shoulders(book: Book, view: PieceView, index: int) -> Block:
    plans = view.plans.map(lambda plan: plan.sections[index])
    return step("Shoulders:", book.sentence(
        "shoulders", view.piece.key, Row=book.row_word(view.in_rounds), last=view.section_last_rows(index),
        shoulder=plans.map(lambda p: p.shoulder), neck=plans.map(lambda p: p.neck),  # type: ignore[union-attr]
    ))
