"""How a piece begins: foundation chain or ring with its first row, or stitches picked up."""

from collections.abc import Iterator

from gaugewright.grading.model import CentreStart, ChainStart, DivideStart, EdgeStart, GoOnStart, PickUp
from gaugewright.instructions.cloth_words import closing, opening, pick_up_close
from gaugewright.instructions.corner_words import marker_step
from gaugewright.instructions.crown_words import centre_steps
from gaugewright.instructions.dividing_words import divide_steps
from gaugewright.instructions.join_words import INTO_ROW_ENDS, is_joined, joined_start
from gaugewright.instructions.motif_words import is_motif, motif_centre
from gaugewright.instructions.nodes import Paragraph, Span
from gaugewright.instructions.opened_words import go_on_steps
from gaugewright.instructions.rim_words import is_round_rim, rim_picked_up
from gaugewright.instructions.row_end_words import row_end_sentences
from gaugewright.instructions.slit_words import is_round_opening, opening_picked_up
from gaugewright.instructions.steps import count_end, edge_word, first_yarn, spoken, step
from gaugewright.instructions.triangle_words import is_triangle, middle_steps
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Slot, Spans, ordinal
from gaugewright.sized import Sized
from gaugewright.trade.foundation import foundation

LEVEL = 2
"""One stitch at the foot of a neck is the point of a V, which some sizes have and others not, and no level stretch."""


def opening_steps(book: Book, view: PieceView, names: dict[str, str], titles: dict[str, str]) -> list[Paragraph]:
    """The first steps, up to and including row 1."""
    start = view.first.start
    if is_round_rim(view):
        return [rim_picked_up(book, view, names), *marker_step(book, view, titles)]
    if isinstance(start, EdgeStart):
        return [_pick_up(book, view, names, titles), *marker_step(book, view, titles)]
    if is_triangle(view):
        return middle_steps(book, view, names)
    if isinstance(start, CentreStart):
        return motif_centre(book, view, names) if is_motif(view) else centre_steps(book, view, names)
    if isinstance(start, DivideStart):
        return divide_steps(book, view, names, titles)
    if is_joined(view):
        return joined_start(book, view, names, titles)
    if isinstance(start, GoOnStart):
        return go_on_steps(book, view, names, titles)
    if isinstance(start, ChainStart):
        return [_foundation(book, view, names), _first_row(book, view)]
    raise TypeError(f"no words for a piece that begins with {start!r}")


def _chains(view: PieceView) -> Sized[int]:
    return view.plans.map(lambda plan: plan.start.chains)  # type: ignore[union-attr]


def _foundation(book: Book, view: PieceView, names: dict[str, str]) -> Paragraph:
    colour = first_yarn(book, view, names)
    ring = view.piece.start.kind == "ring"
    sentence = book.sentence(
        "ring-foundation" if ring else "chain-foundation", view.piece.key,
        colour=colour, chains=_chains(view), slst=book.abbr("sl st"),
    )
    return step("Foundation:", sentence, book.sentence("ring-passes", part=view.passes, Row=book.row_word(True), row=1) if ring and view.passes else ())


def _first_row(book: Book, view: PieceView) -> Paragraph:
    plan, cloth = view.first, view.first.start_cloth
    slots: dict[str, str | int | Spans] = {"stitch": book.abbr(cloth.stitch)}
    if view.piece.start.kind == "ring":
        kind = "first-round-spiral" if plan.worked == "spiral rounds" else "first-round-counted" if cloth.counts else "first-round"
        slots |= {"open": opening(book, cloth, plan.worked), "close": closing(book, cloth, plan.worked)}
    else:
        begin = foundation(cloth.stitch, plan.start.stitches, cloth.chains, cloth.counts)
        kind = "first-row-counted" if cloth.counts else "first-row"
        slots |= {"ordinal": ordinal(begin.first_into)}
    sentence = book.sentence(kind, f"{view.piece.key}.row1", **slots)
    blocks = first_in_blocks(book, view)
    label = f"{book.row_word(view.in_rounds)}\u00a01:" if view.paired else f"{book.row_word(view.in_rounds)}\u00a01 (RS):"
    return step(label, sentence, *blocks, count=count_end(book, f"{view.piece.key}.row1", view.stitches(first_rows(view))))


def first_in_blocks(book: Book, view: PieceView) -> list[Spans]:
    """That row 1 is worked in blocks of colour already, where it is."""
    several = bool(view.first.blocks) and view.first.blocks[0].first == 1 and view.first.blocks[0].several
    return [book.sentence("blocks-first-row")] if several else []


def first_rows(view: PieceView) -> Sized[int]:
    """Row 1 of every size."""
    return view.plans.map(lambda _plan: 1)


