"""Sections in words: even stretches, tapers, spread rounds, shoulders."""

from collections.abc import Iterator

from gaugewright.grading.model import EdgeStart
from gaugewright.grading.plan import EvenPlan, ShouldersPlan, SpreadPlan, TaperPlan
from gaugewright.instructions.align import change_after, changes_within, stretches
from gaugewright.instructions.cloth_words import even_row
from gaugewright.instructions.nodes import Block, Paragraph
from gaugewright.instructions.opening_steps import mark_steps
from gaugewright.instructions.spread_words import spread_blocks
from gaugewright.instructions.steps import change_sentences, count_end, only, spoken, step, tail_length, to_row
from gaugewright.instructions.taper_words import taper_blocks
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Mm, Spans
from gaugewright.sized import Sized
from gaugewright.trade.hooks import hook_label

CHECK_ROW = 4
"""A width is checked once four rows are worked: earlier the edge still rolls (common practice, no source)."""


def section_blocks(book: Book, view: PieceView, index: int, names: dict[str, str]) -> Iterator[Block]:
    """The blocks of one section, in order of working."""
    section = view.first.sections[index]
    if not isinstance(section, ShouldersPlan):
        yield from _new_cloth(book, view, index)
    if index == 0:
        yield from mark_steps(book, view)
    match section:
        case EvenPlan():
            yield from _even(book, view, index, names)
        case TaperPlan():
            yield from taper_blocks(book, view, index, _colour_sentences(book, view, index, names))
        case SpreadPlan():
            yield from spread_blocks(book, view, index)
            for sentence in _colour_sentences(book, view, index, names):
                yield step("Colour:", sentence)
        case ShouldersPlan():
            yield _shoulders(book, view, index)
        case _:
            raise TypeError(f"no words for the section {section!r}")


def _new_cloth(book: Book, view: PieceView, index: int) -> Iterator[Block]:
    """The even row, told once for each fabric; with the hook, where that changes."""
    cloth = view.first.sections[index].cloth
    before = view.first.sections[index - 1].cloth if index else None
    if before == cloth:
        return
    sentences = []
    new_tool = view.fabrics[cloth.fabric].tool
    if before is not None and new_tool is not None and new_tool != view.fabrics[before.fabric].tool:
        sentences.append(book.sentence("change-tool", tool=hook_label(new_tool)))
    sentences.append(even_row(book, cloth, view.first.worked))
    yield step("Even rnd:" if view.in_rounds else "Even row:", *sentences)


def _even(book: Book, view: PieceView, index: int, names: dict[str, str]) -> Iterator[Block]:
    parts = stretches(view, index)
    for number, stretch in enumerate(parts):
        changes = change_after(view, stretch.last)
        worked = tuple(label for label, last in stretch.last.items() if last > 1)
        if not worked:
            for sentence in change_sentences(book, view, changes, names, stretch.last.labels):
                yield step("Colour:", sentence)
            continue
        last = stretch.last.pick(worked)
        fact = f"{view.piece.key}.{index}.{number}"
        kind = ("work-even-rounds" if view.in_rounds else "work-even") + ("-colour" if len(view.first.bands) > 1 else "")
        sentence = book.sentence(kind, fact, colour=names[stretch.colour], length=view.height(last), bottom=spoken(view.piece.bottom))
        told = change_sentences(book, view, changes, names, worked)
        count = count_end(book, fact, view.stitches(last)) if stretch is parts[-1] else ()
        yield step(to_row(book, view, last), only(book, worked), sentence, *told, count=count)
        if index == 0 and number == 0:
            yield from width_check(book, view, stretch.last)


def width_check(book: Book, view: PieceView, last: Sized[int]) -> Iterator[Block]:
    """The width to expect early on, with how much it may differ."""
    picked_up = isinstance(view.first.start, EdgeStart)
    if picked_up or min(last.values) < CHECK_ROW or len(last) < len(view.labels):
        return
    rows = last.map(lambda _last: CHECK_ROW)
    width = view.width(rows)
    if view.in_rounds:
        half = Mm(width.values.map(lambda mm: mm / 2))
        sentence = book.sentence("girth-check", view.piece.key, Row=book.row_word(True), row=CHECK_ROW, width=width, half=half)
    else:
        gauge = view.fabrics[view.first.sections[0].cloth.fabric].gauge
        slack = Mm(rows.map(lambda _row: gauge.stitch_width))
        sentence = book.sentence("width-check", view.piece.key, Row=book.row_word(False), row=CHECK_ROW, width=width, slack=slack)
    yield Paragraph(sentence, "note", "Check:")


def _colour_sentences(book: Book, view: PieceView, index: int, names: dict[str, str]) -> list[Spans]:
    """Colours that change inside a shaped section, and at its end."""
    found: list[Spans] = []
    for change in changes_within(view, index):
        found.append(only(book, change.after.labels))
        found.append(book.sentence(
            "change-colour-on-the-way", f"{view.piece.key}.change.{change.colour}", colour=names[change.colour],
            Row=book.row_word(view.in_rounds), last=change.after, tail=tail_length(book, "weave in"),
        ))
    ends = view.section_last_rows(index)
    return found + change_sentences(book, view, change_after(view, ends), names, ends.labels)


def _shoulders(book: Book, view: PieceView, index: int) -> Block:
    plans = view.plans.map(lambda plan: plan.sections[index])
    return step("Shoulders:", book.sentence(
        "shoulders", view.piece.key, Row=book.row_word(view.in_rounds), last=view.section_last_rows(index),
        shoulder=plans.map(lambda p: p.shoulder), neck=plans.map(lambda p: p.neck),  # type: ignore[union-attr]
    ))
