"""A piece's chapter: what it is, its schematic with the key, its steps."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby, pairwise

from gaugewright.design.size_list import ONE_SIZE
from gaugewright.drawings.model import Schematic
from gaugewright.grading.hanging import grows
from gaugewright.grading.model import EdgeStart
from gaugewright.grading.plan import TaperPlan
from gaugewright.instructions.colour_words import colour_steps
from gaugewright.instructions.crown_words import close_sentence, is_closed
from gaugewright.instructions.dividing_words import is_yoke, yoke_end
from gaugewright.instructions.fabric_words import fabric_words
from gaugewright.instructions.join_words import joined_end, sewn_on
from gaugewright.instructions.motif_words import is_motif
from gaugewright.instructions.nodes import Block, Figure, Heading, Paragraph, Span, Table, measure_columns, plain, spans_text
from gaugewright.instructions.opened_words import is_opened, opened_end
from gaugewright.instructions.opening_steps import opening_steps
from gaugewright.instructions.rim_words import is_round_rim, rim_end
from gaugewright.instructions.section_steps import section_blocks
from gaugewright.instructions.round_charts import charted, round_charts
from gaugewright.instructions.shape_words import has_shaped_top, top_check
from gaugewright.instructions.slit_words import is_round_opening, pair_sentences
from gaugewright.instructions.steps import edge_word, spoken, step, tail_length
from gaugewright.instructions.triangle_words import is_triangle, triangle_check
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Mm, Spans, listed, spaced
from gaugewright.trade.stitches import stitch_names
from gaugewright.units import cm_text, inches_text


@dataclass(frozen=True, slots=True)
class Names:
    """Printed names: of yarns by key, of pieces by key."""

    yarns: Mapping[str, str]
    pieces: Mapping[str, str]


def piece_chapter(book: Book, view: PieceView, names: Names, schematic: Schematic, letters: tuple[str, ...], drawn: str) -> Iterator[Block]:
    """All blocks of one piece, in reading order; `letters` are the seams to sew before it is begun."""
    yield Heading(2, view.piece.title)
    yield Paragraph(spaced(*_about(book, view, names, letters)), "body")
    yield from schematic_blocks(book, view, schematic, drawn)
    for note in view.piece.notes:
        yield Paragraph(plain(note), "note")
    names = Names(_own_colours(book, view, names.yarns), names.pieces)
    yield from colour_steps(book, view, names.yarns, names.pieces)
    yield from opening_steps(book, view, dict(names.yarns), dict(names.pieces))
    for index in range(len(view.first.sections)):
        yield from section_blocks(book, view, index, dict(names.yarns), names.pieces)
    ending = joined_end(book, view) if view.piece.start.joined else _ending(book, view)
    yield from charted(ending, round_charts(book, view) if is_motif(view) else ())
    yield from sewn_on(book, view, names.pieces)


def _own_colours(book: Book, view: PieceView, yarns: Mapping[str, str]) -> Mapping[str, str]:
    """The yarns' names; where motifs take turns at several, the first one's stands for the one whose turn it is."""
    grid = view.piece.grid
    if grid is None or len(grid.turns) < 2:
        return yarns
    return {**yarns, view.first.start_colour: book.words["own-colour"]}


def _about(book: Book, view: PieceView, names: Names, letters: tuple[str, ...]) -> list[Spans]:
    make = view.piece.make
    sentences = [_made(book, view, names.yarns)]
    begun = "sewn" if view.piece.start.sewn else "joined" if view.piece.start.joined else view.piece.start.kind
    kind = _rounds_kind(view) if view.in_rounds else _ROWS_KIND.get(begun, "worked-rows")
    fabrics = [fabric for fabric, _ in groupby(section.cloth.fabric for section in view.first.sections)]
    words = fabric_words(book, view.fabrics[fabrics[0]])
    for index, other in enumerate(fabrics[1:], start=1):
        then = "fabric-again" if other in fabrics[:index] else "fabric-then"
        words = book.sentence(then, first=words, second=fabric_words(book, view.fabrics[other]))
    one_edge = "-one" if kind in ("worked-pick-up", "worked-pick-up-rounds") and len(view.piece.start.edges) == 1 else ""
    sentences.append(book.sentence(kind + one_edge, bottom=spoken(view.piece.bottom), fabric=words))
    sentences += _spreading(book, view)
    if view.piece.start.ring and make == 2:
        sentences.append(book.sentence("pick-up-each-opening" if is_round_opening(view) else "pick-up-each-own" if view.own else "pick-up-each-side"))
    sentences += pair_sentences(book, view, names.pieces.get(view.piece.like, ""))
    if view.piece.mirrored and not view.in_rounds:
        sentences += _pair(book, view, names.pieces[view.piece.like], view.piece.title)
    starting = {edge.side: edge.name for edge in view.piece.edges}
    if make == 1 and not view.in_rounds and not isinstance(view.first.start, EdgeStart) and starting.get("starting") != starting.get("far"):
        first = next(edge.name for edge in view.piece.edges if edge.side == "starting")
        sentences.append(book.sentence("starting-edge", edge=edge_word(book, first)))
    if letters:
        seams = book.sentence("seam-one" if len(letters) == 1 else "seam-many", letters=listed(book, letters))
        sentences.append(book.sentence("pick-up-after", seams=seams))
    return sentences


def _made(book: Book, view: PieceView, yarns: Mapping[str, str]) -> Spans:
    """How many are made; of motifs that begin in several colours, how many in each."""
    made, layouts = view.made, view.plans.map(lambda plan: plan.layout)
    if set(made.values) == {1}:
        return book.sentence("make-one")
    turns = () if view.piece.grid is None else tuple(dict.fromkeys(view.piece.grid.turns))
    if len(turns) < 2:
        return book.sentence("make-many", view.piece.key, make=made)
    begun = [
        book.part("begun-in", f"{view.piece.key}.{turn}", colour=yarns[turn], n=layouts.map(lambda one, turn=turn: one.by_colour().get(turn, 0) if one else 0))  # type: ignore[misc]
        for turn in turns
    ]
    joined = tuple(span for index, part in enumerate(begun) for span in (*((Span(", "),) if index else ()), *part))
    return book.sentence("make-turns", view.piece.key, make=made, begun=joined)


def _spreading(book: Book, view: PieceView) -> list[Spans]:
    """The shape that rows make which gain at both ends all the way from a point: a triangle, or a crescent where
    they gain less and less."""
    sections = [section for section in view.first.sections if isinstance(section, TaperPlan)]
    if len(sections) < len(view.first.sections) or not all(s.sign > 0 and s.edges == "both" and s.in_one for s in sections):
        return []
    rates = [sum(section.steps) / section.rows for section in sections]
    falling = all(low < high for high, low in pairwise(rates))
    kind = "shape-point" if len(rates) == 1 else "shape-crescent" if falling else ""
    return [book.sentence(kind, view.piece.key, bottom=spoken(view.piece.bottom), top=spoken(view.piece.top))] if kind else []


_ROWS_KIND = {"sewn": "worked-sewn", "joined": "worked-joined", "pick up": "worked-pick-up", "middle": "worked-middle", "go on": "worked-go-on"}


def _pair(book: Book, view: PieceView, first: str, second: str) -> list[Spans]:
    """How two alike become a pair: which lies where, and that the faces then up are the right sides."""
    colours = len({band.colour for plan in view.plans for band in plan.bands}) > 1
    alike = book.sentence("reversible-colours" if colours else "reversible", other=first)
    if book.words["right"] in first.lower():
        return [alike, book.sentence("pair", left=first, right=second)]
    if book.words["left"] in first.lower():
        return [alike, book.sentence("pair", left=second, right=first)]
    return [alike, book.sentence("pair-plain", first=first, second=second)]


def schematic_blocks(book: Book, view: PieceView, schematic: Schematic, drawn: str) -> Iterator[Block]:
    """The drawing, and its letters in both units."""
    kind = ("rim-caption" if is_round_rim(view) else "schematic-caption" if view.sewn else "schematic-worked") + ("-one" if drawn == ONE_SIZE or schematic.alike else "")
    caption = spans_text(book.front_text(kind, title=view.piece.title, size=drawn))
    yield Figure(schematic.drawing, schematic.drawing.description, caption, view.piece.key)
    texts = (("cm", cm_text), ("in", inches_text)) if book.units == "cm" else (("in", inches_text), ("cm", cm_text))
    caption = spans_text(book.front_text("key-caption", title=view.piece.title))
    measure = book.front["measure"]
    note = book.front["hung-drawing"] if grows(view.graded.values[0], view.fabrics) else ""
    if all(len({text(v) for v in values}) == 1 for _, _, values in schematic.key for _, text in texts):
        alike = tuple((f"{letter} {name}", *(text(values[0]) for _, text in texts)) for letter, name, values in schematic.key)
        yield Table(caption, (measure, *(unit for unit, _ in texts)), alike, measure_columns(2), note=note)
        return
    rows = tuple(
        (f"{letter} {name}, {unit}", *(text(v) for v in values)) for letter, name, values in schematic.key for unit, text in texts
    )
    yield Table(caption, (measure, *book.labels), rows, measure_columns(len(book.labels)), note=note)


def _rounds_kind(view: PieceView) -> str:
    if view.piece.start.kind == "centre":
        return "worked-motif" if is_motif(view) else "worked-centre"
    if view.piece.start.ring:
        return "worked-rim" if is_round_rim(view) else "worked-pick-up-rounds"
    if is_yoke(view) or view.piece.start.kind == "divide":
        return "worked-down"
    return "worked-closed" if is_closed(view) else "worked-rounds"


def _fastened(book: Book, view: PieceView) -> list[Spans]:
    level = [_levelled(book, view)] if view.first.worked == "spiral rounds" else []
    return [*level, book.sentence("fasten-off-weave", tail=tail_length(book, "weave in"))]


def _levelled(book: Book, view: PieceView) -> Spans:
    """The step at a spiral's end goes down in ever lower stitches over the beginning of its last round, which lie
    on top of it and count as none of its stitches (common practice).
    """
    last = next(section for section in reversed(view.first.sections) if section.rows).cloth.stitch
    names = stitch_names()
    lower = names[1 : names.index(last)][::-1]
    if not lower:
        return book.sentence("spiral-end", slst=book.abbr("sl st"))
    return book.sentence("spiral-end-tall", steps=listed(book, [*map(book.abbr, lower), book.abbr("sl st")]), n=len(lower) + 1)


def _round_ending(book: Book, view: PieceView) -> Iterator[Block]:
    """The end of what begins at a closed centre, or is drawn shut."""
    closed, centre = is_closed(view), view.piece.start.kind == "centre"
    first, last = view.plans.map(lambda _plan: 1), view.plans.map(lambda plan: plan.rows)
    ending = [close_sentence(book, view)] if closed else [] if is_opened(view) else _fastened(book, view)
    kind = "final-check-ball" if centre and closed else "final-check-centre" if centre else "final-check-closed"
    widest = Mm(view.graded.map(lambda graded: graded.worked["widest"]))
    width = widest if centre and closed else view.width(last if centre else first)
    ends = {"bottom": spoken(view.piece.bottom), "top": spoken(view.piece.top)}
    check = book.sentence(kind, view.piece.key, width=width, length=view.height(last), **ends)
    if is_motif(view):
        yield step("End:", *ending)
        return
    if is_opened(view):
        yield opened_end(book, view)
    yield step("End:" if ending else "Check:", *ending, check)


def _picked_check(view: PieceView) -> str:
    """A band is told by its depth alone; what is half as deep as it is long, such as a hood, by its width too."""
    graded = view.graded
    deep = any(2 * one.worked["length"] > one.worked["width"] for one in graded)
    return "final-check-picked" if deep else "final-check-band"


def _ending(book: Book, view: PieceView) -> Iterator[Block]:
    last = view.plans.map(lambda plan: plan.rows)
    width, length = view.width(last), view.height(last)
    if view.in_rounds and (is_closed(view) or view.piece.start.kind == "centre"):
        yield from _round_ending(book, view)
        return
    ends = {"top": spoken(view.piece.top)} if view.in_rounds else {}
    kind = "final-check-down" if is_yoke(view) or view.piece.start.kind == "divide" else "final-check-ring" if view.piece.start.ring else "final-check-tube" if view.in_rounds else _picked_check(view) if isinstance(view.first.start, EdgeStart) else "final-check"
    if kind in ("final-check-picked", "final-check-ring") and len(view.piece.start.edges) == 1:
        kind += "-one"
    if is_triangle(view):
        yield step("End:", *_fastened(book, view), triangle_check(book, view))
        return
    if has_shaped_top(view):
        yield step("End:", *_fastened(book, view), top_check(book, view))
        return
    check = book.sentence(kind, view.piece.key, width=width, length=length, bottom=spoken(view.piece.bottom), **ends)
    if is_yoke(view) or is_opened(view):
        yield yoke_end(book, view) if is_yoke(view) else opened_end(book, view)
        yield step("Check:", check)
    else:
        yield step("End:", *_fastened(book, view), check, *rim_end(book, view))