def _pick_up(book: Book, view: PieceView, names: dict[str, str], titles: dict[str, str]) -> Paragraph:
    cloth = view.first.start_cloth
    starts = view.plans.map(lambda plan: plan.start)
    chains = view.fabrics[cloth.fabric].chains if view.in_rounds else cloth.chains  # a spiral has its chain here only
    sentences = [book.sentence(_beginning(view), colour=first_yarn(book, view, names), slst=book.abbr("sl st"), chains=max(1, chains))]
    parts: list[Span] = []
    for index, _ in enumerate(view.piece.start.edges):
        ups: Sized[PickUp] = starts.map(lambda start, i=index: start.pick_ups[i])  # type: ignore[misc]
        parts += [Span("; ")] if parts else []
        parts += _one_edge(book, view, ups, cloth.stitch, titles)
    parts = list(opening_picked_up(book, view, titles)) if is_round_opening(view) else parts
    sentences.append((*parts, Span(", "), *pick_up_close(book, cloth, view.first.worked), Span(".")))
    sentences += first_in_blocks(book, view)
    if view.first.worked == "spiral rounds":
        sentences.append(book.sentence("pick-up-spiral"))
    if any(up.rows for start in starts for up in start.pick_ups):  # type: ignore[union-attr]
        if any(up.corners for start in starts for up in start.pick_ups):  # type: ignore[union-attr]
            sentences.append(book.sentence("pick-up-left", stitch=book.abbr(cloth.stitch)))
        sentences += row_end_sentences(book, view.piece.key, starts.map(lambda start: start.pick_ups), cloth.stitch, titles)  # type: ignore[union-attr]
        sentences.append(book.sentence(INTO_ROW_ENDS[view.piece.start.take_up]))
    count = count_end(book, f"{view.piece.key}.row1", view.stitches(first_rows(view)))
    return step("Rnd\u00a01 (pick-up rnd, RS):" if view.in_rounds else "Row\u00a01 (pick-up row, RS):", *sentences, count=count)


def is_border(view: PieceView) -> bool:
    """Whether a piece goes round all four edges of one other, as a blanket's border does."""
    ups = view.first.start.pick_ups if isinstance(view.first.start, EdgeStart) else ()
    return view.in_rounds and len(ups) == 4 and len({up.piece for up in ups}) == 1


def _beginning(view: PieceView) -> str:
    """A band that runs from one piece over others to the next begins at a hem, or along a neck at its front end; one
    that doesn't, at the end of its first edge; a ring at an underarm, where what is shaped in pairs stands, or at another seam.
    """
    if is_round_opening(view):
        return "pick-up-begin-opening"
    if view.in_rounds:
        ups = view.first.start.pick_ups  # type: ignore[union-attr]
        if len(ups) == 1:
            return "pick-up-begin-round"
        if is_border(view):
            return "pick-up-begin-corner"
        return "pick-up-begin-underarm" if all(up.rows and not up.of and up.edge != "neck" for up in ups) else "pick-up-begin-seam"
    first, last = (view.first.start.pick_ups[end] for end in (0, -1))  # type: ignore[union-attr]
    ups = view.first.start.pick_ups  # type: ignore[union-attr]
    if len(ups) < 3:
        return "pick-up-begin-one"
    if not any(one.edge == other.edge and one.piece != other.piece for one, other in zip(ups, reversed(ups), strict=True)):
        return "pick-up-begin-end"  # not from one of two fronts to the other
    if first.edge == last.edge == "neck":
        return "pick-up-begin-end" if first.both or last.both else "pick-up-begin-neck"
    return "pick-up-begin"


def _one_edge(book: Book, view: PieceView, ups: Sized[PickUp], stitch: str, titles: dict[str, str]) -> Spans:
    first = ups.values[0]
    fact = f"{view.piece.key}.pickup.{first.piece}.{first.edge}"
    slots: dict[str, Slot] = {"stitches": ups.map(lambda up: up.stitches), "stitch": book.abbr(stitch), "edge": edge_word(book, first.edge) if first.rows else spoken(first.edge), "piece": titles[first.piece]}
    if first.both and any(up.of for up in ups) and all(up.of < LEVEL for up in ups):
        return book.sentence("pick-up-point", fact, rows=ups.map(lambda up: up.rows), **slots)
    if first.rows and any(up.of for up in ups):
        parts: dict[str, Slot] = {"level": ups.map(lambda up: up.level), "rest": ups.map(lambda up: up.stitches - up.level)}
        kind = "pick-up-curve" if first.both else "pick-up-curve-half"
        if first.above:
            parts["above"] = ups.map(lambda up: up.above)
            kind = "pick-up-raglan" if first.both else "pick-up-raglan-top" if all(up.of == up.above for up in ups) else "pick-up-raglan-half"
        return book.sentence(kind, fact, rows=ups.map(lambda up: up.rows), of=ups.map(lambda up: up.of), **parts, **slots)
    if first.rows:
        return book.sentence("pick-up-rows", fact, rows=ups.map(lambda up: up.rows), **slots)
    if all(up.stitches == up.of for up in ups):
        return book.sentence("pick-up-stitches", fact, **slots)
    return book.sentence("pick-up-stitches-uneven", fact, of=ups.map(lambda up: up.of), **slots)


def mark_rows(view: PieceView) -> dict[str, Sized[int]]:
    """The row of each level to mark, by level."""
    levels = dict.fromkeys(mark.level for mark in view.first.marks)
    return {level: view.plans.map(lambda plan, level=level: next(m.row for m in plan.marks if m.level == level)) for level in levels}  # type: ignore[misc]


def mark_step(book: Book, view: PieceView, level: str, rows: Sized[int]) -> Paragraph:
    """A level to mark on the way."""
    marks = [mark for mark in view.first.marks if mark.level == level]
    below, above = spoken(marks[0].below), spoken(marks[0].above)
    edge = book.words["both-edges"] if len(marks) == 2 else book.words["the-edge"].format(edge=below)
    return step("Look ahead:", book.sentence(
        "mark-level", f"{view.piece.key}.{level}", Row=book.row_word(view.in_rounds), row=rows, height=view.height(rows),
        bottom=spoken(view.piece.bottom), edge=edge, below=below, above=above,
    ))
